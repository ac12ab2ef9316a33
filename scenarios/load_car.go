package scenarios

import (
	"fmt"
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
			o.r.fail(it.node, it.path+".id", fmt.Sprintf("%q cannot be an id", clip(id)), "a small letter, then at most 39 small letters, digits and underscores")
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
	for _, bad := range carFits(&car.Spec) {
		src.r.fail(src.node, bad[0], bad[1], bad[2])
	}
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

// carFits lists what the numbers of a car cannot be together: path, what is
// wrong, what is allowed.
func carFits(s *physics.Spec) [][3]string {
	var bad [][3]string
	check := func(ok bool, path, what, allowed string) {
		if !ok {
			bad = append(bad, [3]string{path, what, allowed})
		}
	}
	check(s.Body.SlideAdhesion <= s.Body.PeakAdhesion, "slide_adhesion_ratio", "a sliding tyre holds better than a rolling one", "at most peak_adhesion_ratio")
	check(s.Body.CentreHeight < s.Body.Wheelbase, "centre_height_m", "the car would tip over", "less than wheelbase_m")
	check(s.Fluid.WetBoil <= s.Fluid.DryBoil, "fluid.wet_boil_c", "water raises the boiling point", "at most fluid.dry_boil_c")
	check(s.Reservoir.Port[0] <= s.Reservoir.AtMin, "reservoir.primary_port_cm3", "the port is bare at MIN", "at most reservoir.at_min_cm3")
	check(s.Reservoir.Port[1] <= s.Reservoir.AtMin, "reservoir.secondary_port_cm3", "the port is bare at MIN", "at most reservoir.at_min_cm3")
	v := &s.Vessels
	check(v.Oil.MinToMax <= v.Oil.AtMax, "oil.min_to_max_cm3", "MIN lies below an empty sump", "at most oil.at_max_cm3")
	check(v.Oil.Aloft <= v.Oil.AtMax, "oil.aloft_cm3", "the pump would run dry", "at most oil.at_max_cm3")
	check(v.Oil.Viscosity100 <= v.Oil.Viscosity40, "oil.viscosity_100_mm2_per_s", "heat thickens the oil", "at most oil.viscosity_40_mm2_per_s")
	check(v.Coolant.MinToMax <= v.Coolant.AtMax, "coolant.min_to_max_cm3", "MIN lies below an empty vessel", "at most coolant.at_max_cm3")
	check(v.Coolant.AtMax <= v.Coolant.Volume, "coolant.at_max_cm3", "the vessel holds more than the whole filling", "at most coolant.volume_cm3")
	check(v.Steering.MinToMax <= v.Steering.Volume, "steering.min_to_max_cm3", "MIN lies below an empty vessel", "at most steering.volume_cm3")
	check(v.Washer.MinToMax <= v.Washer.Volume, "washer.min_to_max_cm3", "MIN lies below an empty vessel", "at most washer.volume_cm3")
	for i, c := range []*physics.CornerSpec{&s.Front, &s.Rear} {
		at := [2]string{"front.", "rear."}[i]
		check(c.DiscMinimum <= c.DiscThickness, at+"disc_minimum_mm", "the disc is below its minimum when new", "at most "+at+"disc_thickness_mm")
		check(c.EffectiveRadius < c.DiscDiameter/2, at+"effective_radius_mm", "the pad stands outside the disc", "less than half of "+at+"disc_diameter_mm")
		check(c.DiscDiameter/2 < s.Body.TyreRadius, at+"disc_diameter_mm", "the disc does not fit into the wheel", "less than twice tyre_radius_m")
		check(c.PadOffset < c.PinOffset, at+"pad_offset_mm", "the pad's half stands outside the pins", "less than "+at+"pin_offset_mm")
	}
	return bad
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
