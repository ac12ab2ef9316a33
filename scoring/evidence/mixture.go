package evidence

import "evenwear/physics/inspect"

// A mixture is what one hypothesis says after some readings: a few histories of
// which readings were slips, each with its own normal density. One density for
// all of them would not do: two readings that agree with each other but not
// with the hypothesis make "both true" and "both slips" lie far apart.
type mixture struct {
	part []part
}

type part struct {
	weight float64 // ln of the share of P(readings | h)
	g      gaussian
}

const (
	mostParts = 6    // histories kept for a hypothesis
	leastPart = 16.1 // [nat] below the likeliest a history is dropped: a share of 1e-7
)

func (x *mixture) grow(variance float64) {
	for i := range x.part {
		x.part[i].g.grow(variance)
	}
}

func (x *mixture) clone() mixture {
	c := mixture{part: make([]part, len(x.part))}
	for i := range x.part {
		c.part[i] = part{x.part[i].weight, x.part[i].g.clone()}
	}
	return c
}

// evidence is ln P(readings | h).
func (x *mixture) evidence() float64 {
	best := x.part[0].weight
	sum := 0.0
	for i := range x.part {
		sum += exp(x.part[i].weight - best)
	}
	return best + log(sum)
}

// moments is the normal density with mean and covariance of all histories together.
func (x *mixture) moments() *gaussian {
	if len(x.part) == 1 {
		return &x.part[0].g
	}
	n := len(x.part[0].g.mean)
	all := &gaussian{mean: make([]float64, n), cov: make([]float64, n*(n+1)/2)}
	best, sum := x.part[0].weight, 0.0
	for i := range x.part {
		sum += exp(x.part[i].weight - best)
	}
	for i := range x.part {
		g, w := &x.part[i].g, exp(x.part[i].weight-best)/sum
		for k, m := range g.mean {
			all.mean[k] += float64(w * m)
		}
		for k, v := range g.cov {
			all.cov[k] += float64(w * v)
		}
	}
	for i := range x.part { // and what the means lie apart
		g, w := &x.part[i].g, exp(x.part[i].weight-best)/sum
		at := 0
		for k, m := range g.mean {
			far := float64(w * (m - all.mean[k]))
			for l := range k + 1 {
				all.cov[at] += float64(far * (g.mean[l] - all.mean[l]))
				at++
			}
		}
	}
	return all
}

// A branch is one history continued: the reading is true or a slip.
type branch struct {
	from   int
	slip   bool
	weight float64
	d1, d2 float64
}

// learn takes a display of m whose truth is a·x + offset with further variance
// extra. What it needs no more it leaves in spare, and takes from there first.
func (x *mixture) learn(m *inspect.Meter, display int64, a *ray, offset, extra float64, shift []float64, spare *[]gaussian) {
	var room [2 * mostParts]branch
	all := room[:0]
	sure, slips := max(leastProb, 1-m.Slip), 0.0
	if m.Slip > 0 {
		slips = log(m.Slip / float64(m.Cells()))
	}
	for i := range x.part {
		mean, variance := x.part[i].g.along(a)
		p, d1, d2 := chance(m, display, mean+offset, variance+extra)
		all = append(all, branch{from: i, weight: x.part[i].weight + log(float64(sure*p)), d1: d1, d2: d2})
		if m.Slip > 0 {
			all = append(all, branch{from: i, slip: true, weight: x.part[i].weight + slips})
		}
	}
	for i := range all { // likeliest first, equals as they came
		for k := i; k > 0 && all[k].weight > all[k-1].weight; k-- {
			all[k], all[k-1] = all[k-1], all[k]
		}
	}
	best, total, kept, n := all[0].weight, 0.0, 0.0, 0
	for i := range all {
		w := exp(all[i].weight - best)
		total += w
		if i < mostParts && all[i].weight > best-leastPart {
			kept += w
			n++
		}
	}
	all = all[:n]
	lift := log(total / kept) // what is dropped goes to what stays, so that the evidence is whole
	var next [mostParts]part
	var goesOn [mostParts]bool
	for i, b := range all {
		g := x.part[b.from].g
		if needed(all[i+1:], b.from) {
			g = g.cloneInto(spare)
		} else {
			goesOn[b.from] = true
		}
		if !b.slip {
			g.learn(a, b.d1, b.d2, shift)
		}
		next[i] = part{b.weight + lift, g}
	}
	for i := range x.part {
		if !goesOn[i] {
			*spare = append(*spare, x.part[i].g)
		}
	}
	x.part = append(x.part[:0], next[:n]...)
}

func needed(later []branch, from int) bool {
	for _, b := range later {
		if b.from == from {
			return true
		}
	}
	return false
}
