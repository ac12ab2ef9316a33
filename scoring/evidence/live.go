package evidence

import "sort"

// liveMass is the posterior mass whose hypotheses are looked at when a check
// is judged beforehand; at most liveMost of them. A hypothesis left out of mass
// δ changes an information by at most δ·log₂(rows) + the entropy of (δ, 1 − δ) bits.
const (
	liveMass = 0.999
	liveMost = 256
)

// live returns the fewest hypotheses that hold liveMass of what is computed,
// likeliest first, ties in the order of the problem, with their probabilities
// scaled to sum to 1, and the mass left out.
func (p *Posterior) live() (hyps []int, prob []float64, left float64) {
	for h, row := range p.rows {
		if row != nil && p.prob[h] > 0 {
			hyps = append(hyps, h)
		}
	}
	sort.SliceStable(hyps, func(a, b int) bool { return p.prob[hyps[a]] > p.prob[hyps[b]] })
	total := 1 - p.missing
	sum := 0.0
	for n, h := range hyps {
		if n == liveMost || sum >= liveMass*total {
			hyps = hyps[:n]
			break
		}
		sum += p.prob[h]
	}
	prob = make([]float64, len(hyps))
	for n, h := range hyps {
		prob[n] = p.prob[h] / sum
	}
	return hyps, prob, max(0, total-sum)
}
