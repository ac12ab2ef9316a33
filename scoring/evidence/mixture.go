package evidence

import "evenwear/physics/inspect"

// A mixture is what one hypothesis says after some readings: a few histories of
// which readings were slips, each with its own normal density. One density for
// all of them would not do: two readings that agree with each other but not
// with the hypothesis make "both true" and "both slips" lie far apart.
type mixture struct {
	part []part
	logL float64 // ln P(readings | h)
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

func (x *mixture) clone() mixture { return x.cloneInto(&[]gaussian{}) }

// cloneInto is clone in room that is spare, if there is any.
func (x *mixture) cloneInto(spare *[]gaussian) mixture {
	c := mixture{part: make([]part, len(x.part)), logL: x.logL}
	for i := range x.part {
		c.part[i] = part{x.part[i].weight, x.part[i].g.cloneInto(spare)}
	}
	return c
}

// evidence is ln P(readings | h).
func (x *mixture) evidence() float64 {
	sum := 0.0
	for i := range x.part {
		sum += x.over(i)
	}
	return x.part[0].weight + log(sum)
}

// over is how many times as likely as the first, which is the likeliest, a history is.
func (x *mixture) over(i int) float64 { return least(x.part[i].weight - x.part[0].weight) }

// least is exp of what is not above 0, but for what makes no difference to a sum
// of 1 and more.
func least(x float64) float64 {
	if x < -40 {
		return 0
	}
	return exp(x)
}

// moments makes the normal density with mean and covariance of all histories
// together, in the room of all where there is more than one.
func (x *mixture) moments(all *gaussian) *gaussian {
	if len(x.part) == 1 {
		return &x.part[0].g
	}
	n := len(x.part[0].g.mean)
	if cap(all.mean) < n {
		*all = roomy(n, n)
	}
	all.mean, all.cov = all.mean[:n], all.cov[:n*(n+1)/2]
	clear(all.mean)
	clear(all.cov)
	var share [mostParts]float64
	sum := 0.0
	for i := range x.part {
		share[i] = x.over(i)
		sum += share[i]
	}
	for i := range x.part {
		g, w := &x.part[i].g, share[i]/sum
		for k, m := range g.mean {
			all.mean[k] += float64(w * m)
		}
		for k, v := range g.cov {
			all.cov[k] += float64(w * v)
		}
	}
	for i := range x.part { // and what the means lie apart
		g, w := &x.part[i].g, share[i]/sum
		at := 0
		for k, m := range g.mean {
			far := float64(w * (m - all.mean[k]))
			if far == 0 { // nothing has been read of it
				at += k + 1
				continue
			}
			row := all.cov[at : at+k+1]
			for l := range row {
				row[l] += float64(far * (g.mean[l] - all.mean[l]))
			}
			at += k + 1
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

// A lesson is one reading about to be worked into every hypothesis.
type lesson struct {
	m       *inspect.Meter
	display int64
	sure    float64 // [1] chance that it is no slip
	slip    float64 // ln of the chance that a slip shows it
	ray     ray     // how the hypothesis at hand depends on the coordinates
	last    told
	shift   []float64  // room for one vector
	moved   []int      // room for its coordinates that are not 0
	spare   []gaussian // room of histories that were dropped
}

// told is what the display tells of a truth of mean mu and variance v; hypotheses
// under which a check looks alike ask for the same in turn.
type told struct {
	mu, v  float64
	weight float64 // ln of the chance that it is shown and no slip
	d1, d2 float64
}

func (l *lesson) open(m *inspect.Meter, display int64) {
	l.m, l.display = m, display
	l.sure, l.slip = max(leastProb, 1-m.Slip), 0
	if m.Slip > 0 {
		l.slip = log(m.Slip / float64(m.Cells()))
	}
	l.last = told{v: -1} // of nothing yet
}

func (l *lesson) tells(mu, v float64) *told {
	if l.last.mu != mu || l.last.v != v {
		p, d1, d2 := chance(l.m, l.display, mu, v)
		l.last = told{mu, v, log(float64(l.sure * p)), d1, d2}
	}
	return &l.last
}

// learn takes the reading of l, whose truth is its ray times x, + offset, with
// further variance extra. What it needs no more it leaves spare, and takes from
// there first.
func (x *mixture) learn(l *lesson, offset, extra float64) {
	var room [2 * mostParts]branch
	all := room[:0]
	for i := range x.part {
		mean, variance := x.part[i].g.along(&l.ray)
		t := l.tells(mean+offset, variance+extra)
		all = append(all, branch{from: i, weight: x.part[i].weight + t.weight, d1: t.d1, d2: t.d2})
		if l.m.Slip > 0 {
			all = append(all, branch{from: i, slip: true, weight: x.part[i].weight + l.slip})
		}
	}
	for i := range all { // likeliest first, equals as they came
		for k := i; k > 0 && all[k].weight > all[k-1].weight; k-- {
			all[k], all[k-1] = all[k-1], all[k]
		}
	}
	best, total, kept, n := all[0].weight, 0.0, 0.0, 0
	for i := range all {
		w := least(all[i].weight - best)
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
			g = g.cloneInto(&l.spare)
		} else {
			goesOn[b.from] = true
		}
		if !b.slip {
			l.learn(&g, b.d1, b.d2)
		}
		next[i] = part{b.weight + lift, g}
	}
	for i := range x.part {
		if !goesOn[i] {
			l.spare = append(l.spare, x.part[i].g)
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
