package play

import (
	"math"
	"testing"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// vesselCar is a car of the library with one cause under its bonnet, or none.
func vesselCar(t *testing.T, car, cause string) *Session {
	t.Helper()
	lib, words := shelf(t)
	job := *lib.Job("warm_wheel")
	job.Car, job.Faults, job.Claims = lib.Car(car), nil, nil
	if cause != "" {
		c := lib.Cause(cause)
		job.Faults = []scenarios.Fault{{Cause: c, Place: "car", Severity: c.Severities[0], SinceKm: since(c, job.Driven, nil)}}
	}
	s := &Session{desk: NewDesk(lib, words), words: words, job: &job}
	var err error
	if s.found, err = buildWorld(job.Car, job.Driven, job.Faults); err != nil {
		t.Fatal(err)
	}
	return s
}

// TestFillingIsNeededWhereItStoodLow: filling a vessel that stood low is never
// called needless, whether or not it mends what let it fall; filling one that
// stood right is.
func TestFillingIsNeededWhereItStoodLow(t *testing.T) {
	for _, x := range []struct {
		cause, fill string
		needless    int
	}{
		{"oil_low", "fill_oil@car", 0}, {"", "fill_oil@car", 1},
		{"coolant_leak", "fill_coolant@car", 0}, {"coolant_leak", "mend_coolant_leak@car", 0},
		{"", "fill_coolant@car", 1}, {"coolant_overfilled", "fill_coolant@car", 1},
		{"steering_low", "fill_steering@car", 0}, {"", "fill_steering@car", 1},
		{"washer_empty", "fill_washer@car", 0}, {"", "fill_washer@car", 1},
		{"oil_low", "fill_coolant@car", 1},
	} {
		s := vesselCar(t, "compact_hatchback", x.cause)
		w := &scales{s: s, all: s.outlooks()}
		c, _, err := w.choice([]string{x.fill}, "release.use", true)
		if err != nil {
			t.Fatal(err)
		}
		if c.Needless != x.needless {
			t.Errorf("%q, %s: %d needless, want %d", x.cause, x.fill, c.Needless, x.needless)
		}
	}
}

// TestVesselsAreDrawnAsTheyAreRead: the level that the debrief draws is what the
// check shows that is made as it should be, by the equations of the vessel, heat
// and what hangs in the engine included.
func TestVesselsAreDrawnAsTheyAreRead(t *testing.T) {
	for _, car := range []string{"compact_hatchback", "delivery_van", "small_four_wheel_drive"} {
		for cause, check := range map[string]inspect.ID{"oil_low": "oil_level", "oil_overfilled": "oil_level", "coolant_leak": "coolant_level",
			"coolant_overfilled": "coolant_level", "steering_low": "steering_level", "washer_empty": "washer_level"} {
			s := vesselCar(t, car, cause)
			if c := &s.job.Car.Spec.Vessels; check == "steering_level" && c.Steering.MinToMax == 0 {
				continue
			}
			var f FaultView
			if err := s.vesselOf(&f, &s.job.Faults[0]); err != nil {
				t.Fatal(err)
			}
			v, err := s.found.Measure(inspect.Instance{Check: check})
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%s, %s: now %.1f %%, sound %.1f %%", car, cause, 100*f.Level[1], 100*f.Level[0])
			if math.Abs(f.Level[1]-v) > 1e-9 {
				t.Errorf("%s, %s: drawn at %.1f %%, read at %.1f %%", car, cause, 100*f.Level[1], 100*v)
			}
		}
	}
}
