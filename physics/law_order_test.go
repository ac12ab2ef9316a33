package physics

import (
	"math"
	"testing"

	"evenwear/physics/exact"
)

// shrink is by how much the error falls when a step is halved: 2 for a method of
// first order, 4 for one of second. Answers by steps h, h/2 and h/4 tell it
// without knowing the truth; with the truth it is told from two of them.
func shrink(whole, half, quarter float64) float64 { return (whole - half) / (half - quarter) }

func holdOrder(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 0.06*want) {
		t.Errorf("%s: halving the step divides the error by %.3f, want %g", what, got, want)
	}
}

// wave is the slowest wave of heat across an insulated slab of n cells after
// 1.5 s in steps of dt, and how it would stand there: with these cells in
// continuous time, and with none.
func wave(n int, dt float64) (got, cells, truth float64) {
	p := discA(0.011)
	const seconds = 1.5
	t, scratch := make([]float64, n), make([]float64, n)
	dx := p.depth / float64(n)
	for i := range t {
		t[i] = math.Cos(math.Pi * (float64(i) + 0.5) / float64(n))
	}
	start := t[0]
	for range int(math.Round(seconds / dt)) {
		p.conduct(t, scratch, slabEnds{}, dt)
	}
	alpha := p.k / p.rhoC
	return t[0] / start, math.Exp(-2 * alpha / (dx * dx) * (1 - math.Cos(math.Pi/float64(n))) * seconds),
		math.Exp(-alpha * math.Pow(math.Pi/p.depth, 2) * seconds)
}

// TestConductionOrder: conduction errs in the first order of the step and in the
// second of the cell, against the exact decay of a wave.
func TestConductionOrder(t *testing.T) {
	miss := func(dt float64) float64 { got, cells, _ := wave(16, dt); return got - cells }
	holdOrder(t, "conduction in time", miss(0.02)/miss(0.01), 2)
	space := func(n int) float64 { _, cells, truth := wave(n, 0.5); return cells - truth }
	if got, cells, _ := wave(16, 1e-4); math.Abs(got-cells) > 3e-4*cells {
		t.Errorf("a step of 0.1 ms ends at %.8g, continuous time at %.8g", got, cells)
	}
	holdOrder(t, "conduction in space", space(16)/space(32), 4)
	// A conductivity planted 0.1 % wrong is an error that no step mends.
	planted := func(dt float64) float64 { got, cells, _ := wave(16, dt); return got - math.Pow(cells, 1.01) }
	if got := planted(0.02) / planted(0.01); math.Abs(got-2) <= 0.12 {
		t.Errorf("with a conductivity 1 %% wrong the order still seems %.3f", got)
	}
}

// TestHeatOrder: a whole brake, disc and lumps together, errs in the first order.
func TestHeatOrder(t *testing.T) {
	run := func(dt float64) HeatState {
		b := newBrakeHeat(&hatchback().Front, &WheelCondition{})
		var h HeatState
		h.CoolTo(20)
		load := heatLoad{power: [2]float64{2000, 2500}, pressed: [2]bool{true, true}, speed: 14, turning: 46, air: 20}
		for range int(math.Round(240 / dt)) {
			b.step(&h, &load, dt)
		}
		return h
	}
	a, b, c := run(1), run(0.5), run(0.25)
	for _, q := range []struct {
		name string
		of   func(*HeatState) float64
	}{{"face", (*HeatState).Face}, {"hat", func(h *HeatState) float64 { return h.Hat }}, {"inner pad", func(h *HeatState) float64 { return h.Pad[Inner] }},
		{"outer pad", func(h *HeatState) float64 { return h.Pad[Outer] }}, {"piston", func(h *HeatState) float64 { return h.Piston }}, {"fluid", func(h *HeatState) float64 { return h.Fluid }}} {
		holdOrder(t, q.name, shrink(q.of(&a), q.of(&b), q.of(&c)), 2)
	}
}

// TestRoadOrder: the road is exact under a constant deceleration and errs in the
// second order with air resistance. A road planted to move by the speed at a
// step's start errs in the first.
func TestRoadOrder(t *testing.T) {
	run := func(dt, area float64, planted bool) float64 {
		m := Model{spec: &Spec{Body: BodySpec{Mass: 1200, Wheelbase: 2.5, FrontShare: 0.5, TyreRadius: 0.3, PeakAdhesion: 9, SlideAdhesion: 8, DragArea: area}}}
		s := State{Speed: 50, Decel: 4 + 0.5*airDensity*area*2500/1200}
		torque := [NumWheels]float64{360, 360, 360, 360}
		way := 0.0
		for range int(math.Round(6.4 / dt)) {
			way += s.Speed * dt
			m.road(&s, &torque, &Input{}, dt)
		}
		if planted {
			return way
		}
		return s.Distance
	}
	if got, want := run(0.8, 0, false), 50*6.4-2*6.4*6.4; math.Abs(got-want) > 1e-9*want {
		t.Errorf("%.12g m under a constant deceleration, want %.12g", got, want)
	}
	holdOrder(t, "road", shrink(run(0.1, 6, false), run(0.05, 6, false), run(0.025, 6, false)), 4)
	if got := shrink(run(0.1, 6, true), run(0.05, 6, true), run(0.025, 6, true)); math.Abs(got-4) <= 0.24 {
		t.Errorf("a way by the speed at a step's start still seems of second order: %.3f", got)
	}
}

