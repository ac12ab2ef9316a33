package scoring

import (
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// TestMended: what is made good in full is mended, what is only eased is not.
func TestMended(t *testing.T) {
	spec := physicstest.Hatchback()
	worn := physics.Condition{Fluid: -10e-6}
	for w := range worn.Wheels {
		worn.Wheels[w].Wear = [2][2]float64{{3e-3, 3e-3}, {3e-3, 3e-3}}
	}
	for _, c := range []struct {
		name string
		put  func(*physics.Condition)
		want bool
	}{
		{"nothing", func(*physics.Condition) {}, true},
		{"a trace of rust", func(c *physics.Condition) { c.Wheels[0].PinFriction = [2]float64{5, 5} }, true},
		{"dry pins", func(c *physics.Condition) { c.Wheels[0].PinFriction = [2]float64{120, 120} }, false},
		{"seized pins that were eased", func(c *physics.Condition) { c.Wheels[0].PinFriction = [2]float64{1000, 1000} }, false},
		{"one seized pin that was eased", func(c *physics.Condition) { c.Wheels[0].PinFriction[physics.Upper] = 150 }, false},
		{"one pin fast", func(c *physics.Condition) { c.Wheels[3].PinFriction[physics.Lower] = 20000 }, false},
		{"piston corroded", func(c *physics.Condition) { c.Wheels[1].SealFriction, c.Wheels[1].SealRate = 2400, 19e6 }, false},
		{"a small leak", func(c *physics.Condition) { c.Wheels[2].Leak = 100e-12 }, false},
		{"a bubble", func(c *physics.Condition) { c.Wheels[1].Air = 1.5e-6 }, false},
		{"a speck of air", func(c *physics.Condition) { c.Wheels[1].Air = 0.05e-6 }, true},
		{"run-out", func(c *physics.Condition) { c.Wheels[0].Runout = 90e-6 }, false},
	} {
		now := worn
		c.put(&now)
		if got, err := Mended(spec, now, worn); err != nil || got != c.want {
			t.Errorf("%s: mended %t (%v), want %t", c.name, got, err, c.want)
		}
	}
}

// TestLeavingComesBack: of a fault that endangers nobody, mending now beats
// mending at another visit.
func TestLeavingComesBack(t *testing.T) {
	mend := Choice{Minutes: 40, Parts: 25, Release: ReleaseUse, Lasts: 12e6}
	leave := Choice{Release: ReleaseUse, Lasts: 12e6, Again: 65}
	if best, loss := Decide([]Choice{leave, mend}); best != 1 || loss != 65 {
		t.Errorf("best is %d with %g, want to mend for 65", best, loss)
	}
	refer := leave
	if refer.Refers, refer.Minutes = true, 100; refer.Loss() != 100 {
		t.Errorf("a car handed to a mechanic is mended there, and loses %g", refer.Loss())
	}
}
