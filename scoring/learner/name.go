package learner

import (
	"math"
	"slices"

	"evenwear/physics/exact"
	"evenwear/scoring/evidence"
)

// How people differ who hold the same idea: what beliefs are explained with,
// one point for each skill and exponent.
var (
	nameSkills    = [4]float64{0.25, 0.45, 0.65, 0.85}
	nameExponents = [3]float64{0.6, 1, 1.6}
)

// Points is the number of those.
const Points = len(nameSkills) * len(nameExponents)

const (
	nameSlip = 0.05 // [1] of the counters may stand anywhere
	// NameAt is by how much [nat] an idea must explain beliefs better than the
	// real table with slips does, to be named: 1 in 7 against it. Of 50 people who
	// hold none, none came above 0.9 in ten cars.
	NameAt = 2.0
)

// An Explanation is ln P(counters | idea) of one job [nat], by skill and exponent.
type Explanation [Points]float64

// Explain holds counters [by row] against what the same readings support on a
// table, which may be a bent one.
func Explain(counters []int, t *evidence.Table, readings []evidence.Reading) (Explanation, error) {
	var x Explanation
	p, err := t.Posterior(readings)
	if err != nil {
		return x, err
	}
	prior, post := evidence.Probabilities(t.PriorRows()), evidence.Probabilities(p.Rows())
	for j, e := range nameExponents {
		sharp := sharpen(post, e)
		for i, s := range nameSkills {
			sum := 0.0
			for row, n := range counters {
				if n > 0 {
					q := float64(s*sharp[row]) + float64((1-s)*prior[row])
					q = float64((1-nameSlip)*q) + nameSlip/float64(len(prior))
					sum += float64(float64(n) * exact.Log(q))
				}
			}
			x[i*len(nameExponents)+j] = sum
		}
	}
	return x, nil
}

// A Held is how well one idea explains what was said of one job.
type Held struct {
	Idea string // id of the misconception; empty: none, the real table
	Explanation
}

// ExplainAll holds counters [by row] against a table and against every idea that
// differs there and is about something that was read; the table itself comes first.
// Ideas that are left out explain what it does.
func ExplainAll(counters []int, t *evidence.Table, readings []evidence.Reading) ([]Held, error) {
	real, err := Explain(counters, t, readings)
	if err != nil {
		return nil, err
	}
	all, read := []Held{{Explanation: real}}, slices.Concat(t.Given(), readings)
	for i := range Misconceptions {
		m := &Misconceptions[i]
		if !slices.ContainsFunc(read, func(r evidence.Reading) bool { return m.About(r.Check.Check) }) {
			continue
		}
		bent, ok := m.Bend(t)
		if !ok {
			continue
		}
		x, err := Explain(counters, bent, readings)
		if err != nil {
			return nil, err
		}
		all = append(all, Held{m.ID, x})
	}
	return all, nil
}

// A Naming is what somebody's jobs say of their ideas.
type Naming struct {
	Idea   string     // id of the misconception named; empty: none
	Better float64    // [nat] by which the best idea explains more than the real table
	Jobs   [2]int     // the two jobs that show it most
	Shown  [2]float64 // [nat] by which it explains each of them better than the real table
}

// Name finds the idea that explains somebody's beliefs better than slips do.
// real[j] is what the real table says of job j, ideas[m][j] what the table of
// misconception m of ids does. Somebody's skill and exponent are the same in all
// jobs and not known: every pair is as likely as another.
func Name(real []Explanation, ids []string, ideas [][]Explanation) Naming {
	var n Naming
	best := -1
	slips := together(real)
	for m := range ideas {
		if d := together(ideas[m]) - slips; best < 0 || d > n.Better {
			best, n.Better = m, d
		}
	}
	if best < 0 || n.Better < NameAt {
		return n
	}
	n.Idea = ids[best]
	most := &n.Shown
	*most = [2]float64{math.Inf(-1), math.Inf(-1)}
	for j := range real {
		d := together(ideas[best][j:j+1]) - together(real[j:j+1])
		switch {
		case d > most[0]:
			*most, n.Jobs = [2]float64{d, most[0]}, [2]int{j, n.Jobs[0]}
		case d > most[1]:
			most[1], n.Jobs[1] = d, j
		}
	}
	return n
}

// together is the ln of the mean over skills and exponents of what all jobs say.
func together(jobs []Explanation) float64 {
	var sum Explanation
	for i := range jobs {
		for g := range sum {
			sum[g] += jobs[i][g]
		}
	}
	top := sum[greatest(sum[:])]
	mean := 0.0
	for _, x := range sum {
		mean += exact.Exp(x-top) / float64(Points)
	}
	return top + exact.Log(mean)
}
