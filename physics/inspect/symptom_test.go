package inspect

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

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
		"loose":       at(fl, physics.WheelCondition{BearingPlay: 1.5e-3}),
		"ear_rusted":  at(fl, physics.WheelCondition{EarFriction: [2]float64{0, 1500}}),
		"proud":       at(fl, physics.WheelCondition{PlateProud: [2]float64{0.2e-3, 0}}),
		"glazed":      at(fl, physics.WheelCondition{MuLoss: [2][2]float64{{0, 0}, {0.35, 0.35}}}),
		"weak_grade":  at(fl, physics.WheelCondition{MuLoss: [2][2]float64{{0.22, 0.22}, {0.22, 0.22}}}),
		"valve_shut":  at(physics.RearLeft, physics.WheelCondition{ValveStuck: -0.8}),
		"diaphragm":   {DiaphragmLeak: 3},
		"port":        {PortCover: [2]float64{1.5e-3, 0}},
		"disc_worn":   at(fl, physics.WheelCondition{DiscWear: [2]float64{0.6e-3, 0.6e-3}}),
		"film":        at(fl, physics.WheelCondition{DiscFilm: 1}),
		"grooved":     at(fl, physics.WheelCondition{Groove: [2]float64{0.4e-3, 0}}),
		"cracked":     at(fl, physics.WheelCondition{DiscCrack: 20e-3}),
		"rim":         at(fl, physics.WheelCondition{RimRust: 0.6e-3}),
		"parting":     at(fl, physics.WheelCondition{BondLost: [2]float64{0.6, 0}}),
		"pin_torn":    at(fl, physics.WheelCondition{PinRusting: [2]float64{0, 40}}),
		"pin_soaked":  at(fl, physics.WheelCondition{PinSoaked: [2]float64{250, 0}}),
		"dust_torn":   at(fl, physics.WheelCondition{SealRusting: 100}),
		"seal_weeps":  at(fl, physics.WheelCondition{SealLeak: 1e-10}),
		"screw_weeps": at(fl, physics.WheelCondition{ScrewLeak: 1e-10}),
		"wedge":       at(fl, physics.WheelCondition{Wear: [2][2]float64{{2e-3, 9e-3}, {2e-3, 2e-3}}}),
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

		{"port", "free_travel", down}, {"air", "free_travel", up}, {"corroded", "free_travel", down}, {"cup", "free_travel", same}, {"oily", "free_travel", same},
		{"dry", "turning_force@front_left", up}, {"corroded", "turning_force@front_left", up}, {"hose_holds", "turning_force@front_left", up}, {"ear_rusted", "turning_force@front_left", up},
		{"dry", "turning_force@front_right", same}, {"runout", "turning_force@front_left", same}, {"air", "turning_force@front_left", same},
		{"corroded", "clearance@front_left", down}, {"hose_holds", "clearance@front_left", down}, {"loose", "clearance@front_left", same},
		{"dry", "clearance@front_left", same}, {"oily", "clearance@front_left", same}, {"worn", "clearance@front_left", same},
		{"ear_rusted", "ear_outer@front_left", up}, {"ear_rusted", "ear_inner@front_left", same}, {"ear_rusted", "slide_body@front_left", same}, {"dry", "ear_outer@front_left", same},
		{"proud", "plate_inner@front_left", up}, {"proud", "plate_outer@front_left", same}, {"worn", "plate_inner@front_left", same},
		{"glazed", "face_outer@front_left", up}, {"glazed", "face_inner@front_left", same}, {"oily", "face_inner@front_left", up}, {"oily", "face_outer@front_left", up}, {"seized", "face_outer@front_left", same},
		{"hose_holds", "hose_release@front_left", up}, {"corroded", "hose_release@front_left", same}, {"dry", "hose_release@front_left", same}, {"port", "hose_release@front_left", same},
		{"air", "bleed_bubbles@front_left", up}, {"air", "bleed_bubbles@front_right", same}, {"hose_soft", "bleed_bubbles@front_left", same}, {"loose", "bleed_bubbles@front_left", same},
		{"disc_worn", "disc_thickness@front_left", down}, {"disc_worn", "disc_rim@front_left", same},
		{"film", "disc_film@front_left", up}, {"film", "groove_outer@front_left", same}, {"film", "runout@front_left", same},
		{"grooved", "groove_inner@front_left", up}, {"grooved", "groove_outer@front_left", same}, {"grooved", "disc_thickness@front_left", down}, {"grooved", "disc_film@front_left", same},
		{"cracked", "disc_crack@front_left", up}, {"cracked", "disc_thickness@front_left", same}, {"grooved", "disc_crack@front_left", same},
		{"rim", "disc_rim@front_left", up}, {"rim", "disc_thickness@front_left", same},
		{"parting", "bond_inner@front_left", up}, {"parting", "bond_outer@front_left", same}, {"worn", "bond_inner@front_left", same},
		{"pin_torn", "pin_boots@front_left", up}, {"pin_soaked", "pin_boots@front_left", up}, {"dust_torn", "pin_boots@front_left", same}, {"dry", "pin_boots@front_left", same},
		{"dust_torn", "piston_boot@front_left", up}, {"pin_torn", "piston_boot@front_left", same}, {"corroded", "piston_boot@front_left", same},
		{"seal_weeps", "wet_piston@front_left", up}, {"seal_weeps", "wetness@front_left", same}, {"seal_weeps", "wet_screw@front_left", same}, {"seal_weeps", "hold_sink", up},
		{"screw_weeps", "wet_screw@front_left", up}, {"screw_weeps", "wet_piston@front_left", same}, {"screw_weeps", "wetness@front_left", same}, {"leak", "wet_screw@front_left", same},
		{"weak_grade", "face_outer@front_left", same}, {"weak_grade", "braked_force@front_left", down}, {"weak_grade", "braked_force@front_right", same},
		{"valve_shut", "braked_force@rear_left", down}, {"valve_shut", "braked_force@rear_right", same}, {"valve_shut", "turning_force@rear_left", same},
		{"seized", "braked_force@front_left", down}, {"oily", "braked_force@front_left", down}, {"worn", "braked_force@front_left", same}, {"no_vacuum", "braked_force@front_left", same},
		{"diaphragm", "assist_kept", up}, {"check_valve", "assist_kept", up}, {"diaphragm", "pedal_travel", down}, {"air", "assist_kept", same}, {"worn", "assist_kept", same}, {"dry", "assist_kept", same},
		{"wedge", "lining_inner_lower@front_left", down}, {"wedge", "opening_inner@front_left", same},
		{"loose", "knock_back", up}, {"air", "knock_back", same}, {"worn", "knock_back", same}, {"runout", "knock_back", same},
		{"dry", "roll_out", down}, {"corroded", "roll_out", down}, {"hose_holds", "roll_out", down}, {"air", "roll_out", same}, {"worn", "roll_out", same}, {"no_vacuum", "roll_out", same},
		{"seized", "pull_light", up}, {"oily", "pull_light", up}, {"corroded", "pull_light", down}, {"dry", "pull_light", same}, {"air", "pull_light", same},
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

