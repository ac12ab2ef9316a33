package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// TestMoreIsWorse: the worse a part is the more its symptom shows, at every step from
// sound to bad, and the steps can be told apart. Drag over pin friction is not in the
// table: it is not monotone, see TestFactDragPeaks.
func TestMoreIsWorse(t *testing.T) {
	front := func(f func(*physics.WheelCondition, float64)) func(*physics.Condition, float64) {
		return func(c *physics.Condition, x float64) { f(&c.Wheels[physics.FrontLeft], x) }
	}
	pedal := func(c physics.Condition) float64 { // [mm] at 150 N
		_, _, travel := rubbed(t, c)
		return travel / mm
	}
	rubs := func(c physics.Condition) float64 { // [N] both pads of the front left, foot off
		_, free, _ := rubbed(t, c)
		return free.Forces[physics.FrontLeft].Inner() + free.Forces[physics.FrontLeft].Outer()
	}
	lost := func(c physics.Condition) float64 { // [cm³] in 10 s at 300 N
		m, s := model(t, physicstest.Hatchback(), c)
		s = press(t, m, s, physics.Input{Foot: 300, Engine: true}, 10, 20)
		return s.Lost / cm3
	}
	assist := func(c physics.Condition) float64 { // [−MPa] held 10 s at 200 N
		m, s := model(t, physicstest.Hatchback(), c)
		s = press(t, m, s, physics.Input{Foot: 200, Engine: true}, 10, 20)
		return -s.Pressure[physics.FrontLeft] / mpa
	}
	boils := func(c physics.Condition) float64 { // [−°C]
		m, _ := model(t, physicstest.Hatchback(), c)
		return -m.BoilingPoint()
	}
	wears := func(c physics.Condition) float64 { // [mm] inner pad in 1000 km
		c, err := physics.Drive(physicstest.Hatchback(), c, physics.MixedDuty(), 1000)
		if err != nil {
			t.Fatal(err)
		}
		return c.Wheels[physics.FrontLeft].Wear[0][0] / mm
	}
	traps := func(c physics.Condition) float64 { // [MPa] with calipers 40 K warmer
		m, s := model(t, physicstest.Hatchback(), c)
		s = press(t, m, s, physics.Input{Foot: 100, Engine: true}, 1, 20)
		s = run(t, m, s, physics.Input{Engine: true}, 2, 20)
		for w := range s.Heat {
			s.Heat[w].CoolTo(60)
		}
		return run(t, m, s, physics.Input{Engine: true}, 2, 20).Pressure[physics.FrontLeft] / mpa
	}
	bites := func(c physics.Condition) float64 { // [N·m] at 150 N, cold
		m, s := model(t, physicstest.Hatchback(), c)
		s = press(t, m, s, physics.Input{Foot: 150, Engine: true}, 1, 20)
		return m.WheelTorque(&s, physics.FrontLeft)
	}
	for name, c := range map[string]struct {
		set  func(*physics.Condition, float64)
		most float64
		of   func(physics.Condition) float64
		step float64 // least that a fifth of most moves it by
	}{
		"seal's friction, hard seal": {front(func(w *physics.WheelCondition, x float64) { w.SealFriction, w.SealRate = x, 1e4*x }), 1500, rubs, 50},
		"seal leak":                  {front(func(w *physics.WheelCondition, x float64) { w.SealLeak = x }), 6e-9, lost, 0.5},
		"screw leak":                 {front(func(w *physics.WheelCondition, x float64) { w.ScrewLeak = x }), 6e-9, lost, 0.5},
		"bent pins": {front(func(w *physics.WheelCondition, x float64) {
			*w = worn(physics.WheelCondition{PinFriction: [2]float64{400, 400}, PinBend: [2]float64{1e-6 + x, 1e-6 + x}}, 4*mm)
		}), 2e-6, pedal, 1},
		"scores":          {front(func(w *physics.WheelCondition, x float64) { w.Groove[0] = x }), 1e-3, wears, 0.02},
		"film":            {front(func(w *physics.WheelCondition, x float64) { w.DiscFilm = x }), 1, bites, 5},
		"vent":            {func(c *physics.Condition, x float64) { c.VentShut, c.Fluid = x, -20*cm3 }, 0.6, pedal, 0.05},
		"vent, level":     {func(c *physics.Condition, x float64) { c.VentShut, c.Fluid = 1, -x }, 12 * cm3, pedal, 0.3},
		"diaphragm":       {func(c *physics.Condition, x float64) { c.DiaphragmLeak = x }, 5, assist, 0.1},
		"booster":         {func(c *physics.Condition, x float64) { c.BoosterLoss = x }, 1, assist, 0.1},
		"low grade":       {func(c *physics.Condition, x float64) { c.LowGrade = x }, 1, boils, 5},
		"water":           {func(c *physics.Condition, x float64) { c.Water = x }, 0.05, boils, 4},
		"air in chambers": {func(c *physics.Condition, x float64) { c.ChamberAir = [2]float64{x, x} }, 2 * cm3, pedal, 2},
		"air at a wheel":  {front(func(w *physics.WheelCondition, x float64) { w.Air = x }), 4 * cm3, pedal, 2},
		"hose":            {front(func(w *physics.WheelCondition, x float64) { w.HoseSwell = x }), 3e-13, pedal, 1},
		"swollen cups":    {func(c *physics.Condition, x float64) { c.PortCover = [2]float64{x, x} }, 2.5 * mm, traps, -1e-6},
	} {
		var last float64
		for n := range 6 {
			var cond physics.Condition
			c.set(&cond, c.most*float64(n)/5)
			x := c.of(cond)
			if n > 0 && !(x >= last+c.step) {
				t.Errorf("%s: %d fifths show %.4g after %.4g", name, n, x, last)
			}
			last = x
		}
		if math.IsNaN(last) {
			t.Errorf("%s shows no number", name)
		}
	}
}
