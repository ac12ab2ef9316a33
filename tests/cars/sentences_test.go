package cars

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// What a brake engineer says of floating calipers must hold on every car, computed:
// the tests of physics say why on one, these that it is no habit of that one.

const left = physics.FrontLeft

func at(w physics.Wheel, c physics.WheelCondition) (cond physics.Condition) {
	cond.Wheels[w] = c
	return cond
}

func pins(upper, lower float64) physics.Condition {
	return at(left, physics.WheelCondition{PinFriction: [2]float64{upper, lower}})
}

// rubs is what the outer pad of the left front wheel presses with [N] once a stop's
// pedal is let go and the car rolls on.
func rubs(t *testing.T, spec *physics.Spec, cond physics.Condition) float64 {
	t.Helper()
	m, s := model(t, spec, cond)
	s = press(t, m, s, physics.Input{Foot: 75, Engine: true}, 1)
	s.Speed = 5
	s = run(t, m, s, physics.Input{Engine: true, Hold: true}, 2, 20)
	sum := 0.0
	for range 20 { // a turn of the wheel and more
		s = run(t, m, s, physics.Input{Engine: true, Hold: true}, 0.02, 20)
		sum += s.Forces[left].Outer() / 20
	}
	return sum
}

// worn drives km of mixed duty and returns what the left front pads have lost [m].
func worn(t *testing.T, spec *physics.Spec, cond physics.Condition, km float64) (inner, outer [2]float64) {
	t.Helper()
	c, err := physics.Drive(spec, cond, physics.MixedDuty(), km)
	if err != nil {
		t.Fatal(err)
	}
	return c.Wheels[left].Wear[physics.Inner], c.Wheels[left].Wear[physics.Outer]
}

func mean(v [2]float64) float64 { return (v[0] + v[1]) / 2 }

// TestPinsOnEveryCar: dry pins leave the outer pad dragging and wear it more; seized
// pins starve it, so that the inner one is the thinner; drag peaks between them; and
// one seized pin tapers the pads in opposite directions, since the body leans.
func TestPinsOnEveryCar(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		const km = 8000
		in0, out0 := worn(t, spec, physics.Condition{}, km)
		last := rubs(t, spec, physics.Condition{})
		for _, f := range []float64{100, 200, 350} {
			in, out := worn(t, spec, pins(f, f), km)
			d := rubs(t, spec, pins(f, f))
			t.Logf("%.0f N a pin: outer rubs with %.0f N, wears %.3f mm (inner %.3f, healthy %.3f)", f, d, mean(out)/mm, mean(in)/mm, mean(out0)/mm)
			if d < last+50 || mean(out) < 1.1*mean(out0) || mean(out) < 1.1*mean(in) {
				t.Errorf("%.0f N a pin: outer pad rubs with %.0f N after %.0f, wears %.3f mm, inner %.3f, healthy %.3f", f, d, last, mean(out)/mm, mean(in)/mm, mean(out0)/mm)
			}
			last = d
		}
		if d := rubs(t, spec, pins(2e4, 2e4)); d > last/2 {
			t.Errorf("pins of 20 kN rub with %.0f N, of 350 N with %.0f: want a peak between", d, last)
		}
		for _, f := range []float64{2000, 20000} {
			in, out := worn(t, spec, pins(f, f), km)
			t.Logf("%.0f N a pin: inner %.3f mm, outer %.3f", f, mean(in)/mm, mean(out)/mm)
			if mean(out) > 0.75*mean(out0) || mean(in) < 1.05*mean(in0) {
				t.Errorf("%.0f N a pin: inner %.3f mm (healthy %.3f), outer %.3f (%.3f)", f, mean(in)/mm, mean(in0)/mm, mean(out)/mm, mean(out0)/mm)
			}
		}
		in, out := worn(t, spec, pins(2e4, 0), km)
		tilt, other := in[physics.Upper]-in[physics.Lower], out[physics.Upper]-out[physics.Lower]
		if tilt < 0.05*mm || other > -0.05*mm {
			t.Errorf("upper pin seized: inner pad tapers by %+.3f mm, outer by %+.3f, want opposite", tilt/mm, other/mm)
		}
	})
}

