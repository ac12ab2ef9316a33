package play

import "testing"

// TestNewParts: the plan shows new parts at the wheels where some were put in;
// not where a fluid was filled, a pin greased or the whole car worked on.
func TestNewParts(t *testing.T) {
	lib, words := shelf(t)
	job := *lib.Job("just_bought")
	found, err := buildWorld(job.Car, job.Driven, nil)
	if err != nil {
		t.Fatal(err)
	}
	for what, want := range map[string][4]int{
		"fill_oil@car": {}, "renew_rubber@car": {}, "renew_booster@car": {}, "bleed_circuit@primary_circuit": {},
		"clean_pins_silicone@front_left": {}, "turn_discs@front_axle": {}, "renew_pads@front_axle": {1, 1, 0, 0},
		"renew_pins@rear_right": {0, 0, 0, 1}, "renew_caliper@front_right": {0, 1, 0, 0},
	} {
		s := &Session{desk: NewDesk(lib, words), words: words, job: &job, found: found, repaired: found, chosen: []string{what}}
		for w, parts := range s.plan().NewParts {
			if len(parts) != want[w] {
				t.Errorf("%s: new at wheel %d: %v, want %d", what, w, parts, want[w])
			}
		}
	}
}
