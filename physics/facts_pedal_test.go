package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// TestFactKnockedBack: a hub that tips in bends pushes its pads back, so that the
// first stroke is long and the second short, engine running. On free pins the body
// goes with the disc, and only the lean, for which no pin gives, pushes: what
// exceeds what the seal bends back by itself, F0/k = 0.133 mm. Dry pins hold the
// body, so that the disc pushes the piston by its whole way, and far less play does.
func TestFactKnockedBack(t *testing.T) {
	first := func(play, pins float64) (rise, later float64) {
		x := pump(t, at(physics.FrontLeft, physics.WheelCondition{BearingPlay: play, PinFriction: [2]float64{pins, pins}}), true, 3)
		return x[0] - x[1], math.Abs(x[1] - x[2])
	}
	own, _ := first(0, 0)
	dryOwn, _ := first(0, 235)
	for _, r := range []struct {
		play, pins, low, top float64 // low and top of the rise beyond the same car's without play [mm]
	}{
		{0.3 * mm, 0, -0.05, 0.05}, // the body follows, the seal bends back
		{1.5 * mm, 0, 1.5, 6},
		{2.5 * mm, 0, 6, 15},
		{0.6 * mm, 235, 5, 15},
	} {
		rise, later := first(r.play, r.pins)
		beyond := rise - own
		if r.pins > 0 {
			beyond = rise - dryOwn
		}
		t.Logf("%.1f mm of play, pins %.0f N more: the second stroke is %.2f mm shorter, %.2f beyond no play", r.play/mm, r.pins, rise, beyond)
		if beyond < r.low || beyond > r.top || later > 0.6 {
			t.Errorf("%.1f mm of play, pins %.0f N more: second stroke %.2f mm shorter than without play, third another %.2f; want %.2f to %.2f, and hardly",
				r.play/mm, r.pins, beyond, later, r.low, r.top)
		}
	}
	// What the pedal lacks is what the piston was pushed back by.
	m, s := model(t, physicstest.Hatchback(), at(physics.FrontLeft, physics.WheelCondition{BearingPlay: 2 * mm}))
	_, fresh := model(t, physicstest.Hatchback(), physics.Condition{})
	lost := (fresh.Corners[physics.FrontLeft].X - s.Corners[physics.FrontLeft].X) * m.Corner(physics.FrontLeft).Area()
	area := math.Pi / 4 * m.Spec().Master.Bore * m.Spec().Master.Bore
	rise, _ := first(2*mm, 0)
	if want := lost / area * m.Spec().Pedal.Ratio / mm; math.Abs(rise-own-want) > 0.15*want {
		t.Errorf("the pedal gains %.2f mm on pumping, the piston was pushed back by %.2f mm of pedal", rise-own, want)
	}
}

// TestFactBendsKnockBack: it is the bend that knocks the pads back, each time anew.
// Straight on the pedal stays as pumped; mirrored wheels do the same; a sound hub
// feels no bend, to the bit.
func TestFactBendsKnockBack(t *testing.T) {
	after := func(w physics.Wheel, play float64, bend bool) (gain float64) {
		m, s := model(t, physicstest.Hatchback(), at(w, physics.WheelCondition{BearingPlay: play}))
		for range 3 {
			_, s = stroke(t, m, s, 150, true, 0.35)
		}
		held, s := stroke(t, m, s, 150, true, 0.35)
		s.Speed = 14
		in := physics.Input{Engine: true, Hold: true}
		for _, side := range []float64{3, -3, 0} {
			if w == physics.FrontRight { // its mirror bends the other way first
				side = -side
			}
			if bend {
				in.Side = side
			}
			s = run(t, m, s, in, 1, 20)
		}
		s.Speed = 0
		x, _ := stroke(t, m, s, 150, true, 0.35)
		return (x - held) / mm
	}
	left, right := after(physics.FrontLeft, 2*mm, true), after(physics.FrontRight, 2*mm, true)
	straight := after(physics.FrontLeft, 2*mm, false)
	t.Logf("bends lengthen the next stroke by %.2f mm at the left, %.2f at the right, straight on %.2f", left, right, straight)
	if left < 3 || math.Abs(left-right) > 0.05*left || math.Abs(straight) > 0.3 {
		t.Errorf("bends lengthen the next stroke by %.2f mm at the left, %.2f at the right, straight on %.2f; want more than 3, alike, nothing", left, right, straight)
	}
	if a, b := after(physics.FrontLeft, 0, true), after(physics.FrontLeft, 0, false); a != b {
		t.Errorf("a sound hub: next stroke %.17g mm with bends, %.17g without", a, b)
	}
	m, s := model(t, physicstest.Hatchback(), physics.Condition{})
	if _, err := m.Step(s, physics.Input{Side: math.NaN()}, 20); err == nil {
		t.Error("a bend of NaN was driven")
	}
}

