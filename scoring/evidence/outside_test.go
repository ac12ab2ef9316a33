package evidence

import (
	"fmt"
	"math"
	"testing"
)

// near fails when got is off want by more than tol, or when the tolerance would
// also pass wrong, a mistake worth catching.
func near(t *testing.T, what string, got, want, tol, wrong float64) {
	t.Helper()
	if math.Abs(got-want) > tol {
		t.Errorf("%s: got %.6g, want %.6g ± %.2g", what, got, want, tol)
	}
	if math.Abs(wrong-want) <= tol {
		t.Errorf("%s: the tolerance %.2g would also pass %.6g", what, tol, wrong)
	}
}

// TestOC118: entropy of 20 counters spread 14, 4, 2 (definition; derived).
func TestOC118(t *testing.T) {
	near(t, "OC-118 entropy [bit]", Entropy([]float64{14. / 20, 4. / 20, 2. / 20}), 1.15678, 1e-5, 1.15678*math.Ln2)
}

// TestOC120: Bayes by hand (derived), through a table of word meters: the
// likelihoods come from where the truth lies between the words' cuts.
func TestOC120(t *testing.T) {
	like := []float64{0.9, 0.2, 0.5, 0.1}
	toy := newToy(0, 0.4, 0.3, 0.2, 0.1)
	inst := toy.add(words(2, 1), func(h int, _ []float64) float64 { return 0.5 + quantile(like[h]) })
	p, err := toy.filled(t).Posterior([]Reading{{inst, 1}})
	if err != nil {
		t.Fatal(err)
	}
	for h, want := range []float64{0.67925, 0.11321, 0.18868, 0.01887} {
		near(t, fmt.Sprint("OC-120 posterior ", h), p.Hypotheses()[h].P, want, 1e-5, like[h]/1.7)
	}
	evidence := 0.0
	for h, prior := range []float64{0.4, 0.3, 0.2, 0.1} {
		evidence += prior * math.Exp(p.LogLikelihood(h))
	}
	near(t, "OC-120 evidence", evidence, 0.53, 1e-9, 0.425)
}

