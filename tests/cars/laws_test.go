package cars

import (
	"testing"

	"evenwear/physics"
)

// TestMorePedalOnEveryCar: on one surface a heavier foot never stops a car later,
// sound on a wet road and with a dry and a soaked wheel on a dry one, until a wheel locks; and a newton
// in a hundred is seen.
func TestMorePedalOnEveryCar(t *testing.T) {
	uneven := pins(300, 300)
	uneven.Wheels[physics.RearRight].MuLoss = [2][2]float64{{0.5, 0.5}, {0.5, 0.5}}
	every(t, func(t *testing.T, spec *physics.Spec) {
		way := func(cond physics.Condition, foot, wet float64) physics.StopResult {
			m, s := model(t, spec, cond)
			return stop(t, m, s, physics.StopPlan{Speed: 15, Foot: foot, Surface: [physics.NumWheels]float64{wet, wet, wet, wet}})
		}
		for _, run := range []struct {
			cond physics.Condition
			wet  float64
		}{{physics.Condition{}, 0.4}, {uneven, 0}} {
			last := 1e9
			for foot := 60.0; foot <= 500; foot *= 1.6 {
				r := way(run.cond, foot, run.wet)
				if r.Locked != [physics.NumWheels]bool{} {
					break
				}
				if r.Distance > last+1e-3 {
					t.Errorf("%g of the adhesion missing: %.0f N stop in %.3f m, less in %.3f", run.wet, foot, r.Distance, last)
				}
				last = r.Distance
			}
		}
		if a, b := way(physics.Condition{}, 100, 0).Distance, way(physics.Condition{}, 99, 0).Distance; b-a < 0.05 {
			t.Errorf("one newton of a hundred moves a stop by %.4f m only", b-a)
		}
	})
}

// TestWearOnEveryCar: worn linings and discs never stop a car sooner at the same foot,
// to a millimetre from 54 km/h; linings that gripped 0.1 % better when worn would be seen.
func TestWearOnEveryCar(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		way := func(change func(c *physics.WheelCondition)) float64 {
			var cond physics.Condition
			for w := range cond.Wheels {
				change(&cond.Wheels[w])
			}
			m, s := model(t, spec, cond)
			return stop(t, m, s, physics.StopPlan{Speed: 15, Foot: 100}).Distance
		}
		fresh := way(func(*physics.WheelCondition) {})
		for name, worn := range map[string]func(c *physics.WheelCondition, d float64){
			"linings":      func(c *physics.WheelCondition, d float64) { c.Wear = [2][2]float64{{d, d}, {d, d}} },
			"tapered pads": func(c *physics.WheelCondition, d float64) { c.Wear = [2][2]float64{{d, 0.8 * d}, {0.8 * d, d}} },
			"discs":        func(c *physics.WheelCondition, d float64) { c.DiscWear = [2]float64{d / 8, d / 8} },
		} {
			last := fresh
			for _, d := range []float64{3 * mm, 6 * mm} {
				got := way(func(c *physics.WheelCondition) { worn(c, d) })
				if got < last-1e-3 {
					t.Errorf("%s worn by %.0f mm stop in %.4f m, less worn in %.4f", name, d/mm, got, last)
				}
				last = max(last, got)
			}
		}
		better := way(func(c *physics.WheelCondition) { c.MuLoss = [2][2]float64{{-1e-3, -1e-3}, {-1e-3, -1e-3}} })
		if fresh-better < 5e-3 {
			t.Errorf("0.1 %% more friction shortens a stop by %.2g m only", fresh-better)
		}
	})
}
