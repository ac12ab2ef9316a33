package inspect

import (
	"math"
	"slices"
	"strings"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// ready tells that these preparations stand.
func ready(list ...string) func(string) bool {
	return func(name string) bool { return slices.Contains(list, name) }
}

// made is what a check shows [unit] when these preparations stand.
func made(t *testing.T, w *World, id ID, stands ...string) float64 {
	t.Helper()
	inst := Instance{Check: id}.Made(ready(stands...))
	c, ok := Find(inst.Check)
	if !ok {
		t.Fatalf("%s has no form %s", id, inst.Check)
	}
	v, err := w.Measure(inst)
	if err != nil {
		t.Fatal(err)
	}
	return v / c.Meter.PerUnit
}

// TestVesselsLieWhenMisread: what is left out moves each reading the way and as
// far as the equations of film, slope and growth say.
func TestVesselsLieWhenMisread(t *testing.T) {
	w := world(t, physics.Condition{})
	spec := physicstest.Hatchback().Vessels
	const perCent = 100
	o, c := &spec.Oil, &spec.Coolant
	warm := o.MinToMax * physics.OilShrink(o.Density, 20) / physics.OilShrink(o.Density, o.Warm) // [m³] the marks hold of warm oil
	cold := physics.OilShrink(o.Density, 20) / physics.OilShrink(o.Density, hotEngine)           // growth of what is in the sump
	film := func(s float64) float64 {                                                            // [m³] ⅔·S·√(ν·L/(g·s)); ν by hand from its value at 100 °C and its slope there
		return 2.0 / 3 * o.WettedArea * math.Sqrt(15.5e-6*o.WettedHeight/(physics.Gravity*s))
	}
	rise := physics.CoolantDensity(c.Glycol, 20)/physics.CoolantDensity(c.Glycol, hotEngine) - 1
	seen := float64(c.Volume*rise) - float64((c.Volume-c.AtMax)*c.Metal*(hotEngine-20))
	for _, tc := range []struct {
		what          string
		right, wrong  float64
		want, tol     float64 // [unit] wrong less right
		leastDivision float64
	}{
		{"dipstick drawn at once", made(t, w, "oil_level", flat, rested), made(t, w, "oil_level", flat),
			-perCent * (film(atOnce) - film(runBack)) / warm, 1.5, 10},
		{"dipstick on the yard", made(t, w, "oil_level", flat, rested), made(t, w, "oil_level", rested),
			-perCent * o.SumpArea * o.Reach * yardFall / warm, 0.1, 10},
		{"dipstick at once on the yard", made(t, w, "oil_level", flat, rested), made(t, w, "oil_level"),
			-perCent * (film(atOnce) - film(runBack) + o.SumpArea*o.Reach*yardFall) / warm, 1.5, 20},
		{"dipstick of a cold engine", made(t, w, "oil_level", flat, rested), made(t, w, "oil_level", flat, rested, goneCold),
			-perCent * o.AtMax * (cold - 1) / warm, 2.5, 10},
		{"coolant read hot", made(t, w, "coolant_level", goneCold, rested), made(t, w, "coolant_level"),
			perCent * seen / c.MinToMax, 0.1, 10},
		// OC-83: 5.0 l from 20 to 90 °C show 199 cm³; 5.6 l to 85 °C, most of it in the same metal.
		{"coolant read hot, from OC-83", made(t, w, "coolant_level", goneCold), made(t, w, "coolant_level", flat),
			perCent * 199e-6 * 5.6 / 5.0 * (hotEngine - 20) / 70 / c.MinToMax, 3, 10},
		{"steering fluid read hot", made(t, w, "steering_level", goneCold), made(t, w, "steering_level"),
			perCent * spec.Steering.Volume * (physics.OilShrink(860, 20)/physics.OilShrink(860, hotSteering) - 1) / spec.Steering.MinToMax, 0.1, 10},
		{"washer bottle", made(t, w, "washer_level", goneCold), made(t, w, "washer_level"), 0, 1e-9, 0},
	} {
		d := tc.wrong - tc.right
		t.Logf("%s: %+.1f %% of the way, want %+.1f", tc.what, d, tc.want)
		if math.Abs(d-tc.want) > tc.tol || math.Abs(d) < tc.leastDivision {
			t.Errorf("%s: %.2f less %.2f is %.2f, want %.2f ± %g and at least a division", tc.what, tc.wrong, tc.right, d, tc.want, tc.tol)
		}
	}
	if full := made(t, w, "oil_level", flat, rested); math.Abs(full-100) > 2.5 {
		t.Errorf("a full sump reads %.1f %% when it is read as it should be, want 100 within a quarter of a division", full)
	}
}

// TestVesselsShowTheirLoss: what is gone moves the sound reading by its share of
// the marks.
func TestVesselsShowTheirLoss(t *testing.T) {
	w := world(t, physics.Condition{})
	low := world(t, physics.Condition{Water: 0.03, Vessels: physics.VesselsCondition{Oil: -0.8e-3, Coolant: -0.25e-3, Steering: -0.06e-3, Washer: -2e-3}})
	all := []string{flat, rested, goneCold}
	for _, tc := range []struct {
		id        ID
		stands    []string
		want, tol float64 // [unit]
	}{
		{"oil_level", all[:2], -80, 0.5}, {"coolant_level", all, -100 * 0.25 / 0.3, 0.5},
		{"steering_level", all, -50, 0.5}, {"washer_level", nil, -100 * 2.0 / 3, 0.5},
	} {
		c, _ := Find(tc.id)
		d := made(t, low, tc.id, tc.stands...) - made(t, w, tc.id, tc.stands...)
		if math.Abs(d-tc.want) > tc.tol || math.Abs(d) < c.Meter.Division {
			t.Errorf("%s moves by %.1f %%, want %.1f", tc.id, d, tc.want)
		}
	}
	// The sample with 3 % of water boils far below the dry one, and as its grade says.
	f := &physicstest.Hatchback().Fluid
	if dry, wet := made(t, w, "fluid_boil"), made(t, low, "fluid_boil"); math.Abs(dry-f.DryBoil) > 1e-6 || wet > dry-30 || wet < f.WetBoil {
		t.Errorf("the fluid boils at %.0f °C dry and %.0f °C with 3 %% of water; its grade says %.0f and %.0f at 3.7 %%", dry, wet, f.DryBoil, f.WetBoil)
	}
}

// TestForms: a form says less of the vessel than the check, shares its
// instrument, comes back by its name and stands beside no other of that name.
func TestForms(t *testing.T) {
	seen := map[ID]bool{}
	for i := range Forms() {
		f := &Forms()[i]
		c, ok := Find(f.Of)
		if !ok || c.Of != "" || len(f.Amiss) == 0 || seen[f.ID] {
			t.Fatalf("%s is a form of %q: %v", f.ID, f.Of, f.Amiss)
		}
		seen[f.ID] = true
		if f.Meter.Sigma < c.Meter.Sigma || f.Meter.Instrument != c.Meter.Instrument || f.Meter.Bias != c.Meter.Bias {
			t.Errorf("%s has sigma %g, its check %g", f.ID, f.Meter.Sigma, c.Meter.Sigma)
		}
		inst, err := ParseInstance(string(f.ID))
		if err != nil || inst.String() != string(f.ID) || inst.Proper() != (Instance{Check: f.Of}) {
			t.Errorf("%s comes back as %v, %v", f.ID, inst, err)
		}
		for _, n := range append(append([]string(nil), c.Wants...), c.Spoils...) {
			if _, err := ParseWork(n); err != nil {
				t.Errorf("%s: %v", f.Of, err)
			}
		}
	}
	if len(seen) != 9 {
		t.Errorf("%d forms, want 7 of the oil and one each of coolant and steering", len(seen))
	}
	for name, want := range map[string]string{
		"": "oil_level~roll_level~run_back", flat: "oil_level~run_back", rested: "oil_level~roll_level",
		flat + " " + rested: "oil_level", flat + " " + rested + " " + goneCold: "oil_level~engine_cold",
	} {
		if got := (Instance{Check: "oil_level"}).Made(ready(strings.Fields(name)...)); got.String() != want {
			t.Errorf("with %q the oil is read as %s, want %s", name, got, want)
		}
	}
	for _, inst := range Instances() {
		if inst.Proper() != inst {
			t.Errorf("%s is a form of %s", inst, inst.Proper())
		}
	}
	if bad := (Instance{Check: "nothing"}); bad.Made(ready()) != bad || bad.Proper() != bad || bad.Undoes() != nil {
		t.Error("a check that does not exist has forms")
	}
	for _, bad := range []string{"oil_level~", "oil_level~nothing", "coolant_level~run_back", "washer_level~engine_cold", "oil_level~run_back~roll_level"} {
		if inst, err := ParseInstance(bad); err == nil {
			t.Errorf("%s is taken for %v", bad, inst)
		}
	}
}

// TestEngineThrowsTheOilUp: what presses the pedal with the engine running, and
// every drive, undoes the wait; looking and lifting do not.
func TestEngineThrowsTheOilUp(t *testing.T) {
	for id, want := range map[ID]bool{"pedal_travel": true, "assist": true, "slow_stop": true, "pulsation": true, "warning_lamp": false, "oil_level": false, "runout": false} {
		if got := slices.Contains((Instance{Check: id}).Undoes(), rested); got != want {
			t.Errorf("%s lets the oil hang again: %t, want %t", id, got, want)
		}
	}
	for _, id := range running {
		if _, ok := Find(id); !ok {
			t.Errorf("there is no check %s", id)
		}
	}
	for _, inst := range Instances() {
		if inst.PerWheel && inst.Wheel > 0 {
			continue // each wheel as the first
		}
		w := world(t, physics.Condition{})
		if _, err := w.Measure(inst); err != nil {
			t.Fatal(err)
		}
		if w.ran && !slices.Contains(inst.Undoes(), rested) {
			t.Errorf("%s runs the engine and leaves the oil where it was", inst)
		}
	}
	for name, undone := range map[string][]string{"drive": {flat, rested, goneCold}, "stop_50": {flat, rested}} {
		w, err := ParseWork(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range []string{flat, rested, goneCold} {
			if slices.Contains(w.Undoes(), n) != slices.Contains(undone, n) {
				t.Errorf("%s undoes %v, want %v of how the car stands", name, w.Undoes(), undone)
			}
		}
	}
}
