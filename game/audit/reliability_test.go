package audit

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"evenwear/tests/published"
)

const attitudeSource = "R datasets::attitude; Cronbach, Psychometrika 16 (1951) 297"

// attitude is R's data set of that name, 30 departments by 7 questions
// (Chatterjee & Price, Regression Analysis by Example).
func attitude(t *testing.T) Scores {
	_, rows := published.Figures(t, "testdata/attitude.csv")
	return rows
}

func row(t *testing.T, id, source string, got, want, tol, wrong float64) {
	t.Helper()
	published.Row{ID: id, Source: source, Got: got, Want: want, Tol: tol, Absolute: true, Wrong: wrong}.Check(t)
}

// TestOutsideAlpha is OC-128.
func TestOutsideAlpha(t *testing.T) {
	s := attitude(t)
	a, err := s.Alpha()
	if err != nil {
		t.Fatal(err)
	}
	// A usual mistake: the variance of the total is left as the sum over jobs.
	row(t, "OC-128 alpha", attitudeSource, a, 0.84314, 1e-5, 7./6*(1-1./7))
	five := make(Scores, len(s))
	for i := range s {
		five[i] = s[i][:5]
	}
	if a, err = five.Alpha(); err != nil {
		t.Fatal(err)
	}
	row(t, "OC-128 alpha of five", attitudeSource, a, 0.87573, 1e-5, 0.84314)
	std, r, err := s.Standardised()
	if err != nil {
		t.Fatal(err)
	}
	row(t, "OC-128 standardised", attitudeSource, std, 0.83908, 1e-5, 0.84314)
	row(t, "OC-128 mean correlation", attitudeSource, r, 0.42691, 1e-5, r*6/7)
}

// TestOutsideItemRest is OC-129.
func TestOutsideItemRest(t *testing.T) {
	s := attitude(t)
	r, err := s.ItemRest()
	if err != nil {
		t.Fatal(err)
	}
	dropped, err := s.IfDropped()
	if err != nil {
		t.Fatal(err)
	}
	for j, want := range []float64{.6713, .7421, .5607, .7144, .7863, .2650, .4608} {
		// The mistake: the job is left in the total it is held against.
		row(t, fmt.Sprint("OC-129 item-rest ", j+1), "computed from R datasets::attitude", r[j], want, 1e-4, Pearson(s.column(j), s.totals(-1)))
	}
	for j, want := range []float64{.8098, .7969, .8278, .8030, .7954, .8639, .8405} {
		row(t, fmt.Sprint("OC-129 alpha if dropped ", j+1), "computed from R datasets::attitude", dropped[j], want, 1e-4, 0.84314)
	}
}

// TestOutsideByHand is OC-130.
func TestOutsideByHand(t *testing.T) {
	a, err := Scores{{1, 1, 1}, {1, 1, 0}, {1, 0, 0}, {0, 0, 0}}.Alpha()
	if err != nil {
		t.Fatal(err)
	}
	row(t, "OC-130 alpha by hand", "computed", a, 0.75, 1e-12, 0.5)
}

// TestOutsideFeldt is OC-131.
func TestOutsideFeldt(t *testing.T) {
	s := attitude(t)
	lo, hi, err := s.Interval(0.95)
	if err != nil {
		t.Fatal(err)
	}
	one, _, _ := s.Interval(0.90)
	row(t, "OC-131 lower end", "Feldt's F interval, computed", lo, 0.7394, 1e-3, one)
	row(t, "OC-131 upper end", "Feldt's F interval, computed", hi, 0.9158, 1e-3, 1-(1-0.84314)*0.5)
	// The jackknife stands for no published value; it must be of the interval's size.
	se, err := s.AlphaError()
	if err != nil {
		t.Fatal(err)
	}
	if quarter := (hi - lo) / 4; se < quarter/2 || se > 2*quarter {
		t.Errorf("standard error %.4f, want within a factor 2 of a quarter of Feldt's interval, %.4f", se, quarter)
	}
}

// TestOutsideSpearmanBrown is OC-132.
func TestOutsideSpearmanBrown(t *testing.T) {
	row(t, "OC-132 0.6 doubled", "derived", SpearmanBrown(0.6, 2), 0.75, 1e-12, 1.2)
	row(t, "OC-132 0.8 halved", "derived", SpearmanBrown(0.8, 0.5), 2./3, 1e-12, 0.4)
	row(t, "OC-132 from 0.80 to 0.90", "derived", Longer(0.80, 0.90), 2.25, 1e-12, 0.9/0.8)
}

// TestComponents: by Hoyt's identity alpha is the share of learners in the variance
// of the mean: 1 − rest/(rest + k·learners). Hoyt, Psychometrika 6 (1941) 153, from
// memory.
func TestComponents(t *testing.T) {
	s := attitude(t)
	learners, jobs, rest := s.Components()
	row(t, "alpha by variance components", attitudeSource, 1-rest/(rest+7*learners), 0.84314, 1e-5, learners/(learners+rest))
	if jobs <= 0 {
		t.Errorf("the questions' means differ by a variance of %g", jobs)
	}
}

func TestSpearmanTies(t *testing.T) {
	// By hand: ranks 1, 2.5, 2.5, 4 against 1, 2, 3, 4 correlate 4.5/√(4.5·5).
	if got, want := Spearman([]float64{1, 2, 2, 9}, []float64{0, 1, 2, 30}), 4.5/math.Sqrt(22.5); math.Abs(got-want) > 1e-12 {
		t.Errorf("got %.6f, want %.6f", got, want)
	}
}

func TestBadScores(t *testing.T) {
	for want, s := range map[string]Scores{
		"scores of 0 learners":       nil,
		"scores of 1 learners":       {{1, 2}},
		"scores in 1 jobs":           {{1}, {2}},
		"learner 2 has 1 scores":     {{1, 2}, {1}},
		"learner 2 has NaN in job 1": {{1, 2}, {math.NaN(), 1}},
		"at least 3 are needed":      {{1, 2}, {3, 4}},
	} {
		if _, err := s.AlphaError(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want it to say %q", err, want)
		}
	}
}
