package physics

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestCornerSettlesEverywhere: over the whole range of a car's conditions a
// press and a release always converge, and the forces on the disc balance:
// what the piston gives and the body does not lose in pins reaches the fingers.
func TestCornerSettlesEverywhere(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	pick := func(lo, hi float64) float64 { // even over the decades below hi, and often nothing
		if rng.IntN(4) == 0 {
			return lo
		}
		return lo + (hi-lo)*math.Pow(10, -4*rng.Float64())
	}
	for i := range 5000 {
		spec := demoFront()
		spec.EarFriction, spec.Runout = 5, 30e-6
		cond := WheelCondition{
			PinFriction:  [2]float64{pick(0, 2e4), pick(0, 2e4)},
			SealFriction: pick(0, 3000), SealRate: pick(0, 2e7),
			EarFriction: [2]float64{pick(0, 2000), pick(0, 2000)},
			Wear:        [2][2]float64{{pick(0, 9e-3), pick(0, 9e-3)}, {pick(0, 9e-3), pick(0, 9e-3)}},
			Runout:      pick(0, 3e-4), Thickness: pick(0, 1e-4),
		}
		c := NewCorner(spec, &cond, "front_left")
		var s CornerState
		var f CornerForces
		var err error
		for j, p := range []float64{0.5, 8, 8, 15, 3, 0, 0, 0.05, 20, 0} {
			load := CornerLoad{Pressure: p * Megapascal, Body: 0}
			if rng.IntN(4) == 0 {
				load.Body, load.Piston = pick(-500, 500), -pick(0, 5000)
			}
			load.DiscIn, load.DiscOut = c.Faces(2*rng.Float64() - 1)
			if s, f, err = c.Settle(s, &load); err != nil {
				t.Fatalf("case %d, step %d (%+v): %v", i, j, cond, err)
			}
			if got := load.Pressure*c.Area() + load.Piston - f.Seal - f.Inner() - f.Ear[Inner]; s.X > 0 && (got > 0.1 || got < -0.1) {
				t.Fatalf("case %d, step %d: piston out of balance by %g N", i, j, got)
			}
		}
	}
}
