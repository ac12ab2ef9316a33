package physics

import (
	"math"

	"evenwear/physics/exact"
)

const (
	leapSure  = 1. / 3 // [1] of what a leap was corrected by, taken as its error
	rateMost  = 2.0    // [1/cycle]
	rateLeast = 1e-3   // [1] of a trend from one cycle computed to the next, below which it counts as straight
)

// A trend is how the pace of everything slow changes. What wears itself free does
// so the faster the further it still is from where it will end:
//
//	pace = limit − rate·(x − x̄),  x̄ moving at the limit's pace
//
// for each half pad and each face of the disc by itself. The latest three cycles
// computed give rate and limit, even where a leap overshot: that is what an
// explicit rule would amplify. Without a rate the pace goes on along a line.
type trend struct {
	known       int // cycles computed
	last, now   pace
	rate, limit [NumWheels]slow              // [1/cycle], [m/cycle]; rate 0 is the line through last and now
	trust       [NumWheels][len(slow{})]bool // what changes as foreseen; the pace of the rest stays
	heats       [NumWheels]bool              // whose temperature goes along a line
	allowed     float64                      // [1] of what has worn off, by which a leap may be wrong
}

// slope is how the pace changes along the line through last and now [m/cycle²].
func (t *trend) slope(i, k int) float64 {
	if t.known < 2 {
		return 0
	}
	return (t.now.by[i][k] - t.last.by[i][k]) / (t.now.at - t.last.at)
}

// ahead is the pace some cycles after now.
func (t *trend) ahead(i, k int, after float64) float64 {
	p := t.now.by[i][k]
	if rate := t.rate[i][k]; rate > 0 {
		return t.limit[i][k] + float64((p-t.limit[i][k])*exact.Exp(-rate*after))
	}
	return max(0, p+float64(after*t.slope(i, k)))
}

// line is how hot a wheel will be some cycles after now if it goes on along the line
// through the latest two.
func (t *trend) line(i int, after float64) float64 {
	if t.known < 2 {
		return t.now.warm[i]
	}
	return max(roomAir, t.now.warm[i]+float64((t.now.warm[i]-t.last.warm[i])/(t.now.at-t.last.at)*after))
}

// warm is how hot a wheel is supposed to be some cycles after now.
func (t *trend) warm(i int, after float64) float64 {
	if t.heats[i] {
		return t.line(i, after)
	}
	return t.now.warm[i]
}

// foresee is how far a wheel moves in the m cycles after the one computed last.
func (t *trend) foresee(i int, m float64) (by slow) {
	for k := range by {
		p := t.now.by[i][k]
		switch rate := t.rate[i][k]; {
		case !t.trust[i][k]:
			by[k] = m * p
		case rate > 0: // the cycle computed last ends half a cycle after its middle
			by[k] = t.relax(i, k, p, m+0.5) - t.relax(i, k, p, 0.5)
		default:
			by[k] = m * (p + float64((m+1)/2*t.slope(i, k)))
		}
		by[k] = max(0, by[k])
	}
	return by
}

// relax is how far something moves in some cycles that begin at pace p.
func (t *trend) relax(i, k int, p, cycles float64) float64 {
	rate, limit := t.rate[i][k], t.limit[i][k]
	return float64(cycles*limit) + (p-limit)*(1-exact.Exp(-rate*cycles))/rate
}

// fit finds rate and limit from the latest three cycles, next being one of them.
func (t *trend) fit(i, k int, next *pace) {
	t.rate[i][k], t.limit[i][k] = 0, 0
	if t.known < 2 {
		return
	}
	before, step := t.now.at-t.last.at, next.at-t.now.at
	bent, bend := t.slope(i, k), (next.by[i][k]-t.now.by[i][k])/step
	went, goes := (t.now.x[i][k]-t.last.x[i][k])/before, (next.x[i][k]-t.now.x[i][k])/step
	rate, limit := 0.0, 0.0
	if goes != went {
		rate = (bent - bend) / (goes - went)
	}
	if rate > 0 {
		limit = goes + bend/rate
	}
	if (rate <= 0 || limit < 0) && bend < 0 && goes > 0 { // down to nothing
		rate, limit = -bend/goes, 0
	}
	if rate*step > rateLeast && limit >= 0 {
		t.rate[i][k], t.limit[i][k] = min(rateMost, rate), limit
	}
}

// add takes the next cycle in and corrects the leap of m cycles that led to it. It
// returns by how much the leap was wrong, as a share of what is allowed, and how
// many cycles may be leaped now.
func (t *trend) add(d *trip, next *pace, m float64) (miss, leap float64) {
	step := next.at - t.now.at
	off := 0.0 // by which a leap as long as this step would have been wrong
	for i := range d.count {
		w := &d.wheels[i]
		allowed := t.allow(d, i)
		level, line := t.now.warm[i], t.line(i, step)
		t.heats[i] = t.known > 1 && math.Abs(next.warm[i]-line) < math.Abs(next.warm[i]-level)
		var by slow
		for k := range by {
			level, line := t.now.by[i][k], t.now.by[i][k]
			if t.known > 1 {
				line = t.ahead(i, k, step)
			}
			if m > 0 {
				by[k] = t.correct(i, k, next)
				miss = max(miss, leapSure*math.Abs(by[k])/allowed[k])
			} else {
				t.fit(i, k, next)
			}
			level, line = math.Abs(next.by[i][k]-level), math.Abs(next.by[i][k]-line)
			t.trust[i][k] = line < level
			off = max(off, leapSure*min(level, line)*step/2/allowed[k])
		}
		if m == 0 {
			continue
		}
		// What a leap got wrong of a pin's place wears off or on from now on.
		for k, slip := range t.now.slip[i] {
			wrong := next.own[i][k] - slip
			if t.now.stuck[i][k] {
				wrong = next.slid[i][k]
			}
			miss = max(miss, leapSure*m/(m+1)*math.Abs(wrong)/allowed[slowWear+2*Outer+k])
		}
		w.move(&by, 0, [2]float64{}, t.now.stuck[i])
	}
	t.last, t.now = t.now, *next
	if t.known++; t.known < 2 {
		return miss, 0
	}
	return miss, float64(step*min(leapGrowth, leapSafe/math.Sqrt(max(miss, off, leapExact)))) - 1
}

// allow is by how much a leap may be wrong [m]; nobody asks after leaks and discs,
// which follow.
func (t *trend) allow(d *trip, i int) (allowed slow) {
	worn, most := d.wheels[i].slow(), 0.0
	for k := range worn {
		worn[k] -= d.from[i][k]
		if k >= slowWear {
			most = max(most, worn[k])
		}
	}
	for k := range worn {
		allowed[k] = math.Inf(1)
		if k >= slowWear && most > 0 {
			allowed[k] = t.allowed * max(worn[k], leapSmall*most)
		}
	}
	return allowed
}

// correct is how much further something should have moved up to the next cycle
// [m]. The next's pace and place become what they are once it has moved so.
func (t *trend) correct(i, k int, next *pace) float64 {
	t.fit(i, k, next)
	p, step := t.now.by[i][k], next.at-t.now.at
	should := step * (p + next.by[i][k]) / 2
	if t.rate[i][k] > 0 {
		should = t.relax(i, k, p, step)
	}
	by := should - (next.x[i][k] - t.now.x[i][k])
	next.by[i][k] = max(0, next.by[i][k]-float64(t.rate[i][k]*by))
	next.x[i][k] += by
	return by
}
