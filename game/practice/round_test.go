package practice

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

func aRound(t *testing.T, luck uint64, played map[string]bool) record.Check {
	t.Helper()
	c, err := Draw(library(t), "ab", played, monday, luck)
	if err != nil {
		t.Fatal(err)
	}
	c.Name = "selfcheck-1"
	return c
}

// TestDrawRound: ten fair cars, none twice, none that was played here.
func TestDrawRound(t *testing.T) {
	first := aRound(t, 5, nil)
	if again := aRound(t, 5, nil); !reflect.DeepEqual(again, first) {
		t.Error("drawn again it is of other cars")
	}
	played := map[string]bool{first.Cars[2].Job: true}
	seen := map[string]bool{}
	for _, car := range aRound(t, 5, played).Cars {
		_, ease, ok := scenarios.ParseDrawn(car.Job)
		if !ok || ease != scenarios.Fair || seen[car.Job] || played[car.Job] {
			t.Errorf("%s is in it", car.Job)
		}
		seen[car.Job] = true
	}
	if len(seen) != RoundCars {
		t.Errorf("%d cars", len(seen))
	}
	all := map[string]bool{}
	for seed := range uint64(Seeds) {
		all[scenarios.DrawnID(SeedLeast+seed, scenarios.Fair)] = true
	}
	if _, err := Draw(library(t), "ab", all, monday, 5); err != ErrNoCar {
		t.Errorf("with every car played: %v", err)
	}
}

// entry is the kept session of car n.
func entry(r *Round, n int, last string) record.Entry {
	c := r.Check.Cars[n-1]
	e := record.Entry{Name: c.Job, Header: record.Header{Job: c.Job, Seed: c.Seed, For: r.Begin(n)}}
	if last != "" {
		e.Acts, e.Last = 1, []byte(`{"do":"`+last+`"}`)
	}
	return e
}

// TestRound: how far each car is; nothing of what cars came to shows before all
// are handed over; results stay when their sessions are gone or the library changed.
func TestRound(t *testing.T) {
	lib := library(t)
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	c := aRound(t, 5, nil)
	r := Follow(c, nil, nil)
	if v := r.View(lib, "ab", words); r.Next() != 0 || v.Next == nil || v.Handed != 0 || v.Renew != nil {
		t.Fatalf("begun: %+v", v)
	}
	strange := entry(r, 4, "handover")
	strange.Seed++ // of an older self-check of the same name
	sessions := []record.Entry{entry(r, 1, "handover"), entry(r, 3, "go"), strange}
	result := func(n int, total float64) record.Result {
		return record.Result{When: monday, Session: c.Cars[n-1].Job, Job: c.Cars[n-1].Job, Seed: c.Cars[n-1].Seed, For: r.Begin(n), Truth: []string{"pins_dry", "gone_cause"}, Total: total,
			Marks: []record.Figure{{ID: diagnosis, N: 77}}}
	}
	damaged := entry(r, 5, "go")
	damaged.Err = errors.New("line 3 is not an act")
	sessions = append(sessions, damaged)
	r = Follow(c, sessions, []record.Result{result(1, 81.5)})
	if what := r.View(lib, "ab", words).Cars[4].What; r.Cars[4].Stage != Waits || !strings.Contains(what, "line 3") {
		t.Errorf("of a damaged session the sheet says %q", what)
	}
	v := r.View(lib, "ab", words)
	if r.Next() != 2 || v.Handed != 1 || v.Next.Act != (play.Act{Do: play.OpenCar, N: 3}) {
		t.Errorf("one handed over, one begun: next %d, %+v", r.Next(), v)
	}
	for i := range v.Cars {
		if v.Cars[i].Marked || v.Cars[i].Open != nil {
			t.Errorf("car %d shows before the end: %+v", i+1, v.Cars[i])
		}
	}
	for _, n := range v.Nodes {
		if strings.Contains(n.Value, "81") || strings.Contains(n.Value, "77") || strings.Contains(n.Value, lib.Cause("pins_dry").Name) {
			t.Errorf("before the end the sheet says %q", n.Value)
		}
	}
	var results []record.Result
	sessions = nil
	for n := 1; n <= RoundCars; n++ {
		if n > 1 {
			sessions = append(sessions, entry(r, n, "handover"))
		}
		if v := Follow(c, sessions, results).View(lib, "ab", words); v.Complete {
			t.Fatal("complete too soon")
		}
		results = append(results, result(n, float64(10*n)))
	}
	r = Follow(c, sessions, results)
	v = r.View(lib, "ab", words)
	// Mean of 10, 20 … 100 and its standard error by hand: 55 and √(8250/9/10).
	if !v.Complete || v.Mean != 55 || math.Abs(v.Error-math.Sqrt(8250.0/90)) > 1e-12 || v.Model != "" || v.Renew == nil || v.Next != nil || v.Mark != nil {
		t.Errorf("at the end: %+v", v)
	}
	if v.Cars[0].Open != nil || v.Cars[1].Open == nil || v.Cars[0].Total != 10 || !strings.Contains(v.Cars[0].What, "gone_cause") {
		t.Errorf("cars 1 and 2 are %+v, %+v; the session of the first is gone", v.Cars[0], v.Cars[1])
	}
	for i := range results { // by hand: 10 · 30 minutes, 10 · 6 bits
		results[i].Model = &record.Model{Minutes: 30, Bits: 6}
	}
	told := Follow(c, sessions, results).View(lib, "ab", words)
	if !strings.Contains(told.Model, "300 min") || !strings.Contains(told.Model, "60.0 bits") {
		t.Errorf("of the model inspector it says %q", told.Model)
	}
	if v = r.View(lib, "other", words); v.Stale == "" || v.Mean != 55 || v.Cars[1].Open != nil || v.Renew == nil {
		t.Errorf("with another library: %+v", v)
	}
	for _, n := range v.Nodes {
		if strings.Contains(n.Name+n.Value, "‹") {
			t.Errorf("without words: %+v", n)
		}
	}
}
