package scoring

import (
	"fmt"
	"math"
)

// A Play is what is marked: what a learner said and did, what was true, and what
// the readings bear. Rows are cause × place in one order for all slices.
type Play struct {
	Rows     []string
	Prior    []float64 // [1] of this job, given the stated facts
	Began    []float64 // [1] by row, when only the owner had been heard; nil: as the prior
	True     []int     // the true rows; "nothing wrong" is a row like any other
	Counters []int     // by row, at most 20 in all
	Support  []float64 // posterior of the learner's own readings
	Every    []float64 // what every check would show; may be nil

	ModelBits float64 // [bit] the model inspector's in as many minutes

	Readings []Read
	Cautions []Caution
	Harms    []string // ids of harmful acts done
	Proof    []Proof
	OnPaper  bool // only notes of the car were there: nothing could be read, proved or done without care

	Spent, Best float64 // [min] the learner's; the best plan's

	Loss, BestLoss float64 // [min worth] of remedies and release, see [Decide]
	BestChoice     string  // id of the best remedies and release, for whoever words it
	Needless       int     // parts renewed or referred without need
	Release        string
	Unsafe         []Finding // of the released car; empty when it is sound or does not drive
}

// A Read is one reading against what its instrument showed.
type Read struct {
	Check     string  // instance
	Divisions float64 // [1] how far off, in divisions of the instrument
}

// A Caution is one that was due; Kept tells whether it was kept.
type Caution struct {
	ID   string
	Kept bool
}

// A Proof is one thing to be made sure of after the work.
type Proof struct {
	ID   string // of words; may hold what it is about after a colon
	Done bool
}

// verify refuses a play that cannot be marked, in a sentence.
func (p *Play) verify() error {
	n := len(p.Rows)
	if n == 0 || len(p.Prior) != n || len(p.Counters) != n || len(p.Support) != n {
		return fmt.Errorf("scoring: %d rows with %d priors, %d counters and %d posteriors; wanted as many of each", n, len(p.Prior), len(p.Counters), len(p.Support))
	}
	if p.Began != nil && len(p.Began) != n {
		return fmt.Errorf("scoring: %d rows with %d beliefs before any reading; wanted as many", n, len(p.Began))
	}
	if len(p.True) == 0 {
		return fmt.Errorf("scoring: no row is true; nothing wrong is a row like any other")
	}
	for _, r := range p.True {
		if r < 0 || r >= n {
			return fmt.Errorf("scoring: true row %d of %d", r, n)
		}
	}
	placed := 0
	for i, c := range p.Counters {
		if c < 0 {
			return fmt.Errorf("scoring: %d counters on %s", c, p.Rows[i])
		}
		placed += c
	}
	if placed > Counters {
		return fmt.Errorf("scoring: %d counters placed; there are %d", placed, Counters)
	}
	for i := range p.Rows {
		if p.Began != nil && !(p.Began[i] >= 0 && p.Began[i] <= 1+1e-9) {
			return fmt.Errorf("scoring: row %s is believed %g before any reading; wanted 0 to 1", p.Rows[i], p.Began[i])
		}
		if !(p.Prior[i] >= 0 && p.Prior[i] <= 1+1e-9) || !(p.Support[i] >= 0 && p.Support[i] <= 1+1e-9) {
			return fmt.Errorf("scoring: row %s has prior %g and posterior %g; wanted 0 to 1", p.Rows[i], p.Prior[i], p.Support[i])
		}
	}
	for _, v := range []float64{p.ModelBits, p.Spent, p.Best, p.Loss, p.BestLoss} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Errorf("scoring: a number of the play is %g", v)
		}
	}
	return nil
}
