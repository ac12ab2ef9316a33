package play

import (
	"context"
	"fmt"
	"strings"
	"sync"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring"
	"evenwear/scoring/evidence"
)

// A Case is a job without a session: what simulated learners play by thousands.
// Its answers are measured once; looks, luck and marks are those of a session.
// It may be used by several goroutines once its table is filled.
type Case struct {
	s      *Session
	told   scenarios.Driven // what was told of its use, beside what cannot be known
	prices evidence.Prices
	truth  []answer // by check of the problem
	scales *scales

	mu    sync.Mutex
	cures map[string]*cure // by row and severity
}

// An answer is what a check shows without noise [SI]; measured at most once.
type answer struct {
	once  sync.Once
	value float64
	err   error
}

// A cure is what somebody does who believes a row; worked out at most once.
type cure struct {
	once sync.Once
	Cure
	err error
}

// Case lays a job out to be played by thousands. Cases of the same car and facts
// at one desk share a table, which is not filled yet.
func (d *Desk) Case(job *scenarios.Job) (*Case, error) {
	t, err := d.table(job)
	if err != nil {
		return nil, err
	}
	return d.newCase(job, job.Driven, t)
}

// newCase lays a job out whose evidence is table.
func (d *Desk) newCase(job *scenarios.Job, told scenarios.Driven, t *table) (*Case, error) {
	found, err := buildWorld(job.Car, job.Driven, job.Faults)
	if err != nil {
		return nil, fmt.Errorf("job %s: %w", job.ID, err)
	}
	s := &Session{desk: d, words: d.words, job: job, found: found, table: t}
	return &Case{s: s, told: told, prices: evidence.InspectPricesOf(t.Problem(), s.arrived()), cures: map[string]*cure{}, truth: make([]answer, len(t.Problem().Checks))}, nil
}

// ID is the job's.
func (c *Case) ID() string { return c.s.job.ID }

// Minutes is what the job allows [min].
func (c *Case) Minutes() float64 { return c.s.job.Minutes }

// Table is the evidence about the car.
func (c *Case) Table() *evidence.Table { return c.s.table.Table }

// Retold is a table that was made of [Case.Table] of another case of the same car
// and facts, with this case's owner heard instead and its notes handed over.
func (c *Case) Retold(t *evidence.Table) *evidence.Table {
	return t.Retold(c.s.table.heard(c.s.job.Claims)).Handed(c.s.table.Given())
}

// OnPaper tells that only notes of the car are there.
func (c *Case) OnPaper() bool { return c.s.away() }

// Prices are what its checks cost.
func (c *Case) Prices() *evidence.Prices { return &c.prices }

// Truth is the rows that are true.
func (c *Case) Truth() []string { return c.s.trueRows() }

// Show is what the meter of a check shows at the first look in the session of
// this seed, as [Session.Do] would show it.
func (c *Case) Show(seed uint64, inst inspect.Instance) (int64, error) {
	for i, other := range c.s.table.Problem().Checks {
		if other == inst {
			a := &c.truth[i]
			a.once.Do(func() { a.value, a.err = c.s.found.Clone().Measure(inst) })
			form, _ := inspect.Find(inst.Check)
			return look(seed, c.s.job.ID, inst, form, a.value, 0), a.err
		}
	}
	return 0, fmt.Errorf("check %s is not one of this job's", inst)
}

// Weigh works out what becomes of the car after the sets of remedies that come
// into question. It must be called, once, before Decide.
func (c *Case) Weigh(ctx context.Context) (err error) {
	c.scales, err = c.s.scales(ctx, nil)
	return err
}

// Decide fills the decision into a play: remedies chosen and release. known tells
// that most counters stand on what is true.
func (c *Case) Decide(p *scoring.Play, chosen []string, release string, known bool) error {
	mine, _, err := c.scales.choice(chosen, release, known)
	if err != nil {
		return err
	}
	p.Release = release
	c.scales.decide(p, mine, choiceID(chosen, release))
	return nil
}

// Referral is the remedy that hands the car to a mechanic; none when the library
// has none.
func (c *Case) Referral() []string {
	for _, r := range c.s.desk.lib.Remedies {
		if r.Refers {
			return []string{r.ID + "@" + string(r.Places[0])}
		}
	}
	return nil
}

// A Cure is what somebody does about a car: remedies, and the use it is given
// back for.
type Cure struct {
	Remedies []string
	Release  string
}

// Cure is what loses least on a car of this kind in which a row is true, as
// somebody chooses it who believes that row at a severity, and the use that is to
// be expected: what the fault has worn meanwhile is part of it.
func (c *Case) Cure(ctx context.Context, row, severity string) (Cure, error) {
	key := row + "#" + severity
	c.mu.Lock()
	k := c.cures[key]
	if k == nil {
		k = &cure{}
		c.cures[key] = k
	}
	c.mu.Unlock()
	k.once.Do(func() { k.Cure, k.err = c.cure(ctx, row, severity) })
	return k.Cure, k.err
}

func (c *Case) cure(ctx context.Context, row, severity string) (Cure, error) {
	d := c.s.desk
	id, at, _ := strings.Cut(row, "@")
	cause := d.lib.Cause(id)
	if cause == nil {
		return Cure{}, fmt.Errorf("there is no cause %q", short(id))
	}
	bad := cause.Severity(severity)
	if bad == nil {
		return Cure{}, fmt.Errorf("%s has no severity %q", id, short(severity))
	}
	if cause.Healthy && len(bad.Start)+len(bad.End) == 0 {
		return Cure{Release: scoring.ReleaseUse}, nil
	}
	job := *c.s.job
	job.ID, job.Driven, job.Claims = row, scenarios.Vary(c.told, nil), nil
	job.Faults = []scenarios.Fault{{Cause: cause, Place: scenarios.Place(at), Severity: *bad, SinceKm: since(cause, job.Driven, nil)}}
	s := &Session{desk: d, words: d.words, job: &job}
	var err error
	if s.found, err = buildWorld(job.Car, job.Driven, job.Faults); err != nil {
		return Cure{}, err
	}
	w, err := s.scales(ctx, nil)
	if err != nil {
		return Cure{}, err
	}
	return Cure{w.set, w.best.Release}, nil
}
