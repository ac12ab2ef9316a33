package scenarios

import (
	"fmt"
	"slices"

	"evenwear/physics"
)

// growthSteps is into how many stretches the distance driven with a growing
// fault is cut; in each the fault has the size of the stretch's middle.
const growthSteps = 4

// Duty is how a car used like this is driven.
func (d *Driven) Duty() physics.Duty {
	duty := physics.MixedDuty()
	for i := range duty.Stops {
		duty.Stops[i].PerThousandKm *= d.Harshness
	}
	duty.Ambient = d.RoomC - 20
	return duty
}

// Build is the condition an inspector finds: the pads are fitted, the vessels
// under the bonnet stand where they should, the car is
// driven sound, each fault is put in where its story begins, the car is driven
// on with it, and what happens at the end is done. Faults older than the pads
// begin with the pads. A fault that driving does not feel is put in last: when it
// came makes no difference.
func Build(spec *physics.Spec, driven Driven, faults []Fault) (physics.Condition, error) {
	return build(spec, driven, faults, physics.Drive)
}

// A drive is [physics.Drive] or something that gives the same.
type drive func(*physics.Spec, physics.Condition, physics.Duty, float64) (physics.Condition, error)

// build is Build with the car driven sound by sound.
func build(spec *physics.Spec, driven Driven, faults []Fault, sound drive) (physics.Condition, error) {
	var cond physics.Condition
	for i := range vessels {
		vessels[i].fill(spec, &cond, vessels[i].rest)
	}
	for w := range cond.Wheels {
		for pad := range 2 {
			for half := range 2 {
				cond.Wheels[w].Wear[pad][half] = driven.PadsThinnerMm * physics.Millimetre
			}
		}
	}
	duty := driven.Duty()
	// Faults in the order in which they begin; each stretch has a constant set of them.
	order := slices.Clone(faults)
	for i := range order {
		order[i].SinceKm = min(max(order[i].SinceKm, 0), driven.PadsKm)
		if !order[i].Felt(spec) {
			order[i].SinceKm = 0
		}
	}
	slices.SortStableFunc(order, func(a, b Fault) int {
		switch {
		case a.SinceKm > b.SinceKm:
			return -1
		case a.SinceKm < b.SinceKm:
			return 1
		}
		return 0
	})
	left := driven.PadsKm
	var here []*active
	for i := range order {
		var err error
		if cond, err = run(spec, cond, duty, here, left-order[i].SinceKm, left, sound); err != nil {
			return cond, err
		}
		left = order[i].SinceKm
		a := &active{fault: &order[i]}
		if err := a.begin(spec, &cond); err != nil {
			return cond, err
		}
		here = append(here, a)
	}
	cond, err := run(spec, cond, duty, here, left, left, sound)
	if err != nil {
		return cond, err
	}
	for _, a := range here {
		for i := range a.fault.Severity.End {
			if err := a.fault.Severity.End[i].apply(spec, &cond, a.fault.Place, 1); err != nil {
				return cond, fmt.Errorf("%s at %s: %w", a.fault.Cause.ID, a.fault.Place, err)
			}
		}
	}
	return cond, nil
}

// Felt tells whether driving reads or changes what a fault begins with. What it
// does at the end does not count.
func (f *Fault) Felt(spec *physics.Spec) bool {
	for i := range f.Severity.Start {
		ch := &f.Severity.Start[i]
		if ch.Op != Set && ch.Op != Add && ch.Op != Scale && ch.Op != AtLeast { // it may hang on what has worn
			return true
		}
		fields, err := f.Place.at(spec, ch.Path)
		if err != nil {
			return true
		}
		for _, field := range fields {
			var c physics.Condition
			*field.cond(&c) = 1
			if c.Driven() != (physics.Condition{}) {
				return true
			}
		}
	}
	return false
}

// An active fault is one the car is driven with.
type active struct {
	fault *Fault
	part  float64 // [1] share of what it adds that is in the car now
}

// begin puts in what is there from the first kilometre.
func (a *active) begin(spec *physics.Spec, cond *physics.Condition) error {
	s := &a.fault.Severity
	for i := range s.Start {
		part := 1.0
		if s.Start[i].Op == Add {
			part = s.GrowsFrom
		}
		if err := s.Start[i].apply(spec, cond, a.fault.Place, part); err != nil {
			return fmt.Errorf("%s at %s: %w", a.fault.Cause.ID, a.fault.Place, err)
		}
	}
	a.part = s.GrowsFrom
	return nil
}

// grow brings what the fault adds to the size it has with left km to go.
func (a *active) grow(spec *physics.Spec, cond *physics.Condition, left float64) error {
	s := &a.fault.Severity
	part := 1.0
	if a.fault.SinceKm > 0 {
		part = s.GrowsFrom + float64((1-s.GrowsFrom)*(a.fault.SinceKm-left)/a.fault.SinceKm)
	}
	if part <= a.part {
		return nil
	}
	for i := range s.Start {
		if s.Start[i].Op != Add {
			continue
		}
		if err := s.Start[i].apply(spec, cond, a.fault.Place, part-a.part); err != nil {
			return err
		}
	}
	a.part = part
	return nil
}

func growing(here []*active) bool {
	for _, a := range here {
		if a.fault.Severity.GrowsFrom < 1 {
			return true
		}
	}
	return false
}

// run drives the car km on; left is what the whole story still has to go.
func run(spec *physics.Spec, cond physics.Condition, duty physics.Duty, here []*active, km, left float64, on drive) (physics.Condition, error) {
	if len(here) > 0 {
		on = physics.Drive
	}
	steps := 1
	if growing(here) {
		steps = growthSteps
	}
	var err error
	for range steps {
		stretch := km / float64(steps)
		for _, a := range here {
			if err = a.grow(spec, &cond, left-float64(stretch/2)); err != nil {
				return cond, err
			}
		}
		if stretch > 0 {
			if cond, err = on(spec, cond, duty, stretch); err != nil {
				return cond, err
			}
		}
		left -= stretch
	}
	for _, a := range here {
		if err = a.grow(spec, &cond, left); err != nil {
			return cond, err
		}
	}
	return cond, nil
}
