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
// stay one sum, to 1e-9 of it, through presses, pumping, leaks, air, a bypassing
// cup, boiling and bleeding, in steps of every length. A cubic millimetre a step
// gone astray in the last thousandth of the run would be seen.
func TestFluidIsConserved(t *testing.T) {
	leaky := physics.Condition{CupBypass: [2]float64{1e-13, 0}, Water: 0.05}
	leaky.Wheels[physics.RearLeft].Leak = 2e-9
	airy := physics.Condition{Fluid: -150e-6, PortCover: [2]float64{0, 2e-3}}
	airy.Wheels[physics.FrontRight].Air, airy.Wheels[physics.FrontLeft].HoseHold = 3e-6, 0.5e6
	const steps = 2000
	shut := physics.Condition{VentShut: 1, Fluid: -20e-6, ChamberAir: [2]float64{1e-6, 0}}
	shut.Wheels[physics.FrontRight].ScrewLeak, shut.Wheels[physics.RearLeft].SealLeak = 1e-9, 2e-9
	shut.Wheels[physics.RearRight].ValveStuck, shut.Wheels[physics.FrontLeft].Air = -0.6, 2e-6
	for n, cond := range []physics.Condition{leaky, airy, shut} {
		m, s := model(t, physicstest.Hatchback(), cond)
		before := total(m, &s)
		for i := range steps {
			in := physics.Input{Engine: true}
			if i/200%2 == 0 {
				in.Foot = 300
			}
			if i == 900 {
				s.Heat[physics.FrontLeft].Fluid = 190 // boils with this much water
			}
			if i/300 == 5 {
				in.Bleed[physics.FrontRight] = 1e-7
			}
			var err error
			if s, err = m.Step(s, in, [...]int64{1, 1, 20, 1, 200}[i%5]); err != nil {
				t.Fatal(err)
			}
		}
		if s.Lost < 1e-8 {
			t.Fatalf("car %d lost only %g m³", n, s.Lost)
		}
		const tolerance = 1e-9
		if d := math.Abs(total(m, &s)-before) / before; d > tolerance {
			t.Errorf("car %d: fluid changed by %g of itself", n, d)
		}
		s.Cavity[physics.FrontLeft] += steps / 1000 * 1e-9 // planted
		if d := math.Abs(total(m, &s)-before) / before; d <= tolerance {
			t.Errorf("car %d: fluid gone astray would pass", n)
		}
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
