package play_test

import (
	"slices"
	"strings"
	"testing"

	"evenwear/game/play"
	"evenwear/scenarios"
)

// TestOnPaper plays a car of which only notes are there, from the notes to the
// debrief: nothing of it can be looked at, what is said of the notes is marked, and
// nothing that could not be done is missed.
func TestOnPaper(t *testing.T) {
	if testing.Short() {
		t.Skip("works a debrief out")
	}
	d := desk(t)
	id := scenarios.DrawnID(10001, scenarios.Noted)
	s, err := d.Open(id, 4)
	if err != nil {
		t.Fatal(err)
	}
	var notes []string
	for _, n := range s.View().Nodes {
		if n.Name == "Their notes" {
			notes = append(notes, n.Value)
		}
	}
	if len(notes) < 2 || slices.ContainsFunc(notes, func(s string) bool { return strings.Contains(s, "{") }) {
		t.Fatalf("the notes are %q", notes)
	}
	for _, a := range []play.Act{{Do: play.Go, What: "seat"}, {Do: play.Prepare, What: "chock_rear"}, {Do: play.Check, What: "pedal_travel"}} {
		if err := s.Do(a); err == nil || !strings.Contains(err.Error(), "not here") {
			t.Errorf("%+v at a car that is away: %v", a, err)
		}
	}
	seed, ease, _ := scenarios.ParseDrawn(id)
	job, err := d.Library().Draw(seed, scenarios.Wish{Ease: ease})
	if err != nil {
		t.Fatal(err)
	}
	truth := job.Faults[0].Cause.ID + "@" + string(job.Faults[0].Place)
	for _, a := range []play.Act{
		{Do: play.OpenCall}, {Do: play.Row, What: truth}, {Do: play.Counter, What: truth, N: 20},
		{Do: play.Seal}, {Do: play.Remedy, What: "refer@car"}, {Do: play.Work}, {Do: play.Release, What: "release.carried"}, {Do: play.HandOver},
	} {
		if err := s.Do(a); err != nil {
			t.Fatalf("%+v: %v", a, err)
		}
		if n := len(s.View().Notebook); n != len(notes) {
			t.Errorf("after %+v the notebook has %d of %d notes", a, n, len(notes))
		}
	}
	if err := s.Settle(t.Context(), nil); err != nil {
		t.Fatal(err)
	}
	for _, m := range s.View().Debrief.Marks {
		t.Logf("%s %v: %s", m.Name, m.Value, m.Reason)
		if (m.ID == "reading" || m.ID == "proof") && m.Value != 100 {
			t.Errorf("%s is marked %g though nothing could be done", m.ID, m.Value)
		}
		if m.ID == "diagnosis" && m.Value < 99 {
			t.Errorf("all counters on the truth are marked %g", m.Value)
		}
	}
	for _, l := range s.View().Debrief.Trail {
		t.Log(l)
	}
}

// TestNotesAreTheSessions: the same seed hands the same notes over, another one those
// of another hand, and a learner who reads them believes what they support.
func TestNotesAreTheSessions(t *testing.T) {
	d := desk(t)
	id := scenarios.DrawnID(10004, scenarios.Noted)
	notes := func(seed uint64) (all []string) {
		s, err := d.Open(id, seed)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range s.View().Nodes {
			if n.Name == "Their notes" {
				all = append(all, n.Value)
			}
		}
		return all
	}
	other := 0
	for seed := range uint64(8) {
		a, b := notes(seed), notes(seed)
		if !slices.Equal(a, b) {
			t.Errorf("seed %d hands over %q and then %q", seed, a, b)
		}
		if !slices.Equal(a, notes(seed+1)) {
			other++
		}
	}
	if other == 0 {
		t.Error("no seed hands over other readings")
	}
}
