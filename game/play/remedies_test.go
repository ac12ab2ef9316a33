package play

import "testing"

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