// TestReservoirOnEveryCar: the level falls by what has worn, times the pistons'
// areas; topping up hides it and stands over the brim once new pads are in.
func TestReservoirOnEveryCar(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		cond, err := physics.Drive(spec, physics.Condition{}, physics.MixedDuty(), 40000)
		if err != nil {
			t.Fatal(err)
		}
		swept := 0.0
		for w := range physics.Wheel(physics.NumWheels) {
			for i := range 2 {
				swept += (mean(cond.Wheels[w].Wear[i]) + cond.Wheels[w].DiscWear[i]) * spec.Corner(w).PistonArea()
			}
		}
		standing := func(c physics.Condition) physics.State {
			_, s := model(t, spec, c)
			return s
		}
		full, low := standing(physics.Condition{}), standing(cond)
		fall := full.Standing - low.Standing
		if math.Abs(fall-swept) > 0.03*swept {
			t.Errorf("%.1f cm³ worn, the level falls by %.1f", swept/cm3, fall/cm3)
		}
		cond.Fluid += fall
		if s := standing(cond); math.Abs(s.Standing-full.Standing) > 1e-9 {
			t.Errorf("topped up it stands at %.2f cm³, new at %.2f", s.Standing/cm3, full.Standing/cm3)
		}
		for w := range cond.Wheels {
			cond.Wheels[w].Wear = [2][2]float64{}
		}
		if s := standing(cond); s.Lost < fall-spec.Reservoir.MaxToBrim-10*cm3 || s.Lost < 5*cm3 {
			t.Errorf("topped up by %.1f cm³, new pads spill %.1f", fall/cm3, s.Lost/cm3)
		}
	})
}

// stroke presses to foot, holds, lets go for off seconds; the travel held [m].
func stroke(t *testing.T, m *physics.Model, s physics.State, foot float64, engine bool, off float64) (float64, physics.State) {
	t.Helper()
	s = physicstest.Press(t, m, s, physics.Input{Foot: foot, Engine: engine}, 0.8, 1)
	travel := m.PedalTravel(&s)
	return travel, run(t, m, s, physics.Input{Engine: engine}, off, 1)
}

// TestPedalOnEveryCar: air and knocked-back pads give a pedal that rises on pumping
// with the engine running; a healthy one rises only when its vacuum is spent; a
// bypassing cup sinks and loses nothing; hold, then start: the pedal drops only
// where the booster works.
func TestPedalOnEveryCar(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		rise := func(cond physics.Condition, engine bool) float64 {
			m, s := model(t, spec, cond)
			first, s := stroke(t, m, s, 150, engine, 0.35)
			var last float64
			for range 4 {
				last, s = stroke(t, m, s, 150, engine, 0.35)
			}
			return (first - last) / mm
		}
		sound := rise(physics.Condition{}, true)
		air, knocked := rise(at(left, physics.WheelCondition{Air: 3 * cm3}), true), rise(at(left, physics.WheelCondition{BearingPlay: 2.5 * mm}), true)
		spent, none := rise(physics.Condition{}, false), rise(physics.Condition{BoosterLoss: 1}, false)
		t.Logf("pumping raises the pedal, engine running: sound %.2f, air %.2f, knocked back %.2f mm; off: sound %.2f, without vacuum %.2f mm", sound, air, knocked, spent, none)
		if sound > 1.5 || air < sound+2 || knocked < sound+2 || spent < 8 || none > 1.5 {
			t.Errorf("pumping raises the pedal by %.2f mm (sound), %.2f (air), %.2f (knocked back); engine off %.2f, without vacuum %.2f", sound, air, knocked, spent, none)
		}
		m, s := model(t, spec, physics.Condition{CupBypass: [2]float64{2e-14, 0}})
		s = press(t, m, s, physics.Input{Foot: 150, Engine: true}, 1)
		from := m.PedalTravel(&s)
		s = run(t, m, s, physics.Input{Foot: 150, Engine: true}, 10, 20)
		if sunk := m.PedalTravel(&s) - from; sunk < 2*mm || s.Lost != 0 {
			t.Errorf("a bypassing cup sinks %.2f mm and loses %.3f cm³", sunk/mm, s.Lost/cm3)
		}
		drop := func(cond physics.Condition) float64 {
			m, s := model(t, spec, cond)
			for range 8 {
				_, s = stroke(t, m, s, 200, false, 0.5)
			}
			s = press(t, m, s, physics.Input{Foot: 150}, 1)
			held := m.PedalTravel(&s)
			s = run(t, m, s, physics.Input{Foot: 150, Engine: true}, 8, 20)
			return (m.PedalTravel(&s) - held) / mm
		}
		if works, not := drop(physics.Condition{}), drop(physics.Condition{BoosterLoss: 1}); works < 8 || math.Abs(not) > 0.3 {
			t.Errorf("held, then started: the pedal drops %.2f mm, without vacuum %.2f", works, not)
		}
	})
}

