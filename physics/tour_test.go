package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
)

// TestTourAgrees: a tour that coasts and follows stops already made ends as
// warm as one whose every step is made, within a third of a degree at every
// hub, and loses no fluid: what stands in reservoir, chambers and cavities and
// what leaked is what there was.
func TestTourAgrees(t *testing.T) {
	wheel := func(c physics.WheelCondition) physics.Condition {
		return physics.Condition{Wheels: [physics.NumWheels]physics.WheelCondition{physics.FrontRight: c}}
	}
	for name, cond := range map[string]physics.Condition{
		"healthy":  {},
		"dry pins": wheel(physics.WheelCondition{PinFriction: [2]float64{285, 285}}),
		"one pin":  wheel(physics.WheelCondition{PinFriction: [2]float64{5000, 0}}),
		"corroded": wheel(physics.WheelCondition{SealFriction: 1200, SealRate: 14e6}),
		"holds":    wheel(physics.WheelCondition{HoseHold: 0.4e6}),
		"leaks":    wheel(physics.WheelCondition{Leak: 4e-10}),
		"runout":   wheel(physics.WheelCondition{Runout: 0.15e-3, Thickness: 0.03e-3}),
	} {
		m, s := car(t, cond)
		short, err := m.Tour(s, physics.MixedDuty(), 6)
		if err != nil {
			t.Fatal(err)
		}
		whole, err := m.WholeTour(s, physics.MixedDuty(), 6)
		if err != nil {
			t.Fatal(err)
		}
		for w := range physics.Wheel(physics.NumWheels) {
			a, b := short.Heat[w].Hat, whole.Heat[w].Hat
			t.Logf("%s %v: %.2f °C, every step %.2f °C", name, w, a, b)
			if math.Abs(a-b) > 1.0/3 {
				t.Errorf("%s: hub %v at %.2f °C, with every step made %.2f °C", name, w, a, b)
			}
		}
		if was, is := held(&s), held(&short); math.Abs(is-was) > 1e-10 {
			t.Errorf("%s: the tour has made or lost %.3g cm³ of fluid", name, (is-was)/physics.CubicCentimetre)
		}
	}
}

// held is all the fluid there is [m³], and what has left.
func held(s *physics.State) float64 {
	sum := s.Standing + s.Lost + s.Master.Fluid[0] + s.Master.Fluid[1]
	for _, v := range s.Cavity {
		sum += v
	}
	return sum
}
