package main

import (
	"bytes"
	"encoding/csv"
	"io"
	"strings"
	"testing"
	"time"

	"evenwear/scoring/learner"
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

// TestMixedAndDue: what is mixed up and what comes back, of a history of two cars
// and of none.
func TestMixedAndDue(t *testing.T) {
	met := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	history := []record.Result{
		{When: met, Truth: []string{"pins_dry"}, Said: []record.Figure{{ID: "pins_dry", N: 0.25}, {ID: "pin_seized", N: 0.75}}, Marks: []record.Figure{{ID: "diagnosis", N: 10}}},
		{When: met, Truth: []string{"pin_seized"}, Said: []record.Figure{{ID: "pin_seized", N: 1}}, Marks: []record.Figure{{ID: "diagnosis", N: 100}}},
	}
	at := func(x float64) []float64 {
		list := make([]float64, learner.Points)
		for i := range list {
			list[i] = x
		}
		return list
	}
	asked := []record.Result{
		{When: met, Ideas: []record.Idea{{LnP: at(-20.5)}, {ID: "low_is_a_leak", LnP: at(-18)}, {ID: "long_is_air", LnP: at(-20)}}},
		{When: met, Ideas: []record.Idea{{LnP: at(-10)}, {ID: "low_is_a_leak", LnP: at(-8)}}},
	}
	for _, x := range []struct {
		write func(io.Writer, []record.Result) error
		list  []record.Result
		want  string
	}{
		{writeMixed, history, "true,said,belief,cars pin_seized,pin_seized,1.000000,1 pins_dry,pin_seized,0.750000,1 pins_dry,pins_dry,0.250000,1"},
		{writeMixed, nil, "true,said,belief,cars"},
		// By the published weights of FSRS 6: easy at first, stability 8.2956 days; again, 0.212, at least a day.
		{writeDue, history, "cause,met,due pin_seized,2026-03-01T09:00:00Z,2026-03-09T09:00:00Z pins_dry,2026-03-01T09:00:00Z,2026-03-02T09:00:00Z"},
		{writeDue, nil, "cause,met,due"},
		// By hand: where every point says the same, 30.5 nat less 26 and less 30 of two cars.
		{writeIdeas, asked, "idea,nats low_is_a_leak,4.500 long_is_air,0.500"},
		{writeIdeas, history, "idea,nats"},
	} {
		var out bytes.Buffer
		if err := x.write(&out, x.list); err != nil || strings.Join(strings.Fields(out.String()), " ") != x.want {
			t.Errorf("%v: wrote\n%swant %s", err, out.String(), x.want)
		}
	}
}
