package learner

import (
	"math"
	"math/rand/v2"

	"evenwear/physics/exact"
)

// A Kind is a manner of going about a job.
type Kind string

// The kinds.
const (
	Nothing   Kind = "does_nothing"       // looks at nothing, says nothing, gives the car back
	Refers    Kind = "always_refers"      // looks at nothing and sends every car to a mechanic
	Guesser   Kind = "guesser"            // looks at nothing and is sure of a row drawn blindly
	Clicks    Kind = "clicks_everything"  // makes every check in the order of the list, infers nothing
	Checklist Kind = "checklist_follower" // makes checks in order of worth, takes each reading by itself
	Jumper    Kind = "symptom_jumper"     // is sure of whatever the first odd reading speaks for
	Reasoner  Kind = "noisy_reasoner"     // infers, with less or more skill
	Inspector Kind = "model_inspector"    // infers without a slip
)

// Kinds lists them, those who infer last.
var Kinds = []Kind{Nothing, Refers, Guesser, Clicks, Checklist, Jumper, Reasoner, Inspector}

// A Learner is one simulated person.
type Learner struct {
	Kind     Kind
	Skill    float64 // [1] share of the posterior in what is believed, 0 to 1
	Exponent float64 // [1] of the posterior: above 1 over-sure, below 1 under-sure
	Stop     float64 // [1] share of the minutes that is left unused
	Holds    string  // id of a misconception; empty: none
}

// Perfect infers as the model inspector does.
var Perfect = Learner{Kind: Inspector, Skill: 1, Exponent: 1}

// The reference population, fixed: skill uniform, exponent log-uniform, share of
// the minutes left unused uniform.
const (
	ReferenceSize              = 200
	skillLeast, skillMost      = 0.2, 0.9
	exponentLeast, exponentMax = 0.5, 2.0
	stopMost                   = 0.4
)

// Reference draws n noisy reasoners of the reference population.
func Reference(n int, luck *rand.Rand) []Learner {
	all := make([]Learner, n)
	for i := range all {
		all[i] = Learner{
			Kind:     Reasoner,
			Skill:    skillLeast + float64((skillMost-skillLeast)*luck.Float64()),
			Exponent: exact.Exp(exact.Log(exponentLeast) + float64(luck.Float64()*exact.Log(exponentMax/exponentLeast))),
			Stop:     stopMost * luck.Float64(),
		}
	}
	return all
}

// How often the unskilled slip; all assumed, no study of inspectors was found.
const (
	misread  = 0.15 // [1] of an unskilled learner's readings are a step off
	misplace = 0.1  // [1] of an unskilled learner's counters land on any row
)

// slips tells that a thing goes wrong that does so with this share for the
// unskilled and never for the perfect.
func (l *Learner) slips(share float64, luck *rand.Rand) bool {
	return luck.Float64() < float64(share*(1-l.Skill))
}

// Misplace moves counters [by row] as a learner's hand slips.
func (l *Learner) Misplace(counters []int, luck *rand.Rand) {
	if l.Kind == Inspector {
		return
	}
	for from := range counters {
		for range counters[from] {
			if l.slips(misplace, luck) {
				counters[from]--
				counters[luck.IntN(len(counters))]++
			}
		}
	}
}

// sharpen raises a belief to a power and makes it sum to 1 again.
func sharpen(p []float64, exponent float64) []float64 {
	q := make([]float64, len(p))
	top := 0.0
	for _, x := range p {
		top = max(top, x)
	}
	sum := 0.0
	for i, x := range p {
		if x > 0 && top > 0 {
			q[i] = exact.Exp(float64(exponent * exact.Log(x/top)))
			sum += q[i]
		}
	}
	for i := range q {
		q[i] /= sum
	}
	return q
}

// mixed is s·posterior^e + (1 − s)·prior.
func mixed(posterior, prior []float64, skill, exponent float64) []float64 {
	q := sharpen(posterior, exponent)
	for i := range q {
		q[i] = float64(skill*q[i]) + float64((1-skill)*prior[i])
	}
	return q
}

// greatest is the index of the greatest; of equals the first; −1 of none.
func greatest(p []float64) int {
	best, most := -1, math.Inf(-1)
	for i, x := range p {
		if x > most {
			best, most = i, x
		}
	}
	return best
}