// TestHydraulicsOrder: pressures, strokes, travels, gas and what has leaked err
// in the first order while a pedal that is down is pressed harder, all ports shut
// and all clearances closed: at a kink an order means nothing.
func TestHydraulicsOrder(t *testing.T) {
	cond := frontLeft(WheelCondition{Air: 2e-6, Leak: 2e-8})
	cond.CupBypass[1] = 1e-12
	m, pressed := build(t, pedalled(), cond)
	pressed = stepped(t, m, pressed, Input{Foot: 150}, 100, 1)
	pressed = stepped(t, m, pressed, Input{Foot: 300}, 300, 1)
	run := func(dt float64) State {
		s := pressed
		var err error
		for n := 1; n <= int(math.Round(0.1/dt)); n++ {
			if s, err = m.StepFine(s, Input{Foot: 300 + 1500*float64(n)*dt, Engine: true}, dt); err != nil {
				t.Fatal(err)
			}
		}
		return s
	}
	a, b, c := run(0.001), run(0.0005), run(0.00025)
	for _, q := range []struct {
		name string
		of   func(*State) float64
	}{
		{"primary pressure", func(s *State) float64 { return s.Master.Pressure[0] }}, {"secondary pressure", func(s *State) float64 { return s.Master.Pressure[1] }},
		{"primary stroke", func(s *State) float64 { return s.Master.Stroke[0] }}, {"secondary stroke", func(s *State) float64 { return s.Master.Stroke[1] }},
		{"front pressure", func(s *State) float64 { return s.Pressure[FrontLeft] }}, {"rear pressure", func(s *State) float64 { return s.Pressure[RearLeft] }},
		{"front piston", func(s *State) float64 { return s.Corners[FrontLeft].X }}, {"front body", func(s *State) float64 { return s.Corners[FrontLeft].Y }},
		{"warmth of the gas", func(s *State) float64 { return s.AirWarm[FrontLeft] }}, {"leaked", func(s *State) float64 { return s.Lost }},
	} {
		holdOrder(t, q.name, shrink(q.of(&a), q.of(&b), q.of(&c)), 2)
	}
	// What does not vanish with the step has no order: 0.1 ms of late foot planted.
	late := func(s *State) float64 { return s.Master.Pressure[0] }
	if got := shrink(late(&a)*1.001, late(&b), late(&c)); math.Abs(got-2) <= 0.12 {
		t.Errorf("an error of 0.1 %% planted in the longest step still seems of order %.3f", got)
	}
}

// TestVacuumIsExact: the booster's vacuum is a closed form, so one long step is
// as good as a thousand short ones, whether it is drawn, leaks or is vented.
func TestVacuumIsExact(t *testing.T) {
	spec := pedalled()
	spec.Booster = BoosterSpec{Gain: 4, Threshold: 40, Ceiling: 2500, Vacuum: 70e3, Vent: 0.35, Restore: 0.5}
	m, rest := build(t, spec, Condition{VacuumLeak: 0.2})
	run := func(parts int, engine bool) float64 {
		s := rest
		s.Vacuum, s.Master.Foot = 40e3, 200
		for i := range parts {
			in := Input{Engine: engine, Foot: 200 * (1 - float64(i+1)/float64(parts))}
			s.Vacuum, s.Master.Foot = m.vacuum(&s, &in, 0.4/float64(parts)), in.Foot
		}
		return s.Vacuum
	}
	if one, many := run(1, false), run(1000, false); math.Abs(one-many) > 1e-9*one {
		t.Errorf("engine off: %.10g Pa in one step, %.10g in a thousand", one, many)
	}
	if want := 40e3 * exact.Pow(1-spec.Booster.Vent, spec.Booster.demand(760)) * math.Exp(-0.2*0.4); math.Abs(run(1, false)-want) > 1e-9*want {
		t.Errorf("engine off: %.10g Pa, want %.10g", run(1, false), want)
	}
	held := func(parts int) float64 {
		s := rest
		s.Vacuum = 40e3
		for range parts {
			s.Vacuum = m.vacuum(&s, &Input{Engine: true}, 0.4/float64(parts))
		}
		return s.Vacuum
	}
	if one, many := held(1), held(1000); math.Abs(one-many) > 1e-9*one {
		t.Errorf("engine on: %.10g Pa in one step, %.10g in a thousand", one, many)
	}
	// Euler's step would show: it errs by (dt/τ)²/2.
	if euler := 40e3 + 30e3*0.4/0.5; math.Abs(held(1)-euler) < 100 {
		t.Errorf("a straight step of the vacuum would pass")
	}
}
