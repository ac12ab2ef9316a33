package physics

import (
	"math/rand/v2"
	"testing"
)

// TestClearance: a half pad presses exactly where it has no clearance, on any
// caliper under any load, tilted by one seized pin too.
func TestClearance(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 11))
	pressed, clear := 0, 0
	for range 200 {
		cond := WheelCondition{PinFriction: [2]float64{5000 * rng.Float64(), 50 * rng.Float64()}, Wear: [2][2]float64{{1e-3 * rng.Float64(), 1e-3}, {1e-3, 1e-3 * rng.Float64()}},
			PlateProud: [2]float64{1e-4 * rng.Float64(), 0}, Runout: 1e-4 * rng.Float64(), Thickness: 4e-5 * rng.Float64()}
		c := NewCorner(&hatchback().Front, &cond, "front")
		var s CornerState
		for _, p := range []float64{0, 5e6 * rng.Float64(), 0} {
			load := CornerLoad{Pressure: p}
			load.DiscIn, load.DiscOut = c.Faces(2*rng.Float64() - 1)
			next, f, err := c.Settle(s, &load)
			if err != nil {
				t.Fatal(err)
			}
			s = next
			gap := c.Clearance(&s, load.DiscIn, load.DiscOut)
			for i := range 2 {
				for j := range 2 {
					if (f.Half[i][j] > 0) != (gap[i][j] < 0) {
						t.Fatalf("half %d %d: %.4g N at a clearance of %.4g m", i, j, f.Half[i][j], gap[i][j])
					}
					if gap[i][j] < 0 {
						pressed++
					} else {
						clear++
					}
				}
			}
		}
	}
	if pressed < 100 || clear < 100 {
		t.Errorf("%d half pads pressed, %d were clear: too few of one kind to prove anything", pressed, clear)
	}
}
