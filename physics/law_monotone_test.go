package physics_test

import (
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// way is how far a car goes to a stop from 54 km/h.
func way(t *testing.T, spec *physics.Spec, cond physics.Condition, foot, wet float64) physics.StopResult {
	t.Helper()
	m, s := model(t, spec, cond)
	r, err := m.Stop(s, physics.StopPlan{Speed: 15, Foot: foot, Surface: [physics.NumWheels]float64{wet, wet, wet, wet}})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestMorePedalStopsNoLater: on one surface a heavier foot never stops the car
// later, until a wheel locks; with anti-lock it never does. That a locked wheel
// slides longer is not left out but asserted: sliding adhesion is below peak.
func TestMorePedalStopsNoLater(t *testing.T) {
	locked := physicstest.Hatchback()
	anti := physicstest.Hatchback()
	anti.Body.AntiLock = true
	for _, wet := range []float64{0, 0.6} {
		for _, cond := range []physics.Condition{{}, lopsided()} {
			last, lastAnti, slid := 1e9, 1e9, 0.0
			for foot := 40.0; foot <= 500; foot *= 1.4 {
				if r := way(t, anti, cond, foot, wet); r.Distance > lastAnti+1e-3 {
					t.Errorf("anti-lock, %g missing: %.0f N stop in %.3f m, less in %.3f", wet, foot, r.Distance, lastAnti)
				} else {
					lastAnti = r.Distance
				}
				r := way(t, locked, cond, foot, wet)
				if r.Locked != [physics.NumWheels]bool{} {
					slid = r.Distance
					continue
				}
				if r.Distance > last+1e-3 {
					t.Errorf("%g missing: %.0f N stop in %.3f m, less in %.3f", wet, foot, r.Distance, last)
				}
				last = r.Distance
			}
			if wet > 0.5 && slid <= lastAnti {
				t.Errorf("%g missing: with every wheel locked the car stops in %.2f m, with anti-lock in %.2f", wet, slid, lastAnti)
			}
		}
	}
	// What the millimetre would miss: a foot that presses 1 % less is seen.
	if a, b := way(t, anti, physics.Condition{}, 100, 0), way(t, anti, physics.Condition{}, 99, 0); b.Distance-a.Distance < 0.1 {
		t.Errorf("one newton of a hundred moves a stop by %.4f m only", b.Distance-a.Distance)
	}
}

// TestWearShortensNoStop: worn linings and discs never stop a car sooner, at the
// same foot, evenly worn or not: to a millimetre while they are cool. From 180 km/h
// they fade, and there a thin lining gains 8 cm of 193 m, because it lets the face's
// heat through to its plate sooner; more than 0.05 % it may not gain.
func TestWearShortensNoStop(t *testing.T) {
	const mm = physics.Millimetre
	for name, worn := range map[string]func(c *physics.WheelCondition, d float64){
		"linings":      func(c *physics.WheelCondition, d float64) { c.Wear = [2][2]float64{{d, d}, {d, d}} },
		"inner pads":   func(c *physics.WheelCondition, d float64) { c.Wear[physics.Inner] = [2]float64{d, d} },
		"tapered pads": func(c *physics.WheelCondition, d float64) { c.Wear = [2][2]float64{{d, 0.8 * d}, {0.8 * d, d}} },
		"discs":        func(c *physics.WheelCondition, d float64) { c.DiscWear = [2]float64{d / 8, d / 8} },
	} {
		for _, speed := range []float64{15, 50} {
			last, slack, step := 0.0, 1e-3, int64(1)
			if speed > 40 {
				slack, step = 5e-4*193, 20
			}
			for d := 0.0; d <= 8*mm; d += 4 * mm {
				var cond physics.Condition
				for w := range cond.Wheels {
					worn(&cond.Wheels[w], d)
				}
				m, s := model(t, physicstest.Hatchback(), cond)
				r, err := m.Stop(s, physics.StopPlan{Speed: speed, Foot: 120, Millis: step})
				if err != nil {
					t.Fatal(err)
				}
				if r.Distance < last-slack {
					t.Errorf("%s worn by %.0f mm stop from %g m/s in %.4f m, less worn in %.4f", name, d/mm, speed, r.Distance, last)
				}
				last = max(last, r.Distance)
			}
		}
	}
	// The millimetre bites: linings that gripped 0.1 % better when worn would be seen.
	var better physics.Condition
	for w := range better.Wheels {
		better.Wheels[w].MuLoss = [2][2]float64{{-1e-3, -1e-3}, {-1e-3, -1e-3}}
	}
	if gain := way(t, physicstest.Hatchback(), physics.Condition{}, 120, 0).Distance - way(t, physicstest.Hatchback(), better, 120, 0).Distance; gain < 5e-3 {
		t.Errorf("0.1 %% more friction shortens a stop by %.2g m only", gain)
	}
}
