package evidence

import (
	"cmp"
	"slices"
)

// A search is the choice of the check to be made next. What a check tells is dear
// to work out, a bound on it is cheap: no check is worked out whose bound shows that
// it cannot be chosen, nor be among those that are looked at in pairs.
type search struct {
	*scout
	prices     *Prices
	done, made []bool
	minutes    float64   // [min] left
	within     span      // of minutes for which the choice is the same
	cost       []float64 // [min] by check, of those not made
	most       []float64 // [bit] by check: it tells no more
	single     []float64 // [bit] by check, where known
	known      []bool
	open       []int // checks that could be made now and may tell something
	barred     []int // checks that could if another had been made before

	best int // −1: none
	rate float64
}

// next is the check to be made next, −1 for none, and for what other minutes left
// it would be the same.
func (p *Posterior) next(prices *Prices, done, made []bool, minutes float64) (best int, bits float64, within span) {
	q := p.search(prices, done, made, minutes)
	best, bits = q.choose()
	return best, bits, q.within
}

func (p *Posterior) search(prices *Prices, done, made []bool, minutes float64) *search {
	n := len(p.t.checks)
	q := &search{scout: p.scout(p.t.classOf), prices: prices, done: done, made: made, minutes: minutes, within: anyMinutes(),
		cost: make([]float64, n), most: make([]float64, n), single: make([]float64, n), known: make([]bool, n), best: -1}
	for c := range n {
		if made[c] {
			continue
		}
		q.cost[c] = prices.cost(c, done)
		if q.cost[c]-hair > minutes {
			q.afford(q.cost[c])
			continue
		}
		v, ok := q.aim(c)
		if !ok {
			continue
		}
		if q.most[c] = min(v.most(), q.unsure+slack); q.most[c] < leastBits {
			continue
		}
		if prices.missing(c, done, made) >= 0 {
			q.barred = append(q.barred, c)
		} else {
			q.open = append(q.open, c)
		}
	}
	return q
}

// afford tells that there are minutes for a cost [min] and that this matters.
func (q *search) afford(cost float64) bool { return q.within.afford(cost, q.minutes) }

// tells is the bits of a check by itself.
func (q *search) tells(c int) float64 {
	if !q.known[c] {
		q.known[c] = true
		q.bin(c, &q.views[c])
		q.single[c] = q.bits()
	}
	return q.single[c]
}

// a minute of so many bits for a cost; a check that costs nothing has no infinite rate.
func aMinute(bits, cost float64) float64 { return rounded(bits / max(cost, leastMinutes)) }

const leastMinutes = 0.1

func (q *search) choose() (best int, bits float64) {
	q.one()
	if first := q.beyond(); first >= 0 {
		return first, q.tells(first)
	}
	if these := q.ending(); these != nil {
		c := q.lastTwo(these)
		return c, q.tells(c)
	}
	// Pairs pay where a preparation is still to be done for both.
	for prep := range q.prices.Preparations {
		if !q.done[prep] && q.prices.Preparations[prep].Minutes >= worthSharing {
			q.behind(prep)
		}
	}
	if q.best >= 0 {
		return q.best, q.tells(q.best)
	}
	for _, c := range q.barred { // a check that must be made before one that tells something
		if first := q.prices.missing(c, q.done, q.made); q.tells(c) >= leastBits && q.afford(q.cost[c]) && q.afford(q.prices.cost(first, q.done)) {
			return first, 0
		}
	}
	// Nothing tells anything alone: two checks may still do so together.
	var left []int
	for c := range q.cost {
		if !q.made[c] && len(left) < widest && q.afford(q.cost[c]) && q.prices.missing(c, q.done, q.made) < 0 {
			left = append(left, c)
		}
	}
	q.together(left, leastBits)
	if q.best < 0 {
		return -1, 0
	}
	return q.best, q.tells(q.best)
}

// one finds the check with the most bits a minute by itself; of equals the first.
func (q *search) one() {
	order := slices.Clone(q.open)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(aMinute(q.most[b], q.cost[b]), aMinute(q.most[a], q.cost[a])) })
	for _, c := range order {
		if aMinute(q.most[c], q.cost[c]) < q.rate {
			break
		}
		if q.tells(c) < leastBits {
			continue
		}
		if r := aMinute(q.single[c], q.cost[c]); r > q.rate || r == q.rate && q.best > c {
			q.best, q.rate = c, r
		}
	}
	if q.best >= 0 {
		q.afford(q.cost[q.best])
	}
}

// beyond is the check to be made first for the sake of one that may not be made yet,
// where that one tells most a minute with all that must come before it counted; −1
// where it does not.
func (q *search) beyond() (first int) {
	first = -1
	for _, c := range q.barred {
		if aMinute(q.most[c], q.cost[c]) <= q.rate {
			continue
		}
		before, cost := q.prices.with(c, q.done, q.made)
		if aMinute(q.most[c], cost) <= q.rate || q.tells(c) < leastBits || !q.afford(cost) {
			continue
		}
		if r := aMinute(q.single[c], cost); r > q.rate {
			first, q.rate = before, r
		}
	}
	return first
}