// TestTightWheelOnEveryCar: a collapsed hose holds pressure after release, and its
// bleed screw frees the wheel; a corroded piston stays tight.
func TestTightWheelOnEveryCar(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		torque := func(c physics.WheelCondition) (shut, open float64) {
			m, s := model(t, spec, at(left, c))
			_, s = stroke(t, m, s, 200, true, 10)
			turn := func() float64 {
				x, err := m.TurnTorque(&s, left)
				if err != nil {
					t.Fatal(err)
				}
				return x
			}
			shut = turn()
			in := physics.Input{Engine: true}
			in.Bleed[left] = 2e-6
			s = run(t, m, s, in, 2, 20)
			return shut, turn()
		}
		hose, freed := torque(physics.WheelCondition{HoseHold: physics.Megapascal})
		rust, stays := torque(physics.WheelCondition{SealFriction: 2380, SealRate: 19.1e6})
		if hose < 50 || freed > 3 || rust < 50 || stays < 0.9*rust {
			t.Errorf("torque to turn, screw shut and open: hose %.1f %.1f, corroded piston %.1f %.1f N·m", hose, freed, rust, stays)
		}
	})
}

// TestGreaseOnEveryCar: petroleum-based grease ruins pins within weeks, silicone-
// based grease (no swelling) does nothing.
func TestGreaseOnEveryCar(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		after := func(newtons, weeks float64) float64 {
			cond := at(left, physics.WheelCondition{PinSwelling: [2]float64{newtons, newtons}})
			c, err := physics.Drive(spec, cond, physics.MixedDuty(), weeks/52*12*1000)
			if err != nil {
				t.Fatal(err)
			}
			return rubs(t, spec, c)
		}
		if day, weeks, silicone := after(300, 0), after(300, 4), after(0, 4); day > 60 || weeks < silicone+150 || silicone > 60 {
			t.Errorf("petroleum-based grease: rubs with %.0f N on the day, %.0f after four weeks; silicone-based %.0f", day, weeks, silicone)
		}
	})
}

// TestPulseOnEveryCar: thickness variation moves the piston, and with it line and
// pedal, at the wheel's frequency, an order of magnitude more than run-out does on
// free pins; torque pulses too, by four times as much.
func TestPulseOnEveryCar(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		pulse := func(c physics.WheelCondition) (piston, pressure, torque float64) {
			const foot, turns = 60, 6
			m, s := model(t, spec, at(left, c))
			s = press(t, m, s, physics.Input{Foot: foot, Engine: true}, 1)
			s.Speed = 10
			in := physics.Input{Foot: foot, Engine: true, Hold: true}
			s = run(t, m, s, in, 0.5, 1)
			heat := s.Heat // a disc that warms would drift
			var sum [3][2]float64
			steps := int(math.Round(turns * 2 * math.Pi * spec.Body.TyreRadius / 10 * 1000))
			for range steps {
				s = run(t, m, s, in, 0.001, 1)
				s.Heat = heat
				sin, cos := math.Sincos(2 * math.Pi * s.Turn[left])
				for i, x := range [3]float64{s.Corners[left].X, s.Pressure[left], m.WheelTorque(&s, left)} {
					sum[i][0] += x * cos * 2 / float64(steps)
					sum[i][1] += x * sin * 2 / float64(steps)
				}
			}
			return math.Hypot(sum[0][0], sum[0][1]), math.Hypot(sum[1][0], sum[1][1]), math.Hypot(sum[2][0], sum[2][1])
		}
		x, p, q := pulse(physics.WheelCondition{Thickness: 60e-6})
		x0, p0, q0 := pulse(physics.WheelCondition{Runout: 60e-6})
		t.Logf("thickness | run-out: piston %.2f | %.2f µm, %.1f | %.1f kPa, %.2f | %.2f N·m", x*1e6, x0*1e6, p/1e3, p0/1e3, q, q0)
		if x < 8*x0 || p < 8*p0 || q < 4*q0 || x < 60e-6/8 {
			t.Errorf("thickness | run-out: piston %.2f | %.2f µm, %.1f | %.1f kPa, %.2f | %.2f N·m", x*1e6, x0*1e6, p/1e3, p0/1e3, q, q0)
		}
	})
}

