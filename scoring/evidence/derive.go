package evidence

import (
	"fmt"
	"sync/atomic"

	"evenwear/physics/inspect"
)

// Bent is a copy of what t holds now with every fit changed: the table of
// somebody who has a wrong idea of how faults show. change is asked for each
// hypothesis and check that has an answer.
func (t *Table) Bent(change func(h int, inst inspect.Instance, f Fit) Fit) *Table {
	b := t.like(t.problem)
	for h := range t.rows {
		old := t.rows[h].Load()
		if old == nil || old.err != nil {
			b.rows[h].Store(old)
			continue
		}
		row := &tableRow{have: old.have, fits: make([]Fit, len(old.fits)), seen: old.seen, told: old.told}
		for c := range old.fits {
			row.fits[c] = old.fits[c]
			if old.have[c] && old.fits[c].OK {
				row.fits[c] = change(h, t.problem.Checks[c], old.fits[c])
			}
		}
		b.rows[h].Store(row)
	}
	return b
}

// Retold is a table of what t holds now when the owner told something else: told
// stands in the place of [Problem.Told]; its world is nil for a hypothesis that t
// holds.
func (t *Table) Retold(told func(h int, centre *inspect.World) (float64, error)) *Table {
	p := *t.problem
	p.Told = told
	r := t.like(&p)
	for h := range t.rows {
		row := t.rows[h].Load()
		if row != nil && row.err == nil {
			again := *row
			again.told, again.err = told(h, nil)
			row = &again
		}
		r.rows[h].Store(row)
	}
	return r
}

// Handed is t, as far as it is filled and will be, when somebody else has taken these
// readings before and hands them over: every posterior begins with them. t is the one
// to be filled.
func (t *Table) Handed(readings []Reading) *Table {
	g := t.like(t.problem)
	g.rows, g.given = t.rows, readings
	return g
}

// Given are the readings that every posterior begins with.
func (t *Table) Given() []Reading { return t.given }

// like is a table about the same without anything computed.
func (t *Table) like(p *Problem) *Table {
	return &Table{problem: p, points: t.points, probes: t.probes, order: t.order, checks: t.checks,
		rows: make([]atomic.Pointer[tableRow], len(t.rows)), given: t.given, names: t.names}
}

// Part is a table of some of t's hypotheses with what t holds of them now:
// the question when it is known to be one of these. weight are their new priors,
// scaled to sum to 1, whatever the owner told; nil keeps their proportions and what
// was told.
func (t *Table) Part(hyps []int, weight []float64) (*Table, error) {
	few := *t.problem
	few.Hypotheses = nil
	sum := 0.0
	for i, h := range hyps {
		if h < 0 || h >= len(t.rows) {
			return nil, fmt.Errorf("evidence: hypothesis %d of %d", h, len(t.rows))
		}
		x := t.problem.Hypotheses[h]
		if weight != nil {
			x.Prior = weight[i]
		}
		sum += x.Prior
		few.Hypotheses = append(few.Hypotheses, x)
	}
	for i := range few.Hypotheses {
		few.Hypotheses[i].Prior /= sum
	}
	build, mirror := t.problem.Build, t.problem.Mirror
	few.Build = func(h int, b []float64) (*inspect.World, error) { return build(hyps[h], b) }
	if mirror != nil {
		few.Mirror = func(h, elder int, c inspect.Instance) (inspect.Instance, bool) {
			return mirror(hyps[h], hyps[elder], c)
		}
	}
	switch told := t.problem.Told; {
	case weight != nil:
		few.Told = nil
	case told != nil:
		few.Told = func(h int, w *inspect.World) (float64, error) { return told(hyps[h], w) }
	}
	p, err := NewTable(&few)
	if err != nil {
		return nil, err
	}
	for i, h := range hyps {
		p.rows[i].Store(t.rows[h].Load())
	}
	return p, nil
}

// Asked is t with what it holds now, asked another question: row says which answer
// a hypothesis stands for, in place of its cause and place.
func (t *Table) Asked(row func(h *Hypothesis) string) (*Table, error) {
	other := *t.problem
	other.Hypotheses = append([]Hypothesis(nil), t.problem.Hypotheses...)
	for i := range other.Hypotheses {
		h := &other.Hypotheses[i]
		r := row(h)
		h.Row, h.Cause, h.Also = r, r, Also{}
	}
	a, err := NewTable(&other)
	if err != nil {
		return nil, err
	}
	for h := range t.rows {
		a.rows[h].Store(t.rows[h].Load())
	}
	return a, nil
}
