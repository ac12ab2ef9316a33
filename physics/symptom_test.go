package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
	"evenwear/tests/published"
)

const (
	mm  = physics.Millimetre
	mpa = physics.Megapascal
	cm3 = physics.CubicCentimetre
)

func at(w physics.Wheel, c physics.WheelCondition) physics.Condition {
	var cond physics.Condition
	cond.Wheels[w] = c
	return cond
}

// stroke presses to foot within 0.3 s, holds 0.5 s, and returns the travel held
// and the state released for off seconds.
func stroke(t testing.TB, m *physics.Model, s physics.State, foot float64, engine bool, off float64) (float64, physics.State) {
	t.Helper()
	s = press(t, m, s, physics.Input{Foot: foot, Engine: engine}, 0.8, 1)
	travel := m.PedalTravel(&s)
	return travel, run(t, m, s, physics.Input{Engine: engine}, off, 1)
}

// pump returns the travels of n strokes in quick succession.
func pump(t testing.TB, cond physics.Condition, engine bool, n int) []float64 {
	t.Helper()
	m, s := model(t, physicstest.Hatchback(), cond)
	var travels []float64
	for range n {
		var x float64
		x, s = stroke(t, m, s, 150, engine, 0.35)
		travels = append(travels, x/mm)
	}
	return travels
}

// TestAirIsSpongy: air at one wheel makes the pedal longer, since it must be
// squeezed before there is pressure; pumping raises it, since fluid passes the
// cup faster than the bubble lets it come back.
func TestAirIsSpongy(t *testing.T) {
	sound := pump(t, physics.Condition{}, true, 4)
	air := pump(t, at(physics.FrontRight, physics.WheelCondition{Air: 2 * cm3}), true, 4)
	t.Logf("sound %.2f, air %.2f mm", sound, air)
	if air[0]-sound[0] < 10 {
		t.Errorf("2 cm³ of air lengthen the pedal by %.1f mm only", air[0]-sound[0])
	}
	if air[0]-air[3] < 2 {
		t.Errorf("pumping raises a pedal with air by %.1f mm only", air[0]-air[3])
	}
	if d := sound[0] - sound[3]; d > 1.5 {
		t.Errorf("pumping raises a sound pedal by %.1f mm with the engine running", d)
	}
}

// TestPumpingSpendsTheVacuum: with the engine off a sound pedal rises on
// pumping, because each release vents vacuum and the same foot makes less
// pressure. That is no sign of air.
func TestPumpingSpendsTheVacuum(t *testing.T) {
	off := pump(t, physics.Condition{}, false, 6)
	t.Logf("engine off %.2f mm", off)
	if off[0]-off[5] < 10 {
		t.Errorf("pedal rises by %.1f mm only as the vacuum is spent", off[0]-off[5])
	}
	for i := 1; i < len(off); i++ {
		if off[i] > off[i-1]+0.05 {
			t.Errorf("stroke %d is longer than the one before: %.2f mm", i, off)
		}
	}
}

// TestWeepingJointSinks: a leak lets the pedal sink under a steady foot, and the
// fluid is gone.
func TestWeepingJointSinks(t *testing.T) {
	m, s := model(t, physicstest.Hatchback(), at(physics.RearLeft, physics.WheelCondition{Leak: 2e-9}))
	s = press(t, m, s, physics.Input{Foot: 556, Engine: true}, 1, 20)
	before, lost := m.PedalTravel(&s), s.Lost
	s = run(t, m, s, physics.Input{Foot: 556, Engine: true}, 10, 20)
	sunk, gone := m.PedalTravel(&s)-before, s.Lost-lost
	t.Logf("sinks %.2f mm, loses %.3f cm³", sunk/mm, gone/cm3)
	if sunk < 3*mm || gone < 0.5*cm3 {
		t.Errorf("in 10 s the pedal sinks %.2f mm and %.2f cm³ are lost", sunk/mm, gone/cm3)
	}
	// What left the joint is what the piston followed it with.
	area := math.Pi / 4 * m.Spec().Master.Bore * m.Spec().Master.Bore
	if follow := sunk / m.Spec().Pedal.Ratio * area; math.Abs(follow-gone) > 0.05*gone {
		t.Errorf("piston swept %.3f cm³ after a loss of %.3f", follow/cm3, gone/cm3)
	}
}