// quantile is the standard normal quantile by bisection, for tests only.
func quantile(p float64) float64 {
	lo, hi := -9.0, 9.0
	for range 200 {
		if mid := (lo + hi) / 2; 0.5*math.Erfc(-mid/math.Sqrt2) < p {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// TestOC121: prior 0.3, sensitivity 0.9, specificity 0.8 (definition; derived).
func TestOC121(t *testing.T) {
	toy := newToy(0, 0.3, 0.7)
	inst := toy.add(words(2, 1), func(h int, _ []float64) float64 { return 0.5 + quantile([]float64{0.9, 0.2}[h]) })
	table := toy.filled(t)
	for display, want := range []float64{0.05085, 0.6585} {
		p, err := table.Posterior([]Reading{{inst, int64(display)}})
		if err != nil {
			t.Fatal(err)
		}
		near(t, fmt.Sprint("OC-121 after ", display), p.Row("h0"), want, 1e-4, 0.9)
	}
	p, _ := table.Posterior(nil)
	info, err := p.RowBits(inst)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "OC-121 gain [bit]", info.Bits, 0.33045, 1e-5, 0.33045*math.Ln2)
}

// TestOC122: eight equal suspects (definition; derived).
func TestOC122(t *testing.T) {
	eighths := []float64{.125, .125, .125, .125, .125, .125, .125, .125}
	near(t, "OC-122 in all", Entropy(eighths), 3, 1e-12, 3*math.Ln2)
	for _, c := range []struct {
		alone int
		want  float64
	}{{4, 1}, {2, 0.81128}, {1, 0.54356}, {0, 0}} {
		toy := newToy(0, eighths...)
		inst := toy.add(words(2, 1e-3), func(h int, _ []float64) float64 {
			if h < c.alone {
				return 1
			}
			return 0
		})
		p, err := toy.filled(t).Posterior(nil)
		if err != nil {
			t.Fatal(err)
		}
		info, err := p.RowBits(inst)
		if err != nil {
			t.Fatal(err)
		}
		near(t, fmt.Sprintf("OC-122 split %d/%d", c.alone, 8-c.alone), info.Bits, c.want, 1e-5, c.want+0.01)
	}
}

// ball is the balance's answer, 0 left down, 1 level, 2 right down, when ball
// h/2 is heavy (h even) or light (h odd).
func ball(left, right []int, h int) float64 {
	sign := 1.0 - 2*float64(h%2)
	switch {
	case find(left, h/2) >= 0:
		return 1 - sign
	case find(right, h/2) >= 0:
		return 1 + sign
	}
	return 1
}

// TestOC123: twelve balls, first weighing n against n. MacKay, Information
// Theory, Inference, and Learning Algorithms (2003), exercise 4.1 and p. 70.
func TestOC123(t *testing.T) {
	toy := twelve()
	all := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}
	for n := 1; n <= 6; n++ {
		toy.add(words(3, 1e-3), func(h int, _ []float64) float64 { return ball(all[:n], all[n:2*n], h) })
	}
	p, err := toy.filled(t).Posterior(nil)
	if err != nil {
		t.Fatal(err)
	}
	best := 0
	worth := p.All()
	for n, want := range []float64{0.8167, 1.2516, 1.5, 1.5850, 1.4834, 1} {
		near(t, fmt.Sprintf("OC-123 %d against %d [bit]", n+1, n+1), worth[n].Bits, want, 1e-4, want*math.Ln2)
		if worth[n].Bits > worth[best].Bits {
			best = n
		}
	}
	if best != 3 {
		t.Errorf("OC-123: best first weighing is %d against %d, want 4 against 4", best+1, best+1)
	}
}

func twelve() *toy {
	priors := make([]float64, 24)
	for h := range priors {
		priors[h] = 1. / 24
	}
	return newToy(0, priors...)
}

// TestOC124: twelve balls, whole: the model inspector finds any ball in three
// weighings, the second of 1.5613 bits. MacKay (2003), p. 70: 3 log₂ 3 = 4.755
// bits suffice for log₂ 24 = 4.585.
func TestOC124(t *testing.T) {
	toy := twelve()
	type weighing struct{ left, right []int }
	var all []weighing
	// Every weighing of three or four against three or four, mirrored ones left out.
	var choose func(at int, w weighing)
	choose = func(at int, w weighing) {
		if len(w.left) > 4 || len(w.right) > 4 {
			return
		}
		if at == 12 {
			if n := len(w.left); n == len(w.right) && n > 0 && w.left[0] < w.right[0] {
				all = append(all, weighing{append([]int(nil), w.left...), append([]int(nil), w.right...)})
			}
			return
		}
		choose(at+1, w)
		choose(at+1, weighing{append(w.left[:len(w.left):len(w.left)], at), w.right})
		choose(at+1, weighing{w.left, append(w.right[:len(w.right):len(w.right)], at)})
	}
	choose(0, weighing{})
	// A seeded tenth of them, and the textbook's first weighing, keeps the test quick.
	l := newLuck(124)
	kept := []weighing{{[]int{0, 1, 2, 3}, []int{4, 5, 6, 7}}}
	for _, w := range all {
		if l.r.Float64() < 0.05 {
			kept = append(kept, w)
		}
	}
	m := words(3, 1e-3)
	for _, w := range kept {
		toy.add(m, func(h int, _ []float64) float64 { return ball(w.left, w.right, h) })
	}
	table := toy.filled(t)
	prices := &Prices{Checks: make([]Price, len(kept))}
	for i := range prices.Checks {
		prices.Checks[i].Minutes = 1
	}
	index := func(r Reading) weighing { return kept[find(toy.p.Checks, r.Check)] }
	for _, truth := range []int{0, 7, 13, 22} {
		trail, err := table.Inspect(t.Context(), prices, 3, toy.reader(truth))
		if err != nil {
			t.Fatal(err)
		}
		if len(trail.Looks) > 3 || trail.Final.Hypotheses()[truth].P < 0.999 {
			t.Errorf("truth %d: %d weighings, belief %.3f", truth, len(trail.Looks), trail.Final.Hypotheses()[truth].P)
			continue
		}
		near(t, "OC-124 first weighing [bit]", trail.Looks[0].Bits, math.Log2(3), 1e-4, 1.5613)
		if w := index(trail.Looks[0].Reading); len(w.left) != 4 {
			t.Errorf("OC-124: first weighing is %d against %d", len(w.left), len(w.right))
		}
		near(t, "OC-124 second weighing [bit]", trail.Looks[1].Bits, 1.5613, 1e-4, math.Log2(3)-0.01)
	}
}
