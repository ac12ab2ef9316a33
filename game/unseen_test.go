package main

import (
	"strings"
	"testing"

	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// TestUnseen: what asks for a car nobody wrote down is told from what does not,
// and no car comes twice.
func TestUnseen(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"warm_wheel", "unseen_fair_48213", "unseen_easy", "unseenly", ""} {
		if id, ok, err := unseen(dir, name); ok || err != nil {
			t.Errorf("%q: %q, %v", name, id, err)
		}
	}
	for name, ease := range map[string]scenarios.Ease{"unseen": scenarios.Fair, "unseen_gentle": scenarios.Gentle, "unseen_hard": scenarios.Hard} {
		seen := map[string]bool{}
		for range 5 {
			id, ok, err := unseen(dir, name)
			if err != nil || !ok {
				t.Fatalf("%s: %v %v", name, ok, err)
			}
			if _, e, ok := scenarios.ParseDrawn(id); !ok || e != ease {
				t.Errorf("%s gives %q", name, id)
			}
			if seen[id] {
				t.Errorf("%s came twice", id)
			}
			seen[id] = true
			log, _, err := record.Create(dir, record.Header{Job: id, Seed: 1})
			if err != nil {
				t.Fatal(err)
			}
			log.Close()
		}
	}
	if _, _, err := unseen(strings.Repeat("x", 5000), "unseen"); err == nil {
		t.Error("a folder that cannot be read is passed over")
	}
}
