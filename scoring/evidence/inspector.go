package evidence

import (
	"context"
	"fmt"

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
	Looks   []Look
	Minutes float64 // [min]
	Final   *Posterior
}

const (
	sureEnough = 0.95 // the inspector stops when a row is believed more than this
	leastBits  = 1e-4 // [bit] and when no check that can be afforded tells more
	deepest    = 6    // checks a preparation whose pairs are looked at
	widest     = 40   // checks whose pairs are looked at when none tells anything alone
)

// Inspect plays a job: read makes a check on the true car and returns what its
// meter displays. It looks two checks deep, because a wheel that is off serves
// both, takes the most bits a minute while no row is believed above 0.95 and
// minutes [min] remain, and thinks again after every reading. It never makes a
// check twice. Ties go to the check that stands first in the problem. The table
// must hold every check.
func (t *Table) Inspect(ctx context.Context, prices *Prices, minutes float64, read func(inspect.Instance) (int64, error)) (Trail, error) {
	if len(prices.Checks) != len(t.checks) {
		return Trail{}, fmt.Errorf("evidence: %d prices for %d checks", len(prices.Checks), len(t.checks))
	}
	p, err := t.Posterior(nil)
	if err != nil {
		return Trail{}, err
	}
	trail := Trail{Final: p}
	done, made := make([]bool, len(prices.Preparations)), make([]bool, len(t.checks))
	for p.Top().P <= sureEnough {
		if err := ctx.Err(); err != nil {
			return trail, err
		}
		c, bits := p.next(prices, done, made, minutes-trail.Minutes)
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
// be afforded: its index in the problem, or −1, and its bits.
func (p *Posterior) Next(prices *Prices, done []bool, minutes float64) (inspect.Instance, float64, bool) {
	made := make([]bool, len(p.t.checks))
	for _, r := range p.readings {
		made[find(p.t.problem.Checks, r.Check)] = true
	}
	c, bits := p.next(prices, done, made, minutes)
	if c < 0 {
		return inspect.Instance{}, 0, false
	}
	return p.t.problem.Checks[c], bits, true
}

func (p *Posterior) next(prices *Prices, done, made []bool, minutes float64) (best int, bits float64) {
	s := p.scout(p.t.rowOf)
	single := make([]float64, len(p.t.checks))
	best = -1
	rate := 0.0
	consider := func(c int, told, cost float64) {
		if r := rounded(told / max(cost, leastMinutes)); r > rate {
			best, bits, rate = c, single[c], r
		}
	}
	for c := range p.t.checks {
		if made[c] || prices.cost(c, done) > minutes || !p.forecast(c, s.hyps, &s.f) {
			continue
		}
		s.gather(&s.f)
		if single[c] = s.bits(s.f.bins); single[c] >= leastBits {
			consider(c, single[c], prices.cost(c, done))
		}
	}
	// Pairs pay only where a preparation is still to be done; elsewhere the two would be made one by one.
	for prep := range prices.Preparations {
		if done[prep] {
			continue
		}
		these := p.behind(prices, prep, single)
		for i, a := range these {
			for _, b := range these[i+1:] {
				if cost := prices.both(a, b, done); cost <= minutes {
					consider(a, max(s.pair(a, b), single[a]), cost)
				}
			}
		}
	}
	if best >= 0 {
		return best, bits
	}
	// Nothing tells anything alone: two checks may still do so together.
	var left []int
	for c := range p.t.checks {
		if !made[c] && prices.cost(c, done) <= minutes && len(left) < widest {
			left = append(left, c)
		}
	}
	for i, a := range left {
		for _, b := range left[i+1:] {
			if cost := prices.both(a, b, done); cost <= minutes {
				if told := s.pair(a, b); told >= leastBits {
					consider(a, told, cost)
				}
			}
		}
	}
	return best, bits
}

// leastMinutes keeps a check that costs nothing from an infinite rate.
const leastMinutes = 0.1

// behind lists the checks that need a preparation and tell most, most first.
func (p *Posterior) behind(prices *Prices, prep int, single []float64) []int {
	var all []int
	for c := range single {
		if single[c] < leastBits || find(prices.Checks[c].Needs, prep) < 0 {
			continue
		}
		at := len(all)
		for at > 0 && single[all[at-1]] < single[c] {
			at--
		}
		all = append(all, 0)
		copy(all[at+1:], all[at:])
		all[at] = c
		all = all[:min(len(all), deepest)]
	}
	return all
}

// pairBins is how coarsely two checks are judged together.
const pairBins = 12

// pair is what two checks tell together, taken as independent under each
// hypothesis: good enough to rank a bundle; the readings themselves are always
// judged with all they share.
func (s *scout) pair(a, b int) float64 {
	if !s.p.forecast(a, s.hyps, &s.f) || !s.p.forecast(b, s.hyps, &s.g) {
		return 0
	}
	f, g := s.f.coarse(), s.g.coarse()
	bins := f.bins * g.bins
	both := forecast{bins: bins, p: make([]float64, len(s.hyps)*bins)}
	for i := range s.hyps {
		for x := range f.bins {
			for y := range g.bins {
				both.p[i*bins+x*g.bins+y] = f.p[i*f.bins+x] * g.p[i*g.bins+y]
			}
		}
	}
	s.gather(&both)
	return s.bits(bins)
}

// coarse gathers neighbouring bins until at most pairBins are left.
func (f *forecast) coarse() forecast {
	if f.bins == 0 {
		return forecast{}
	}
	per := (f.bins + pairBins - 1) / pairBins
	c := forecast{bins: (f.bins + per - 1) / per}
	n := len(f.p) / f.bins
	c.p = make([]float64, n*c.bins)
	for i := range n {
		for b := range f.bins {
			c.p[i*c.bins+b/per] += f.p[i*f.bins+b]
		}
	}
	return c
}
