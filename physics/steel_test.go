package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// TestSteelGap: the tongue of the inner pad speaks of that pad alone. Pins that do
// not slide back wear the outer pad, and it is silent down to the outer's plate.
func TestSteelGap(t *testing.T) {
	const mm = physics.Millimetre
	spec := physicstest.Hatchback()
	for _, c := range []struct {
		name                string
		tongue, inner, last float64 // [mm] of lining left: at which the tongue touches; inner pad; outer pad's lower end
		want                float64 // [mm]
	}{
		{"new", 2, 11, 11, 9},
		{"no tongue", 0, 1.5, 1.5, 1.5},
		{"the tongue rubs", 2, 1.5, 1.5, -0.5},
		{"worn by pins that stick", 2, 7, 1, 1},
		{"worn to the outer plate at one end", 2, 7, -0.1, -0.1},
	} {
		spec.Front.Tongue = c.tongue * mm
		var cond physics.Condition
		w := &cond.Wheels[physics.FrontRight]
		w.Wear[physics.Inner] = [2]float64{spec.Front.LiningNew - c.inner*mm, spec.Front.LiningNew - c.inner*mm}
		w.Wear[physics.Outer][physics.Lower] = spec.Front.LiningNew - c.last*mm
		if c.last < 0 { // no lining is thinner than none
			w.Wear[physics.Outer][physics.Lower], c.want = spec.Front.LiningNew, 0
		}
		m, err := physics.New(spec, cond)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if got := m.SteelGap(physics.FrontRight); math.Abs(got-c.want*mm) > 1e-12 {
			t.Errorf("%s: %.2f mm before steel rubs, want %.2f", c.name, got/mm, c.want)
		}
		if got, want := m.SteelGap(physics.FrontLeft), (11-c.tongue)*mm; math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: the other wheel has %.2f mm, want %.2f", c.name, got/mm, want/mm)
		}
	}
}
