package evidence

import (
	"context"

	"evenwear/physics/inspect"
)

// A Look is one check of the model inspector's trail.
type Look struct {
	Reading Reading
	Minutes float64 // [min] spent when it was done
	Bits    float64 // [bit] it was expected to tell
	Top     Belief  // the likeliest row after it
}

// A Trail is how the model inspector played a job.
type Trail struct {
	Heard   Belief // the likeliest before any look, when only the owner had been heard
	Looks   []Look
	Minutes float64 // [min]
	Final   *Posterior
}

const (
	sureEnough   = 0.95 // the inspector stops when a row is believed more than this
	leastBits    = 1e-4 // [bit] and when no check that can be afforded tells more
	deepest      = 4    // checks a preparation whose pairs are looked at
	few          = 8    // of the cheapest check: when no more than these fit, the end is planned for
	endgame      = 6    // checks looked at when the minutes run out
	worthwhile   = 4    // a check that tells as many times less than the best is still worth making
	worthSharing = 2    // [min] a preparation at least this long makes pairs worth a look
	widest       = 40   // checks whose pairs are looked at when none tells anything alone
)

// Inspect plays a job: read makes a check on the true car and returns what its
// meter displays. It looks two checks deep, because a wheel that is off serves
// both, takes the most bits a minute while no row is believed above 0.95 and
// minutes [min] remain, and thinks again after every reading. It never makes a
// check twice. Nobody signs for a car on its owner's word: however sure that makes,
// it looks at least once. Ties go to the check that stands first in the problem. The
// table must hold every check.
func (t *Table) Inspect(ctx context.Context, prices *Prices, minutes float64, read func(inspect.Instance) (int64, error)) (Trail, error) {
	return t.Remember(prices).Inspect(ctx, minutes, read)
}

// Inspect is [Table.Inspect] of what is remembered.
func (m *Memory) Inspect(ctx context.Context, minutes float64, read func(inspect.Instance) (int64, error)) (Trail, error) {
	t, prices := m.t, m.prices
	if err := prices.verify(len(t.checks)); err != nil {
		return Trail{}, err
	}
	p, err := m.Posterior()
	if err != nil {
		return Trail{}, err
	}
	trail := Trail{Heard: p.Top(), Final: p}
	defer p.tidy()
	done, made := prices.begin(), make([]bool, len(t.checks))
	for len(trail.Looks) == 0 || p.Top().P <= sureEnough {
		if err := ctx.Err(); err != nil {
			return trail, err
		}
		c, bits := p.recall(prices, done, made, minutes-trail.Minutes)
		if c < 0 {
			break
		}
		inst := t.problem.Checks[c]
		display, err := read(inst)
		if err != nil {
			return trail, err
		}
		trail.Minutes += prices.cost(c, done)
		prices.do(c, done)
		made[c] = true
		r := Reading{inst, display}
		if err := p.Add(r); err != nil {
			return trail, err
		}
		trail.Looks = append(trail.Looks, Look{r, trail.Minutes, bits, p.Top()})
	}
	return trail, nil
}

// Next is the check with the most bits a minute among those not made that can
// be afforded, with its bits; false when there is none.
// What the readings so far needed stands.
func (p *Posterior) Next(prices *Prices, minutes float64) (inspect.Instance, float64, bool) {
	if prices.verify(len(p.t.checks)) != nil {
		return inspect.Instance{}, 0, false
	}
	done, made := prices.begin(), make([]bool, len(p.t.checks))
	for _, r := range p.Readings() { // what was given is nobody's own look: it may be looked at again
		c := find(p.t.problem.Checks, r.Check)
		made[c] = true
		prices.do(c, done)
	}
	c, bits := p.recall(prices, done, made, minutes)
	if c < 0 {
		return inspect.Instance{}, 0, false
	}
	return p.t.problem.Checks[c], bits, true
}
