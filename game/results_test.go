package main

import (
	"bytes"
	"encoding/csv"
	"testing"
	"time"

	"evenwear/scoring/record"
)

// TestRecordsAsCSV: what is read back by RFC 4180 is what was kept, commas,
// quotes and missing marks included.
func TestRecordsAsCSV(t *testing.T) {
	r := record.Result{When: time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC), Session: "a, \"b\"", Job: "unseen_fair_48213", Seed: 7, Library: "ab",
		Truth: []string{"pins_dry", "pads_soft"}, Said: []record.Figure{{ID: "pins_dry", N: 0.25}}, Total: -3.5, Marks: []record.Figure{{ID: "diagnosis", N: -12.25}}}
	var out bytes.Buffer
	if err := writeResults(&out, []record.Result{r}); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil || len(rows) != 2 {
		t.Fatalf("%v, %v", rows, err)
	}
	got := map[string]string{}
	for i, name := range rows[0] {
		got[name] = rows[1][i]
	}
	for name, want := range map[string]string{"when": "2026-03-01T09:00:00Z", "session": "a, \"b\"", "seed": "7", "truth": "pins_dry pads_soft", "total": "-3.5", "diagnosis": "-12.25", "safety": "", "belief": "pins_dry=0.250000"} {
		if got[name] != want {
			t.Errorf("%s is %q, want %q", name, got[name], want)
		}
	}
}
