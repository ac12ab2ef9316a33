package learner

import (
	"math/rand/v2"

	"evenwear/scoring/evidence"
)

// Believe is what a learner believes at the end, over the rows of the table in
// their order; nil says nothing at all. p is the posterior of what they read on
// their own table t.
func (l *Learner) Believe(p *evidence.Posterior, t *evidence.Table, luck *rand.Rand) ([]float64, error) {
	prior := evidence.Probabilities(t.PriorRows())
	switch l.Kind {
	case Nothing, Refers, Clicks:
		return nil, nil
	case Guesser:
		return sure(len(prior), luck.IntN(len(prior))), nil
	case Checklist:
		return pooled(p, t)
	case Jumper:
		row, _ := jump(p, t)
		return sure(len(prior), row), nil
	case Inspector:
		return evidence.Probabilities(p.Rows()), nil
	}
	return mixed(evidence.Probabilities(p.Rows()), prior, l.Skill, l.Exponent), nil
}

// sure is all of a belief on one of n rows.
func sure(n, row int) []float64 {
	b := make([]float64, n)
	b[row] = 1
	return b
}

// pooled is the mean of what each reading says by itself: evidence is listed,
// not combined.
func pooled(p *evidence.Posterior, t *evidence.Table) ([]float64, error) {
	sum, readings := evidence.Probabilities(p.BeganRows()), p.Readings()
	for i, r := range readings {
		one, err := t.Posterior([]evidence.Reading{r})
		if err != nil {
			return nil, err
		}
		if i == 0 {
			clear(sum)
		}
		for j, b := range one.Rows() {
			sum[j] += b.P / float64(len(readings))
		}
	}
	return sum, nil
}

// jump is the row that the last reading has made most times as likely as it was
// when only the owner had been heard, and whether that is odd enough to jump at.
func jump(p *evidence.Posterior, t *evidence.Table) (row int, odder bool) {
	began := evidence.Probabilities(p.BeganRows())
	readings := p.Readings()
	if len(readings) == 0 {
		return greatest(began), false
	}
	one, err := t.Posterior(readings[len(readings)-1:])
	if err != nil {
		return greatest(began), false
	}
	now := evidence.Probabilities(one.Rows())
	lift := make([]float64, len(now))
	for i := range now {
		lift[i] = now[i] / began[i]
	}
	if best := greatest(lift); lift[best] >= odd {
		return best, true
	}
	return greatest(began), false
}

// An Act is what a learner does about a car.
type Act int

// The acts.
const (
	Leave Act = iota // nothing: the car is given back
	Refer            // a mechanic is to look at it
	Treat            // what would mend the likeliest rows
)

// evens is the belief [1] at which what is likeliest is acted on, and both the
// belief in one row at which it is, two of them together where two are as likely:
// both parts may be faulty, and either may.
const (
	evens = 0.5
	both  = 0.4
)

// Decide is what a learner does with a belief over rows; rows are those acted on.
func (l *Learner) Decide(belief []float64) (act Act, rows []int) {
	switch {
	case l.Kind == Refers:
		return Refer, nil
	case belief == nil:
		return Leave, nil
	}
	sum := 0.0
	for i, b := range belief {
		if b >= both && len(rows) < 2 {
			rows, sum = append(rows, i), sum+b
		}
	}
	if sum < evens {
		return Refer, nil
	}
	return Treat, rows
}
