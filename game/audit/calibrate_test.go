package audit

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenwear/scoring/evidence"
)

// TestRanks: ranks are flat when the truth comes as often as it is believed, and
// not when beliefs are too sure or too little.
func TestRanks(t *testing.T) {
	ids := []string{"a", "b", "c", "d"}
	spread := func(power float64, luck *rand.Rand) (stated []evidence.Belief, truth string) {
		p := make([]float64, len(ids))
		sum := 0.0
		for i := range p {
			p[i] = luck.ExpFloat64()
			sum += p[i]
		}
		left := luck.Float64() * sum
		for i := range p {
			if left -= p[i]; truth == "" && left < 0 {
				truth = ids[i]
			}
		}
		sharp := 0.0
		for i := range p {
			p[i] = math.Pow(p[i], power)
			sharp += p[i]
		}
		for i := range p {
			stated = append(stated, evidence.Belief{ID: ids[i], P: p[i] / sharp})
		}
		return stated, truth
	}
	for power, flat := range map[float64]bool{1: true, 2: false, 0.5: false} {
		luck := rand.New(rand.NewPCG(6, 6))
		var r Ranks
		for range 2000 {
			stated, truth := spread(power, luck)
			r.put(stated, truth, luck)
		}
		n, square, p := r.Flat()
		if n != 2000 || (p >= 0.01) != flat {
			t.Errorf("beliefs to the power %g: %v, chi-square %.1f, p %.4f; want flat %v", power, r, square, p, flat)
		}
	}
	even := Ranks{10, 10, 10, 10, 10, 10, 10, 10, 10, 10}
	if _, square, p := even.Flat(); square != 0 || p != 1 {
		t.Errorf("even ranks: chi-square %g, p %g", square, p)
	}
	// By hand: 16 of 100 in one tenth, 4 in another, 10 in each of the rest: 36/10 twice.
	uneven := Ranks{16, 4, 10, 10, 10, 10, 10, 10, 10, 10}
	n, square, p := uneven.Flat()
	if n != 100 || math.Abs(square-7.2) > 1e-9 {
		t.Errorf("chi-square %g of %d, want 7.2 of 100", square, n)
	}
	// Between the quantiles of NIST's handbook 1.3.6.7.4 on 9: 4.168 at 0.90, 14.684 at 0.10.
	if p < 0.1 || p > 0.9 {
		t.Errorf("p of 7.2 is %g, want between 0.10 and 0.90", p)
	}
}
