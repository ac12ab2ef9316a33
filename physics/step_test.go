package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

var model, run, press = physicstest.Rest, physicstest.Run, physicstest.Press

// TestHatchbackPedal holds the sanity figures of the physics page §8.
func TestHatchbackPedal(t *testing.T) {
	const source = "independent program, physics page §8"
	for _, r := range []struct {
		name           string
		proportioned   bool
		assisted       bool
		foot, mpa, way float64
	}{
		{"150 N assisted, no valve", false, true, 150, 7.37, 58},
		{"150 N assisted", true, true, 150, 7.34, 53},
		{"150 N unassisted", true, false, 150, 1.34, 23},
		{"500 N unassisted", true, false, 500, 5.10, 43},
	} {
		spec := physicstest.Hatchback()
		if !r.proportioned {
			spec.Valve.Knee = 0
		}
		cond := physics.Condition{}
		if !r.assisted {
			cond.BoosterLoss = 1
		}
		m, s := model(t, spec, cond)
		s = press(t, m, s, physics.Input{Foot: r.foot, Engine: true}, 2, 20)
		got, way := s.Master.Pressure[0]/physics.Megapascal, m.PedalTravel(&s)/physics.Millimetre
		t.Logf("%s: %.3f MPa, %.2f mm", r.name, got, way)
		if math.Abs(got-r.mpa) > 0.005*r.mpa+0.005 {
			t.Errorf("%s: %.3f MPa, want %.2f ± 0.5 %% (%s)", r.name, got, r.mpa, source)
		}
		if math.Abs(way-r.way) > 1 {
			t.Errorf("%s: pedal %.1f mm, want %.0f ± 1 (%s)", r.name, way, r.way, source)
		}
	}
}
