package physics

import "testing"

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
