package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// wave is how a quantity of one wheel goes with its turning: half of peak to peak
// at each of the first harmonics of the wheel's turn.
type wave [5]float64

// greatest is the harmonic that swings most; 1 is once a turn.
func (w wave) greatest() (k int) {
	k = 1
	for i := 2; i < len(w); i++ {
		if w[i] > w[k] {
			k = i
		}
	}
	return k
}

// pulses is what a pressed wheel does over ten turns at 10 m/s.
type pulses struct{ pressure, pedal, piston, torque wave }

func pulse(t *testing.T, cond physics.WheelCondition) (p pulses) {
	t.Helper()
	const w, foot, turns = physics.FrontLeft, 60, 10
	m, s := model(t, physicstest.Hatchback(), at(w, cond))
	s = press(t, m, s, physics.Input{Foot: foot, Engine: true}, 1, 1)
	s.Speed = 10
	in := physics.Input{Foot: foot, Engine: true, Hold: true}
	s = run(t, m, s, in, 0.5, 1)
	heat := s.Heat // a disc that warms would drift
	var re, im [4]wave
	steps := int(math.Round(turns * 2 * math.Pi * 0.3 / 10 * 1000))
	for range steps {
		s = run(t, m, s, in, 0.001, 1)
		s.Heat = heat
		for k := range len(wave{}) {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) * s.Turn[w])
			for i, x := range [4]float64{s.Pressure[w], m.PedalTravel(&s), s.Corners[w].X, m.WheelTorque(&s, w)} {
				re[i][k] += x * cos * 2 / float64(steps)
				im[i][k] += x * sin * 2 / float64(steps)
			}
		}
	}
	for i, to := range []*wave{&p.pressure, &p.pedal, &p.piston, &p.torque} {
		for k := range to {
			to[k] = math.Hypot(re[i][k], im[i][k])
		}
	}
	return p
}

// TestFactThicknessPulses: thickness variation pulses line pressure and pedal once
// a turn of the wheel, since both pads are pushed apart and only the piston can
// give. A disc that only runs out takes the body with it on free pins: the piston
// travels an order of magnitude less, line and pedal stay still. Torque is another
// matter, and asserted apart: what the fluid gives way to, the linings do not press
// with, so it pulses by less than thickness over stiffness would make it.
func TestFactThicknessPulses(t *testing.T) {
	const variation, runout = 60e-6, 60e-6
	none := pulse(t, physics.WheelCondition{})
	thick, out := pulse(t, physics.WheelCondition{Thickness: variation}), pulse(t, physics.WheelCondition{Runout: runout})
	t.Logf("first harmonic, thickness | run-out | neither: %.1f | %.1f | %.1f kPa, pedal %.2f | %.2f | %.2f µm, piston %.2f | %.2f | %.2f µm, torque %.2f | %.2f | %.2f N·m",
		thick.pressure[1]/1e3, out.pressure[1]/1e3, none.pressure[1]/1e3, thick.pedal[1]*1e6, out.pedal[1]*1e6, none.pedal[1]*1e6,
		thick.piston[1]*1e6, out.piston[1]*1e6, none.piston[1]*1e6, thick.torque[1], out.torque[1], none.torque[1])
	for _, r := range []struct {
		what string
		w    wave
	}{{"pressure", thick.pressure}, {"pedal", thick.pedal}, {"piston", thick.piston}, {"torque", thick.torque}} {
		if k := r.w.greatest(); k != 1 || r.w[1] < 3*r.w[2] {
			t.Errorf("thickness variation: %s goes mostly at %d times the wheel's frequency: %.3g", r.what, k, r.w)
		}
	}
	if thick.piston[1] < 10*out.piston[1] || thick.pressure[1] < 10*out.pressure[1] {
		t.Errorf("thickness variation moves the piston by %.2f µm and the pressure by %.1f kPa, run-out by %.2f and %.1f, want a tenth at most",
			thick.piston[1]*1e6, thick.pressure[1]/1e3, out.piston[1]*1e6, out.pressure[1]/1e3)
	}
	if thick.pressure[1] < 10e3 || thick.pedal[1] < 10e-6 {
		t.Errorf("thickness variation pulses %.1f kPa and %.2f µm at the pedal", thick.pressure[1]/1e3, thick.pedal[1]*1e6)
	}
	// A piston that gave way altogether would travel half of peak to peak.
	if thick.piston[1] > variation/2 || thick.piston[1] < variation/8 {
		t.Errorf("the piston travels %.2f µm, the disc's thickness %.2f", thick.piston[1]*1e6, variation/2*1e6)
	}
	m, _ := model(t, physicstest.Hatchback(), physics.Condition{})
	c := m.Spec().Front
	stiff := 2 * c.Mu * c.EffectiveRadius * variation / 2 / (2/c.K1 + 1/c.Bridge) // a clamp that gives nothing
	if thick.torque[1] < 4*out.torque[1] || thick.torque[1] < 2 || thick.torque[1] > stiff {
		t.Errorf("torque pulses by %.2f N·m with thickness variation, %.2f with run-out; a clamp that gives nothing %.2f", thick.torque[1], out.torque[1], stiff)
	}
}

