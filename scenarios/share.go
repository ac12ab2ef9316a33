package scenarios

import (
	"math"

	"evenwear/physics/exact"
)

// Share is how many of all cars [1] have this cause at one of its places and
// nothing else.
func (l *Library) Share(c *Cause) float64 {
	total := 0.0
	for _, x := range l.Causes {
		total += x.Prior
	}
	return (1 - l.PairShare) * c.Prior / total / float64(len(c.Places))
}

// Weights is the weight of all severities of a cause together.
func (c *Cause) Weights() float64 {
	sum := 0.0
	for _, s := range c.Severities {
		sum += s.Weight
	}
	return sum
}

// Need is how many bits an inspector must gather who has looked at nothing, to be
// certain of what is wrong with a car and where: −log₂ of the share of cars of
// which it is true.
func (l *Library) Need(j *Job) float64 {
	share := 0.0
	switch len(j.Faults) {
	case 0:
		if c := l.Worn(); c != nil {
			share = l.Share(c)
		}
	case 1:
		share = l.Share(j.Faults[0].Cause)
	default:
		for _, c := range l.Couples() {
			if c.is(j.Faults[0], j.Faults[1]) || c.is(j.Faults[1], j.Faults[0]) {
				share += float64(l.PairShare * c.Share)
			}
		}
	}
	if share <= 0 {
		return math.Inf(1)
	}
	return -exact.Log(share) / math.Ln2
}