// TestCupBypassSinks: past a worn cup the pedal sinks under a light steady foot
// too, with no fluid lost.
func TestCupBypassSinks(t *testing.T) {
	m, s := model(t, physicstest.Hatchback(), physics.Condition{CupBypass: [2]float64{2e-14, 0}})
	s = press(t, m, s, physics.Input{Foot: 150, Engine: true}, 1, 20)
	before := m.PedalTravel(&s)
	s = run(t, m, s, physics.Input{Foot: 150, Engine: true}, 10, 20)
	sunk := m.PedalTravel(&s) - before
	t.Logf("sinks %.2f mm", sunk/mm)
	if sunk < 2*mm || s.Lost != 0 {
		t.Errorf("pedal sinks %.2f mm, %.3f cm³ lost", sunk/mm, s.Lost/cm3)
	}
}

// TestOutsideAssistCheck: engine off, vacuum spent, pedal held, engine started: the
// pedal drops as the vacuum comes back; without vacuum it stays (OC-92: the sign
// and more than a division, GB inspection manual 1.1.10 (a)).
func TestOutsideAssistCheck(t *testing.T) {
	drop := func(cond physics.Condition) float64 {
		m, s := model(t, physicstest.Hatchback(), cond)
		for range 8 {
			_, s = stroke(t, m, s, 200, false, 0.5)
		}
		s = press(t, m, s, physics.Input{Foot: 150}, 1, 20)
		held := m.PedalTravel(&s)
		s = run(t, m, s, physics.Input{Foot: 150, Engine: true}, 8, 20)
		return m.PedalTravel(&s) - held
	}
	const rule = "GB 1.1.10 (a)"
	none := drop(physics.Condition{BoosterLoss: 1}) / mm
	published.Bracket{ID: "OC-92 pedal sinks, mm", Source: rule, Got: drop(physics.Condition{}) / mm, Lo: 10, Hi: 60, Wrong: none}.Check(t)
	published.Bracket{ID: "OC-92 without vacuum, mm", Source: rule, Got: none, Lo: -0.3, Hi: 0.3, Wrong: 1}.Check(t)
}

// TestCollapsedHoseHolds: a hose collapsed inside keeps its wheel pressed after
// the pedal is let go, until the bleed screw is opened.
func TestCollapsedHoseHolds(t *testing.T) {
	m, s := model(t, physicstest.Hatchback(), at(physics.FrontLeft, physics.WheelCondition{HoseHold: 1 * mpa}))
	s = press(t, m, s, physics.Input{Foot: 150, Engine: true}, 1, 20)
	// The hose holds its wheel above the chamber, and on a fast return the chamber
	// sucks: the least pressure it falls to is the one the wheel is held above.
	least := 0.0
	for range 500 {
		var err error
		if s, err = m.Step(s, physics.Input{Engine: true}, 1); err != nil {
			t.Fatal(err)
		}
		least = min(least, s.Master.Pressure[0])
	}
	s = run(t, m, s, physics.Input{Engine: true}, 30, 20)
	if p := s.Pressure[physics.FrontLeft]; math.Abs(p-1*mpa-least) > 0.01*mpa || p < 0.9*mpa {
		t.Errorf("wheel held at %.3f MPa, want 1 above the chamber's least of %.3f", p/mpa, least/mpa)
	}
	if p := s.Pressure[physics.FrontRight]; p > 0.02*mpa {
		t.Errorf("the other wheel is held at %.3f MPa", p/mpa)
	}
	if n := s.Forces[physics.FrontLeft].Outer(); n < 1500 {
		t.Errorf("the held wheel is pressed with %.0f N only", n)
	}
	in := physics.Input{Engine: true}
	in.Bleed[physics.FrontLeft] = 2e-6
	s = run(t, m, s, in, 2, 20)
	if p := s.Pressure[physics.FrontLeft]; p > 0.02*mpa {
		t.Errorf("with its screw open the wheel keeps %.3f MPa", p/mpa)
	}
}

