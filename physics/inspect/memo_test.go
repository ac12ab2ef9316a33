package inspect

import (
	"math"
	"sync"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// unseen are cars that are braked as the one without it, each with one number of
// those that braked leaves out.
func unseen() map[string]func(*physics.Condition) {
	wheel := func(set func(*physics.WheelCondition)) func(*physics.Condition) {
		return func(c *physics.Condition) {
			set(&c.Wheels[physics.FrontLeft])
			set(&c.Wheels[physics.RearRight])
		}
	}
	return map[string]func(*physics.Condition){
		"oil":         func(c *physics.Condition) { c.Vessels.Oil = -1.5e-3 },
		"coolant":     func(c *physics.Condition) { c.Vessels.Coolant = -1e-3 },
		"steering":    func(c *physics.Condition) { c.Vessels.Steering = -2e-4 },
		"washer":      func(c *physics.Condition) { c.Vessels.Washer = -2e-3 },
		"uptake":      func(c *physics.Condition) { c.WaterUptake = 0.002 },
		"mineral oil": func(c *physics.Condition) { c.MineralOil = 0.06 },
		"rubber":      func(c *physics.Condition) { c.RubberSwollen = 0.7 },
		"lamp":        func(c *physics.Condition) { c.LampLost = 1 },
		"float":       func(c *physics.Condition) { c.FloatHigh = 20e-6 },
		"swelling":    wheel(func(w *physics.WheelCondition) { w.PinSwelling = [2]float64{200, 100} }),
		"soaked":      wheel(func(w *physics.WheelCondition) { w.PinSoaked = [2]float64{200, 250} }),
		"rusting":     wheel(func(w *physics.WheelCondition) { w.PinRusting = [2]float64{30, 0} }),
		"seal":        wheel(func(w *physics.WheelCondition) { w.SealSwelling = 300 }),
		"seal rust":   wheel(func(w *physics.WheelCondition) { w.SealRusting = 50 }),
		"rim":         wheel(func(w *physics.WheelCondition) { w.RimRust = 1e-3 }),
		"crack":       wheel(func(w *physics.WheelCondition) { w.DiscCrack = 0.02 }),
	}
}

// TestMemo: worlds that share experiments answer every check as worlds that do
// not, bit for bit, asked in any order and by several at once.
func TestMemo(t *testing.T) {
	if testing.Short() {
		t.Skip("some hundred tours")
	}
	spec := physicstest.Hatchback()
	leaky := conditions()["leak"]
	leaky.Fluid = -120e-6 // the lamp is near its edge
	for name, base := range map[string]physics.Condition{"healthy": {}, "leak": leaky} {
		memo := NewMemo(spec)
		var wait sync.WaitGroup
		for what, set := range unseen() {
			cond := base
			set(&cond)
			if braked(cond) != braked(base) {
				t.Errorf("%s, %s: told apart from the car without it", name, what)
				continue
			}
			wait.Go(func() {
				alone, err := NewWorld(spec, cond)
				if err != nil {
					t.Error(err)
					return
				}
				shared, err := memo.NewWorld(cond)
				if err != nil {
					t.Error(err)
					return
				}
				for _, i := range Instances() {
					a, errA := alone.Measure(i)
					b, errB := shared.Measure(i)
					if math.Float64bits(a) != math.Float64bits(b) || (errA == nil) != (errB == nil) {
						t.Errorf("%s, %s: %s is %v alone, %v where experiments are shared", name, what, i, a, b)
					}
				}
			})
		}
		wait.Wait()
		if n := len(memo.young); n != 1 {
			t.Errorf("%s: %d cars are told apart, want one", name, n)
		}
	}
}

// TestMemoForgets: a memo keeps no more than two generations, and of an old one
// what is asked for again.
func TestMemoForgets(t *testing.T) {
	memo := NewMemo(physicstest.Hatchback())
	key := func(i int) physics.Condition { return physics.Condition{Fluid: float64(i)} }
	first := memo.remember(key(0))
	for i := range 5 * generation {
		memo.remember(key(1 + i))
		if memo.remember(key(0)) != first {
			t.Fatalf("what is asked for all the time was forgotten after %d", i)
		}
	}
	if n := len(memo.young) + len(memo.old); n > 2*generation {
		t.Errorf("%d cars are kept, want at most %d", n, 2*generation)
	}
}
