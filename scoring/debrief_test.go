package scoring

import (
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// TestMostWorth: of a dear decisive check and a cheap good one the cheap is
// worth more a minute, and its place in the learner's readings is told.
func TestMostWorth(t *testing.T) {
	meter := inspect.Meter{Instrument: "eye", PerUnit: 1, Resolution: 1, Division: 1, Sigma: 0.3, Hi: 1, Words: []string{"no", "yes"}, Cuts: []float64{0.5}}
	state := func(w *inspect.World, _ physics.Wheel) (float64, error) { return float64(w.Rest.Millis), nil }
	checks := []inspect.Check{{ID: "dear", Meter: meter, Measure: state}, {ID: "cheap", Meter: meter, Measure: state}}
	p := &evidence.Problem{
		Hypotheses: []evidence.Hypothesis{{ID: "a", Row: "a", Prior: 0.5}, {ID: "b", Row: "b", Prior: 0.5}},
		Checks:     []inspect.Instance{{Check: "dear"}, {Check: "cheap"}},
		Build: func(h int, _ []float64) (*inspect.World, error) {
			return &inspect.World{Rest: physics.State{Millis: int64(h)}}, nil
		},
		Find: func(id inspect.ID) (*inspect.Check, bool) {
			for i := range checks {
				if checks[i].ID == id {
					return &checks[i], true
				}
			}
			return nil, false
		},
	}
	table, err := evidence.NewTable(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := table.Fill(t.Context(), 1, nil); err != nil {
		t.Fatal(err)
	}
	prices := &evidence.Prices{Preparations: []evidence.Preparation{{Minutes: 9}}, Checks: []evidence.Price{{Minutes: 1, Needs: []int{0}}, {Minutes: 1}}}
	got, err := MostWorth(table, prices, []evidence.Reading{{Check: p.Checks[0]}, {Check: p.Checks[1]}})
	if err != nil {
		t.Fatal(err)
	}
	if got.Check.Check != "cheap" || got.Made != 2 || got.Minutes != 1 || got.Bits < 0.5 {
		t.Errorf("most worth is %+v, want the cheap check, made second", got)
	}
	if got, _ = MostWorth(table, prices, nil); got.Made != 0 {
		t.Errorf("made as number %d of none", got.Made)
	}
}

// TestBeliefs: rows that nobody thinks of are left out, the true one never.
func TestBeliefs(t *testing.T) {
	p := good()
	p.True, p.Counters = []int{2}, []int{15, 0, 0, 0}
	got := Beliefs(p, 0.01)
	if len(got) != 2 || got[0].Row != "pins@fl" || got[0].Counters != 15 || got[1].Row != "leak@rr" || !got[1].True {
		t.Errorf("rows %+v", got)
	}
}