// TestCoveredPortTraps: a compensating port that stays covered traps the fluid
// of its circuit; as the calipers warm the pressure of that circuit grows.
func TestCoveredPortTraps(t *testing.T) {
	pressure := func(cover float64) (primary, secondary float64) {
		m, s := model(t, physicstest.Hatchback(), physics.Condition{PortCover: [2]float64{cover, 0}})
		s = press(t, m, s, physics.Input{Foot: 100, Engine: true}, 1, 20)
		s = run(t, m, s, physics.Input{Engine: true}, 2, 20)
		for w := range s.Heat {
			s.Heat[w].CoolTo(60)
		}
		s = run(t, m, s, physics.Input{Engine: true}, 2, 20)
		return s.Pressure[physics.FrontLeft], s.Pressure[physics.FrontRight]
	}
	p, q := pressure(2 * mm)
	if p < 0.5*mpa || q > 0.02*mpa {
		t.Errorf("covered primary port: %.3f MPa in its circuit, %.3f in the other", p/mpa, q/mpa)
	}
	if p, _ := pressure(0); p > 0.02*mpa {
		t.Errorf("open port: %.3f MPa trapped", p/mpa)
	}
}

// TestLostCircuit: a circuit that holds no pressure lets its piston run to its
// stop: the pedal drops and the other circuit works.
func TestLostCircuit(t *testing.T) {
	sound, s0 := model(t, physicstest.Hatchback(), physics.Condition{})
	s0 = press(t, sound, s0, physics.Input{Foot: 300, Engine: true}, 1, 20)
	m, s := model(t, physicstest.Hatchback(), at(physics.FrontLeft, physics.WheelCondition{Leak: 5e-6}))
	s = press(t, m, s, physics.Input{Foot: 300, Engine: true}, 3, 20)
	if got, want := s.Master.Stroke[0], m.Spec().Master.Stroke[0]; got != want {
		t.Errorf("primary piston at %.2f mm, want its stop at %.0f", got/mm, want/mm)
	}
	if p := s.Pressure[physics.FrontLeft]; p > 0.3*mpa {
		t.Errorf("the lost circuit makes %.2f MPa", p/mpa)
	}
	if got, want := s.Pressure[physics.FrontRight], s0.Pressure[physics.FrontRight]; math.Abs(got-want) > 0.01*want {
		t.Errorf("the sound circuit makes %.2f MPa, want %.2f", got/mpa, want/mpa)
	}
	if d := m.PedalTravel(&s) - sound.PedalTravel(&s0); d < 15*mm {
		t.Errorf("the pedal drops %.1f mm only", d/mm)
	}
}

// TestThicknessPulses: thickness variation pulses pressure and pedal once a turn;
// run-out alone hardly does, since the body follows the disc.
func TestThicknessPulses(t *testing.T) {
	pulse := func(cond physics.WheelCondition) (pressure, pedal float64, turns int) {
		m, s := model(t, physicstest.Hatchback(), at(physics.FrontLeft, cond))
		s = press(t, m, s, physics.Input{Foot: 60, Engine: true}, 1, 1)
		s.Speed = 10
		in := physics.Input{Foot: 60, Engine: true, Hold: true}
		s = run(t, m, s, in, 0.5, 1)
		lo, hi, plo, phi := 1e9, 0.0, 1e9, 0.0
		rising, last := false, s.Pressure[physics.FrontLeft]
		for range 943 { // five turns: 5·2π·0.3 m at 10 m/s
			s = run(t, m, s, in, 0.001, 1)
			p, x := s.Pressure[physics.FrontLeft], m.PedalTravel(&s)
			lo, hi, plo, phi = min(lo, p), max(hi, p), min(plo, x), max(phi, x)
			if up := p > last+1; up && !rising {
				turns++
			}
			if p > last+1 {
				rising = true
			} else if p < last-1 {
				rising = false
			}
			last = p
		}
		return hi - lo, phi - plo, turns
	}
	p, x, turns := pulse(physics.WheelCondition{Thickness: 60e-6})
	t.Logf("60 µm: %.3f MPa, pedal %.3f mm, %d rises in five turns", p/mpa, x/mm, turns)
	if p < 0.03*mpa || x < 0.02*mm || turns < 4 || turns > 6 {
		t.Errorf("60 µm of thickness variation: %.3f MPa, %.3f mm at the pedal, %d rises in five turns", p/mpa, x/mm, turns)
	}
	q, _, _ := pulse(physics.WheelCondition{Runout: 60e-6})
	n, _, _ := pulse(physics.WheelCondition{})
	t.Logf("60 µm run-out %.4f MPa, none %.4f MPa", q/mpa, n/mpa)
	if q > p/4 {
		t.Errorf("60 µm of run-out pulses %.4f MPa, of thickness %.4f", q/mpa, p/mpa)
	}
}

