package scenarios

import (
	"fmt"
	"regexp"
	"strings"

	"gopkg.in/yaml.v3"

	"evenwear/physics"
)

// catalogue reads the groups of causes and the parts remedies are sorted by.
func (b *builder) catalogue(src *source) {
	if src.node == nil {
		return
	}
	o := src.r.object(src.node, "")
	for _, g := range namedList(o, "groups") {
		b.lib.Groups = append(b.lib.Groups, Group{ID: g[0], Name: g[1]})
	}
	for _, p := range namedList(o, "parts") {
		b.lib.Parts = append(b.lib.Parts, Part{ID: p[0], Name: p[1]})
	}
	o.close()
}

// namedList reads a list of items with id and name.
func namedList(o *object, key string) [][2]string {
	var out [][2]string
	for _, it := range o.list(key, true) {
		i := o.r.object(it.node, it.path)
		id, name := i.text("id"), i.text("name")
		i.close()
		if id == "" {
			continue
		}
		if !idPattern.MatchString(id) {
			o.r.fail(it.node, it.path+".id", fmt.Sprintf("%q cannot be an id", clip(id)), idAllowed)
		}
		for _, before := range out {
			if before[0] == id {
				o.r.fail(it.node, it.path+".id", fmt.Sprintf("%q stands twice", clip(id)), "once")
			}
		}
		out = append(out, [2]string{id, name})
	}
	return out
}

// parts are the mappings of a car's file in their order; "" is the top.
var carParts = []string{"", "pedal", "booster", "master", "valve", "fluid", "reservoir", "front", "rear", "oil", "coolant", "steering", "washer"}

// car reads a car: every number of the table of fields, and what is no number.
func (b *builder) car(src *source) {
	car := &Car{ID: src.id}
	b.lib.Cars = append(b.lib.Cars, car)
	if src.node == nil {
		return
	}
	before := len(*src.r.probs)
	top := src.r.object(src.node, "")
	car.Name = top.text("name")
	for _, part := range carParts {
		o := top
		if part != "" {
			n := top.need(part, "the numbers of this part")
			if n == nil {
				continue
			}
			o = src.r.object(n, part)
		}
		for i := range fields {
			f := &fields[i]
			key, ok := f.Path, part == ""
			if ok = ok && !strings.Contains(key, "."); !ok {
				key, ok = strings.CutPrefix(f.Path, part+".")
				ok = ok && part != ""
			}
			if !ok || f.spec == nil {
				continue
			}
			*f.spec(&car.Spec) = o.number(key, f.Unit, f.Lo, f.Hi) * f.SI
		}
		switch part {
		case "front":
			car.Spec.Front.DiscVented = o.yes("disc_ventilated")
		case "rear":
			car.Spec.Rear.DiscVented = o.yes("disc_ventilated")
		}
		if part != "" {
			o.close()
		}
	}
	car.Spec.Body.AntiLock = top.yes("anti_lock")
	b.circuits(top, car)
	top.close()
	if len(*src.r.probs) > before {
		return
	}
	carFits(src, &car.Spec)
}

// circuits reads which chamber of the master cylinder serves which wheels.
func (b *builder) circuits(top *object, car *Car) {
	n := top.need("circuits", "which wheels the primary and the secondary chamber serve")
	if n == nil {
		return
	}
	o := top.r.object(n, "circuits")
	wheels := make([]string, physics.NumWheels)
	for w := range wheels {
		wheels[w] = physics.Wheel(w).String()
	}
	var served [physics.NumWheels]*yaml.Node
	for chamber, key := range []string{"primary", "secondary"} {
		for _, it := range o.list(key, true) {
			w, ok := top.r.name(it.node, it.path, "wheel", wheels)
			if !ok {
				continue
			}
			if served[w] != nil {
				top.r.fail(it.node, it.path, wheels[w]+" is served twice", fmt.Sprintf("once; it stands first in line %d", served[w].Line))
				continue
			}
			served[w] = it.node
			car.Spec.Circuit[w] = chamber
		}
	}
	o.close()
	for w, at := range served {
		if at == nil && !o.bad {
			top.r.fail(n, "circuits", wheels[w]+" is served by no circuit", "each of the four wheels once")
		}
	}
}

// bracedPath is a path within a sentence of the physics.
var bracedPath = regexp.MustCompile(`\{[a-z0-9_.]+\}`)

// fieldOf is the field that the physics call by its path without a unit.
func fieldOf(plain string) *Field {
	for i := range fields {
		if fields[i].plain == plain {
			return &fields[i]
		}
	}
	panic("scenarios: the physics know a number that no car's file has: " + plain)
}

// carFits reports what the numbers of a car cannot be together, where they stand.
func carFits(src *source, s *physics.Spec) {
	for _, bad := range s.Misfits() {
		f := fieldOf(bad.What)
		at := src.node
		for _, key := range strings.Split(f.Path, ".") {
			at = src.r.object(at, "").get(key)
		}
		allowed := bracedPath.ReplaceAllStringFunc(bad.Allowed, func(p string) string { return fieldOf(p[1 : len(p)-1]).Path })
		src.r.fail(at, f.Path, fmt.Sprintf("%.6g %s: %s", bad.Value/f.SI, f.Unit, bad.Wrong), fmt.Sprintf("%s, %.6g %s", allowed, bad.Limit/f.SI, f.Unit))
	}
}

// yes reads a key as yes or no.
func (o *object) yes(key string) bool {
	n := o.need(key, "yes or no")
	if n == nil {
		return false
	}
	v, _ := o.r.yes(n, o.at(key))
	return v
}