// TestFactRisesWithoutVacuum: pumping with the engine running raises a pedal with
// air and one with knocked-back pads, and no healthy car's. That rises with the
// engine off, and only as far as vacuum is spent: a car whose booster gets none
// has nothing to spend and rises no more than with the engine running.
func TestFactRisesWithoutVacuum(t *testing.T) {
	rise := func(c physics.Condition, engine bool) float64 {
		x := pump(t, c, engine, 5)
		return x[0] - x[4]
	}
	healthy, air := rise(physics.Condition{}, true), rise(at(physics.FrontRight, physics.WheelCondition{Air: 2 * cm3}), true)
	knocked := rise(at(physics.FrontRight, physics.WheelCondition{BearingPlay: 2 * mm}), true)
	off, none := rise(physics.Condition{}, false), rise(physics.Condition{BoosterLoss: 1}, false)
	t.Logf("engine running: healthy %.2f, air %.2f, knocked back %.2f mm; off: healthy %.2f, no vacuum %.2f mm", healthy, air, knocked, off, none)
	if healthy > 1.5 || air < healthy+2 || knocked < healthy+2 || off < 10 || none > 1.5 {
		t.Errorf("pumping raises the pedal by %.2f mm (healthy), %.2f (air), %.2f (knocked back), engine off %.2f (healthy), %.2f (no vacuum)", healthy, air, knocked, off, none)
	}
}

// TestFactHoseOrPiston: after a stop both a hose collapsed inside and a corroded
// piston leave the wheel tight. Opening the bleed screw lets the hose's trapped
// pressure go and the wheel turns; rust does not care for pressure.
func TestFactHoseOrPiston(t *testing.T) {
	torque := func(c physics.WheelCondition) (before, after, trapped float64) {
		const w = physics.FrontLeft
		m, s := model(t, physicstest.Hatchback(), at(w, c))
		_, s = stroke(t, m, s, 200, true, 20)
		turn := func() float64 {
			x, err := m.TurnTorque(&s, w)
			if err != nil {
				t.Fatal(err)
			}
			return x
		}
		before, trapped = turn(), s.Pressure[w]
		in := physics.Input{Engine: true}
		in.Bleed[w] = 2e-6
		s = run(t, m, s, in, 2, 20)
		return before, turn(), trapped
	}
	sound, soundOpen, _ := torque(physics.WheelCondition{})
	hose, hoseOpen, p := torque(physics.WheelCondition{HoseHold: 1 * mpa})
	rust, rustOpen, q := torque(physics.WheelCondition{SealFriction: 2380, SealRate: 19.1e6})
	t.Logf("torque to turn the wheel, screw shut and open: sound %.1f %.1f, hose %.1f %.1f, corroded %.1f %.1f N·m", sound, soundOpen, hose, hoseOpen, rust, rustOpen)
	if hose < 50 || hoseOpen > 2*sound+1 || p < 0.5*mpa {
		t.Errorf("collapsed hose: %.1f N·m at %.2f MPa, %.1f with the screw open, a sound wheel %.1f", hose, p/mpa, hoseOpen, sound)
	}
	if rust < 50 || rustOpen < 0.9*rust || q > 0.02*mpa {
		t.Errorf("corroded piston: %.1f N·m at %.2f MPa, %.1f with the screw open", rust, q/mpa, rustOpen)
	}
}
