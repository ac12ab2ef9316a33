package golden

import (
	"math"

	"evenwear/physics"
	"evenwear/physics/exact"
	"evenwear/physics/physicstest"
)

type stage struct {
	name string
	run  func(*sum)
}

// stages is the whole run in its order.
func stages() []stage {
	list := []stage{
		{"exact functions", functions},
		{"corner", corners},
		{"hydraulics healthy", hydraulics(healthy, normal)},
		{"hydraulics air", hydraulics(airy, normal)},
		{"hydraulics leak", hydraulics(leaking, normal)},
		{"hydraulics hose", hydraulics(hosed, normal)},
		{"hydraulics port", hydraulics(covered, warming)},
		{"hydraulics cold", hydraulics(healthy, freezing)},
		{"hydraulics boiling", hydraulics(airy, boiling)},
		{"hydraulics bleeding", hydraulics(low, bleeding)},
		{"stop", stops},
		{"descent", descents},
		{"tour", tours},
		{"drive", drives},
		{"hydraulics vent", hydraulics(vented, warming)},
		{"hydraulics parts", hydraulics(patched, normal)},
		{"stop film", filmed},
		{"months", months},
		{"drive parts", drivesParts},
	}
	list = append(list, checks()...)
	list = append(list, cars()...)
	return append(list, stage{"jobs", jobs}, stage{"posterior", posterior}, stage{"marks", marks}, stage{"outlook", outlook})
}

// nudge makes the car's front brakes grip on a radius one unit in the last place greater.
var nudge bool

func spec() *physics.Spec {
	s := physicstest.Hatchback()
	if nudge {
		s.Front.EffectiveRadius = math.Nextafter(s.Front.EffectiveRadius, 1)
	}
	return s
}

func (s *sum) car(cond physics.Condition) (*physics.Model, physics.State) {
	m := must[*physics.Model](s)(physics.New(spec(), cond))
	return m, must[physics.State](s)(m.Rest())
}

func at(w physics.Wheel, c physics.WheelCondition) (cond physics.Condition) {
	cond.Wheels[w] = c
	return cond
}

// The cars of the run. Between them every number of a condition is not zero.
func healthy() physics.Condition { return physics.Condition{} }
func airy() physics.Condition {
	c := at(physics.FrontLeft, physics.WheelCondition{Air: 3e-6, HoseSwell: 1e-14})
	c.Wheels[physics.RearRight] = physics.WheelCondition{Air: 1e-6, BearingPlay: 2e-4}
	c.Water, c.BoosterLoss = 0.05, 0.3
	return c
}
func leaking() physics.Condition {
	c := at(physics.RearLeft, physics.WheelCondition{Leak: 4e-9})
	c.CupBypass = [2]float64{2e-14, 5e-14}
	c.VacuumLeak = 0.05
	c.Vessels = physics.VesselsCondition{Oil: -0.8e-3, Coolant: 0.2e-3, Steering: -0.06e-3, Washer: -2e-3, Seep: 30e-6}
	return c
}
func hosed() physics.Condition {
	return at(physics.FrontRight, physics.WheelCondition{HoseHold: 0.6e6, HoseReturn: 40, Thickness: 30e-6, Runout: 80e-6})
}
func covered() physics.Condition {
	c := at(physics.FrontLeft, physics.WheelCondition{SealFriction: 2000, SealRate: 15e6})
	c.PortCover = [2]float64{2e-3, 1e-3}
	return c
}
func low() physics.Condition {
	c := at(physics.RearRight, physics.WheelCondition{EarFriction: [2]float64{300, 50}})
	c.Fluid = -185e-6
	return c
}
func worn() physics.Condition {
	c := at(physics.FrontRight, physics.WheelCondition{
		PinFriction: [2]float64{8000, 250}, PinAnchorSet: [2]bool{true, false}, PinAnchor: [2]float64{0.3e-3, 0},
		Wear:       [2][2]float64{{4e-3, 5e-3}, {3e-3, 2.5e-3}},
		DiscWear:   [2]float64{0.2e-3, 0.3e-3},
		PlateProud: [2]float64{0.1e-3, 0}, MuLoss: [2][2]float64{{0.2, 0.1}, {0, 0.3}},
	})
	c.Wheels[physics.RearLeft].PinFriction = [2]float64{250, 300}
	return c
}

func vented() physics.Condition {
	c := at(physics.FrontRight, physics.WheelCondition{ScrewLeak: 2e-10})
	c.Wheels[physics.RearLeft].SealLeak = 3e-10
	c.VentShut, c.Fluid, c.ChamberAir = 0.9, -12e-6, [2]float64{0.5e-6, 0.2e-6}
	c.LowGrade, c.DiaphragmLeak, c.FloatHigh, c.LampLost = 0.4, 0.7, 5e-6, 0.2
	return c
}
func patched() physics.Condition {
	c := at(physics.FrontLeft, physics.WheelCondition{PinFriction: [2]float64{350, 200}, PinBend: [2]float64{2e-6, 1e-6}, PinPinch: [2]float64{0.1e-3, 0.02e-3}, BondLost: [2]float64{0.4, 0.1}})
	c.Wheels[physics.FrontRight] = physics.WheelCondition{Groove: [2]float64{0.2e-3, 0.05e-3}, RimRust: 0.3e-3, DiscCrack: 12e-3, DiscFilm: 0.8}
	c.Wheels[physics.RearLeft].ValveStuck, c.Wheels[physics.RearRight].ValveStuck = 0.7, -0.4
	return c
}
func swelling() physics.Condition {
	c := at(physics.FrontLeft, physics.WheelCondition{PinSwelling: [2]float64{200, 300}, PinSoaked: [2]float64{20, 10}, PinRusting: [2]float64{5, 15}})
	c.Wheels[physics.RearRight] = physics.WheelCondition{SealSwelling: 400, SealRusting: 30}
	c.MineralOil, c.RubberSwollen, c.WaterUptake = 0.03, 0.05, 0.002
	return c
}

