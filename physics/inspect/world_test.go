package inspect

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

func world(t testing.TB, cond physics.Condition) *World {
	t.Helper()
	w, err := NewWorld(physicstest.Hatchback(), cond)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func measure(t testing.TB, w *World, name string) float64 {
	t.Helper()
	i, err := ParseInstance(name)
	if err != nil {
		t.Fatal(err)
	}
	v, err := w.Measure(i)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// conditions are the ten causes of the first catalogue and a few more, each
// once, as numbers of the condition.
func conditions() map[string]physics.Condition {
	at := func(w physics.Wheel, c physics.WheelCondition) physics.Condition {
		var cond physics.Condition
		cond.Wheels[w] = c
		return cond
	}
	fl := physics.FrontLeft
	pins := func(u, l float64) physics.WheelCondition {
		return physics.WheelCondition{PinFriction: [2]float64{u, l}}
	}
	worn := physics.Condition{}
	for w := range worn.Wheels {
		for pad := range 2 {
			worn.Wheels[w].Wear[pad] = [2]float64{0.006, 0.006}
		}
	}
	topped := worn
	topped.Fluid = 60e-6
	return map[string]physics.Condition{
		"healthy":     {},
		"dry":         at(fl, pins(285, 285)),
		"one_seized":  at(fl, pins(5000, 0)),
		"seized":      at(fl, pins(5000, 5000)),
		"corroded":    at(fl, physics.WheelCondition{SealFriction: 2380, SealRate: 19.1e6}),
		"leak":        at(fl, physics.WheelCondition{Leak: 1e-10}),
		"air":         at(fl, physics.WheelCondition{Air: 2e-6}),
		"worn":        worn,
		"topped":      topped,
		"runout":      at(fl, physics.WheelCondition{Runout: 0.15e-3}),
		"thickness":   at(fl, physics.WheelCondition{Thickness: 0.04e-3}),
		"play":        at(fl, physics.WheelCondition{BearingPlay: 0.3e-3}),
		"hose_holds":  at(fl, physics.WheelCondition{HoseHold: 0.8e6}),
		"hose_soft":   at(fl, physics.WheelCondition{HoseSwell: 0.08e-12}),
		"oily":        at(fl, physics.WheelCondition{MuLoss: [2][2]float64{{0.5, 0.5}, {0.5, 0.5}}}),
		"no_vacuum":   {BoosterLoss: 1},
		"check_valve": {VacuumLeak: 0.05},
		"cup":         {CupBypass: [2]float64{1e-14, 0}},
		"low":         {Fluid: -130e-6},
		"water":       {Water: 0.03},
	}
}

// TestReadingsShowTheirCause: each cause moves the readings that a mechanic
// would look at, the right way and by more than a division (a word: to another
// word); and leaves alone the one that would betray another cause.
func TestReadingsShowTheirCause(t *testing.T) {
	const up, down, same = 1, -1, 0
	rows := []struct {
		cond  string
		check string
		way   int
	}{
		{"dry", "slide_body@front_left", up}, {"dry", "pin_upper@front_left", up}, {"dry", "pin_lower@front_left", up},
		{"dry", "spin@front_left", up}, {"dry", "temperature@front_left", up}, {"dry", "push_piston@front_left", same}, {"dry", "spin@front_right", same},
		{"one_seized", "pin_upper@front_left", up}, {"one_seized", "pin_lower@front_left", same},
		{"seized", "slide_body@front_left", up}, {"seized", "pull", up}, {"seized", "slow_stop", up}, {"seized", "temperature@front_left", down}, {"seized", "spin@front_left", same},
		{"corroded", "push_piston@front_left", up}, {"corroded", "spin@front_left", up}, {"corroded", "temperature@front_left", up}, {"corroded", "slide_body@front_left", same},
		{"leak", "hold_sink", up}, {"leak", "wetness@front_left", up}, {"leak", "wetness@front_right", same},
		{"air", "pedal_travel", up}, {"air", "pedal_feel", up}, {"air", "pump_running", up}, {"air", "hold_sink", same},
		{"worn", "reservoir_level", down}, {"worn", "lining_inner_upper@rear_left", down}, {"worn", "opening_outer@front_right", down},
		{"topped", "lining_outer_lower@front_left", down},
		{"runout", "runout@front_left", up}, {"runout", "pulsation", same}, {"runout", "thickness_variation@front_left", same},
		{"thickness", "thickness_variation@front_left", up}, {"thickness", "pulsation", up}, {"thickness", "runout@front_left", same},
		{"play", "hub_play@front_left", up},
		{"hose_holds", "spin@front_left", up}, {"hose_holds", "push_piston@front_left", up}, {"hose_holds", "trapped_pressure@front_left", up},
		{"hose_soft", "hose_bulge@front_left", up}, {"hose_soft", "pedal_travel", up},
		{"oily", "pull", up}, {"oily", "stop_distance", up}, {"oily", "pedal_travel", same},
		{"no_vacuum", "assist", down}, {"no_vacuum", "pump_off", down}, {"no_vacuum", "pedal_travel", down}, {"no_vacuum", "stop_distance", up},
		{"check_valve", "assist_reserve", down}, {"check_valve", "pedal_travel", same},
		{"cup", "hold_sink", up}, {"cup", "wetness@front_left", same},
		{"low", "reservoir_level", down}, {"low", "warning_lamp", up}, {"low", "lining_outer_upper@front_left", same},
		{"water", "fluid_water", up},
	}
	conds := conditions()
	healthy := world(t, physics.Condition{})
	worlds := map[string]*World{}
	for _, r := range rows {
		if _, ok := conds[r.cond]; !ok {
			t.Fatalf("no condition %q", r.cond)
		}
		if worlds[r.cond] == nil {
			worlds[r.cond] = world(t, conds[r.cond])
		}
		i, err := ParseInstance(r.check)
		if err != nil {
			t.Fatal(err)
		}
		c, _ := Find(i.Check)
		m := &c.Meter
		was, is := measure(t, healthy, r.check)/m.PerUnit, measure(t, worlds[r.cond], r.check)/m.PerUnit
		steps := (is - was) / m.Division
		if len(m.Words) > 0 {
			steps = 2 * float64(m.Show(is)-m.Show(was))
		}
		ok := r.way == up && steps > 1 || r.way == down && steps < -1 || r.way == same && math.Abs(steps) <= 1
		if !ok {
			t.Errorf("%s: %s goes from %.4g to %.4g %s (%+.2f divisions), want %+d", r.cond, r.check, was, is, m.Unit, steps, r.way)
		}
		t.Logf("%-12s %-32s %9.4g -> %9.4g %s", r.cond, r.check, was, is, m.Unit)
	}
}

// TestPullSigns: the car pulls away from the starved side; mirrored, it pulls
// the other way by as much. A healthy car's own pull is taken out: its chambers
// have different springs, so its sides differ a little.
func TestPullSigns(t *testing.T) {
	seized := physics.WheelCondition{PinFriction: [2]float64{5000, 5000}}
	var left, right physics.Condition
	left.Wheels[physics.FrontLeft], right.Wheels[physics.FrontRight] = seized, seized
	own := measure(t, world(t, physics.Condition{}), "pull")
	l, r := measure(t, world(t, left), "pull")-own, measure(t, world(t, right), "pull")-own
	if l <= 0.04 || math.Abs(l+r) > 0.01*l {
		t.Errorf("front left starved pulls %+.4f m/s², front right %+.4f; want more than two divisions to the right and its mirror", l, r)
	}
	if math.Abs(own) > 0.002 {
		t.Errorf("a healthy car pulls %+.4f m/s², want a tenth of a division at most", own)
	}
}

// TestReducedAgree: every reduced experiment agrees with the same experiment in
// steps of 1 ms within a third of a division (for words: no word's probability
// differs by more than 0.05).
func TestReducedAgree(t *testing.T) {
	if testing.Short() {
		t.Skip("a minute of car in steps of 1 ms")
	}
	conds := conditions()
	for _, name := range []string{"healthy", "dry", "corroded", "leak", "air", "thickness", "hose_holds", "no_vacuum", "oily", "seized"} {
		coarse, fine := world(t, conds[name]), world(t, conds[name])
		fine.fine = true
		for _, i := range Instances() {
			if i.PerWheel && i.Wheel != physics.FrontLeft || i.Check == "temperature" {
				continue
			}
			c, _ := Find(i.Check)
			m := &c.Meter
			a, b := measure(t, coarse, i.String()), measure(t, fine, i.String())
			if len(m.Words) > 0 {
				for d := range int64(m.Cells()) {
					if p, q := m.Prob(d, a, 0, 0), m.Prob(d, b, 0, 0); math.Abs(p-q) > 0.05 {
						t.Errorf("%s: %s is %q with %.3f in long steps, %.3f in steps of 1 ms (%.4g, %.4g)", name, i, m.Words[d], p, q, a/m.PerUnit, b/m.PerUnit)
					}
				}
				continue
			}
			if bound := m.Division / 3; math.Abs(a-b)/m.PerUnit > bound {
				t.Errorf("%s: %s is %.4f in long steps, %.4f %s in steps of 1 ms; want within %.3g", name, i, a/m.PerUnit, b/m.PerUnit, m.Unit, bound)
			}
		}
	}
}

// TestMeasureLooksOnly: no check changes the world, and the order of checks
// changes no answer.
func TestMeasureLooksOnly(t *testing.T) {
	w := world(t, conditions()["dry"])
	before := w.Rest
	list := Instances()
	first := map[Instance]float64{}
	for _, i := range list {
		first[i] = measure(t, w, i.String())
	}
	if w.Rest != before {
		t.Error("the checks moved the car")
	}
	again := world(t, conditions()["dry"])
	for k := len(list) - 1; k >= 0; k-- {
		if got := measure(t, again, list[k].String()); got != first[list[k]] {
			t.Errorf("%s: %v alone, %v after others", list[k], got, first[list[k]])
		}
	}
	c := w.Clone()
	if c.Rest != w.Rest || measure(t, c, "pull") != first[Instance{Check: "pull"}] {
		t.Error("a clone answers otherwise")
	}
}

// TestAnyCarAnswers: sixty random cars, many of them wrecks, answer every
// check with a number or a typed error; none panics.
func TestAnyCarAnswers(t *testing.T) {
	cars := 60
	if testing.Short() {
		cars = 20
	}
	rng := rand.New(rand.NewPCG(20, 26))
	some := func(hi float64) float64 {
		if rng.IntN(3) > 0 {
			return 0
		}
		return hi * rng.Float64()
	}
	failed := 0
	for range cars {
		var cond physics.Condition
		cond.Fluid, cond.Water = some(80e-6)-some(200e-6), some(0.06)
		cond.BoosterLoss, cond.VacuumLeak = some(1), some(0.2)
		cond.CupBypass = [2]float64{some(1e-13), some(1e-13)}
		for i := range cond.Wheels {
			c := &cond.Wheels[i]
			for pad := range 2 {
				c.PinFriction[pad], c.EarFriction[pad] = some(6000), some(500)
				c.DiscWear[pad] = some(0.5e-3)
				for half := range 2 {
					c.Wear[pad][half], c.MuLoss[pad][half] = some(7e-3), some(0.8)
				}
			}
			c.SealFriction, c.SealRate = some(3000), some(20e6)
			c.Runout, c.Thickness = some(0.3e-3), some(0.06e-3)
			c.Leak, c.Air = some(1e-8), some(6e-6)
			c.HoseSwell, c.HoseHold, c.BearingPlay = some(1e-13), some(2e6), some(0.5e-3)
		}
		w, err := NewWorld(physicstest.Hatchback(), cond)
		if err != nil {
			failed++
			t.Logf("%v", err)
			continue
		}
		for _, i := range Instances() {
			if _, err := w.Measure(i); err != nil {
				failed++
				t.Logf("%v", err)
			}
		}
	}
	if failed > 0 {
		t.Errorf("%d checks of %d cars failed", failed, cars)
	}
}

// TestBadInstance: what no catalogue holds is an error, not a panic.
func TestBadInstance(t *testing.T) {
	w := world(t, physics.Condition{})
	for _, i := range []Instance{{}, {Check: "nothing"}, {Check: "spin"}, {Check: "spin", PerWheel: true, Wheel: 4}, {Check: "spin", PerWheel: true, Wheel: -1}, {Check: "pull", PerWheel: true}} {
		if _, err := w.Measure(i); err == nil {
			t.Errorf("%+v: no error", i)
		}
	}
}

// BenchmarkWorld is one hypothesis at one background: a new world and every
// instance of every check.
func BenchmarkWorld(b *testing.B) {
	list := Instances()
	cond := conditions()["dry"]
	spec := physicstest.Hatchback()
	for b.Loop() {
		w, err := NewWorld(spec, cond)
		if err != nil {
			b.Fatal(err)
		}
		for _, i := range list {
			if _, err := w.Measure(i); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// BenchmarkCheck is each check alone in a new world.
func BenchmarkCheck(b *testing.B) {
	rest := world(b, conditions()["dry"])
	for i := range all {
		c := &all[i]
		b.Run(string(c.ID), func(b *testing.B) {
			for b.Loop() {
				w := World{Model: rest.Model, Rest: rest.Rest}
				if _, err := c.Measure(&w, physics.FrontLeft); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
