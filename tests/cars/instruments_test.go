package cars

import (
	"slices"
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// used is how a car was driven whose faults are looked at: ordinary, on pads of
// 20 000 km.
var used = scenarios.Driven{Km: 60000, PadsKm: 20000, Harshness: 1, RoomC: 20}

// soundWords are what a sound car's checks say where they say a word. Checks that
// are not named may say what the car's use makes of them.
var soundWords = map[inspect.ID]string{
	"pedal_feel": "firm", "warning_lamp": "dark", "wetness": "dry", "hose_bulge": "sound", "spin": "free", "trapped_pressure": "seeps",
	"slow_stop": "straight", "pulsation": "smooth", "opening_inner": "plenty", "opening_outer": "plenty",
}

// ends are instruments whose last figure means "further than this": no hand pulls a
// seized caliper, an emptied reservoir shows no level, and of a lining that is gone
// the least step of a feeler tells no more than of a thin one.
var ends = []string{"pull_gauge", "hanging_balance", "push_gauge", "reservoir_marks", "lamp", "stepped_feeler"}

// onScale tells that a figure [unit] lies on a meter's scale, or rounds to its end.
func onScale(m *inspect.Meter, shown float64) bool {
	return shown >= m.Lo-m.Resolution/2 && shown <= m.Hi+m.Resolution/2
}

// TestInstrumentsHoldSoundCars: whatever can be checked on a new car and on one
// with pads of 20 000 km lies on its instrument's scale, and words say that all is well.
func TestInstrumentsHoldSoundCars(t *testing.T) {
	gauge, _ := inspect.Find("disc_thickness")
	if onScale(&gauge.Meter, 26) {
		t.Error("a disc of 26 mm would be on the scale of a gauge of 25 mm")
	}
	every(t, func(t *testing.T, spec *physics.Spec) {
		driven, err := scenarios.Build(spec, used, nil)
		if err != nil {
			t.Fatal(err)
		}
		for name, cond := range map[string]physics.Condition{"new": {}, "used": driven} {
			w, err := inspect.NewWorld(spec, cond)
			if err != nil {
				t.Fatal(err)
			}
			for _, i := range inspect.Instances() {
				v, err := w.Measure(i)
				if err != nil {
					t.Errorf("%s: %v", name, err)
					continue
				}
				c, _ := inspect.Find(i.Check)
				m := &c.Meter
				shown := v / m.PerUnit
				if !onScale(m, shown) {
					t.Errorf("%s: %v is %.4g %s, its scale goes from %g to %g", name, i, shown, m.Unit, m.Lo, m.Hi)
				}
				if want, known := soundWords[i.Check]; known && m.Words[m.Show(shown)] != want {
					t.Errorf("%s: %v is %q (%.4g), want %q", name, i, m.Words[m.Show(shown)], shown, want)
				}
			}
		}
	})
}

// TestInstrumentsHoldFaults: every cause of the catalogue at every severity, at the
// first of its places, on every car: the story can be driven, every check answers,
// and what it finds lies on the instrument's scale.
func TestInstrumentsHoldFaults(t *testing.T) {
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	every(t, func(t *testing.T, spec *physics.Spec) {
		faults := 0
		for _, cause := range lib.Causes {
			for i := range cause.Severities {
				severity := cause.Severities[i]
				faults++
				f := scenarios.Fault{Cause: cause, Place: cause.Places[0], Severity: severity, SinceKm: min(4000, used.PadsKm)}
				cond, err := scenarios.Build(spec, used, []scenarios.Fault{f})
				if err != nil {
					t.Errorf("%s, %s: %v", cause.ID, severity.ID, err)
					continue
				}
				w, err := inspect.NewWorld(spec, cond)
				if err != nil {
					t.Errorf("%s, %s: %v", cause.ID, severity.ID, err)
					continue
				}
				for _, at := range inspect.Instances() {
					v, err := w.Measure(at)
					if err != nil {
						t.Errorf("%s, %s: %v", cause.ID, severity.ID, err)
						continue
					}
					c, _ := inspect.Find(at.Check)
					m := &c.Meter
					if shown := v / m.PerUnit; !onScale(m, shown) && !slices.Contains(ends, m.Instrument) {
						t.Errorf("%s, %s: %v is %.4g %s, its scale goes from %g to %g", cause.ID, severity.ID, at, shown, m.Unit, m.Lo, m.Hi)
					}
				}
			}
		}
		t.Logf("%d faults", faults)
	})
}