func functions(s *sum) {
	for i := range 4000 {
		x := -40 + 0.02*float64(i)
		s.put(exact.Exp(x), exact.Erf(x/8), exact.Erfc(x/8), exact.CosTurn(x), exact.SinTurn(x))
		p := (float64(i) + 0.5) / 4000
		s.put(exact.Log(p*1e3), exact.Pow(p, x/10), exact.NormalQuantile(p))
	}
}

// corners takes six calipers through three presses each, discs turning.
func corners(s *sum) {
	for _, cond := range []func() physics.Condition{healthy, worn, covered, low, hosed, airy} {
		m, rest := s.car(cond())
		for w := range physics.Wheel(physics.NumWheels) {
			c, at := m.Corner(w), rest.Corners[w]
			for i := range 120 {
				p := 8e6 * exact.SinTurn(float64(i)/80) // and back, with pulls on the body below zero
				load := physics.CornerLoad{Pressure: max(0, p), Body: min(0, p/1e5)}
				load.DiscIn, load.DiscOut = c.Faces(exact.CosTurn(float64(i) / 24))
				next, f, err := c.Settle(at, &load)
				at = must[physics.CornerState](s)(next, err)
				s.put(at, f, c.Torque(&f))
			}
		}
	}
}

// A driver does one step of the run: foot and hands at a time, and its length.
type driver func(i int, st *physics.State) (in physics.Input, ms int64)

// normal presses, holds, pumps and stamps, in steps of every length.
func normal(i int, _ *physics.State) (physics.Input, int64) {
	in := physics.Input{Engine: i%100 < 80}
	switch n := i % 100; {
	case n < 30:
		in.Foot = 10 * float64(n)
	case n < 50:
		in.Foot = 300
	case n < 60:
		in.Foot = 0
	case n < 75:
		in.Foot = 800
	}
	return in, [...]int64{1, 1, 1, 20, 5, 1000}[i%6]
}

func warming(i int, st *physics.State) (physics.Input, int64) {
	in, _ := normal(i, st)
	for w := range st.Heat {
		st.Heat[w].Fluid += 0.2
	}
	return in, 20
}

func freezing(i int, st *physics.State) (physics.Input, int64) {
	in, ms := normal(i, st)
	in.Ambient = -45
	return in, ms
}

func boiling(i int, st *physics.State) (physics.Input, int64) {
	in, ms := normal(i, st)
	st.Heat[physics.FrontLeft].Fluid = 120 + float64(i%200)
	st.Heat[physics.RearLeft].Fluid = 160
	return in, ms
}

func bleeding(i int, st *physics.State) (physics.Input, int64) {
	in, ms := normal(i, st)
	in.Bleed[physics.FrontLeft] = 1e-7 * float64(i%3)
	in.Piston[physics.RearRight] = -900 * float64(i%7) / 6
	return in, ms
}

func hydraulics(cond func() physics.Condition, drive driver) func(*sum) {
	return func(s *sum) {
		m, st := s.car(cond())
		st.Speed = 8
		for i := range 300 {
			in, ms := drive(i, &st)
			in.Hold = true // rolling: the discs push the pads back
			st = must[physics.State](s)(m.Step(st, in, ms))
			s.put(st, m.PedalTravel(&st), m.Level(&st))
		}
	}
}

func stops(s *sum) {
	for _, cond := range []func() physics.Condition{healthy, worn, hosed, leaking} {
		m, st := s.car(cond())
		for _, p := range []physics.StopPlan{
			{Speed: 28, Decel: 6},
			{Speed: 14, Foot: 400, Surface: [physics.NumWheels]float64{0.1, 0.6, 0.1, 0.6}, EngineOff: true},
			{Speed: 20, Foot: 150, Grade: 0.06, Millis: 20},
		} {
			s.put(must[physics.StopResult](s)(m.Stop(st, p)))
		}
	}
}

func descents(s *sum) {
	for _, cond := range []func() physics.Condition{healthy, worn, airy} {
		m, st := s.car(cond())
		s.put(must[physics.DescentResult](s)(m.Descend(st, 0.09, 4000, 12)))
	}
}

func tours(s *sum) {
	for _, cond := range []func() physics.Condition{healthy, worn, covered} {
		m, st := s.car(cond())
		s.put(must[physics.State](s)(m.Tour(st, physics.MixedDuty(), 4)))
	}
}

func drives(s *sum) {
	for _, cond := range []func() physics.Condition{healthy, worn, covered, leaking, hosed, low} {
		s.put(must[physics.Condition](s)(physics.Drive(spec(), cond(), physics.MixedDuty(), 9000)))
	}
}

func filmed(s *sum) {
	m, st := s.car(patched())
	for range 3 {
		r := must[physics.StopResult](s)(m.Stop(st, physics.StopPlan{Speed: 14, Foot: 100, Millis: 20}))
		s.put(r)
		st = r.End
	}
}

func months(s *sum) {
	c := swelling()
	for range 12 {
		c.Age(0.7)
		s.put(c)
	}
	m, st := s.car(c)
	for w := range physics.Wheel(physics.NumWheels) {
		s.put(m.DiscThickness(w), m.RimThickness(w), m.PinBootSwollen(w, 0), m.PinBootSwollen(w, 1))
	}
	s.put(st, m.BoilingPoint(), m.OilLayer())
}

func drivesParts(s *sum) {
	for _, cond := range []func() physics.Condition{patched, vented} {
		s.put(must[physics.Condition](s)(physics.Drive(spec(), cond(), physics.MixedDuty(), 5000)))
	}
}
