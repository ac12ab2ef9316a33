package physics

import (
	"fmt"
	"strings"
)

// A Misfit is a number of a car that cannot stand beside its others.
type Misfit struct {
	What    string  // its path as in a car's file, without the unit: "front.piston_diameter"
	Value   float64 // SI
	Wrong   string  // "the piston is wider than the disc"
	Allowed string  // "less than {front.disc_diameter}", paths in braces
	Limit   float64 // SI, what that is
}

func (m *Misfit) refuse() error {
	plain := strings.NewReplacer("{", "", "}", "").Replace(m.Allowed)
	return &SpecError{What: m.What, Value: m.Value, Wrong: m.Wrong, Wanted: fmt.Sprintf("%s, %.6g", plain, m.Limit)}
}

// Misfits lists every number of the car that cannot stand beside its others.
func (s *Spec) Misfits() []Misfit {
	var bad []Misfit
	check := func(ok bool, what string, v float64, wrong, allowed string, limit float64) {
		if !ok {
			bad = append(bad, Misfit{what, v, wrong, allowed, limit})
		}
	}
	most := func(what string, v float64, wrong, than string, limit float64) {
		check(v <= limit, what, v, wrong, "at most {"+than+"}", limit)
	}
	b, r, v := &s.Body, &s.Reservoir, &s.Vessels
	most("slide_adhesion", b.SlideAdhesion, "a sliding tyre holds better than a rolling one", "peak_adhesion", b.PeakAdhesion)
	if tips := (1 - b.FrontShare) * b.Wheelbase; tips > 0 {
		check(b.CentreHeight*b.PeakAdhesion < tips, "centre_height", b.CentreHeight, "the car tips over its front wheels in a hard stop",
			"less than {wheelbase}, {front_load} and {peak_adhesion} allow", tips/b.PeakAdhesion)
	}
	most("fluid.wet_boil", s.Fluid.WetBoil, "water raises the boiling point", "fluid.dry_boil", s.Fluid.DryBoil)
	most("reservoir.primary_port", r.Port[0], "the port is bare at MIN", "reservoir.at_min", r.AtMin)
	most("reservoir.secondary_port", r.Port[1], "the port is bare at MIN", "reservoir.at_min", r.AtMin)
	most("oil.min_to_max", v.Oil.MinToMax, "MIN lies below an empty sump", "oil.at_max", v.Oil.AtMax)
	most("oil.aloft", v.Oil.Aloft, "the pump would run dry", "oil.at_max", v.Oil.AtMax)
	most("oil.viscosity_100", v.Oil.Viscosity100, "heat thickens the oil", "oil.viscosity_40", v.Oil.Viscosity40)
	most("coolant.min_to_max", v.Coolant.MinToMax, "MIN lies below an empty vessel", "coolant.at_max", v.Coolant.AtMax)
	most("coolant.at_max", v.Coolant.AtMax, "the vessel holds more than the whole filling", "coolant.volume", v.Coolant.Volume)
	most("steering.min_to_max", v.Steering.MinToMax, "MIN lies below an empty vessel", "steering.volume", v.Steering.Volume)
	most("washer.min_to_max", v.Washer.MinToMax, "MIN lies below an empty vessel", "washer.volume", v.Washer.Volume)
	for i, c := range [...]*CornerSpec{&s.Front, &s.Rear} {
		at := [2]string{"front.", "rear."}[i]
		check(c.PadOffset < c.PinOffset, at+"pad_offset", c.PadOffset, "the middle of the pad's half stands outside the pins", "less than {"+at+"pin_offset}", c.PinOffset)
		if c.DiscDiameter <= 0 { // a caliper by itself
			continue
		}
		most(at+"disc_minimum", c.DiscMinimum, "the disc is below its minimum when new", at+"disc_thickness", c.DiscThickness)
		check(c.DiscDiameter < 2*b.TyreRadius, at+"disc_diameter", c.DiscDiameter, "the disc does not fit into the wheel", "less than twice {tyre_radius}", 2*b.TyreRadius)
		check(c.LiningNew <= 0 || c.Tongue < c.LiningNew, at+"tongue", c.Tongue, "the tongue touches the disc when the pad is new", "less than {"+at+"lining_new}", c.LiningNew)
		in, out := c.EffectiveRadius > c.DiscDiameter/4, c.EffectiveRadius < c.DiscDiameter/2
		check(out, at+"effective_radius", c.EffectiveRadius, "the pad stands outside the disc", "less than half of {"+at+"disc_diameter}", c.DiscDiameter/2)
		check(in, at+"effective_radius", c.EffectiveRadius, "the pad would rub on the wheel's axis", "more than a quarter of {"+at+"disc_diameter}", c.DiscDiameter/4)
		if wide := c.PistonDiameter >= c.DiscDiameter; wide {
			check(false, at+"piston_diameter", c.PistonDiameter, "the piston is wider than the disc", "less than {"+at+"disc_diameter}", c.DiscDiameter)
		} else {
			check(c.PistonDiameter < 2*c.EffectiveRadius, at+"piston_diameter", c.PistonDiameter, "the piston reaches past the wheel's axis",
				"less than twice {"+at+"effective_radius}", 2*c.EffectiveRadius)
		}
		if in && out {
			check(c.LiningArea < c.sweptArea(), at+"lining_area", c.LiningArea, "the lining is larger than the face it rubs",
				"less than the ring that {"+at+"disc_diameter} and {"+at+"effective_radius} leave", c.sweptArea())
		}
	}
	return bad
}

// fits refuses pads that do not go between piston and fingers, and a stuck valve
// where there is none.
func (c *Condition) fits(s *Spec) error {
	for w := range Wheel(NumWheels) {
		v, spec := &c.Wheels[w], s.Corner(w)
		if v.ValveStuck != 0 && (w.Front() || s.Valve.Knee <= 0) {
			return &SpecError{What: w.String() + ".valve_stuck", Value: v.ValveStuck, Wrong: "no reducing valve serves this wheel", Wanted: "0"}
		}
		proud, room := 0.0, spec.Home
		for i := range 2 {
			proud += v.PlateProud[i]
			room += spec.Gap[i] + v.DiscWear[i] + float64((v.Wear[i][Upper]+v.Wear[i][Lower])/2)
		}
		if !(proud <= room) {
			return &SpecError{What: w.String() + ".plate_proud", Value: proud, Wrong: "the pads are thicker than the caliper opens", Wanted: fmt.Sprintf("at most %.6g", room)}
		}
	}
	return nil
}
