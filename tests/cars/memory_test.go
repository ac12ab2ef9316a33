package cars

import (
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/tests/published"
)

// TestOutsideUnverifiedFeet: OC-M1, a service stop of 6.43 m/s² takes 65 to 500 N,
// and OC-M18, a panic makes no more than 15 MPa.
func TestOutsideUnverifiedFeet(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		m, s := model(t, spec, physics.Condition{})
		foot, err := m.PedalFor(s, 6.43, 14, 3000)
		if err != nil {
			t.Fatal(err)
		}
		none, rest := model(t, spec, physics.Condition{BoosterLoss: 1})
		alone, err := none.PedalFor(rest, 6.43, 14, 3000)
		if err != nil {
			t.Fatal(err)
		}
		published.Bracket{ID: of(t, "OC-M1 foot for 6.43 m/s², N"), Source: memory, Got: foot, Lo: 65, Hi: 500, Wrong: alone}.Check(t)
		s = press(t, m, s, physics.Input{Foot: 500, Engine: true}, 2)
		published.Bracket{ID: of(t, "OC-M18 pressure at 500 N, MPa"), Source: memory, Got: s.Pressure[physics.FrontLeft] / physics.Megapascal, Lo: 5, Hi: 15, Wrong: 2}.Check(t)
	})
}

// TestOutsideUnverifiedCalipers: what a released wheel drags (OC-M13), what a seal
// costs and a front caliper takes (OC-M14), how a front pad gives (OC-M15).
func TestOutsideUnverifiedCalipers(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		drag := func(cond physics.Condition, w physics.Wheel) float64 {
			m, s := model(t, spec, cond)
			s = press(t, m, s, physics.Input{Foot: 150, Engine: true}, 1)
			s.Speed = 5
			s = run(t, m, s, physics.Input{Engine: true, Hold: true}, 2, 20)
			return m.WheelTorque(&s, w)
		}
		var dry physics.Condition
		for w := range dry.Wheels {
			dry.Wheels[w].PinFriction = [2]float64{300, 300}
		}
		for _, c := range corners(spec) {
			published.Bracket{ID: of(t, "OC-M13 drag, "+c.name+", N·m"), Source: memory, Got: drag(physics.Condition{}, c.wheel), Lo: 0, Hi: 5, Wrong: drag(dry, c.wheel)}.Check(t)
		}
		c := &spec.Front
		s, err := physics.Released(c, &physics.WheelCondition{}, "new")
		if err != nil {
			t.Fatal(err)
		}
		published.Bracket{ID: of(t, "OC-M13 front clearance, mm"), Source: memory, Got: (c.Gap[0] + c.Gap[1] - s.X) / mm, Lo: 0.08, Hi: 0.20, Wrong: 0.4}.Check(t)
		published.Bracket{ID: of(t, "OC-M14 front seal, MPa"), Source: memory, Got: c.SealFriction / c.PistonArea() / physics.Megapascal, Lo: 0.03, Hi: 0.1, Wrong: 0.5}.Check(t)
		taken := func(spec *physics.CornerSpec) float64 {
			corner := physics.NewCorner(spec, &physics.WheelCondition{}, "new")
			end, _, err := corner.Settle(s, &physics.CornerLoad{Pressure: 10 * physics.Megapascal})
			if err != nil {
				t.Fatal(err)
			}
			return corner.Area() * (end.X - s.X) / cm3
		}
		soft := *c
		soft.K1, soft.K3, soft.Bridge = c.K1/10, c.K3/10, c.Bridge/10
		published.Bracket{ID: of(t, "OC-M14 front caliper at 10 MPa, cm³"), Source: memory, Got: taken(c), Lo: 0.5, Hi: 1.5, Wrong: taken(&soft)}.Check(t)
		gives := func(k1, k3 float64) float64 { // under the force of 16 MPa
			lo, hi := 0.0, 1*mm
			for range 60 {
				if mid := (lo + hi) / 2; k1*mid+k3*mid*mid*mid < 16e6*c.PistonArea() {
					lo = mid
				} else {
					hi = mid
				}
			}
			return lo * 1e6
		}
		// A quarter more than remembered, whose 16 MPa may be of another piston.
		published.Bracket{ID: of(t, "OC-M15 front pad at 16 MPa, µm"), Source: memory, Got: gives(c.K1, c.K3), Lo: 50, Hi: 250, Wrong: gives(c.K1, 0)}.Check(t)
	})
}

// TestOutsideUnverifiedJudder: OC-M16, 20 µm of thickness variation are felt; a new
// disc's run-out is not, and is within what a disc is fitted to.
func TestOutsideUnverifiedJudder(t *testing.T) {
	check, _ := inspect.Find("pulsation")
	every(t, func(t *testing.T, spec *physics.Spec) {
		felt := func(thickness float64) float64 {
			var cond physics.Condition
			cond.Wheels[physics.FrontLeft].Thickness = thickness
			w, err := inspect.NewWorld(spec, cond)
			if err != nil {
				t.Fatal(err)
			}
			v, err := w.Measure(inspect.Instance{Check: check.ID})
			if err != nil {
				t.Fatal(err)
			}
			return v / check.Meter.PerUnit
		}
		published.Bracket{ID: of(t, "OC-M16 pedal at 20 µm, mm"), Source: memory, Got: felt(20e-6), Lo: check.Meter.Cuts[0], Hi: 2, Wrong: felt(0)}.Check(t)
		published.Bracket{ID: of(t, "OC-M16 run-out as fitted, mm"), Source: memory, Got: spec.Front.Runout / mm, Lo: 0, Hi: 0.05, Wrong: 0.15}.Check(t)
	})
}
