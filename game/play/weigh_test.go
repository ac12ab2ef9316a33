package play

import (
	"testing"

	"evenwear/scenarios"
	"evenwear/scoring"
)

// TestNeedless: what mends a fault that no brake shows was needed; the same work
// at a car without that fault was not.
func TestNeedless(t *testing.T) {
	lib, words := shelf(t)
	desk := NewDesk(lib, words)
	for _, x := range []struct {
		cause    string // empty for a sound car
		remedies []string
		needless int
	}{
		{"oil_low", []string{"fill_oil@car"}, 0},
		{"oil_low", []string{"fill_washer@car"}, 1},
		{"oil_low", []string{"fill_oil@car", "fill_coolant@car"}, 1},
		{"oil_overfilled", []string{"draw_oil@car"}, 0},
		{"coolant_leak", []string{"mend_coolant_leak@car"}, 0},
		{"steering_low", []string{"fill_steering@car"}, 0},
		{"washer_empty", []string{"fill_washer@car"}, 0},
		{"", []string{"fill_oil@car"}, 1},
	} {
		job := *lib.Job("just_bought")
		job.Faults = nil
		if x.cause != "" {
			cause := lib.Cause(x.cause)
			worst := cause.Severities[len(cause.Severities)-1]
			job.Faults = []scenarios.Fault{{Cause: cause, Place: "car", Severity: worst, SinceKm: since(cause, job.Driven, nil)}}
		}
		found, err := buildWorld(job.Car, job.Driven, job.Faults)
		if err != nil {
			t.Fatal(err)
		}
		s := &Session{desk: desk, words: words, job: &job, found: found, catalog: newCatalog(lib)}
		w := &scales{s: s, all: s.outlooks()}
		c, _, err := w.choice(x.remedies, scoring.ReleaseUse, true)
		if err != nil || c.Needless != x.needless {
			t.Errorf("%q after %v: %d needless (%v), want %d", x.cause, x.remedies, c.Needless, err, x.needless)
		}
	}
}
