package tests

import (
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// The benchmarks of tests/budgets.md. They print figures and assert nothing:
// a timed assertion is not a test. Run: go test ./tests -run xxx -bench . -benchmem

func restOf(b testing.TB, cond physics.Condition) (*physics.Model, physics.State) {
	b.Helper()
	return physicstest.Rest(b, physicstest.Hatchback(), cond)
}

// BenchmarkCorner: one equilibrium of a front caliper, warm.
func BenchmarkCorner(b *testing.B) {
	c := physics.NewCorner(&physicstest.Hatchback().Front, &physics.WheelCondition{}, "front_left")
	var s physics.CornerState
	var load physics.CornerLoad
	var err error
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		load.Pressure = 3*physics.Megapascal + float64(i%100)*5e3
		if s, _, err = c.Settle(s, &load); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkStep: one step of 1 ms of the whole car, braking from speed with a moving foot.
func BenchmarkStep(b *testing.B) {
	m, start := restOf(b, physics.Condition{})
	start.Speed = 25
	s := start
	var err error
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if s.Speed < 5 {
			s.Speed = 25
		}
		foot := 100 + 0.1*float64(i%1000)
		if s, err = m.Step(s, physics.Input{Foot: foot, Engine: true}, 1); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkStop: a whole stop from 100 km/h in steps of 1 ms.
func BenchmarkStop(b *testing.B) {
	m, s := restOf(b, physics.Condition{})
	for b.Loop() {
		r, err := m.Stop(s, physics.StopPlan{Speed: 100 * physics.KmPerHour, Decel: 7})
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(r.Distance, "m")
	}
}

// BenchmarkHistory: 12 000 km of mixed driving, one wheel faulty and all four, each
// in another way. physics has the same of every other cause (BenchmarkDrive there).
func BenchmarkHistory(b *testing.B) {
	stuck := [physics.NumWheels]physics.WheelCondition{
		{PinFriction: [2]float64{385, 385}},
		{PinFriction: [2]float64{20000, 20000}},
		{SealFriction: 380, SealRate: 6e6},
		{PinFriction: [2]float64{20000, 0}},
	}
	for _, f := range []struct {
		name   string
		wheels [physics.NumWheels]physics.WheelCondition
	}{
		{"dry", [physics.NumWheels]physics.WheelCondition{{PinFriction: [2]float64{250, 250}}}},
		{"seized", [physics.NumWheels]physics.WheelCondition{{PinFriction: [2]float64{20000, 20000}}}},
		{"four", stuck},
	} {
		b.Run(f.name, func(b *testing.B) {
			cond := physics.Condition{Wheels: f.wheels}
			for b.Loop() {
				if _, err := physics.Drive(physicstest.Hatchback(), cond, physics.MixedDuty(), 12000); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
