package evidence

import (
	"cmp"
	"math"
	"slices"
)

// plainBits is what a check tells of classes, by the definition: every live
// hypothesis by itself, the normal distribution and the logarithm of package math,
// the same bins.
func plainBits(s *scout, c int) float64 {
	m := &s.p.t.checks[c].Meter
	s.p.aimAt(c, m)
	mean, dev := make([]float64, len(s.hyps)), make([]float64, len(s.hyps))
	low, high := math.Inf(1), math.Inf(-1)
	for i, h := range s.hyps {
		col := s.p.column(c)
		f := &col.kind[col.of[h]]
		if !f.ok {
			dev[i] = math.NaN()
			continue
		}
		var a ray
		extra := s.p.aim(f, &a)
		mu, v := s.p.whole(s.p.group[h]).along(&a)
		mean[i], dev[i] = mu+f.mean, math.Sqrt(max(v+extra, leastVariance))
		low, high = min(low, mean[i]-4*dev[i]), max(high, mean[i]+4*dev[i])
	}
	if low > high {
		return 0
	}
	from, to := m.Show(low), m.Show(high)
	per := max(1, (to-from+maxBins)/maxBins)
	bins := int((to-from)/per) + 1
	joint, sum := make([][]float64, s.classes), make([]float64, bins)
	for k := range joint {
		joint[k] = make([]float64, bins)
	}
	for i, k := range s.classOf {
		for b := range bins {
			p := 1 / float64(bins)
			if !math.IsNaN(dev[i]) {
				lo, hi := math.Inf(-1), math.Inf(1)
				if b > 0 {
					lo, _ = m.Edges(from + int64(b)*per)
				}
				if b < bins-1 {
					hi, _ = m.Edges(from + int64(b+1)*per)
				}
				p = (1-m.Slip)*between((lo-mean[i])/dev[i], (hi-mean[i])/dev[i]) + m.Slip/float64(bins)
			}
			joint[k][b] += s.prob[i] * p
			sum[b] += s.prob[i] * p
		}
	}
	told := 0.0
	for k := range joint {
		for b, q := range joint[k] {
			if q > 1e-100 {
				told += q * math.Log2(q/(s.class[k]*sum[b]))
			}
		}
	}
	return told
}

// plainRoom is [search.room] with every check worked out.
func plainRoom(prices *Prices, done []bool, single []float64, free, these []int, minutes float64) bool {
	var worth []int
	for _, c := range free {
		if single[c] >= single[these[0]]/worthwhile {
			worth = append(worth, c)
		}
	}
	if len(worth) < endgame {
		return false
	}
	slices.SortStableFunc(worth, func(a, b int) int { return cmp.Compare(prices.cost(a, done), prices.cost(b, done)) })
	spent, after := 0.0, slices.Clone(done)
	for _, c := range worth[:endgame] {
		spent += prices.cost(c, after)
		prices.do(c, after)
	}
	return spent-hair <= minutes
}

// plainNext is [Posterior.next] with every check and pair worked out.
func plainNext(p *Posterior, prices *Prices, done, made []bool, minutes float64) (best int) {
	q := p.search(prices, done, made, minutes)
	single := make([]float64, len(p.t.checks))
	best, rate, blocked := -1, 0.0, -1
	consider := func(c int, told, cost float64) {
		if r := rounded(told / max(cost, leastMinutes)); r > rate {
			best, rate = c, r
		}
	}
	var free []int
	barred := map[int]float64{} // only looked up
	for c := range single {
		if cost := prices.cost(c, done); !made[c] && cost-hair <= minutes && q.forecast(c) {
			first := prices.missing(c, done, made)
			if first < 0 {
				free = append(free, c)
			}
			told := q.bits()
			switch {
			case told < leastBits:
			case first < 0:
				single[c] = told
				consider(c, told, cost)
			default:
				barred[c] = told
				if blocked < 0 && prices.cost(first, done)-hair <= minutes {
					blocked = first
				}
			}
		}
	}
	beyond := -1
	for c := range single {
		if barred[c] == 0 {
			continue
		}
		if first, cost := prices.with(c, done, made); cost-hair <= minutes {
			if r := rounded(barred[c] / max(cost, leastMinutes)); r > rate {
				beyond, rate = first, r
			}
		}
	}
	if beyond >= 0 {
		return beyond
	}
	most := func(n int, fits func(int) bool) []int {
		var all []int
		for c := range single {
			if single[c] > 0 && fits(c) {
				all = append(all, c)
			}
		}
		slices.SortStableFunc(all, func(a, b int) int { return cmp.Compare(single[b], single[a]) })
		return all[:min(n, len(all))]
	}
	if these := most(endgame, func(int) bool { return true }); len(these) > 0 && minutes < prices.tight(done, these)-hair && !plainRoom(prices, done, single, free, these, minutes) {
		return q.lastTwo(these)
	}
	together := func(these []int, least float64) {
		for i, a := range these {
			for _, b := range these[i+1:] {
				if cost := prices.both(a, b, done); cost-hair <= minutes {
					if told := max(q.pair(a, b), single[a]); told >= least {
						consider(a, told, cost)
					}
				}
			}
		}
	}
	for prep := range prices.Preparations {
		if !done[prep] && prices.Preparations[prep].Minutes >= worthSharing {
			together(most(deepest, func(c int) bool { return find(prices.Checks[c].Needs, prep) >= 0 }), 0)
		}
	}
	if best < 0 {
		best = blocked
	}
	if best < 0 {
		together(free[:min(len(free), widest)], leastBits)
	}
	return best
}