// tellMost lists the n of these checks that tell most by themselves, most first.
// They would be the same without minutes for any other.
func (q *search) tellMost(n int, these []int) []int {
	order := slices.Clone(these)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(q.most[b], q.most[a]) })
	var all []int
	for _, c := range order {
		if len(all) == n && q.most[c] <= q.single[all[n-1]] {
			break
		}
		if q.tells(c) < leastBits {
			continue
		}
		at := len(all)
		for at > 0 && (q.single[all[at-1]] < q.single[c] || q.single[all[at-1]] == q.single[c] && all[at-1] > c) {
			at--
		}
		all = slices.Insert(all, at, c)
		all = all[:min(len(all), n)]
	}
	for _, c := range all {
		q.afford(q.cost[c])
	}
	return all
}

// ending lists the checks among which the last are chosen, when the minutes are
// tight for those that tell most; nil when they are not. See [Prices.tight].
func (q *search) ending() []int {
	// A cheap check that fewer than all of them can outdo is one of them, and the
	// cheapest is no dearer.
	best := -1
	for _, c := range q.open {
		if float64(few*q.cost[c])-hair <= q.minutes && q.known[c] && q.single[c] >= leastBits && (best < 0 || q.single[c] > q.single[best]) {
			best = c
		}
	}
	if best >= 0 && q.better(best) < endgame {
		need := float64(few * q.cost[best])
		if two := q.tellMost(2, q.open); len(two) == 2 {
			need = max(need, q.cost[best]+min(q.prices.both(two[0], two[1], q.done), q.prices.both(two[1], two[0], q.done)))
		}
		if need-hair <= q.minutes {
			q.afford(need)
			return nil
		}
	}
	these := q.tellMost(endgame, q.open)
	if len(these) == 0 || q.afford(q.prices.tight(q.done, these)) || q.plenty(these) {
		return nil
	}
	return these
}

// plenty tells that the end is not yet although what tells most is dear: there are
// minutes for as many other checks worth making, one after the other, so that what
// they share is prepared once, the cheapest first.
func (q *search) plenty(these []int) bool {
	least := q.single[these[0]] / worthwhile
	order := slices.Clone(q.open)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(q.cost[a], q.cost[b]) })
	var worth []int
	for _, c := range order {
		if len(worth) < endgame && q.most[c] >= least && q.tells(c) >= least {
			worth = append(worth, c)
		}
	}
	return len(worth) == endgame && q.afford(q.prices.together(q.done, worth))
}

// better is how many checks may tell as much as one that is known.
func (q *search) better(than int) (n int) {
	for _, c := range q.open {
		if c != than && (!q.known[c] && q.most[c] > q.single[than] || q.known[c] && q.single[c] >= q.single[than]) {
			n++
		}
	}
	return n
}

// behind looks at pairs of checks that both need a preparation.
func (q *search) behind(prep int) {
	var these []int
	first, second, least := 0.0, 0.0, 0.0
	for _, c := range q.open {
		if find(q.prices.Checks[c].Needs, prep) < 0 {
			continue
		}
		if len(these) == 0 || q.cost[c] < least {
			least = q.cost[c]
		}
		these = append(these, c)
		first, second = max(first, q.most[c]), max(second, min(first, q.most[c]))
	}
	if len(these) > 1 && aMinute(min(first+second, q.unsure+slack), least) > q.rate {
		q.together(q.tellMost(deepest, these), 0)
	}
}

// together looks at pairs of these checks that tell at least so many bits.
func (q *search) together(these []int, least float64) {
	for i, a := range these {
		for _, b := range these[i+1:] {
			most := min(q.most[a]+q.most[b], q.unsure+slack)
			cost := q.prices.both(a, b, q.done)
			if most < least || aMinute(most, cost) <= q.rate || !q.afford(cost) {
				continue
			}
			told := max(q.pair(a, b), q.single[a])
			if r := aMinute(told, cost); told >= least && r > q.rate {
				q.best, q.rate = a, r
			}
		}
	}
}

// lastTwo chooses when few more checks fit: minutes left over are worth nothing,
// so the pair that leaves the call surest wins, bits only where
// that is equal. At least one of these is returned.
func (q *search) lastTwo(these []int) int {
	best, most := these[0], -1.0
	consider := func(c, bins int) {
		if v := rounded(q.surest(bins) + float64(1e-3*q.jointBits(bins))); v > most {
			best, most = c, v
		}
	}
	for _, c := range these {
		q.forecast(c)
		q.gather()
		consider(c, q.f.bins)
	}
	for i, a := range these {
		for _, b := range these[i+1:] {
			first := a
			if !q.afford(q.prices.both(a, b, q.done)) {
				if !q.afford(q.prices.both(b, a, q.done)) {
					continue
				}
				first = b
			}
			if q.pair(a, b); q.pairBins > 0 {
				consider(first, q.pairBins)
			}
		}
	}
	return best
}
