package scoring

import (
	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// A Debrief is everything the end of a job shows.
type Debrief struct {
	Rows   []RowBelief
	Marks  Marks
	Found  Outlook // the car as it came
	Leaves Outlook // as it was handed over
	Unsafe []Finding
	Best   evidence.Trail // the model inspector's
	Worth  CheckWorth
}

// A RowBelief is one row of what could be known [1].
type RowBelief struct {
	Row                  string
	Counters             int
	Said, Support, Every float64
	Prior                float64
	True                 bool
}

// A CheckWorth is the check that told most for its minutes.
type CheckWorth struct {
	Check   inspect.Instance
	Bits    float64 // [bit] expected when only the owner has been heard
	Minutes float64 // [min] with its preparations
	Made    int     // the learner made it as reading number …; 0: never
}

// Beliefs lists the rows that anybody puts at least least [1] on, and the true
// ones, most supported first as the order of the play leaves them.
func Beliefs(p *Play, least float64) []RowBelief {
	said := Spread(p.Counters, p.Prior)
	truth := truthOf(len(p.Rows), p.True)
	var all []RowBelief
	for i, row := range p.Rows {
		b := RowBelief{Row: row, Counters: p.Counters[i], Said: said[i], Support: p.Support[i], Prior: p.Prior[i], True: truth[i] > 0}
		if i < len(p.Every) {
			b.Every = p.Every[i]
		}
		if b.True || b.Counters > 0 || b.Support >= least || b.Every >= least {
			all = append(all, b)
		}
	}
	return all
}

// MostWorth is the check with most expected bits a minute at the start of a
// job, and when the learner made it. readings are the learner's in their order.
func MostWorth(t *evidence.Table, prices *evidence.Prices, readings []evidence.Reading) (CheckWorth, error) {
	p, err := t.Posterior(nil)
	if err != nil {
		return CheckWorth{}, err
	}
	var best CheckWorth
	rate := 0.0
	for _, w := range p.All() {
		minutes := prices.Minutes(t.Problem(), []inspect.Instance{w.Check})
		if r := w.Bits / max(minutes, 0.1); r > rate {
			best, rate = CheckWorth{Check: w.Check, Bits: w.Bits, Minutes: minutes}, r
		}
	}
	for i, r := range readings {
		if r.Check == best.Check && best.Bits > 0 {
			best.Made = i + 1
			break
		}
	}
	return best, nil
}
