package play

import (
	"evenwear/physics"
	"evenwear/physics/inspect"
)

// A vessel is one under the bonnet beside the brake reservoir: its name, the
// check that reads it, and what it has lost or too much [m³ at 20 °C].
type vessel struct {
	id    string
	check inspect.ID
	added func(*physics.VesselsCondition) float64
}

var vessels = []vessel{
	{"oil", "oil_level", func(c *physics.VesselsCondition) float64 { return c.Oil }},
	{"coolant", "coolant_level", func(c *physics.VesselsCondition) float64 { return c.Coolant }},
	{"steering", "steering_level", func(c *physics.VesselsCondition) float64 { return c.Steering }},
	{"washer", "washer_level", func(c *physics.VesselsCondition) float64 { return c.Washer }},
}

// stands is where the vessel stands [1, MIN 0 to MAX 1] when it is read as it
// should be, at the heat that its marks are made for.
func (v *vessel) stands(spec *physics.Spec, cond physics.Condition) (float64, error) {
	m, err := physics.New(spec, cond)
	if err != nil {
		return 0, err
	}
	return (&inspect.World{Model: m}).Measure(inspect.Instance{Check: v.check})
}

// fillsLow tells whether one of these remedies pours into a vessel that stands
// below MIN without it.
func (s *Session) fillsLow(chosen []string, remedy int) (bool, error) {
	with, err := s.after(chosen)
	if err != nil {
		return false, err
	}
	left, err := s.after(without(chosen, remedy))
	if err != nil {
		return false, err
	}
	for i := range vessels {
		v := &vessels[i]
		if v.added(&with.Vessels) <= v.added(&left.Vessels) {
			continue
		}
		if stands, err := v.stands(&s.job.Car.Spec, left); err != nil || stands < 0 {
			return err == nil, err
		}
	}
	return false, nil
}
