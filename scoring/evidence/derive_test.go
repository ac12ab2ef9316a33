package evidence

import (
	"math"
	"testing"

	"evenwear/physics/inspect"
)

// TestBent: somebody who believes that a check shows the opposite believes the
// opposite after it, and the table he learnt from stays as it was.
func TestBent(t *testing.T) {
	toy := newToy(1, 0.5, 0.5)
	inst := toy.add(gauge("rule", 1, 0.5, 0, 0), func(h int, b []float64) float64 { return 5 + float64(10*h) + b[0] })
	table := toy.filled(t)
	bent := table.Bent(func(h int, _ inspect.Instance, f Fit) Fit {
		f.Mean = 20 - f.Mean
		return f
	})
	for _, c := range []struct {
		t    *Table
		want string
	}{{table, "h1"}, {bent, "h0"}, {table, "h1"}} {
		p, err := c.t.Posterior([]Reading{{inst, 15}})
		if err != nil {
			t.Fatal(err)
		}
		if p.Top().ID != c.want || p.Top().P < 0.99 {
			t.Errorf("believes %+v, want %s", p.Top(), c.want)
		}
	}
}

// TestPart: to be told that it is one of two is to drop the others by Bayes.
func TestPart(t *testing.T) {
	toy := newToy(1, 0.5, 0.3, 0.2)
	inst := toy.add(gauge("rule", 1, 2, 1, 0.01), func(h int, b []float64) float64 { return 8 + float64(2*h) + b[0] })
	table := toy.filled(t)
	readings := []Reading{{inst, 9}, {inst, 11}}
	all, err := table.Posterior(readings)
	if err != nil {
		t.Fatal(err)
	}
	part, err := table.Part([]int{0, 2}, nil)
	if err != nil {
		t.Fatal(err)
	}
	two, err := part.Posterior(readings)
	if err != nil {
		t.Fatal(err)
	}
	want := all.Row("h2") / (all.Row("h0") + all.Row("h2"))
	if got := two.Row("h2"); math.Abs(got-want) > 1e-12 {
		t.Errorf("h2 is believed %.6f of the two, want %.6f", got, want)
	}
	even, err := table.Part([]int{0, 2}, []float64{1, 1})
	if err != nil {
		t.Fatal(err)
	}
	if got := even.PriorRows()[1].P; got != 0.5 {
		t.Errorf("even priors give %g, want 0.5", got)
	}
	if _, err := table.Part([]int{3}, nil); err == nil {
		t.Error("a hypothesis that is not there was taken")
	}
}

// TestAsked: what is believed of an answer is the sum over what stands for it, and
// a check that tells the hypotheses apart may tell nothing of the answer.
func TestAsked(t *testing.T) {
	toy := newToy(0, 0.25, 0.25, 0.25, 0.25)
	low := toy.add(words(2, 1e-3), func(h int, _ []float64) float64 { return float64(h % 2) })
	high := toy.add(words(2, 1e-3), func(h int, _ []float64) float64 { return float64(h / 2) })
	table, err := toy.filled(t).Asked(func(h *Hypothesis) string {
		if h.ID == "h0" || h.ID == "h3" {
			return "alike"
		}
		return "different"
	})
	if err != nil {
		t.Fatal(err)
	}
	p, err := table.Posterior(nil)
	if err != nil {
		t.Fatal(err)
	}
	if info, _ := p.RowBits(low); info.Bits > 1e-9 {
		t.Errorf("one check tells %g bits of whether the two are alike, want none", info.Bits)
	}
	for _, r := range []Reading{{low, 1}, {high, 0}} {
		if err := p.Add(r); err != nil {
			t.Fatal(err)
		}
	}
	if got := p.Row("different"); got < 0.99 {
		t.Errorf("believes %g in different after both checks", got)
	}
}
