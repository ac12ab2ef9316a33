package play

import (
	"strings"
	"testing"

	"evenwear/scenarios"
)

// TestVesselIsItsOwnPlace: what is under the bonnet and in the pipes is not at the
// whole car: cause and remedy name the vessel, in every list and in the truth; only
// what touches all of the car keeps that place.
func TestVesselIsItsOwnPlace(t *testing.T) {
	lib, words := shelf(t)
	car := words.Say("place.car")
	s, err := NewDesk(lib, words).Open("smeared_screen", 1)
	if err != nil {
		t.Fatal(err)
	}
	if got := s.truth(); !strings.Contains(got, "washer bottle, as the car came in") || strings.Contains(got, " 0 km") {
		t.Errorf("the truth of an empty washer bottle is %q", got)
	}
	if err := s.Do(Act{Do: OpenCall}); err != nil {
		t.Fatal(err)
	}
	labels := map[string]string{}
	for _, g := range s.View().Call.Groups {
		for _, c := range g.Causes {
			labels[c.ID] = c.Places[0].Label
			if c.Places[0].Label == car && g.ID != "nothing_wrong" {
				t.Errorf("%s is at the %s", c.ID, car)
			}
		}
	}
	for _, p := range s.View().Call.Parts {
		for _, r := range p.Remedies {
			if labels[r.ID] = r.Places[0].Label; r.Places[0].Label == car && p.ID != "whole" {
				t.Errorf("%s is done to the %s", r.ID, car)
			}
		}
	}
	for id, want := range map[string]string{"washer_empty": "washer bottle", "fill_washer": "washer bottle", "oil_low": "engine", "pins_dry": "front left", "leave": car} {
		if labels[id] != want {
			t.Errorf("%s is at the %q, want %q", id, labels[id], want)
		}
	}
	for _, row := range []string{"washer_empty@car", "oil_low@car"} {
		for _, a := range []Act{{Do: Row, What: row}, {Do: Counter, What: row, N: 10}} {
			if err := s.Do(a); err != nil {
				t.Fatal(err)
			}
		}
	}
	if says := s.View().Call.Says; strings.Contains(says, "at "+car) {
		t.Errorf("counters on two vessels are said to be at one place: %q", says)
	}
	if _, place := s.sayRow("washer_empty@car"); place != "washer bottle" {
		t.Errorf("the row of the washer bottle is at the %q", place)
	}
	other := *s.job
	s.job = &other
	other.Faults = []scenarios.Fault{{Cause: lib.Cause("pins_dry"), Place: "front_left", SinceKm: 7000}}
	if got, want := s.truth(), "front left, for 7000 km"; !strings.HasSuffix(got, want) {
		t.Errorf("the truth of a fault that grew is %q, want it to end %q", got, want)
	}
}
