package evidence

import (
	"context"
	"errors"
	"fmt"
	"runtime"
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
	probes  []int   // points that show whether a check moves with the background at all
	order   [][]int // hypotheses by falling prior, kin together
	checks  []*inspect.Check
	rows    []atomic.Pointer[tableRow] // by hypothesis; nil while nothing is known
	given   []Reading                  // that every posterior begins with
	columns atomic.Pointer[columns]    // of the rows that were judged last
	first   atomic.Pointer[first]      // what checks tell before any reading
	filling sync.Mutex                 // one Fill or Ensure at a time

	names
}

// A tableRow is what is known of one hypothesis. It is immutable.
type tableRow struct {
	have []bool
	fits []Fit
	seen []sight // what its kin may be told from
	told float64 // [nat] ln P(what the owner told | hypothesis)
	err  error   // the hypothesis cannot be built at all
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
	points := design(len(p.Background), p.Thorough)
	t := &Table{problem: p, points: points, probes: probes(points), rows: make([]atomic.Pointer[tableRow], n)}
	for _, inst := range p.Checks {
		c, ok := p.find(inst.Check)
		if !ok {
			return nil, fmt.Errorf("evidence: there is no check %s", inst.Check)
		}
		t.checks = append(t.checks, c)
	}
	for i := range n {
		t.names.add(&p.Hypotheses[i])
	}
	t.order = p.order()
	return t, nil
}

// order lists the hypotheses by falling prior, kin together.
func (p *Problem) order() [][]int {
	all := make([]int, len(p.Hypotheses))
	for i := range all {
		all[i] = i
	}
	sort.SliceStable(all, func(a, b int) bool { return p.Hypotheses[all[a]].Prior > p.Hypotheses[all[b]].Prior })
	var order [][]int
	var kins []string
	for _, h := range all {
		kin := p.Hypotheses[h].Kin
		at := find(kins, kin)
		if kin == "" || at < 0 {
			at = len(order)
			order, kins = append(order, nil), append(kins, kin)
		}
		order[at] = append(order[at], h)
	}
	return order
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

// Ensure computes only these checks, on all cores.
func (t *Table) Ensure(ctx context.Context, checks []inspect.Instance) error {
	var want []int
	for _, inst := range checks {
		i, err := t.index(inst)
		if err != nil {
			return err
		}
		want = append(want, i)
	}
	return t.compute(ctx, runtime.GOMAXPROCS(0), want, nil)
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
				if at >= len(t.order) {
					return
				}
				kin := t.order[at]
				for i, h := range kin {
					these := want
					if i == 0 {
						these = t.forKin(kin, want)
					}
					row, err := t.computeRow(ctx, h, kin[0], these)
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