// TestWetIsLost: what wets joints, pistons and screws in a held press is what the
// car has lost.
func TestWetIsLost(t *testing.T) {
	cond := conditions()["leak"]
	cond.Wheels[physics.RearRight].Leak = 4e-10
	cond.Wheels[physics.RearLeft].SealLeak = 2e-10
	cond.Wheels[physics.FrontRight].ScrewLeak = 3e-10
	w := world(t, cond)
	f := w.foot(true)
	f.to(holdForce, 400)
	f.rest(1000, long)
	f.rest(holdMillis, long)
	if f.err != nil {
		t.Fatal(f.err)
	}
	sum := 0.0
	for _, i := range []string{"front_left", "front_right", "rear_left", "rear_right"} {
		for _, place := range []string{"wetness@", "wet_piston@", "wet_screw@"} {
			sum += measure(t, w, place+i)
		}
	}
	if lost := f.s.Lost - w.Rest.Lost; math.Abs(sum-lost) > 0.01*lost {
		t.Errorf("joints are wet with %.4f cm³, the car lost %.4f", sum/physics.CubicCentimetre, lost/physics.CubicCentimetre)
	}
}

// TestHistoryShows: what a history leaves on the linings is seen by the feeler.
// Dry pins wear the outer lining of their wheel, seized ones spare it (physics
// page §5); a seized pin wears the pads to opposite wedges.
func TestHistoryShows(t *testing.T) {
	drive := func(name string) *World {
		cond, err := physics.Drive(physicstest.Hatchback(), conditions()[name], physics.MixedDuty(), 12000)
		if err != nil {
			t.Fatal(err)
		}
		return world(t, cond)
	}
	left := func(w *World, pad, half string) float64 {
		return measure(t, w, "lining_"+pad+"_"+half+"@front_left") / physics.Millimetre
	}
	healthy, dry, seized, one := drive("healthy"), drive("dry"), drive("seized"), drive("one_seized")
	h := left(healthy, "outer", "upper")
	for _, row := range []struct {
		what      string
		got, want float64 // [mm] at least
	}{
		{"healthy outer less dry outer", h - left(dry, "outer", "upper"), 1},
		{"seized outer less healthy outer", left(seized, "outer", "upper") - h, 0.5},
		{"one pin: outer upper less outer lower", left(one, "outer", "upper") - left(one, "outer", "lower"), 0.5},
		{"one pin: inner lower less inner upper", left(one, "inner", "lower") - left(one, "inner", "upper"), 0.1},
		{"level, new less after 12 000 km, %", 100 * (measure(t, world(t, physics.Condition{}), "reservoir_level") - measure(t, healthy, "reservoir_level")), 10},
	} {
		if row.got < row.want {
			t.Errorf("%s: %.3f, want at least %.1f", row.what, row.got, row.want)
		}
		t.Logf("%s: %.3f", row.what, row.got)
	}
}

