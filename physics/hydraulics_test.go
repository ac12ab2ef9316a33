package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// hold presses the pedal for a time with the engine on or off.
func hold(t testing.TB, m *physics.Model, s physics.State, foot float64, engine bool, steps int, ms int64) physics.State {
	t.Helper()
	var err error
	for range steps {
		if s, err = m.Step(s, physics.Input{Foot: foot, Engine: engine}, ms); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

// TestPedalReference holds the pedal's reference points (physics page §8).
func TestPedalReference(t *testing.T) {
	const source = "independent program"
	rows := []struct {
		name             string
		foot             float64
		vacuum, valve    bool
		pressure, travel float64 // MPa, mm
	}{
		{"150 N, assisted, no valve", 150, true, false, 7.37, 58},
		{"150 N, assisted", 150, true, true, 7.34, 53},
		{"150 N, no vacuum, no valve", 150, false, false, 1.34, 23},
		{"500 N, no vacuum", 500, false, true, 5.1, 43},
	}
	for _, r := range rows {
		spec := physicstest.Hatchback()
		if !r.valve {
			spec.Valve = physics.ValveSpec{}
		}
		m, s := model(t, spec, physics.Condition{})
		if !r.vacuum {
			s.Vacuum = 0
		}
		for f := 0.0; f < r.foot; f += 5 {
			s = hold(t, m, s, f, false, 20, 1)
			if r.vacuum {
				s.Vacuum = spec.Booster.Vacuum
			}
		}
		s = hold(t, m, s, r.foot, false, 1000, 1)
		if got := s.Pressure[physics.FrontLeft] / 1e6; math.Abs(got-r.pressure) > 0.04 {
			t.Errorf("%s: %.3f MPa, want %.2f ± 0.04 (%s)", r.name, got, r.pressure, source)
		}
		if got := m.PedalTravel(&s) * 1e3; math.Abs(got-r.travel) > 1 {
			t.Errorf("%s: pedal %.2f mm, want %.0f ± 1 (%s)", r.name, got, r.travel, source)
		}
	}
}

// total is all fluid of the car, wherever it is.
func total(m *physics.Model, s *physics.State) float64 {
	sum := s.Standing + s.Lost
	for w := range s.Cavity {
		sum += s.Cavity[w]
	}
	return sum + s.Master.Fluid[0] + s.Master.Fluid[1]
}

// TestFluidIsConserved: what stands, what is in the cylinders and what has left
// stay one sum, to 1e-9 of it, through presses, pumping and a leak.
func TestFluidIsConserved(t *testing.T) {
	cond := physics.Condition{}
	cond.Wheels[physics.RearLeft].Leak = 2e-9
	m, s := model(t, physicstest.Hatchback(), cond)
	before := total(m, &s)
	for i := range 2000 {
		foot := 0.0
		if i/200%2 == 0 {
			foot = 300
		}
		s = hold(t, m, s, foot, true, 1, 1)
	}
	if s.Lost < 1e-8 {
		t.Fatalf("the leak lost only %g m³", s.Lost)
	}
	if d := math.Abs(total(m, &s)-before) / before; d > 1e-9 {
		t.Errorf("fluid changed by %g of itself", d)
	}
}

func BenchmarkStep(b *testing.B) {
	m, s := model(b, physicstest.Hatchback(), physics.Condition{})
	var err error
	s.Speed = 20
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		foot := 100 + 50*float64(i%1000)/1000
		if s, err = m.Step(s, physics.Input{Foot: foot, Engine: true}, 1); err != nil {
			b.Fatal(err)
		}
		s.Speed = 20
	}
}
