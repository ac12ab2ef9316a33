package main

import (
	"os"
	"testing"
	"time"

	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// TestNextCar: practice begins gently in an empty folder, tells of a damaged line
// once, and does not give again a car that was begun here.
func TestNextCar(t *testing.T) {
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	told := 0
	tell := func(error) { told++ }
	c, err := nextCar(lib, dir, tell)
	if _, ease, ok := scenarios.ParseDrawn(c.Job); err != nil || !ok || ease != scenarios.Gentle || told != 0 {
		t.Fatalf("%+v, %v, told %d", c, err, told)
	}
	for i := range 3 {
		if err := record.KeepResult(dir, record.Result{When: time.Now(), Session: string(rune('a' + i)), Job: "warm_wheel", Truth: []string{"honestly_worn"}}); err != nil {
			t.Fatal(err)
		}
	}
	f, err := os.OpenFile(record.ResultsFile(dir), os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	f.WriteString("not a line of ours\n")
	f.Close()
	for range 2 {
		if c, err = nextCar(lib, dir, tell); err != nil || told != 1 {
			t.Fatalf("%+v, %v, told %d", c, err, told)
		}
		if _, ease, _ := scenarios.ParseDrawn(c.Job); ease != scenarios.Fair {
			t.Errorf("after three debriefs %+v", c)
		}
	}
	log, _, err := record.Create(dir, record.Header{Job: c.Job, Seed: 1, For: &c.For})
	if err != nil {
		t.Fatal(err)
	}
	log.Close()
	if played, err := playedHere(dir); err != nil || !played[c.Job] {
		t.Errorf("played here are %v, %v", played, err)
	}
}
