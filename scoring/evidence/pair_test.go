package evidence

import (
	"math"
	"testing"

	"evenwear/physics/inspect"
)

// TestTwoAtOnce: what is believed of two faults at once stands half on each row;
// the bits of the truth are those of both together, and of one those of it alone.
func TestTwoAtOnce(t *testing.T) {
	y := newToy(0, 0.45, 0.45, 0.1) // a, b, both
	h := &y.p.Hypotheses[2]
	h.Row, h.Cause = "h0", "h0"
	h.Also = Also{Row: "h1", Cause: "h1", Place: "here"}
	exact := inspect.Meter{Unit: "mm", Resolution: 1, Division: 1, Sigma: 0.01, Hi: 3}
	first := y.add(exact, func(h int, _ []float64) float64 { return []float64{1, 0, 1}[h] })
	second := y.add(exact, func(h int, _ []float64) float64 { return []float64{0, 1, 1}[h] })
	table := y.filled(t)
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %.12g, want %.12g", what, got, want)
		}
	}
	rows := table.PriorRows()
	if len(rows) != 2 {
		t.Fatalf("rows %v, want two", rows)
	}
	near("prior of a", rows[0].P, 0.5)
	p, err := table.Posterior([]Reading{{first, 1}})
	if err != nil {
		t.Fatal(err)
	}
	near("a, first seen", p.Row("h0"), (0.45+0.05)/0.55)
	near("b, first seen", p.Row("h1"), 0.05/0.55)
	near("bits of a alone", p.Bits("h0"), math.Log2(1/0.55))
	near("bits of both", p.Bits("h1", "h0"), math.Log2(1/0.55))
	near("bits of b alone", p.Bits("h1"), math.Log2(leastProb/0.45))
	if top := p.Top(); top.ID != "h0" {
		t.Errorf("top %v", top)
	}
	p, err = table.Posterior([]Reading{{first, 1}, {second, 1}})
	if err != nil {
		t.Fatal(err)
	}
	near("a, both seen", p.Row("h0"), 0.5)
	near("b, both seen", p.Row("h1"), 0.5)
	near("cause b", p.Causes()[1].P, 0.5)
	near("here", p.Places()[0].P, 1)
	if top := p.Top(); top.ID != "h0"+And+"h1" || top.P < 0.999 {
		t.Errorf("top %v", top)
	}
}
