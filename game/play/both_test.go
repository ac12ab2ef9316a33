package play

import (
	"slices"
	"testing"
)

// TestBothCured: where two things are wrong, what mends both is among the sets
// the best is looked for in, and mends the car.
func TestBothCured(t *testing.T) {
	lib, words := shelf(t)
	for job, want := range map[string][]string{
		"weekend_car": {"fill_oil@car", "fill_washer@car"},
		"both_rear":   {"renew_pins@rear_left", "renew_caliper@rear_right"},
	} {
		s, err := NewDesk(lib, words).Open(job, 1)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(s.candidates(), func(set []string) bool { return slices.Equal(set, want) }) {
			t.Errorf("%s: %v is not looked at", job, want)
		}
		if ok, err := s.mended(want); err != nil || !ok {
			t.Errorf("%s: %v mends %v, %v", job, want, ok, err)
		}
	}
}
