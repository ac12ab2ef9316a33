package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenwear/game/practice"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

func silent(error) {}

// TestUnseen: what asks for a car nobody wrote down is told from what does not,
// and no car comes twice.
func TestUnseen(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"warm_wheel", "unseen_fair_48213", "unseen_easy", "unseenly", ""} {
		if id, ok, err := unseen(dir, name, silent); ok || err != nil {
			t.Errorf("%q: %q, %v", name, id, err)
		}
	}
	for name, ease := range map[string]scenarios.Ease{"unseen": scenarios.Fair, "unseen_gentle": scenarios.Gentle, "unseen_hard": scenarios.Hard} {
		seen := map[string]bool{}
		for range 5 {
			id, ok, err := unseen(dir, name, silent)
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
	if _, _, err := unseen(strings.Repeat("x", 5000), "unseen", silent); err == nil {
		t.Error("a folder that cannot be read is passed over")
	}
}

// TestNeverTwice: a car is not drawn again whose session was forgotten but not its
// result, nor one that stands in a self-check and was not begun; the last car that is
// left is found, and when none is, that is said.
func TestNeverTwice(t *testing.T) {
	dir := t.TempDir()
	id := func(seed uint64) string { return scenarios.DrawnID(seed, scenarios.Fair) }
	log, _, err := record.Create(dir, record.Header{Job: id(20001), Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	log.Close()
	if err := record.KeepResult(dir, record.Result{When: time.Now(), Session: "gone", Job: id(20002), Truth: []string{"pins_dry"}}); err != nil {
		t.Fatal(err)
	}
	if _, err := record.CreateCheck(dir, record.Check{Began: time.Now(), Cars: []record.CheckCar{{Job: id(20003), Seed: 1}}}); err != nil {
		t.Fatal(err)
	}
	played, err := playedHere(dir, silent)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "selfcheck-9.selfcheck"), []byte("{\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	told := ""
	if _, _, err := unseen(dir, "unseen", func(err error) { told += err.Error() }); err != nil || !strings.Contains(told, "selfcheck-9") {
		t.Errorf("of a damaged self-check it is told %q, %v", told, err)
	}
	for seed := uint64(20001); seed <= 20003; seed++ {
		if got := firstUnseen(seed, scenarios.Fair, played); got != id(20004) {
			t.Errorf("from %d on %s is drawn, want %s", seed, got, id(20004))
		}
	}
	for seed := range uint64(practice.Seeds) {
		played[id(practice.SeedLeast+seed)] = seed != 7
	}
	if got := firstUnseen(55555, scenarios.Fair, played); got != id(practice.SeedLeast+7) {
		t.Errorf("the last car is %s", got)
	}
	played[id(practice.SeedLeast+7)] = true
	if got := firstUnseen(55555, scenarios.Fair, played); got != "" {
		t.Errorf("with all played %s is drawn", got)
	}
}
