package scoring

import "math"

// Brier is Σ(r − t)² over rows; beliefs and truth in the same order.
func Brier(belief, truth []float64) float64 {
	sum := 0.0
	for i := range belief {
		d := belief[i] - truth[i]
		sum += float64(d * d)
	}
	return sum
}

// Proper is the diagnosis mark of a belief:
//
//	100·(1 − B(r, t)/(1 − Σπ²))
//
// A rising straight line of the quadratic score whose constants do not hang on
// the truth, so saying what one believes is the only best; the prior gets 0
// when the truth is drawn from it; never clipped. A prior that leaves nothing
// open makes no question: the mark is 100 for it.
func Proper(belief, truth, prior []float64) float64 {
	open := 1.0
	for _, p := range prior {
		open -= float64(p * p)
	}
	if open <= 0 {
		return 100
	}
	return 100 * (1 - Brier(belief, truth)/open)
}

// Spread makes a belief of counters: counters[i] of 20 on row i. Counters not
// placed are spread as the prior over the rows that have none; when every row
// has one, over all.
func Spread(counters []int, prior []float64) []float64 {
	placed, open := 0, 0.0
	for i, n := range counters {
		placed += n
		if n == 0 {
			open += prior[i]
		}
	}
	left := float64(Counters-placed) / Counters
	belief := make([]float64, len(counters))
	for i, n := range counters {
		belief[i] = float64(n) / Counters
		switch {
		case open > 0 && n == 0:
			belief[i] += float64(left*prior[i]) / open
		case open <= 0:
			belief[i] += float64(left * prior[i])
		}
	}
	return belief
}

// Counters is how many counters a learner has.
const Counters = 20

// Project puts a belief on 20 counters by largest remainder, which is nearest
// in Σ(r − p)² of all spreads of 20; ties go to the first row.
func Project(belief []float64) []int {
	counters := make([]int, len(belief))
	rest := make([]float64, len(belief))
	left := Counters
	for i, p := range belief {
		share := float64(Counters * p)
		// A share of 2.9999999999 is three: what sums leave behind must not decide.
		whole := math.Floor(share + 1e-9)
		counters[i] = int(whole)
		rest[i] = share - whole
		left -= counters[i]
	}
	for ; left > 0 && len(rest) > 0; left-- {
		best := 0
		for i := range rest {
			if rest[i] > rest[best] {
				best = i
			}
		}
		counters[best]++
		rest[best] -= 1
	}
	return counters
}

// Shares are counters as a belief.
func Shares(counters []int) []float64 {
	b := make([]float64, len(counters))
	for i, n := range counters {
		b[i] = float64(n) / Counters
	}
	return b
}

// Distance is the Jensen–Shannon distance [1]: the root of the divergence in
// base 2; 0 for equal beliefs, 1 for beliefs that share no row.
func Distance(p, q []float64) float64 {
	d := 0.0
	for i := range p {
		m := (p[i] + q[i]) / 2
		if p[i] > 0 {
			d += float64(p[i] * log2(p[i]/m) / 2)
		}
		if q[i] > 0 {
			d += float64(q[i] * log2(q[i]/m) / 2)
		}
	}
	return math.Sqrt(min(1, max(0, d)))
}

// round is to 0.01, halves away from zero.
func round(x float64) float64 {
	if x < 0 {
		return -round(-x)
	}
	return math.Floor(float64(x*100)+0.5) / 100
}

func clamp(x, lo, hi float64) float64 { return min(max(x, lo), hi) }

// truthOf is 1/m on each of the m true rows.
func truthOf(n int, rows []int) []float64 {
	t := make([]float64, n)
	for _, r := range rows {
		t[r] += 1 / float64(len(rows))
	}
	return t
}
