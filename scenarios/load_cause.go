package scenarios

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"evenwear/physics"
)

// anyCar lets paths be resolved while no car is chosen: only the circuits of a
// spec decide which wheels a place has, and every car has both.
var anyCar = physics.Spec{Circuit: [physics.NumWheels]int{0, 1, 1, 0}}

// cause reads one entry of the fault catalogue.
func (b *builder) cause(src *source) {
	c := &Cause{ID: src.id}
	b.lib.Causes = append(b.lib.Causes, c)
	if src.node == nil {
		return
	}
	o := src.r.object(src.node, "")
	c.Name, c.Explain = o.text("name"), o.text("explain")
	groups := make([]string, len(b.lib.Groups))
	for i, g := range b.lib.Groups {
		groups[i] = g.ID
	}
	if i := o.name("group", "group", groups); i >= 0 {
		c.Group = groups[i]
	}
	c.Prior = o.number("prior_weight_ratio", "", 0.01, 1000)
	if n := o.get("nothing_wrong"); n != nil {
		c.Healthy, _ = src.r.yes(n, "nothing_wrong")
	}
	c.Places, c.Where = places(o)
	if n := o.need("since_km", "from and to"); n != nil {
		k := src.r.object(n, "since_km")
		c.SinceKm = [2]float64{k.number("from", "km", 0, 200000), k.number("to", "km", 0, 200000)}
		k.close()
		if c.SinceKm[0] > c.SinceKm[1] {
			src.r.fail(n, "since_km", "from is greater than to", "from at most to")
		}
	}
	for _, it := range o.list("severities", true) {
		c.Severities = append(c.Severities, severity(src.r, it, c.Places))
	}
	for i, s := range c.Severities {
		if slices.IndexFunc(c.Severities, func(t Severity) bool { return t.ID == s.ID }) < i {
			src.r.fail(o.get("severities").Content[i], fmt.Sprintf("severities[%d].id", i), fmt.Sprintf("%q stands twice", clip(s.ID)), "once")
		}
	}
	for _, it := range o.list("notes", false) {
		if text, ok := src.r.text(it.node, it.path); ok {
			if _, err := noted(text, "front_left"); err != nil {
				what := strings.Replace(err.Error(), noteAt(text, "front_left"), text, 1) // as it stands in the file
				src.r.fail(it.node, it.path, what, "a check, at a wheel with @"+noteHere+", @"+noteBeside+" or its name")
			}
			c.Notes = append(c.Notes, text)
		}
	}
	o.close()
}

func severity(r *reader, it item, at []Place) Severity {
	o := r.object(it.node, it.path)
	s := Severity{ID: o.text("id"), Weight: o.number("weight_ratio", "", 0.01, 1000)}
	if s.ID != "" && !idPattern.MatchString(s.ID) {
		r.fail(it.node, it.path+".id", fmt.Sprintf("%q cannot be an id", clip(s.ID)), idAllowed)
	}
	s.GrowsFrom = o.numberOr("grows_from_share", "", 0, 1, 1)
	s.Start = changes(o, at)
	if n := o.get("at_end"); n != nil {
		e := r.object(n, it.path+".at_end")
		s.End = changes(e, at)
		e.close()
	}
	o.close()
	return s
}

// places reads the list of places of a cause or remedy, and what the car is called
// where it is the only one.
func places(o *object) (out []Place, where string) {
	for _, it := range o.list("places", true) {
		i, ok := o.r.name(it.node, it.path, "place", Places)
		if !ok {
			continue
		}
		if slices.Contains(out, Place(Places[i])) {
			o.r.fail(it.node, it.path, Places[i]+" stands twice", "once")
			continue
		}
		out = append(out, Place(Places[i]))
	}
	where = o.textOr("where")
	if where != "" && !slices.Equal(out, []Place{"car"}) && o.r.noted == nil {
		o.r.fail(o.get("where"), o.at("where"), "other places than the car have names of their own", "leave where out, or write places: [car]")
	}
	return out, where
}

// changes reads what is done to the condition: under set, add, scale, at_least,
// at_most, stands_at, fill_to and draw_to paths with their numbers, and pour_to: max.
func changes(o *object, at []Place) []Change {
	var out []Change
	for _, op := range []Op{Set, AtLeast, AtMost, Add, Scale, StandsAt, FillTo, DrawTo} {
		n := o.get(string(op))
		if n == nil {
			continue
		}
		m := o.r.object(n, o.at(string(op)))
		if o.r.noted != nil {
			noteChanges(o.r.noted.at(m.path), op)
			continue
		}
		for i, k := range m.keys {
			m.ask = append(m.ask, k.Value) // every key is a path, checked here
			var ch Change
			var ok bool
			switch op {
			case AtMost:
				ch, ok = leaves(o.r, k, m.vals[i], m.path)
			case StandsAt, FillTo, DrawTo:
				ch, ok = stands(o.r, op, k, m.vals[i], m.path)
			default:
				ch, ok = change(o.r, op, k, m.vals[i], m.path, at)
			}
			if ok {
				out = append(out, ch)
			}
		}
		m.close()
	}
	if n := o.get("pour_to"); n != nil {
		if _, ok := o.r.name(n, o.at("pour_to"), "mark", []string{"max"}); ok {
			out = append(out, Change{Op: Pour})
		}
	}
	return out
}

// mostScale is the greatest factor of a scale change.
const mostScale = 1000.0

func change(r *reader, op Op, key, val *yaml.Node, path string, at []Place) (Change, bool) {
	path += "." + clip(key.Value)
	ch := Change{Op: op, Path: key.Value}
	lo, hi, unit := 0.0, mostScale, "times"
	for _, p := range append([]Place{"car"}, at...) {
		fs, err := p.at(&anyCar, key.Value)
		if err != nil {
			r.fail(key, path, err.Error(), "a path of the condition")
			return ch, false
		}
		for _, f := range fs {
			if f.cond == nil {
				r.fail(key, path, "this is a number of the car when new", "a path of the condition, such as wheel.air_cm3")
				return ch, false
			}
			if op != Scale {
				lo, hi, unit = f.Lo, f.Hi, f.Unit
			}
		}
	}
	v, ok := r.number(val, path, unit, lo, hi)
	ch.Value = v
	return ch, ok
}