// TestPullTellsDryFromSeized: the largest dry pins of issue and catalogue (100 to
// 400 N each, both) still stand on the scale of the balance, seized ones (2000 N and
// more each) at its end; and each step of dryness is its own reading. Seen on the
// display, not on the true force.
func TestPullTellsDryFromSeized(t *testing.T) {
	shown := func(check ID, upper, lower float64) int64 {
		t.Helper()
		var c physics.Condition
		c.Wheels[physics.FrontLeft].PinFriction = [2]float64{upper, lower}
		w, err := NewWorld(physicstest.Hatchback(), c)
		if err != nil {
			t.Fatal(err)
		}
		k, _ := Find(check)
		v, err := k.Measure(w, physics.FrontLeft)
		if err != nil {
			t.Fatal(err)
		}
		return k.Meter.Show(v / k.Meter.PerUnit)
	}
	for _, check := range []ID{"slide_body", "pin_upper"} {
		k, _ := Find(check)
		end, least := k.Meter.Show(k.Meter.Hi), shown(check, 0, 0)
		for _, f := range []float64{100, 200, 300, 400} {
			d := shown(check, f, f)
			if d >= end || d < least+3 {
				t.Errorf("%s: pins of %g N each show %g N, want less than the end, %g, and three divisions above what shows before, %g", check, f, k.Meter.Value(d), k.Meter.Hi, k.Meter.Value(least))
			}
			least = d
		}
		for _, f := range []float64{2000, 20000} {
			if d := shown(check, f, f); d != end {
				t.Errorf("%s: pins of %g N each show %g N, want the end of the scale", check, f, k.Meter.Value(d))
			}
		}
	}
}
