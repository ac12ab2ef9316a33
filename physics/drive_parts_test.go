package physics

import (
	"math"
	"testing"
)

// TestDriveConvergesParts is [TestDriveConverges] for what is wrong with parts of a
// brake beside dry pins and stuck pistons.
func TestDriveConvergesParts(t *testing.T) {
	rear := func(stuck float64) (c Condition) {
		c.Wheels[RearLeft].ValveStuck = stuck
		return c
	}
	for name, cond := range map[string]Condition{
		"bent pin":     frontLeft(WheelCondition{PinBend: [2]float64{2e-6, 0}, PinFriction: [2]float64{400, 0}}),
		"bent pins":    frontLeft(WheelCondition{PinBend: [2]float64{2e-6, 2e-6}, PinFriction: [2]float64{300, 300}}),
		"hard seal":    frontLeft(WheelCondition{SealRate: 5e6}),
		"scores":       frontLeft(WheelCondition{Groove: [2]float64{0.3e-3, 0.1e-3}}),
		"parted":       frontLeft(WheelCondition{BondLost: [2]float64{0.8, 0}}),
		"valve open":   rear(1),
		"valve nearly": rear(-0.5),
	} {
		for _, km := range []float64{1000, 6000} {
			e := errors(driven(t, cond, km, 1), driven(t, cond, km, 2))
			t.Logf("%s, %g km: %.3f %%", name, km, 100*e)
			if e > 0.01 {
				t.Errorf("%s, %g km: twice the rounds change wear by %.2f %%", name, km, 100*e)
			}
		}
	}
}

// TestAgeingConvergesPistons: a piston that rusts or swells in wears its linings the
// same, to 1 %, in steps half as long and in two trips.
func TestAgeingConvergesPistons(t *testing.T) {
	for name, cond := range map[string]Condition{
		"boot torn": frontLeft(WheelCondition{SealRusting: 60}), "seal": frontLeft(WheelCondition{SealSwelling: 600}), "oil": {MineralOil: 0.05},
	} {
		once, fine := driven(t, cond, 5000, 1), driven(t, cond, 5000, 2)
		twice := driven(t, driven(t, cond, 2000, 1), 3000, 1)
		sound := driven(t, Condition{}, 5000, 1)
		for p := range 2 {
			a, b, c, d := pad(once, FrontLeft, p), pad(fine, FrontLeft, p), pad(twice, FrontLeft, p), pad(sound, FrontLeft, p)
			t.Logf("%s, pad %d: %.4f mm, in half steps %.4f, in two trips %.4f; sound %.4f", name, p, a*1e3, b*1e3, c*1e3, d*1e3)
			if math.Abs(a-b) > 0.01*b || math.Abs(a-c) > 0.01*c || a < 1.2*d {
				t.Errorf("%s, pad %d: %.4f mm, in half steps %.4f, in two trips %.4f; sound %.4f", name, p, a*1e3, b*1e3, c*1e3, d*1e3)
			}
		}
	}
}

// TestLeapable: a way is driven to its end, no cycle more or less, however long the
// leaps that the trend would allow.
func TestLeapable(t *testing.T) {
	for _, wish := range []float64{0, 0.1, 0.25, 0.9, 1.3, 2.5, 14.1, 1e9} {
		for _, cycles := range []float64{1, 2, 3, 7, 30, 120} {
			done := 0.0
			for done < cycles {
				leap := leapable(wish, cycles-done-1)
				if leap < 0 || leap > wish && done+leap+1 != cycles {
					t.Fatalf("leap of %g where %g is allowed, %g of %g cycles done", leap, wish, done, cycles)
				}
				done += leap + 1
			}
			if done-cycles > 1e-9 {
				t.Errorf("leaps of %g: %g cycles driven, want %g", wish, done, cycles)
			}
		}
	}
}
