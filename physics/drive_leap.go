package physics

import "math"

const (
	leapError  = 7e-4 // [1] of what has worn off, by which a leap may be wrong
	leapSmall  = 0.05 // [1] of a wheel's greatest wear, below which a half pad's trend does not count
	leapGrowth = 3.0  // [1] of a leap over the one before
	leapSafe   = 0.8  // [1] of the longest leap that the estimate would allow
	leapLeast  = 0.2  // [cycles] shorter ones save nothing
	leapExact  = 1e-3 // [1] of the error allowed, below which it tells nothing
)

// slow is what has worn off a wheel [m] and leaked from it [m³].
type slow [7]float64

const (
	slowDisc = 1
	slowWear = slowDisc + 2
)

func (w *wornWheel) slow() slow {
	c := &w.cond
	return slow{w.leaked, c.DiscWear[0], c.DiscWear[1], c.Wear[0][0], c.Wear[0][1], c.Wear[1][0], c.Wear[1][1]}
}

// ends is where the body's ends would be [m] if it followed the outer pad.
func (w *wornWheel) ends() [2]float64 {
	g := &w.corner.gap[Outer]
	mean, turn := float64((g[Upper]+g[Lower])/2), float64((g[Upper]-g[Lower])/2*w.corner.a/w.corner.b)
	return [2]float64{mean + turn, mean - turn}
}

// pace is how far everything slow moved in one cycle, about the time of its middle.
type pace struct {
	at   float64         // [cycles]
	by   [NumWheels]slow // [m/cycle], [m³/cycle]
	warm warms           // [°C]
	x    [NumWheels]slow // where it was at that time, [m], [m³]
	// How far the pins slid in a cycle since the measurement before, beyond what
	// the outer pad wore, and in this cycle alone; and whether they did not at all.
	slip, own [NumWheels][2]float64
	stuck     [NumWheels][2]bool
	slid      [NumWheels][2]float64 // in this cycle alone
}

// move moves everything slow, and along with it what every cycle settles afresh:
// the seal sits on the piston, which follows the inner pad and, with the body,
// the pins; the ears sit on their pads. So no force jumps.
func (w *wornWheel) move(by *slow, m float64, slip [2]float64, stuck [2]bool) {
	r, c := &w.rest, &w.cond
	was, ends := w.corner.gap, w.ends()
	w.leaked += by[0]
	for i := range 2 {
		disc := by[slowDisc+i]
		c.DiscWear[i] += disc
		for j := range 2 {
			worn := min(by[slowWear+2*i+j], max(0, w.spec.LiningNew-c.Wear[i][j]))
			c.Wear[i][j] += worn
			w.corner.gap[i][j] += worn + disc
		}
	}
	body := 0.0
	for i, end := range w.ends() {
		if !stuck[i] {
			by := end - ends[i] + float64(m*slip[i])
			r.PinAnchor[i] += by
			body += float64(by / 2)
		}
	}
	inner := float64((w.corner.gap[Inner][Upper] - was[Inner][Upper] + w.corner.gap[Inner][Lower] - was[Inner][Lower]) / 2)
	r.SealAnchor += inner + body
	r.EarAnchor[Inner] += inner
	r.EarAnchor[Outer] += body
}

// drive drives so many cycles.
//
// Wear and pins move by a pace in a cycle. A leap takes m cycles, whole or not, by how
// the pace has been changing, see [trend]; then the next cycle is computed, and the leap
// corrected by what that one has shown (predictor and corrector of second order).
// How far the two are apart estimates the error: where that is above [leapError] of
// what has worn off, the leap is taken back and a shorter one tried. A leap ends
// before a lining is through.
func (d *trip) drive(cycles float64) error {
	t := trend{allowed: leapError / float64(d.fine.rounds*d.fine.rounds)}
	leap := 0.0
	for done := 0.0; done < cycles; {
		kept := *d
		leap = leapable(min(leap, d.through(&t.now)), cycles-done-1)
		if leap > 0 || d.ages {
			if err := d.follow(func() {
				for i := range d.count {
					by := t.foresee(i, leap)
					d.wheels[i].move(&by, leap, t.now.slip[i], t.now.stuck[i])
					d.wheels[i].mean = t.warm(i, leap+1)
				}
				d.age(done + leap + 0.5)
			}); err != nil {
				return err
			}
		}
		before := *d
		if err := d.cycle(); err != nil {
			return err
		}
		next := d.pace(&kept, &before, leap)
		next.at = done + leap + 0.5
		was := t
		miss, grow := t.add(d, &next, leap)
		if miss > 1 {
			if less := leapable(leap*min(0.5, math.Sqrt(1/miss)), cycles-done-1); less < leap {
				*d, t, leap = kept, was, less
				continue
			}
		}
		done += leap + 1
		leap = grow
		if !d.fine.leap {
			leap = 0
		}
	}
	return nil
}

// leapable is how much of a leap to take where so many cycles are left besides the one
// computed after it: none of a short one, and never so that less than a cycle is left.
func leapable(leap, left float64) float64 {
	if leap < leapLeast {
		leap = 0
	}
	switch rest := left - leap; {
	case rest >= 1:
		return leap
	case rest > 0 && left >= 1:
		return left - 1
	}
	return max(0, left)
}

// pace measures the cycle that led here from before, and the pins' way of a leap
// of m cycles and that cycle from kept.
func (d *trip) pace(kept, before *trip, m float64) (p pace) {
	for i := range d.count {
		w, from, old := &d.wheels[i], &before.wheels[i], &kept.wheels[i]
		p.warm[i] = w.mean
		start := from.slow()
		for k, end := range w.slow() {
			p.by[i][k] = end - start[k]
			p.x[i][k] = (end + start[k]) / 2
		}
		was, began := old.ends(), from.ends()
		for k, is := range w.ends() {
			p.slid[i][k] = w.rest.PinAnchor[k] - from.rest.PinAnchor[k]
			p.own[i][k] = p.slid[i][k] - (is - began[k])
			slid := w.rest.PinAnchor[k] - old.rest.PinAnchor[k]
			p.stuck[i][k] = slid == 0
			p.slip[i][k] = (slid - (is - was[k])) / (m + 1)
		}
	}
	return p
}

// through is how many cycles may be leaped so that the one after them wears no lining through.
func (d *trip) through(now *pace) float64 {
	m := math.Inf(1)
	for i := range d.count {
		w := &d.wheels[i]
		for k := slowWear; k < len(slow{}); k++ {
			left := w.spec.LiningNew - w.slow()[k]
			if worn := now.by[i][k]; worn > 0 && left > 0 {
				m = min(m, left/worn-1.5)
			}
		}
	}
	return m
}
