package physics_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// anyCondition is a car with anything wrong with it, and often several things.
func anyCondition(rng *rand.Rand) physics.Condition {
	pick := func(hi float64) float64 { // even over four decades below hi, more often nothing
		if rng.IntN(5) != 0 {
			return 0
		}
		return hi * math.Pow(10, -4*rng.Float64())
	}
	c := physics.Condition{Fluid: -pick(250e-6), Water: pick(0.08), BoosterLoss: pick(1), VacuumLeak: pick(1),
		CupBypass: [2]float64{pick(1e-12), pick(1e-12)}, PortCover: [2]float64{pick(3e-3), pick(3e-3)},
		LowGrade: pick(1), VentShut: pick(1), DiaphragmLeak: pick(100), ChamberAir: [2]float64{pick(1e-5), pick(1e-5)}}
	for w := range c.Wheels {
		c.Wheels[w] = physics.WheelCondition{
			PinFriction: [2]float64{pick(2e4), pick(2e4)}, SealFriction: pick(3000), SealRate: pick(2e7),
			EarFriction: [2]float64{pick(2000), pick(2000)},
			Wear:        [2][2]float64{{pick(8e-3), pick(8e-3)}, {pick(8e-3), pick(8e-3)}},
			Runout:      pick(3e-4), Thickness: pick(1e-4), Leak: pick(1e-6), Air: pick(1e-5),
			HoseSwell: pick(1e-12), HoseHold: pick(2e6), HoseReturn: pick(1e3), BearingPlay: pick(3e-3),
			PinBend: [2]float64{pick(1e-5), pick(1e-5)}, PinPinch: [2]float64{pick(1e-3), pick(1e-3)}, BondLost: [2]float64{pick(0.9), pick(0.9)}, Groove: [2]float64{pick(1e-3), pick(1e-3)},
			SealLeak: pick(1e-6), ScrewLeak: pick(1e-6), DiscFilm: pick(1),
		}
		if w >= 2 {
			c.Wheels[w].ValveStuck = pick(1) - pick(1)
		}
	}
	return c
}

// TestStepsEverywhere: whatever is wrong with the car and whatever is done to
// it, every step finds its balance, fluid is conserved and nothing is below
// vacuum or beyond its stop.
func TestStepsEverywhere(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 9))
	spec := physicstest.Hatchback()
	failed := 0
	for n := range 400 {
		cond := anyCondition(rng)
		m, err := physics.New(spec, cond)
		if err != nil {
			t.Fatal(err)
		}
		s, err := m.Rest()
		if err != nil {
			t.Fatal(err)
		}
		all := total(m, &s)
		var in physics.Input
		for i := range 120 {
			ms := [...]int64{1, 1, 20, 1000}[rng.IntN(4)]
			if rng.IntN(6) == 0 {
				in.Foot = [...]float64{0, 0, 20, 150, 556, 2000, 5000}[rng.IntN(7)]
			}
			in.Engine = rng.IntN(2) == 0
			w := rng.IntN(4)
			in.Bleed[w], in.Piston[w] = 0, 0
			switch rng.IntN(12) {
			case 0:
				in.Bleed[w] = 3e-6 * rng.Float64()
			case 1:
				in.Piston[w] = -1500 * rng.Float64()
			case 2:
				s.Heat[w].Fluid += 20 * rng.Float64()
			case 3:
				s.Speed, in.Side = 40*rng.Float64(), 16*(rng.Float64()-0.5)
			}
			next, err := m.Step(s, in, ms)
			if err != nil {
				if failed++; failed < 6 {
					t.Errorf("car %d, step %d of %d ms, foot %g: %v", n, i, ms, in.Foot, err)
				}
				break
			}
			s = next
			if d := total(m, &s) - all; !(math.Abs(d) <= 1e-9*200e-6) {
				t.Fatalf("car %d, step %d: fluid changed by %g m³", n, i, d)
			}
			for w, p := range s.Pressure {
				if p < -physics.Atmosphere*1.05 || p > 70e6 {
					t.Errorf("car %d, step %d: %g Pa at %v", n, i, p, physics.Wheel(w))
				}
			}
			for k, x := range s.Master.Stroke {
				if x < 0 || x > spec.Master.Stroke[k] {
					t.Errorf("car %d, step %d: stroke %d at %g m", n, i, k, x)
				}
			}
		}
	}
	if failed > 0 {
		t.Errorf("%d cars of 80 found no balance", failed)
	}
}

// TestStepsAllocateNothing: no step of a car with everything wrong with it takes memory,
// nor does one that Newton's tangents do not balance.
func TestStepsAllocateNothing(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	for n := range 30 {
		m, s := model(t, physicstest.Hatchback(), anyCondition(rng))
		s.Speed = 20
		i := 0
		if a := testing.AllocsPerRun(60, func() {
			i++
			in := physics.Input{Foot: [...]float64{0, 300, 2000}[i/20%3], Engine: true, Hold: true, Side: float64(i%3) - 1}
			var err error
			if s, err = m.Step(s, in, [...]int64{1, 20, 1000}[i%3]); err != nil {
				t.Fatal(err)
			}
		}); a != 0 {
			t.Errorf("car %d: a step takes memory %g times", n, a)
		}
	}
}

// TestDrivesEverywhere: a car with anything wrong with it can be driven on for months: no
// lining grows back or wears through its plate, nothing shrinks that only grows, and the
// car that comes back can be looked at.
func TestDrivesEverywhere(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	spec := physicstest.Hatchback()
	for n := range 24 {
		cond := anyCondition(rng)
		cond.MineralOil, cond.WaterUptake = 0.1*rng.Float64()*float64(n%2), 0.002
		for w := range cond.Wheels {
			v := &cond.Wheels[w]
			v.SealSwelling, v.SealRusting, v.PinRusting = 300*rng.Float64(), 20*rng.Float64(), [2]float64{30 * rng.Float64(), 0}
			v.PinSwelling = [2]float64{0, 300 * rng.Float64()}
		}
		after, err := physics.Drive(spec, cond, physics.MixedDuty(), 4000)
		if err != nil {
			t.Errorf("car %d: %v", n, err)
			continue
		}
		for w := range after.Wheels {
			a, b := &after.Wheels[w], &cond.Wheels[w]
			most := spec.Corner(physics.Wheel(w)).LiningNew
			for i := range 2 {
				for j := range 2 {
					if x := a.Wear[i][j]; !(x >= b.Wear[i][j] && x <= most+1e-12) {
						t.Errorf("car %d, %v: half %d.%d worn %.4f mm, was %.4f", n, physics.Wheel(w), i, j, x/mm, b.Wear[i][j]/mm)
					}
				}
				if !(a.DiscWear[i] >= b.DiscWear[i] && a.PinFriction[i] >= b.PinFriction[i] && a.PinSoaked[i] >= b.PinSoaked[i] && a.SealFriction >= b.SealFriction && a.SealRate >= b.SealRate) {
					t.Errorf("car %d, %v: something shrank: %+v", n, physics.Wheel(w), a)
				}
			}
		}
		if m, err := physics.New(spec, after); err != nil {
			t.Errorf("car %d: %v", n, err)
		} else if _, err = m.Rest(); err != nil {
			t.Errorf("car %d: %v", n, err)
		}
	}
}
