package scenarios

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// An object is a mapping being read: whatever is asked for is known, and close
// reports every other key.
type object struct {
	r    *reader
	path string
	node *yaml.Node
	keys []*yaml.Node
	vals []*yaml.Node
	ask  []string
	bad  bool // not a mapping: reported once, its keys are not missed
}

// object opens n as a mapping and reports keys that stand twice.
func (r *reader) object(n *yaml.Node, path string) *object {
	o := &object{r: r, path: path, node: n}
	if r.noted != nil {
		r.noted.at(path).kind = "object"
		return o
	}
	if n.Kind != yaml.MappingNode {
		r.fail(n, path, "a "+kindName(n)+" stands where keys with values belong", "keys with values")
		o.bad = true
		return o
	}
	first := make(map[string]*yaml.Node, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		if k.Kind != yaml.ScalarNode {
			r.fail(k, path, "a "+kindName(k)+" stands where a key belongs", "a name as key")
			continue
		}
		if before := first[k.Value]; before != nil {
			r.fail(k, o.at(clip(k.Value)), "the key stands twice", fmt.Sprintf("once; it stands first in line %d", before.Line))
			continue
		}
		first[k.Value] = k
		o.keys, o.vals = append(o.keys, k), append(o.vals, v)
	}
	return o
}

// at is the path of a key.
func (o *object) at(key string) string {
	if o.r.noted != nil {
		key = strings.ReplaceAll(key, ".", dotted)
	}
	if o.path == "" {
		return key
	}
	return o.path + "." + key
}

// get returns the value under key, or nil.
func (o *object) get(key string) *yaml.Node {
	o.ask = append(o.ask, key)
	if o.r.noted != nil {
		o.r.noted.at(o.path).key(key)
		return everything
	}
	for i, k := range o.keys {
		if k.Value == key {
			return o.vals[i]
		}
	}
	return nil
}

// need is get that reports a missing key; what says what belongs there.
func (o *object) need(key, what string) *yaml.Node {
	n := o.get(key)
	if o.r.noted != nil {
		o.r.noted.at(o.path).need(key)
	}
	if n == nil && !o.bad {
		o.r.fail(o.node, o.at(key), "missing", what)
	}
	return n
}

// lone reports whether the mapping has exactly one key.
func (o *object) lone() bool {
	if o.r.noted != nil {
		o.r.noted.at(o.path).lone = true
		return true
	}
	return len(o.keys) == 1
}

func (o *object) text(key string) string {
	if n := o.need(key, "text is needed here"); n != nil {
		s, _ := o.r.text(n, o.at(key))
		return s
	}
	return ""
}

// textOr is text with nothing for a key left out.
func (o *object) textOr(key string) string {
	if n := o.get(key); n != nil {
		s, _ := o.r.text(n, o.at(key))
		return s
	}
	return ""
}

func (o *object) number(key, unit string, lo, hi float64) float64 {
	n := o.need(key, strings.TrimSpace("a number from "+show(lo)+" to "+show(hi)+" "+unit))
	if n == nil {
		return 0
	}
	v, _ := o.r.number(n, o.at(key), unit, lo, hi)
	return v
}

// numberOr is number with a value for a key left out.
func (o *object) numberOr(key, unit string, lo, hi, or float64) float64 {
	n := o.get(key)
	if n == nil {
		return or
	}
	v, _ := o.r.number(n, o.at(key), unit, lo, hi)
	return v
}

// name returns the index of the known name under key, or -1.
func (o *object) name(key, what string, known []string) int {
	n := o.need(key, "a "+what+"; "+nearestWords("", known))
	if n == nil {
		return -1
	}
	i, _ := o.r.name(n, o.at(key), what, known)
	return i
}

// list returns the items under key with their paths.
func (o *object) list(key string, must bool) []item {
	var n *yaml.Node
	if must {
		n = o.need(key, "a list, each item after a dash")
	} else {
		n = o.get(key)
	}
	if n == nil {
		return nil
	}
	var out []item
	for i, c := range o.r.list(n, o.at(key)) {
		out = append(out, item{c, fmt.Sprintf("%s[%d]", o.at(key), i)})
	}
	if len(out) == 0 && must && n.Kind == yaml.SequenceNode {
		o.r.fail(n, o.at(key), "the list is empty", "at least one item")
	}
	return out
}

type item struct {
	node *yaml.Node
	path string
}

// close reports every key nothing asked for, naming the nearest known one, and
// says so when only its unit is missing.
func (o *object) close() {
	slices.Sort(o.ask)
	o.ask = slices.Compact(o.ask)
	for _, k := range o.keys {
		if slices.Contains(o.ask, k.Value) {
			continue
		}
		what := "unknown key"
		allowed := nearestWords(k.Value, o.ask)
		for _, a := range o.ask {
			if unit, ok := strings.CutPrefix(a, k.Value+"_"); ok && knownSuffix(unit) {
				what, allowed = "the key lacks its unit", "write "+a
			}
		}
		o.r.fail(k, o.at(clip(k.Value)), what, allowed)
	}
}

// knownSuffix reports whether a key may end with this unit.
func knownSuffix(s string) bool {
	if fieldSuffix[s] {
		return true
	}
	return s == "km" || s == "min" || s == "bits" || s == "kmh" || s == "mps2"
}

// fieldSuffix holds the suffix of every unit a key can have.
var fieldSuffix = func() map[string]bool {
	m := map[string]bool{}
	for _, u := range []unit{kilogram, metre, mm, micron, mm2, micron2, cm2, sqMetre, cm3, newton, perM, perMM, cubic, perMPa, torsion, viscous,
		inertia, mpa, kpa, gpa, swell, resist, bypass, archard, second, perS, celsius, perK, density, heat, conduct, stokes, share, ratio} {
		m[u.suffix] = true
	}
	return m
}()