// TestFactOnePadPulls: one contaminated pad takes its half from its wheel's
// friction, so the car pulls to the other side; mirrored, as much the other way;
// and half as much as with both its pads.
func TestFactOnePadPulls(t *testing.T) {
	pull := func(w physics.Wheel, pads ...int) physics.StopResult {
		var c physics.WheelCondition
		for _, p := range pads {
			c.MuLoss[p] = [2]float64{0.6, 0.6}
		}
		m, s := car(t, at(w, c))
		r, err := m.Stop(s, physics.StopPlan{Speed: 50 * physics.KmPerHour, Foot: 80})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	own := pull(physics.FrontLeft)
	for _, pad := range []int{physics.Inner, physics.Outer} {
		l, r, both := pull(physics.FrontLeft, pad), pull(physics.FrontRight, pad), pull(physics.FrontLeft, physics.Inner, physics.Outer)
		left, right := l.Pull-own.Pull, r.Pull-own.Pull
		t.Logf("pad %d: pull %+.3f m/s² from the left wheel, %+.3f from the right, both pads %+.3f; imbalance %.3f", pad, left, right, both.Pull-own.Pull, l.Imbalance[0])
		if left < 0.1 || math.Abs(left+right) > 0.02*left {
			t.Errorf("pad %d: contaminated at the left it pulls %+.3f m/s² (right positive), at the right %+.3f", pad, left, right)
		}
		if share := left / (both.Pull - own.Pull); math.Abs(share-0.5) > 0.03 {
			t.Errorf("pad %d pulls %.3f of what both do, want half", pad, share)
		}
		if math.Abs(l.Imbalance[0]-0.3) > 0.01 { // 0.6 of one of two pads
			t.Errorf("pad %d: imbalance %.3f, want 0.3", pad, l.Imbalance[0])
		}
	}
}

// TestFactDescentBoils: old fluid boils in a long descent: the pedal goes to the
// floor while the heat soaks from disc to fluid, some ten minutes after the stop at
// the foot of the hill; the same descent leaves fresh fluid's pedal as it was. By the
// next morning all has cooled, what boiled has come back, and the pedal is good again.
// (A descent hard enough to boil all four wheels dry spills more than the reservoir
// gives back, and then the chambers draw air: not this one.)
func TestFactDescentBoils(t *testing.T) {
	travel := func(water float64) (before, bottom, standing, morning float64, fluid float64) {
		spec := physicstest.Hatchback()
		m, s := model(t, spec, physics.Condition{Water: water})
		before, s = stroke(t, m, s, 150, true, 2)
		r, err := m.Descend(s, 0.15, 12000, 30*physics.KmPerHour)
		if err != nil {
			t.Fatal(err)
		}
		s = r.End
		s.Speed = 0 // at the foot of the hill it stands, with no wind on the brakes
		in := physics.Input{Engine: true}
		for range 750 {
			s = run(t, m, s, in, 1, 1000)
			fluid = max(fluid, s.Heat[physics.FrontLeft].Fluid)
		}
		standing, s = stroke(t, m, s, 150, true, 2)
		for range 12 * 3600 {
			s = run(t, m, s, physics.Input{}, 1, 1000)
		}
		s = run(t, m, s, in, 5, 1000)
		morning, _ = stroke(t, m, s, 150, true, 2)
		return before / mm, r.Travel / mm, standing / mm, morning / mm, fluid
	}
	floor := physicstest.Hatchback().Master.Stroke
	lowest := 3.8 * (1.5 + (floor[0]+floor[1])/mm)
	before, bottom, standing, morning, fluid := travel(0.04)
	t.Logf("4 %% water: before %.1f mm, at the bottom %.1f, standing %.1f (pistons at their stops %.1f), next morning %.1f; fluid %.0f °C", before, bottom, standing, lowest, morning, fluid)
	if standing < 0.9*lowest || math.Abs(morning-before) > 1.5 {
		t.Errorf("4 %% water: pedal at %.1f mm before, %.1f after, %.1f in the morning; at the floor it is at %.1f", before, standing, morning, lowest)
	}
	before, bottom, standing, morning, fluid = travel(0)
	t.Logf("no water: before %.1f mm, at the bottom %.1f, standing %.1f, next morning %.1f; fluid %.0f °C", before, bottom, standing, morning, fluid)
	if standing > before+10 || math.Abs(morning-before) > 1.5 {
		t.Errorf("fresh fluid: pedal at %.1f mm before, %.1f after, %.1f in the morning", before, standing, morning)
	}
}
