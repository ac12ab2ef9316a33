package scenarios

import (
	"math"
	"testing"

	"evenwear/physics"
)

func library(t testing.TB) *Library {
	t.Helper()
	lib, err := Embedded()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

var ordinary = Driven{Km: 60000, PadsKm: 16000, PadsThinnerMm: 0.3, Harshness: 1, RoomC: 18}

// found builds a car with one fault and returns its condition, model and rest.
func found(t *testing.T, lib *Library, d Driven, cause string, place Place, severity string, since float64) (physics.Condition, *physics.Model, physics.State) {
	t.Helper()
	spec := &lib.Cars[0].Spec
	var faults []Fault
	if cause != "" {
		c := lib.Cause(cause)
		faults = []Fault{{Cause: c, Place: place, Severity: *c.Severity(severity), SinceKm: since}}
	}
	cond, err := Build(spec, d, faults)
	if err != nil {
		t.Fatalf("%s at %s: %v", cause, place, err)
	}
	m, s := rested(t, spec, cond)
	return cond, m, s
}

func rested(t *testing.T, spec *physics.Spec, cond physics.Condition) (*physics.Model, physics.State) {
	t.Helper()
	m, err := physics.New(spec, cond)
	if err != nil {
		t.Fatal(err)
	}
	s, err := m.Rest()
	if err != nil {
		t.Fatal(err)
	}
	return m, s
}

// TestEveryHypothesisBuilds: each cause at each place and severity, at both
// ends of its likely age and of what an inspector could imagine, is a car.
func TestEveryHypothesisBuilds(t *testing.T) {
	lib := library(t)
	spec := &lib.Cars[0].Spec
	for _, c := range lib.Causes {
		for _, place := range c.Places {
			for _, sev := range c.Severities {
				for i, since := range c.SinceKm {
					d := Vary(Driven{Km: 60000}, [][]float64{{-2, -2, -2, -2}, {2, 2, 2, 2}}[i])
					cond, err := Build(spec, d, []Fault{{Cause: c, Place: place, Severity: sev, SinceKm: since}})
					if err != nil {
						t.Fatalf("%s@%s#%s since %g km: %v", c.ID, place, sev.ID, since, err)
					}
					rested(t, spec, cond)
				}
			}
		}
		if testing.Short() {
			break
		}
	}
}

// TestFluidFollowsWear: the reservoir of far worn pads has fallen by what the
// pistons took in, nothing set it; topped up it stands at MAX though the
// linings are as thin.
func TestFluidFollowsWear(t *testing.T) {
	lib := library(t)
	low, m, s := found(t, lib, ordinary, "fluid_low_wear", "car", "far_worn", 2000)
	if low.Fluid != 0 {
		t.Errorf("%g cm³ were added or lost, want none", low.Fluid*1e6)
	}
	area := 0.0
	for w := range physics.NumWheels {
		for pad := range 2 {
			area += (low.Wheels[w].Wear[pad][0] + low.Wheels[w].Wear[pad][1]) / 2 * m.Spec().Corner(physics.Wheel(w)).PistonArea()
			area += low.Wheels[w].DiscWear[pad] * m.Spec().Corner(physics.Wheel(w)).PistonArea()
		}
	}
	want := 1 - area/m.Spec().Reservoir.MinToMax
	if got := m.Level(&s); math.Abs(got-want) > 0.02 || got > 0.2 {
		t.Errorf("level %.3f of far worn pads, the pistons' way gives %.3f, near MIN", got, want)
	}
	full, m, s := found(t, lib, ordinary, "fluid_topped_up", "car", "far_worn", 2000)
	if got := m.Level(&s); math.Abs(got-1) > 0.005 {
		t.Errorf("topped up to %.4f, want MAX", got)
	}
	if full.Wheels != low.Wheels {
		t.Error("topping up changed the linings")
	}
}

// TestGrowth: a fault that grows ends at its severity and wears less than one
// that was there from the start.
func TestGrowth(t *testing.T) {
	lib := library(t)
	grown, _, _ := found(t, lib, ordinary, "pins_dry", "front_left", "clear", 8000)
	if got := grown.Wheels[0].PinFriction; math.Abs(got[0]-220) > 1e-9 || math.Abs(got[1]-220) > 1e-9 {
		t.Errorf("pins of %v N, want 220", got)
	}
	c := *lib.Cause("pins_dry")
	at := *c.Severity("clear")
	at.GrowsFrom = 1
	whole, err := Build(&lib.Cars[0].Spec, ordinary, []Fault{{Cause: &c, Place: "front_left", Severity: at, SinceKm: 8000}})
	if err != nil {
		t.Fatal(err)
	}
	out := func(c *physics.Condition) float64 { return c.Wheels[0].Wear[physics.Outer][0] }
	sound := out(&physics.Condition{Wheels: [4]physics.WheelCondition{grown.Wheels[1]}})
	if !(sound < out(&grown) && out(&grown) < out(&whole)) {
		t.Errorf("outer lining lost %.3g mm sound, %.3g grown, %.3g from the start", sound*1e3, out(&grown)*1e3, out(&whole)*1e3)
	}
}

// TestOnePin: a place that names a pin changes that pin alone.
func TestOnePin(t *testing.T) {
	cond, _, _ := found(t, library(t), ordinary, "pin_seized", "rear_left.lower_pin", "fast", 5000)
	for w := range cond.Wheels {
		want := [2]float64{}
		if w == int(physics.RearLeft) {
			want[physics.Lower] = 20000
		}
		if cond.Wheels[w].PinFriction != want {
			t.Errorf("%v: pins %v, want %v", physics.Wheel(w), cond.Wheels[w].PinFriction, want)
		}
	}
}

// TestRemedies: for each fault the right work undoes it and the wrong leaves it.
func TestRemedies(t *testing.T) {
	lib := library(t)
	pin := func(c *physics.Condition) float64 { return c.Wheels[0].PinFriction[0] }
	seal := func(c *physics.Condition) float64 { return c.Wheels[0].SealFriction }
	leak := func(c *physics.Condition) float64 { return c.Wheels[0].Leak }
	air := func(c *physics.Condition) float64 { return c.Wheels[0].Air }
	run := func(c *physics.Condition) float64 { return c.Wheels[0].Runout }
	thick := func(c *physics.Condition) float64 { return c.Wheels[0].Thickness }
	lining := func(c *physics.Condition) float64 { return c.Wheels[0].Wear[1][1] }
	for _, r := range []struct {
		cause    string
		place    Place
		severity string
		since    float64
		remedy   string
		at       Place
		what     func(*physics.Condition) float64
		left     float64 // share of it that is left
	}{
		{"pins_dry", "front_left", "heavy", 5000, "clean_pins_silicone", "front_left", pin, 0.05},
		{"pins_dry", "front_left", "heavy", 5000, "clean_pins_silicone", "front_right", pin, 1},
		{"pins_dry", "front_left", "heavy", 5000, "leave", "car", pin, 1},
		{"pin_seized", "front_left.upper_pin", "fast", 5000, "renew_pins", "front_left", pin, 0},
		{"pins_seized", "front_left", "fast", 5000, "renew_pins", "front_left", pin, 0},
		{"piston_corroded", "front_left", "stuck", 3000, "free_piston", "front_left", seal, 0.5},
		{"piston_corroded", "front_left", "stuck", 3000, "renew_caliper", "front_left", seal, 0},
		{"piston_corroded", "front_left", "stuck", 3000, "renew_pads", "front_axle", seal, 1},
		{"joint_weeping", "front_left", "damp", 500, "renew_joint", "front_left", leak, 0},
		{"joint_weeping", "front_left", "damp", 500, "top_up", "car", leak, 1},
		{"air_in_caliper", "front_left", "bubble", 500, "bleed_wheel", "front_left", air, 0},
		{"air_in_caliper", "front_left", "bubble", 500, "renew_fluid", "car", air, 0},
		{"disc_runout", "front_left", "strong", 5000, "clean_hub", "front_left", run, 0},
		{"disc_runout", "front_left", "strong", 5000, "clean_hub", "front_left", thick, 1},
		{"disc_runout", "front_left", "strong", 5000, "renew_discs", "front_axle", thick, 0},
		{"fluid_low_wear", "car", "far_worn", 1000, "renew_pads", "front_axle", lining, 0},
		{"fluid_low_wear", "car", "far_worn", 1000, "renew_pads", "rear_axle", lining, 1},
	} {
		cond, m, _ := found(t, lib, ordinary, r.cause, r.place, r.severity, r.since)
		before := r.what(&cond)
		if before == 0 {
			t.Fatalf("%s: nothing was there to mend", r.cause)
		}
		if err := lib.Remedy(r.remedy).Apply(m.Spec(), &cond, r.at); err != nil {
			t.Fatal(err)
		}
		if got := r.what(&cond) / before; math.Abs(got-r.left) > 1e-9 {
			t.Errorf("%s after %s at %s: %g of it left, want %g", r.cause, r.remedy, r.at, got, r.left)
		}
		if _, s := rested(t, m.Spec(), cond); r.remedy == "renew_joint" || r.remedy == "top_up" {
			after, _ := physics.New(m.Spec(), cond)
			if got := after.Level(&s); math.Abs(got-1) > 0.005 {
				t.Errorf("level %.3f after %s, want MAX", got, r.remedy)
			}
		}
	}
}

// TestPetroleumGrease: it helps at once and harms within weeks, by the equations;
// silicone-based grease on the same pins does not.
func TestPetroleumGrease(t *testing.T) {
	lib := library(t)
	cond, m, _ := found(t, lib, ordinary, "pins_dry", "front_left", "heavy", 5000)
	for _, r := range []*Remedy{lib.Remedy("clean_pins_petroleum"), lib.Remedy("clean_pins_silicone")} {
		after := cond
		if err := r.Apply(m.Spec(), &after, "front_left"); err != nil {
			t.Fatal(err)
		}
		if got := after.Wheels[0].PinFriction[0]; got > 20 {
			t.Errorf("%s: %g N just after, want free", r.ID, got)
		}
		after.Age(1.5)
		if got := after.Wheels[0].PinFriction[0]; (got > 250) != (r.Harmful != "") {
			t.Errorf("%s: %g N after six weeks, rule %q", r.ID, got, r.Harmful)
		}
	}
}

// TestVaryKeepsSecrets: what an inspector imagines depends on what was told, not on the truth.
func TestVaryKeepsSecrets(t *testing.T) {
	a := Driven{Km: 60000, PadsKm: 12000, PadsThinnerMm: 0.1, Harshness: 0.8, RoomC: 12}
	b := Driven{Km: 60000, PadsKm: 25000, PadsThinnerMm: 0.7, Harshness: 1.3, RoomC: 25}
	z := []float64{0.5, -1, 1.5, -0.3}
	if Vary(a, z) != Vary(b, z) {
		t.Error("two truths give two beliefs")
	}
	a.Known[0], b.Known[0] = true, true
	if got := Vary(a, z).PadsKm; math.Abs(got-12000*1.01) > 1e-6 {
		t.Errorf("pads told at 12000 km are imagined at %g, want 12120", got)
	}
	if Vary(a, z).PadsKm == Vary(b, z).PadsKm {
		t.Error("what was told does not count")
	}
	if d := Vary(a, []float64{9, 9, 9, 9}); d.PadsKm > d.Km || d.Harshness > 2 {
		t.Errorf("far out: %+v", d)
	}
	if Vary(a, nil) != Vary(a, []float64{0, 0, 0, 0}) {
		t.Error("missing coordinates are not 0")
	}
}

func BenchmarkBuild(b *testing.B) {
	lib, err := Embedded()
	if err != nil {
		b.Fatal(err)
	}
	j := lib.Job("warm_wheel")
	for b.Loop() {
		if _, err := Build(&j.Car.Spec, j.Driven, j.Faults); err != nil {
			b.Fatal(err)
		}
	}
}

// TestMakeGoodAfterMonths: what a torn boot, swelling rubber or oil in the fluid made
// of a car in a year is gone with the part that was renewed; its wear is not.
func TestMakeGoodAfterMonths(t *testing.T) {
	spec := &library(t).Cars[0].Spec
	for path, v := range map[string]float64{"wheel.pin_swelling_n": 300, "wheel.pin_rusting_n_per_month": 40, "wheel.seal_swelling_n": 800, "wheel.seal_rusting_n_per_month": 60, "mineral_oil_share": 0.05, "water_uptake_share_per_month": 0.002} {
		f := Fault{Place: "front_left", Severity: Severity{Start: []Change{{Op: Add, Path: path, Value: v}}, GrowsFrom: 1}}
		var cond physics.Condition
		if err := f.Severity.Start[0].apply(spec, &cond, f.Place, 1); err != nil {
			t.Fatal(err)
		}
		cond.Wheels[0].Wear[0][0] = 1e-3
		sound := physics.Condition{}
		sound.Wheels[0].Wear[0][0] = 1e-3
		before := cond
		if cond.Age(12); cond == before {
			t.Errorf("%s: nothing comes of it in a year", path)
		}
		if err := f.MakeGood(spec, &cond); err != nil {
			t.Fatal(err)
		}
		if cond != sound {
			t.Errorf("%s: renewed, the car is\n%+v", path, cond)
		}
	}
}