// TestPullOnEveryCar: one contaminated pad pulls the car to the other side.
func TestPullOnEveryCar(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		pull := func(w physics.Wheel, loss float64) float64 {
			var c physics.WheelCondition
			c.MuLoss[physics.Outer] = [2]float64{loss, loss}
			m, s := model(t, spec, at(w, c))
			r, err := m.Stop(s, physics.StopPlan{Speed: 50 * physics.KmPerHour, Foot: 80})
			if err != nil {
				t.Fatal(err)
			}
			return r.Pull
		}
		own := pull(left, 0)
		l, r := pull(left, 0.6)-own, pull(physics.FrontRight, 0.6)-own
		if l < 0.05 || math.Abs(l+r) > 0.02*l {
			t.Errorf("contaminated at the left it pulls %+.3f m/s² (right positive), at the right %+.3f", l, r)
		}
	})
}

// TestDescentOnEveryCar: old fluid boils at the front once a car stands at the foot
// of a long descent: the pedal goes to the floor, or on a car split front and rear, whose
// rear fluid stays below boiling, as far as without any fluid at its front wheels. The
// next morning it is as good as before. Fluid that holds so much water as boils 6 K below the hottest the same
// descent makes it; dry fluid's pedal stays. (More boils all four wheels, spills more
// than comes back, and the chambers draw air.)
func TestDescentOnEveryCar(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		down := func(water float64) (before, standing, morning, hot float64) {
			m, s := model(t, spec, physics.Condition{Water: water})
			before, s = stroke(t, m, s, 150, true, 2)
			r, err := m.Descend(s, 0.15, 12000, 30*physics.KmPerHour)
			if err != nil {
				t.Fatal(err)
			}
			s = r.End
			s.Speed = 0
			for range 750 {
				s = run(t, m, s, physics.Input{Engine: true}, 1, 1000)
				hot = max(hot, s.Heat[left].Fluid)
			}
			standing, s = stroke(t, m, s, 150, true, 2)
			s = run(t, m, s, physics.Input{}, 12*3600, 1000)
			s = run(t, m, s, physics.Input{Engine: true}, 5, 1000)
			morning, _ = stroke(t, m, s, 150, true, 2)
			return before, standing, morning, hot
		}
		before, standing, _, hot := down(0)
		if standing > before+10*mm {
			t.Errorf("dry fluid: pedal %.1f mm before, %.1f after", before/mm, standing/mm)
		}
		lo, hi := 0.0, 0.1
		for range 40 {
			if mid := (lo + hi) / 2; spec.Fluid.BoilingPoint(mid, 0) > hot-6 {
				lo = mid
			} else {
				hi = mid
			}
		}
		before, standing, morning, _ := down(lo)
		m, s := model(t, spec, physics.Condition{})
		in := physics.Input{Foot: 150, Engine: true}
		in.Bleed[left], in.Bleed[physics.FrontRight] = 1e-6, 1e-6
		s = run(t, m, s, in, 10, 20)
		lowest := m.PedalTravel(&s)
		t.Logf("%.1f %% water: pedal %.1f mm before, %.1f standing (front bled empty %.1f), %.1f in the morning; fluid %.0f °C", 100*lo, before/mm, standing/mm, lowest/mm, morning/mm, hot)
		if standing < 0.97*lowest || before > 0.6*lowest || math.Abs(morning-before) > 2*mm {
			t.Errorf("%.1f %% water: pedal %.1f mm before, %.1f standing, %.1f in the morning; with the front bled empty %.1f", 100*lo, before/mm, standing/mm, morning/mm, lowest/mm)
		}
	})
}
