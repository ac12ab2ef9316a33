package scenarios

import (
	"slices"
	"testing"
)

// TestNoted: a car of which only notes are there has one of the causes that have
// notes, all come, the notes are those of the wheel that is faulty, and nothing is
// told or left to be looked at. The same seed gives the same car; a wish for a cause
// without notes is refused.
func TestNoted(t *testing.T) {
	lib := library(t)
	want, got := map[string]bool{}, map[string]bool{}
	for _, c := range lib.Causes {
		if len(c.Notes) > 0 {
			want[c.ID] = true
		}
	}
	if len(want) < 10 {
		t.Fatalf("%d causes have notes", len(want))
	}
	for seed := range uint64(150) {
		id := DrawnID(seed, Noted)
		if s, e, ok := ParseDrawn(id); !ok || s != seed || e != Noted {
			t.Fatalf("%s reads back as %d %s %v", id, s, e, ok)
		}
		j, err := lib.Draw(seed, Wish{Ease: Noted})
		if err != nil {
			t.Fatal(err)
		}
		if len(j.Faults) != 1 || j.Minutes != 0 || j.Claims != nil || j.Complaint == "" || j.Title == "" {
			t.Errorf("seed %d: %d faults, %g min, told %v, %q", seed, len(j.Faults), j.Minutes, j.Claims, j.Complaint)
		}
		f := &j.Faults[0]
		got[f.Cause.ID] = true
		if len(j.Notes) != len(f.Cause.Notes) {
			t.Errorf("seed %d: %d notes of %d", seed, len(j.Notes), len(f.Cause.Notes))
		}
		here, isWheel := f.Place.Wheel()
		for i, n := range j.Notes {
			if at := f.Cause.Notes[i]; n.PerWheel && isWheel && (len(at) > 5 && at[len(at)-5:] == "@here") != (n.Wheel == here) {
				t.Errorf("seed %d: the fault is at %s, note %s was taken at %s", seed, f.Place, at, n.Wheel)
			}
		}
		if again, _ := lib.Draw(seed, Wish{Ease: Noted}); !slices.Equal(again.Notes, j.Notes) || again.Driven != j.Driven {
			t.Errorf("seed %d gives another car", seed)
		}
	}
	for id := range want {
		if !got[id] {
			t.Errorf("%s never comes", id)
		}
	}
	if len(got) != len(want) {
		t.Errorf("%v come, %v have notes", got, want)
	}
	if j, err := lib.Draw(1, Wish{Ease: Noted, Causes: []string{lib.Worn().ID}}); err == nil {
		t.Errorf("a sound car has notes: %+v", j)
	}
}
