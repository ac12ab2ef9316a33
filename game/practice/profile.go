package practice

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"evenwear/scenarios"
)

// A Profile is what every self-check of a library has in common, so that one is as
// hard as the next: how many of its cars are sound, have one fault and have two; of
// those with one, in how many it is slight, of the only degree there is, and far
// gone; and how many bits it takes to be certain of all its cars. It is what fair
// cars have on average. What a self-check does not match is told by no car before it
// has been solved: the minutes of the model inspector. They are told at its end.
type Profile struct {
	Sound, One, Two   int
	Slight, Only, Far int     // of those with one fault
	Bits              float64 // [bit] of all cars together, within [BitsWithin]
}

// BitsWithin is how far [bit] the sum of a self-check may lie from its profile's:
// less than a hundredth of it, where ten fair cars drawn alike lie ten times as far.
const BitsWithin = 0.5

// Degrees of a fault.
const (
	slight = iota
	only
	far
	degrees
)

// degree sorts a severity among those of its cause, which stand from slight to far
// gone; the middle one of three counts as far gone.
func degree(c *scenarios.Cause, severity string) int {
	at := slices.IndexFunc(c.Severities, func(s scenarios.Severity) bool { return s.ID == severity })
	switch n := len(c.Severities); {
	case n < 2:
		return only
	case 2*at+1 < n:
		return slight
	}
	return far
}

// A kind is what may be wrong with a car: nothing, one cause to a degree, or two.
type kind struct {
	cause, severity string // of the first fault
	also            string // cause of the second; empty: none
	degree          int
	share           float64 // [1] of all cars
	bits            float64 // to be certain of it
}

// outcomes are all kinds of cars that can be drawn, by how many faults, those that
// need the fewest bits first.
func outcomes(lib *scenarios.Library) (all [3][]kind) {
	bits := func(faults ...scenarios.Fault) float64 { return lib.Need(&scenarios.Job{Faults: faults}) }
	for _, c := range lib.Causes {
		n := 1
		if c.Healthy {
			n = 0
		}
		for _, s := range c.Severities {
			all[n] = append(all[n], kind{cause: c.ID, severity: s.ID, degree: degree(c, s.ID), share: lib.Share(c) * float64(len(c.Places)) * s.Weight / c.Weights(),
				bits: bits(scenarios.Fault{Cause: c})})
		}
	}
	for _, c := range lib.Couples() {
		k := kind{cause: c.Faults[0].Cause.ID, also: c.Faults[1].Cause.ID, share: lib.PairShare * c.Share, bits: bits(c.Faults[:]...)}
		if at := slices.IndexFunc(all[2], func(o kind) bool { return o.cause == k.cause && o.also == k.also }); at >= 0 {
			all[2][at].share += k.share
			continue
		}
		all[2] = append(all[2], k)
	}
	for n := range all {
		slices.SortStableFunc(all[n], func(a, b kind) int { return cmp.Compare(a.bits, b.bits) })
	}
	return all
}

// is tells that a car is of the kind.
func (k *kind) is(lib *scenarios.Library, j *scenarios.Job) bool {
	truth := lib.Truth(j)
	switch {
	case len(truth) == 0 || truth[0] != k.cause:
		return false
	case k.also != "":
		return len(truth) == 2 && truth[1] == k.also
	case len(truth) != 1:
		return false
	}
	return len(j.Faults) == 0 || j.Faults[0].Severity.ID == k.severity
}

// mass is the share of all cars that are of these kinds.
func mass(kinds []kind) float64 {
	sum := 0.0
	for i := range kinds {
		sum += kinds[i].share
	}
	return sum
}

// apportioned shares n seats out by weight, by the largest remainder.
func apportioned(n int, weights ...float64) []int {
	total, given := 0.0, 0
	for _, w := range weights {
		total += w
	}
	seats, left := make([]int, len(weights)), make([]float64, len(weights))
	for i, w := range weights {
		due := float64(n) * w / total
		seats[i] = int(math.Floor(due))
		left[i] = due - float64(seats[i])
		given += seats[i]
	}
	for ; given < n; given++ {
		most := 0
		for i := range left {
			if left[i] > left[most] {
				most = i
			}
		}
		seats[most]++
		left[most] = -1
	}
	return seats
}

// ProfileOf is the profile of a library's self-checks.
func ProfileOf(lib *scenarios.Library) Profile {
	p, _ := profile(outcomes(lib))
	return p
}

// profile also tells how many cars of each number of faults there are.
func profile(all [3][]kind) (p Profile, counts []int) {
	counts = apportioned(RoundCars, mass(all[0]), mass(all[1]), mass(all[2]))
	var by [degrees]float64
	for i := range all[1] {
		by[all[1][i].degree] += all[1][i].share
	}
	p.Sound, p.One, p.Two = counts[0], counts[1], counts[2]
	if p.One > 0 {
		of := apportioned(p.One, by[:]...)
		p.Slight, p.Only, p.Far = of[slight], of[only], of[far]
	}
	for n := range all {
		if m := mass(all[n]); m > 0 {
			for i := range all[n] {
				p.Bits += float64(counts[n]) * all[n][i].share / m * all[n][i].bits
			}
		}
	}
	return p, counts
}

// matches tells that a plan has the profile.
func (p *Profile) matches(plan []kind, slack float64) bool {
	var by [degrees]int
	bits := 0.0
	for i := range plan {
		bits += plan[i].bits
		if i >= p.Sound && i < p.Sound+p.One {
			by[plan[i].degree]++
		}
	}
	return by == [degrees]int{p.Slight, p.Only, p.Far} && math.Abs(bits-p.Bits) <= slack
}

// mostPlans is how many are drawn up for one that has the profile. Of the program's
// own library about one in 35 does; where a library has so few causes that none can,
// the last is taken.
const mostPlans = 20000

// plan draws kinds of cars up that have the profile of a library: by systematic
// sampling over all kinds in the order of the bits they need, so that each comes about
// as often as it does among fair cars, and drawn anew until the profile is met.
func plan(lib *scenarios.Library, rng *rand.Rand) []kind {
	all := outcomes(lib)
	p, counts := profile(all)
	var list []kind
	for range mostPlans {
		list = list[:0]
		for n, kinds := range all {
			for i := range counts[n] {
				list = append(list, at(kinds, (float64(i)+rng.Float64())/float64(counts[n])))
			}
		}
		if p.matches(list, BitsWithin) {
			break
		}
	}
	return list
}

// at is the kind at a share [1] of the way through a list.
func at(kinds []kind, share float64) kind {
	left := share * mass(kinds)
	for i := range kinds {
		if left -= kinds[i].share; left < 0 {
			return kinds[i]
		}
	}
	return kinds[len(kinds)-1]
}
