package evidence

import (
	"context"
	"errors"
	"fmt"
	"math"
	"sort"
	"sync"
	"sync/atomic"

	"evenwear/physics/inspect"
)

// A Table holds a [Fit] for each hypothesis and check of a problem. It may be
// read while it is being filled.
type Table struct {
	problem *Problem
	points  []point
	order   []int // hypotheses by falling prior
	checks  []*inspect.Check
	rows    []atomic.Pointer[tableRow] // by hypothesis; nil while nothing is known
	filling sync.Mutex                 // one Fill or Ensure at a time

	rowOf, causeOf, placeOf []int // hypothesis -> group
	rowIDs                  []string
	causeIDs, placeIDs      []string
	causeOfRow, placeOfRow  []int
}

// A tableRow is what is known of one hypothesis. It is immutable.
type tableRow struct {
	have []bool
	fits []Fit
	err  error // the hypothesis cannot be built at all
}

// Progress tells how far a table is filled.
type Progress struct {
	Done, Failed, Total int     // hypotheses
	Mass                float64 // [1] share of prior mass that is computed
}

// NewTable prepares an empty table.
func NewTable(p *Problem) (*Table, error) {
	if err := p.verify(); err != nil {
		return nil, err
	}
	n := len(p.Hypotheses)
	t := &Table{problem: p, points: design(len(p.Background)), rows: make([]atomic.Pointer[tableRow], n), order: make([]int, n)}
	for _, inst := range p.Checks {
		c, ok := p.find(inst.Check)
		if !ok {
			return nil, fmt.Errorf("evidence: there is no check %s", inst.Check)
		}
		t.checks = append(t.checks, c)
	}
	for i := range n {
		h := &p.Hypotheses[i]
		t.order[i] = i
		r := group(&t.rowIDs, h.Row)
		t.rowOf = append(t.rowOf, r)
		t.causeOf = append(t.causeOf, group(&t.causeIDs, h.Cause))
		t.placeOf = append(t.placeOf, group(&t.placeIDs, h.Place))
		if r == len(t.causeOfRow) {
			t.causeOfRow = append(t.causeOfRow, t.causeOf[i])
			t.placeOfRow = append(t.placeOfRow, t.placeOf[i])
		}
	}
	sort.SliceStable(t.order, func(a, b int) bool {
		return p.Hypotheses[t.order[a]].Prior > p.Hypotheses[t.order[b]].Prior
	})
	return t, nil
}

// group returns the index of id, which it appends when it is new.
func group(ids *[]string, id string) int {
	for i, s := range *ids {
		if s == id {
			return i
		}
	}
	*ids = append(*ids, id)
	return len(*ids) - 1
}

// Problem returns what the table is about. It must not be changed.
func (t *Table) Problem() *Problem { return t.problem }

// index finds a check of the problem.
func (t *Table) index(inst inspect.Instance) (int, error) {
	for i, c := range t.problem.Checks {
		if c == inst {
			return i, nil
		}
	}
	return 0, fmt.Errorf("evidence: check %s is not one of this problem's checks", inst)
}

// Fill computes every check, the likeliest hypotheses first, until it is done
// or the context is. progress may be nil; it is never called by two at once.
func (t *Table) Fill(ctx context.Context, workers int, progress func(Progress)) error {
	want := make([]int, len(t.checks))
	for i := range want {
		want[i] = i
	}
	return t.compute(ctx, workers, want, progress)
}

// Ensure computes only these checks, on two workers.
func (t *Table) Ensure(ctx context.Context, checks []inspect.Instance) error {
	var want []int
	for _, inst := range checks {
		i, err := t.index(inst)
		if err != nil {
			return err
		}
		want = append(want, i)
	}
	return t.compute(ctx, 2, want, nil)
}

func (t *Table) compute(ctx context.Context, workers int, want []int, progress func(Progress)) error {
	t.filling.Lock()
	defer t.filling.Unlock()
	var next atomic.Int64
	var wait sync.WaitGroup
	var telling sync.Mutex
	for range max(1, workers) {
		wait.Go(func() {
			for {
				at := int(next.Add(1)) - 1
				if at >= len(t.order) || ctx.Err() != nil {
					return
				}
				h := t.order[at]
				row, err := t.computeRow(ctx, h, want)
				if err != nil {
					return // cancelled
				}
				telling.Lock()
				t.rows[h].Store(row)
				if progress != nil {
					progress(t.Progress())
				}
				telling.Unlock()
			}
		})
	}
	wait.Wait()
	return ctx.Err()
}

