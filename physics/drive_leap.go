package physics

import "math"

const (
	leapError  = 0.02  // [1] by which a cycle's wear may miss what was foreseen
	leapTrust  = 0.4   // [1] by which a cycle's wear may change on the way
	leapSmall  = 0.1   // [1] of a wheel's greatest wear, below which a half pad's trend does not count
	leapGrowth = 3.0   // [1] of a leap over the one before
	leapExact  = 1e-12 // [1] below which a difference is rounding
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
	by [NumWheels]slow
	// How far the pins slid in a cycle since the measurement before, beyond what
	// the outer pad wore; and whether they did not at all. What a leap got wrong
	// they settle afresh, so only the whole way from end to end tells.
	slip  [NumWheels][2]float64
	stuck [NumWheels][2]bool
	at    float64 // cycles
}

// move moves everything slow, and along with it what every cycle settles afresh:
// the seal sits on the piston, which follows the inner pad and, with the body,
// the pins; the ears sit on their pads. So no force jumps.
func (w *wornWheel) move(by *slow, m float64, slip [2]float64, stuck [2]bool) {
	r, c := &w.rest, &w.cond
	was, ends := w.corner.gap, w.ends()
	w.leaked += by[0]
	for i := range 2 {
		disc := max(0, by[slowDisc+i])
		c.DiscWear[i] += disc
		for j := range 2 {
			worn := min(max(0, by[slowWear+2*i+j]), max(0, w.spec.LiningNew-c.Wear[i][j]))
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
// Wear and pins move by Δ in a cycle, and Δ changes by a slope from one cycle
// computed to the next. A leap takes m cycles by Δ, or on that line (the rule of
// Adams and Bashforth, of second order), whichever foresaw the latest cycle
// better; then the next cycle is computed. By how much its wear misses what was
// foreseen estimates the error: above twice [leapError] the leap is taken back
// and a shorter one tried. A leap ends before a lining is through.
func (d *trip) drive(cycles float64) error {
	t := trend{fine: leapError / float64(d.fine.rounds*d.fine.rounds)}
	leap := 0.0
	for done := 0.0; done < cycles; {
		kept := *d
		leap = max(0, math.Floor(min(leap, cycles-done-1, d.through(&t.now))))
		if leap > 0 {
			if err := d.follow(func() { d.leap(&t, done, leap) }); err != nil {
				return err
			}
		}
		before := *d
		if err := d.cycle(); err != nil {
			return err
		}
		next := d.pace(&kept, &before, leap)
		next.at = done + leap + 0.5
		if miss := t.miss(d, &next); leap > 0 && miss > 2*t.fine {
			*d = kept
			leap *= min(0.5, math.Sqrt(t.fine/miss))
			continue
		}
		done += leap + 1
		leap = t.add(d, &next)
		if !d.fine.leap {
			leap = 0
		}
	}
	return nil
}

// A trend is the two latest cycles computed and how to go on from them.
type trend struct {
	last, now pace
	known     int
	slope     float64 // [1/cycle] of now over last; 0 takes now as it is
	fine      float64 // [1] by which a cycle may miss what was foreseen
}

// differ is how far the next cycle is from now, or from the line through last and now.
func (t *trend) differ(d *trip, next *pace, slope float64) (miss float64) {
	far := slope * (next.at - t.now.at)
	for i := range d.count {
		miss = max(miss, differ(&t.last.by[i], &t.now.by[i], &next.by[i], far))
	}
	return miss
}

// miss is how far the next cycle is from what was foreseen.
func (t *trend) miss(d *trip, next *pace) float64 { return t.differ(d, next, t.slope) }

// add takes the next cycle in and returns how many cycles may be leaped then:
// the error of Δ as it is grows with the way, that of the line with its square.
func (t *trend) add(d *trip, next *pace) float64 {
	step := next.at - t.now.at
	level, line := t.differ(d, next, 0), math.Inf(1)
	if t.known > 1 {
		line = t.differ(d, next, 1/(t.now.at-t.last.at))
	}
	t.last, t.now = t.now, *next
	t.slope = 0
	if t.known++; t.known < 2 {
		return 0
	}
	grow := t.fine / max(level, leapExact)
	if g := min(math.Sqrt(t.fine/max(line, leapExact)), leapTrust/max(level, leapExact)); g > grow {
		grow, t.slope = g, 1/step
	}
	return float64(step*min(leapGrowth, grow)) - 1
}

// leap moves all wheels by m cycles.
func (d *trip) leap(t *trend, done, m float64) {
	// The mean of the line over the leap lies this far ahead of now.
	ahead := t.slope * (done + float64(m/2) - t.now.at)
	for i := range d.count {
		var by slow
		for k, now := range t.now.by[i] {
			by[k] = m * (now + float64(ahead*(now-t.last.by[i][k])))
		}
		d.wheels[i].move(&by, m, t.now.slip[i], t.now.stuck[i])
	}
}

// pace measures the cycle that led here from before, and the pins' way of a leap
// of m cycles and that cycle from kept.
func (d *trip) pace(kept, before *trip, m float64) (p pace) {
	for i := range d.count {
		w, from, old := &d.wheels[i], &before.wheels[i], &kept.wheels[i]
		start := from.slow()
		for k, end := range w.slow() {
			p.by[i][k] = end - start[k]
		}
		was := old.ends()
		for k, is := range w.ends() {
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

// differ is how much the wear of a half pad in the next cycle differs from the
// line through last and now, far times their distance ahead, as a share of itself.
func differ(last, now, next *slow, far float64) (miss float64) {
	most := 0.0
	for k := slowWear; k < len(now); k++ {
		most = max(most, now[k], next[k])
	}
	for k := slowWear; k < len(now) && most > 0; k++ {
		line := now[k] + float64(far*(now[k]-last[k]))
		miss = max(miss, math.Abs(next[k]-line)/max(now[k], next[k], leapSmall*most))
	}
	return miss
}
