package play

import (
	"strings"
	"testing"

	"evenwear/scenarios"
)

// TestVesselsTogether: every vessel under the bonnet can be filled in one go, and
// none be filled and drawn off.
func TestVesselsTogether(t *testing.T) {
	lib, words := shelf(t)
	s := &Session{desk: NewDesk(lib, words), words: words, stage: Deciding, sealed: true}
	choose := func(id string) no {
		a := Act{Do: Remedy, What: id + "@car"}
		n := s.refuse(a)
		if n.allows() {
			s.remedy(a)
		}
		return n
	}
	for _, id := range []string{"fill_oil", "fill_coolant", "fill_steering", "fill_washer", "renew_lamp"} {
		if n := choose(id); !n.allows() {
			t.Errorf("%s after %v: %s", id, s.chosen, s.why(n))
		}
	}
	for _, id := range []string{"draw_oil", "draw_coolant", "mend_coolant_leak"} {
		if n := choose(id); n.allows() {
			t.Errorf("%s can be chosen beside %v", id, s.chosen)
		}
	}
}

// TestWho: who can do a remedy tells neither that it is right nor that it is
// wrong; only where nothing is worked on the car nobody is named.
func TestWho(t *testing.T) {
	lib, words := shelf(t)
	s := &Session{desk: NewDesk(lib, words), words: words}
	of := map[string][]string{} // remedies by what is said
	harmful := 0
	for _, r := range lib.Remedies {
		said := s.sayWho(r)
		of[said] = append(of[said], r.ID)
		if r.Harmful != "" {
			harmful++
		}
		if (said == "") != (r.ID == "leave" || r.ID == "refer") || strings.Contains(said, "handbook") {
			t.Errorf("%s: %q", r.ID, said)
		}
	}
	for said, ids := range of {
		right := 0
		for _, id := range ids {
			if lib.Remedy(id).Harmful == "" {
				right++
			}
		}
		if right == 0 {
			t.Errorf("%q is said of harmful remedies only: %v", said, ids)
		}
	}
	if harmful < 3 || len(of) != len(scenarios.Whos) {
		t.Errorf("%d harmful remedies, %d sayings", harmful, len(of))
	}
}