// Progress tells how many hypotheses have been computed.
func (t *Table) Progress() Progress {
	p := Progress{Total: len(t.rows)}
	for h := range t.rows {
		switch r := t.rows[h].Load(); {
		case r == nil:
		case r.err != nil:
			p.Failed++
		default:
			p.Done++
			p.Mass += t.problem.Hypotheses[h].Prior
		}
	}
	return p
}

// Failed returns a sentence for each hypothesis that could not be built.
func (t *Table) Failed() error {
	var all []error
	for h := range t.rows {
		if r := t.rows[h].Load(); r != nil && r.err != nil {
			all = append(all, fmt.Errorf("%s: %w", t.problem.Hypotheses[h].ID, r.err))
		}
	}
	return errors.Join(all...)
}

// Fit returns what is known of one hypothesis at one check.
func (t *Table) Fit(h int, inst inspect.Instance) (Fit, bool) {
	c, err := t.index(inst)
	if err != nil || h < 0 || h >= len(t.rows) {
		return Fit{}, false
	}
	r := t.rows[h].Load()
	if r == nil || r.err != nil || !r.have[c] {
		return Fit{}, false
	}
	return r.fits[c], true
}

// pulls is how often a point is brought half way to the centre before it is given up.
const pulls = 4

// computeRow works the wanted checks of one hypothesis: one world a point. It
// returns an error only when cancelled.
func (t *Table) computeRow(ctx context.Context, h int, want []int) (*tableRow, error) {
	row := &tableRow{have: make([]bool, len(t.checks)), fits: make([]Fit, len(t.checks))}
	var todo []int
	if old := t.rows[h].Load(); old != nil {
		if old.err != nil {
			return old, nil
		}
		copy(row.have, old.have)
		copy(row.fits, old.fits)
	}
	for _, c := range want {
		if !row.have[c] {
			todo = append(todo, c)
		}
	}
	if len(todo) == 0 {
		return row, nil
	}
	pull := make([]float64, len(t.points))
	values := make([][]float64, len(todo))
	for i := range values {
		values[i] = make([]float64, len(t.points))
	}
	for i, pt := range t.points {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if pull[i] = 1; pt.axis >= 0 && i%2 == 0 {
			pull[i] = pull[i-1] // both ends of an axis lie equally far out
		}
		w, err := t.build(h, pt.b, &pull[i])
		if err != nil && pt.axis == -1 {
			row.err = err
			return row, nil
		}
		for j, c := range todo {
			values[j][i] = math.NaN()
			if err == nil {
				values[j][i] = measure(t.checks[c], w, t.problem.Checks[c])
			}
		}
		if pt.axis >= 0 && i%2 == 0 && pull[i] < pull[i-1] {
			w, err := t.build(h, t.points[i-1].b, &pull[i])
			pull[i-1] = pull[i]
			for j, c := range todo {
				values[j][i-1] = math.NaN()
				if err == nil {
					values[j][i-1] = measure(t.checks[c], w, t.problem.Checks[c])
				}
			}
		}
	}
	for j, c := range todo {
		row.have[c] = true
		row.fits[c] = fit(t.points, pull, values[j])
	}
	return row, nil
}

// build makes the world at pull·b and brings it nearer to the centre while the
// physics refuses the car there.
func (t *Table) build(h int, b []float64, pull *float64) (*inspect.World, error) {
	at := make([]float64, len(b))
	var err error
	for range pulls {
		for i := range b {
			at[i] = *pull * b[i]
		}
		var w *inspect.World
		if w, err = t.problem.Build(h, at); err == nil {
			return w, nil
		}
		*pull /= 2
	}
	return nil, err
}

// measure is a check's answer in its meter's unit, or NaN.
func measure(c *inspect.Check, w *inspect.World, inst inspect.Instance) float64 {
	v, err := c.Measure(w, inst.Wheel)
	if err != nil {
		return math.NaN()
	}
	if c.Meter.PerUnit > 0 {
		v /= c.Meter.PerUnit
	}
	return v
}
