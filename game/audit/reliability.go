package audit

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Scores are marks: one line a learner, one column a job [marks of 100].
type Scores [][]float64

// verify refuses scores of which nothing can be said, in a sentence.
func (s Scores) verify() error {
	if len(s) < 2 {
		return fmt.Errorf("audit: scores of %d learners; at least 2 are needed", len(s))
	}
	k := len(s[0])
	if k < 2 {
		return fmt.Errorf("audit: scores in %d jobs; at least 2 are needed", k)
	}
	for i, line := range s {
		if len(line) != k {
			return fmt.Errorf("audit: learner %d has %d scores, the first has %d", i+1, len(line), k)
		}
		for j, x := range line {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return fmt.Errorf("audit: learner %d has %g in job %d; a score is a number", i+1, x, j+1)
			}
		}
	}
	return nil
}

// column is the scores in one job.
func (s Scores) column(j int) []float64 {
	c := make([]float64, len(s))
	for i := range s {
		c[i] = s[i][j]
	}
	return c
}

// totals is each learner's sum over all jobs but one; −1 leaves none out.
func (s Scores) totals(but int) []float64 {
	t := make([]float64, len(s))
	for i := range s {
		for j, x := range s[i] {
			if j != but {
				t[i] += x
			}
		}
	}
	return t
}

// without is the scores with one job left out.
func (s Scores) without(j int) Scores {
	w := make(Scores, len(s))
	for i := range s {
		w[i] = append(append([]float64(nil), s[i][:j]...), s[i][j+1:]...)
	}
	return w
}

// Alpha is Cronbach's coefficient [1] of k jobs:
//
//	α = k/(k − 1)·(1 − Σ var(job)/var(total))
//
// Cronbach, Psychometrika 16 (1951) 297. NaN when all totals are alike.
func (s Scores) Alpha() (float64, error) {
	if err := s.verify(); err != nil {
		return 0, err
	}
	k := float64(len(s[0]))
	sum := 0.0
	for j := range s[0] {
		sum += stat.Variance(s.column(j), nil)
	}
	return k / (k - 1) * (1 - sum/stat.Variance(s.totals(-1), nil)), nil
}

// Standardised is α of scores brought to one spread, k·r/(1 + (k − 1)·r), with
// r the mean correlation between two jobs.
func (s Scores) Standardised() (alpha, r float64, err error) {
	if err := s.verify(); err != nil {
		return 0, 0, err
	}
	k := len(s[0])
	for a := range k {
		for b := a + 1; b < k; b++ {
			r += stat.Correlation(s.column(a), s.column(b), nil)
		}
	}
	r /= float64(k*(k-1)) / 2
	return SpearmanBrown(r, float64(k)), r, nil
}

// Interval is Feldt's interval of α at a confidence [1], with n learners and k jobs:
//
//	1 − (1 − α)·F(1 − c; n − 1, (n − 1)(k − 1)),  c either tail
//
// Feldt, Psychometrika 30 (1965) 357.
func (s Scores) Interval(confidence float64) (lo, hi float64, err error) {
	a, err := s.Alpha()
	if err != nil {
		return 0, 0, err
	}
	n, k := float64(len(s)), float64(len(s[0]))
	f := distuv.F{D1: n - 1, D2: (n - 1) * (k - 1)}
	tail := (1 - confidence) / 2
	return 1 - (1-a)*f.Quantile(1-tail), 1 - (1-a)*f.Quantile(tail), nil
}

// AlphaError is the standard error of α, the jackknife over learners.
func (s Scores) AlphaError() (float64, error) {
	if err := s.verify(); err != nil {
		return 0, err
	}
	if len(s) < 3 {
		return 0, fmt.Errorf("audit: a standard error of %d learners; at least 3 are needed", len(s))
	}
	left := make([]float64, len(s))
	rest := make(Scores, len(s)-1)
	for i := range s {
		copy(rest, s[:i])
		copy(rest[i:], s[i+1:])
		a, err := rest.Alpha()
		if err != nil {
			return 0, err
		}
		left[i] = a
	}
	n := float64(len(s))
	return (n - 1) / math.Sqrt(n) * stat.StdDev(left, nil), nil
}

// Components parts the variance of one score into that between learners, that
// between jobs and the rest: expected mean squares of two crossed random effects,
// one score a cell. A component may come out below 0.
func (s Scores) Components() (learners, jobs, rest float64) {
	n, k := float64(len(s)), float64(len(s[0]))
	var lines, columns []float64
	for i := range s {
		lines = append(lines, stat.Mean(s[i], nil))
	}
	for j := range s[0] {
		columns = append(columns, stat.Mean(s.column(j), nil))
	}
	all, square := stat.Mean(lines, nil), 0.0
	for i := range s {
		for j, x := range s[i] {
			off := x - lines[i] - columns[j] + all
			square += off * off
		}
	}
	rest = square / ((n - 1) * (k - 1))
	return stat.Variance(lines, nil) - rest/k, stat.Variance(columns, nil) - rest/n, rest
}

// ItemRest is, for each job, the correlation of its scores with the totals of
// the other jobs.
func (s Scores) ItemRest() ([]float64, error) {
	if err := s.verify(); err != nil {
		return nil, err
	}
	r := make([]float64, len(s[0]))
	for j := range r {
		r[j] = stat.Correlation(s.column(j), s.totals(j), nil)
	}
	return r, nil
}

// IfDropped is, for each job, α of the others; at least 3 jobs are needed.
func (s Scores) IfDropped() ([]float64, error) {
	if err := s.verify(); err != nil {
		return nil, err
	}
	all := make([]float64, len(s[0]))
	for j := range all {
		a, err := s.without(j).Alpha()
		if err != nil {
			return nil, err
		}
		all[j] = a
	}
	return all, nil
}

// SpearmanBrown is the reliability of a test k times as long as one of
// reliability r: k·r/(1 + (k − 1)·r).
func SpearmanBrown(r, k float64) float64 { return k * r / (1 + (k-1)*r) }

// Longer is how many times as long a test of reliability r must be to reach want.
func Longer(r, want float64) float64 { return want * (1 - r) / (r * (1 - want)) }

// Pearson is the correlation of two lists of one length [1].
func Pearson(x, y []float64) float64 { return stat.Correlation(x, y, nil) }

// Spearman is the correlation of ranks; equals share the mean of their ranks.
func Spearman(x, y []float64) float64 { return stat.Correlation(ranks(x), ranks(y), nil) }

func ranks(x []float64) []float64 {
	r := make([]float64, len(x))
	for i, a := range x {
		below, alike := 0, 0
		for _, b := range x {
			switch {
			case b < a:
				below++
			case b == a:
				alike++
			}
		}
		r[i] = float64(below) + float64(alike+1)/2
	}
	return r
}
