package play_test

import (
	"flag"
	"strings"
	"testing"
	"time"

	"evenwear/assets"
	"evenwear/game/play/playtest"
)

// see is an inspector's eye.
func see(t testing.TB) func(check, perception string) string {
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	return playtest.See(words)
}

var allJobs = flag.Bool("alljobs", false, "work the debrief of all eight jobs out")

// TestJobs plays the eight jobs to their debrief.
func TestJobs(t *testing.T) {
	for _, plan := range playtest.Plans {
		t.Run(plan.Job, func(t *testing.T) {
			s, err := desk(t).Open(plan.Job, 7)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := playtest.Play(s, plan, see(t)); err != nil {
				t.Fatal(err)
			}
			// Working a debrief out takes some twenty seconds of two idle cores: two of
			// them stand for the rest, -alljobs asks for all.
			if testing.Short() || !*allJobs && plan.Job != "warm_wheel" && plan.Job != "just_bought" {
				return
			}
			begin := time.Now()
			if err := s.Settle(t.Context(), nil); err != nil {
				t.Fatal(err)
			}
			t.Logf("settled in %v", time.Since(begin))
			d := s.View().Debrief
			if d == nil || len(d.Marks) != 8 {
				t.Fatalf("debrief %+v", d)
			}
			for _, n := range s.View().Nodes {
				if strings.Contains(n.Name+n.Value, "‹") {
					t.Errorf("no words: %s: %s", n.Name, n.Value)
				}
				if n.Role == "mark" {
					t.Log(n.Name, n.Value)
				}
			}
		})
	}
}
