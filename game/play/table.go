package play

import (
	"context"
	"fmt"
	"slices"
	"sync"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring/evidence"
)

// A table is the evidence about one car and what is known of it, shared by
// every session that asks the same question.
type table struct {
	key string
	*evidence.Table
	ears *ears  // nil when nobody told anything
	base *table // that is filled for this one; nil: it is its own

	mu     sync.Mutex
	cancel context.CancelFunc // of the filling that runs, or nil
	idle   chan struct{}      // closed when it has stopped
}

// table finds or prepares the table of a job. Nothing in it depends on the
// job's faults but what its owner told.
func (d *Desk) table(job *scenarios.Job) (*table, error) {
	key := TableKey(job)
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, t := range d.tables {
		if t.key == key {
			return t, nil
		}
	}
	p := newProblem(d.lib, job.Car, job.Driven)
	t := &table{key: key}
	if job.Claims != nil {
		t.ears = newEars(job.Car, job.Driven, p)
		p.Told = t.ears.told(job.Claims)
	}
	var err error
	if t.Table, err = evidence.NewTable(p); err != nil {
		return nil, err
	}
	d.tables = append(d.tables, t)
	return t, nil
}

// retold is the table when the owner had told something else, or nothing.
func (t *table) retold(claims []scenarios.Claim) *table {
	return &table{Table: t.Retold(t.heard(claims)), ears: t.ears}
}

// heard weighs what an owner told; who told nothing says nothing of any car.
func (t *table) heard(claims []scenarios.Claim) func(h int, centre *inspect.World) (float64, error) {
	if claims == nil {
		return func(int, *inspect.World) (float64, error) { return 0, nil }
	}
	return t.ears.told(claims)
}

// TableKey tells apart jobs that ask different questions: other cars, other facts
// told of their use, other complaints. Those of one key share a table at a desk.
func TableKey(job *scenarios.Job) string {
	known := scenarios.Vary(job.Driven, nil) // what an inspector believes without looking
	key := fmt.Sprintf("%s %v %v", job.Car.ID, known, job.Driven.Known)
	for _, c := range job.Claims {
		key += " " + c.ID + "." + c.Value
	}
	return key
}

// handed is the table when somebody hands these readings over.
func (t *table) handed(given []evidence.Reading) *table {
	return &table{key: t.key, Table: t.Handed(given), ears: t.ears, base: t}
}

// fill computes the table in the background, once, on this many goroutines.
func (t *table) fill(workers int) {
	if t.base != nil {
		t.base.fill(workers)
		return
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.cancel != nil {
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	t.cancel, t.idle = cancel, make(chan struct{})
	go func(idle chan struct{}) {
		defer close(idle)
		t.Fill(ctx, workers, nil) // the only error is that it was told to stop
	}(t.idle)
}

// pause stops the filling and waits until it has stopped.
func (t *table) pause() {
	if t.base != nil {
		t.base.pause()
		return
	}
	t.mu.Lock()
	cancel, idle := t.cancel, t.idle
	t.cancel = nil
	t.mu.Unlock()
	if cancel != nil {
		cancel()
		<-idle
	}
}

// newProblem is a car's whole question: every cause of the catalogue at every
// place with every severity, and every couple of causes. known holds only what an inspector was told.
func newProblem(lib *scenarios.Library, car *scenarios.Car, known scenarios.Driven) *evidence.Problem {
	p := &evidence.Problem{Checks: slices.Concat(inspect.Instances(), inspect.FormInstances())}
	for _, b := range scenarios.Backgrounds() {
		p.Background = append(p.Background, evidence.Background{ID: b})
	}
	p.Background = append(p.Background, evidence.Background{ID: "since_km"})
	var faults [][]scenarios.Fault // of each hypothesis; since when is open
	for _, c := range lib.Causes {
		share, weights := lib.Share(c), c.Weights()
		for _, at := range c.Places {
			for _, v := range c.Severities {
				p.Hypotheses = append(p.Hypotheses, evidence.Hypothesis{
					ID: rowID(c, at) + "#" + v.ID, Row: rowID(c, at), Cause: c.ID, Place: string(at),
					Prior: share * v.Weight / weights,
					Kin:   scenarios.Kin(c, &v, at),
				})
				faults = append(faults, []scenarios.Fault{{Cause: c, Place: at, Severity: v}})
			}
		}
	}
	for _, c := range lib.Couples() {
		a, b := &c.Faults[0], &c.Faults[1]
		p.Hypotheses = append(p.Hypotheses, evidence.Hypothesis{
			ID:  rowID(a.Cause, a.Place) + "#" + a.Severity.ID + evidence.And + rowID(b.Cause, b.Place) + "#" + b.Severity.ID,
			Row: rowID(a.Cause, a.Place), Cause: a.Cause.ID, Place: string(a.Place),
			Also:  evidence.Also{Row: rowID(b.Cause, b.Place), Cause: b.Cause.ID, Place: string(b.Place)},
			Prior: lib.PairShare * c.Share,
			Kin:   c.Kin(),
		})
		faults = append(faults, c.Faults[:])
	}
	faults = slices.Clip(faults)
	histories, memo := scenarios.NewHistories(&car.Spec), inspect.NewMemo(&car.Spec)
	p.Build = func(h int, b []float64) (*inspect.World, error) {
		driven, here := scenarios.Vary(known, b), slices.Clone(faults[h])
		felt := false
		for i := range here {
			here[i].SinceKm = since(here[i].Cause, driven, b)
			felt = felt || here[i].Felt(&car.Spec)
		}
		var cond physics.Condition
		var err error
		if len(here) == 1 {
			cond, err = histories.Build(driven, here[0])
		} else {
			cond, err = histories.Together(driven, here)
		}
		if err != nil {
			return nil, err
		}
		if felt { // a car with a way of its own is like no other
			return inspect.NewWorld(&car.Spec, cond)
		}
		return memo.NewWorld(cond)
	}
	p.Mirror = func(h, elder int, check inspect.Instance) (inspect.Instance, bool) {
		f, g := &faults[h][0], &faults[elder][0]
		side, half := scenarios.Image(&f.Severity, f.Place)
		side0, half0 := scenarios.Image(&g.Severity, g.Place)
		return check.Mirrored(side != side0, half != half0)
	}
	return p
}

// since is how long a fault has been there [km]: across the cause's range, its
// middle at b = 0 and its ends at two standard deviations, never longer than
// the pads have been in.
func since(c *scenarios.Cause, d scenarios.Driven, b []float64) float64 {
	lo, hi := c.SinceKm[0], c.SinceKm[1]
	z := 0.0
	if len(b) > scenarios.NumBackgrounds {
		z = b[scenarios.NumBackgrounds]
	}
	km := (lo+hi)/2 + float64(z*(hi-lo)/4)
	return min(max(km, lo), hi, d.PadsKm)
}

// await fills what is missing, on so many goroutines, and returns when all of it
// is there.
func (t *table) await(ctx context.Context, workers int, progress func(evidence.Progress)) error {
	t.pause()
	return t.Fill(ctx, workers, progress) // of one handed over the same rows
}
