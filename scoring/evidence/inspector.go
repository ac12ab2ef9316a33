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
	worthSharing = 2    // [min] a preparation at least this long makes pairs worth a look
	widest       = 40   // checks whose pairs are looked at when none tells anything alone
)

// Inspect plays a job: read makes a check on the true car and returns what its
// meter displays. It looks two checks deep, because a wheel that is off serves
// both, takes the most bits a minute while no row is believed above 0.95 and
// minutes [min] remain, and thinks again after every reading. It never makes a
// check twice. Ties go to the check that stands first in the problem. The table
// must hold every check.
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
	trail := Trail{Final: p}
	done, made := prices.begin(), make([]bool, len(t.checks))
	for p.Top().P <= sureEnough {
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
	for _, r := range p.readings {
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

// next is the check to be made next, −1 for none, and for what other minutes left
// it would be the same.
func (p *Posterior) next(prices *Prices, done, made []bool, minutes float64) (best int, bits float64, within span) {
	s := p.scout(p.t.classOf)
	single := make([]float64, len(p.t.checks))
	best, within = -1, anyMinutes()
	rate := 0.0
	consider := func(c int, told, cost float64) {
		if r := rounded(told / max(cost, leastMinutes)); r > rate {
			best, bits, rate = c, single[c], r
		}
	}
	var tried [][2]int
	blocked := -1 // a check that must be made before one that tells something
	for c := range p.t.checks {
		if made[c] {
			continue
		}
		cost := prices.cost(c, done)
		if cost-hair > minutes {
			within.afford(cost, minutes)
			continue
		}
		if !p.forecast(c, s.hyps, &s.f) {
			continue
		}
		s.gather(&s.f)
		if single[c] = s.bits(s.f.bins); single[c] < leastBits {
			continue // whether it can be afforded or not
		}
		within.afford(cost, minutes)
		if first := prices.missing(c, done, made); first >= 0 {
			single[c] = 0
			if blocked < 0 && within.afford(prices.cost(first, done), minutes) {
				blocked = first
			}
		} else {
			consider(c, single[c], cost)
		}
	}
	// Pairs pay where a preparation is still to be done for both, and at the end,
	// when what remains is only enough for two.
	together := func(these []int) {
		for i, a := range these {
			for _, b := range these[i+1:] {
				cost := prices.both(a, b, done)
				if !within.afford(cost, minutes) || find(tried, [2]int{a, b}) >= 0 {
					continue
				}
				tried = append(tried, [2]int{a, b})
				consider(a, max(s.pair(a, b), single[a]), cost)
			}
		}
	}
	if these := most(single, endgame, func(int) bool { return true }); len(these) > 0 && !within.afford(prices.tight(done, these), minutes) {
		c := s.lastTwo(these, prices, done, minutes, &within)
		return c, single[c], within
	}
	for prep := range prices.Preparations {
		if !done[prep] && prices.Preparations[prep].Minutes >= worthSharing {
			together(most(single, deepest, func(c int) bool { return find(prices.Checks[c].Needs, prep) >= 0 }))
		}
	}
	if best < 0 {
		best = blocked
	}
	if best >= 0 {
		return best, bits, within
	}
	// Nothing tells anything alone: two checks may still do so together.
	var left []int
	for c := range p.t.checks {
		if !made[c] && len(left) < widest && within.afford(prices.cost(c, done), minutes) && prices.missing(c, done, made) < 0 {
			left = append(left, c)
		}
	}
	for i, a := range left {
		for _, b := range left[i+1:] {
			if cost := prices.both(a, b, done); within.afford(cost, minutes) {
				if told := s.pair(a, b); told >= leastBits {
					consider(a, told, cost)
				}
			}
		}
	}
	return best, bits, within
}

// leastMinutes keeps a check that costs nothing from an infinite rate.
const leastMinutes = 0.1

// most lists the n checks that tell most, most first.
func most(single []float64, n int, fits func(c int) bool) []int {
	var all []int
	for c := range single {
		if single[c] < leastBits || !fits(c) {
			continue
		}
		at := len(all)
		for at > 0 && single[all[at-1]] < single[c] {
			at--
		}
		if at == n {
			continue
		}
		all = append(all, 0)
		copy(all[at+1:], all[at:])
		all[at] = c
		all = all[:min(len(all), n)]
	}
	return all
}

// lastTwo chooses when few more checks fit: minutes left over are worth nothing,
// so the pair that leaves the call surest wins, bits only where
// that is equal. At least one of these is returned.
func (s *scout) lastTwo(these []int, prices *Prices, done []bool, minutes float64, within *span) int {
	best, most := these[0], -1.0
	consider := func(c, bins int) {
		if v := rounded(s.surest(bins) + float64(1e-3*s.bits(bins))); v > most {
			best, most = c, v
		}
	}
	for _, c := range these {
		s.p.forecast(c, s.hyps, &s.f)
		s.gather(&s.f)
		consider(c, s.f.bins)
	}
	for i, a := range these {
		for _, b := range these[i+1:] {
			first := a
			if !within.afford(prices.both(a, b, done), minutes) {
				if !within.afford(prices.both(b, a, done), minutes) {
					continue
				}
				first = b
			}
			if s.pair(a, b); s.pairBins > 0 {
				consider(first, s.pairBins)
			}
		}
	}
	return best
}

// surest is the expected belief in the likeliest class after the check gathered last.
func (s *scout) surest(bins int) float64 {
	sum := 0.0
	for b := range bins {
		top := 0.0
		for c := range s.classes {
			top = max(top, s.joint[c*bins+b])
		}
		sum += top
	}
	return sum
}

// pairBins is how coarsely two checks are judged together.
const pairBins = 8

// pair is what two checks tell together, taken as independent under each
// hypothesis: good enough to rank a bundle; the readings themselves are always
// judged with all they share.
func (s *scout) pair(a, b int) float64 {
	f, g := s.rough(a), s.rough(b)
	bins := f.bins * g.bins
	if s.pairBins = bins; bins == 0 {
		return 0
	}
	s.room(bins)
	for i, c := range s.classOf {
		to, also := s.joint[c*bins:(c+1)*bins], g.p[i*g.bins:(i+1)*g.bins]
		for x, p := range f.p[i*f.bins : (i+1)*f.bins] {
			p *= s.prob[i]
			cell := to[x*g.bins:][:len(also)]
			for y, q := range also {
				cell[y] += float64(p * q)
			}
		}
	}
	return s.bits(bins)
}

// rough is the coarse forecast of a check, kept; it has no bins when the check
// has not been computed.
func (s *scout) rough(c int) *forecast {
	if s.coarse == nil {
		s.coarse = make([]*forecast, len(s.p.t.checks))
	}
	if s.coarse[c] == nil {
		f := forecast{}
		if s.p.forecast(c, s.hyps, &s.f) {
			f = s.f.coarse()
		}
		s.coarse[c] = &f
	}
	return s.coarse[c]
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
