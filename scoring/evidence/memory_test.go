package evidence

import (
	"reflect"
	"testing"
)

// TestMemory: what is remembered is what would be thought anew, for any minutes and
// in any order, and is thought less often.
func TestMemory(t *testing.T) {
	toy := big(12, 20)
	prices := &Prices{Preparations: []Preparation{{Minutes: 6}, {Minutes: 3}}, Checks: make([]Price, 20)}
	for c := range prices.Checks {
		prices.Checks[c].Minutes = 1 + float64(c%4)/2
		if c%3 > 0 {
			prices.Checks[c].Needs = []int{c%3 - 1}
		}
	}
	table := toy.filled(t)
	memory := table.Remember(prices)
	trails, thought := 0, 0
	var count func(at *node) (chosen int)
	count = func(at *node) (chosen int) {
		for _, next := range at.then {
			chosen += count(next)
		}
		return chosen + len(at.chosen)
	}
	l := newLuck(8)
	for _, i := range l.r.Perm(120) {
		minutes := float64(i) / 2
		truth := i % 12
		got, err := memory.Inspect(t.Context(), minutes, toy.reader(truth))
		if err != nil {
			t.Fatal(err)
		}
		want, err := table.Inspect(t.Context(), prices, minutes, toy.reader(truth))
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(got.Looks, want.Looks) || got.Minutes != want.Minutes {
			t.Fatalf("truth %d in %g minutes: remembered %+v, anew %+v", truth, minutes, got.Looks, want.Looks)
		}
		trails++
		thought += 1 + len(want.Looks)
	}
	if chosen := count(&memory.start); chosen > thought/2 {
		t.Errorf("%d choices were thought through for %d that were asked for: little was remembered", chosen, thought)
	} else {
		t.Logf("%d trails, %d choices asked for, %d thought through", trails, thought, chosen)
	}
}