// TestOpenScrewDrawsAir: pumping with the bleed screw open pumps fluid out, and a
// release with it open draws air in.
func TestOpenScrewDrawsAir(t *testing.T) {
	m, s := model(t, physicstest.Hatchback(), physics.Condition{})
	var in physics.Input
	in.Engine, in.Foot = true, 100
	in.Bleed[physics.FrontLeft] = 2e-6
	s = run(t, m, s, in, 1, 1)
	if s.Lost < 1*cm3 {
		t.Errorf("%.2f cm³ pumped out", s.Lost/cm3)
	}
	in.Foot = 0
	s = run(t, m, s, in, 1, 1)
	if s.Air[physics.FrontLeft] < 0.2*cm3 {
		t.Errorf("%.3f cm³ of air drawn in", s.Air[physics.FrontLeft]/cm3)
	}
}

// TestLowReservoirDrawsAir: with the ports uncovered the chambers draw air.
func TestLowReservoirDrawsAir(t *testing.T) {
	m, s := model(t, physicstest.Hatchback(), physics.Condition{Fluid: -195 * cm3})
	for range 4 {
		_, s = stroke(t, m, s, 200, true, 0.3)
	}
	if a := s.Master.Air[0] + s.Master.Air[1]; a < 0.2*cm3 {
		t.Errorf("%.3f cm³ of air drawn in", a/cm3)
	}
}

// TestBoilingFluid: hot wet fluid boils: the pedal goes long and comes back as
// it cools; what boiled stands higher in the reservoir meanwhile.
func TestBoilingFluid(t *testing.T) {
	m, s := model(t, physicstest.Hatchback(), physics.Condition{Water: 0.04})
	level := m.Level(&s)
	cold, s := stroke(t, m, s, 150, true, 1)
	s.Heat[physics.FrontLeft].Fluid, s.Heat[physics.FrontRight].Fluid = 175, 175
	s = run(t, m, s, physics.Input{Engine: true}, 3, 1)
	if m.Level(&s) < level+0.02 {
		t.Errorf("boiling raises the level from %.3f to %.3f only", level, m.Level(&s))
	}
	hot, s := stroke(t, m, s, 150, true, 1)
	for c := 175.0; c >= 20; c -= 0.1 { // as fast as fluid follows, which is some minutes on a car
		s.Heat[physics.FrontLeft].Fluid, s.Heat[physics.FrontRight].Fluid = c, c
		s = run(t, m, s, physics.Input{Engine: true}, 0.02, 20)
	}
	again, _ := stroke(t, m, s, 150, true, 1)
	t.Logf("cold %.1f, boiling %.1f, cooled %.1f mm", cold/mm, hot/mm, again/mm)
	if hot < cold+15*mm || math.Abs(again-cold) > 1*mm {
		t.Errorf("pedal cold %.1f, boiling %.1f, cooled %.1f mm", cold/mm, hot/mm, again/mm)
	}
}
