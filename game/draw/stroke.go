package draw

import "math"

// Line draws a straight line.
func (c *Canvas) Line(a, b Pt, p Pen) {
	c.path = append(c.path[:0], c.px(a), c.px(b))
	c.strokePath(false, p)
}

// Polyline draws an open line through pts.
func (c *Canvas) Polyline(pts []Pt, p Pen) {
	c.load(pts)
	c.strokePath(false, p)
}

// Outline draws a closed line through pts.
func (c *Canvas) Outline(pts []Pt, p Pen) {
	c.load(pts)
	c.strokePath(true, p)
}

// strokePath draws c.path [px] with a pen. Every straight piece is a rectangle
// and every corner a mitre, all wound the same way, so that the non-zero rule
// joins them in one pass.
func (c *Canvas) strokePath(closed bool, p Pen) {
	half := p.Width * c.scale / 2
	if len(c.path) < 2 || !(half > 0) || !c.seen(mitreLimit*half) {
		return
	}
	c.scan.begin()
	if p.Dash == nil {
		c.strokeRun(c.path, closed, half)
	} else {
		c.strokeDashes(closed, p.Dash, half)
	}
	c.end(c.ink(p.Col))
}

// strokeRun adds one unbroken line.
func (c *Canvas) strokeRun(pts []Pt, closed bool, half float64) {
	n := len(pts)
	segs := n - 1
	if closed {
		segs = n
	}
	var first, prev Pt // directions
	for i := range segs {
		a, b := pts[i], pts[(i+1)%n]
		d := b.Sub(a).unit()
		if d == (Pt{}) {
			continue
		}
		o := d.normal().Mul(half)
		c.quad(a.Add(o), a.Sub(o), b.Sub(o), b.Add(o))
		if prev != (Pt{}) {
			c.mitre(a, prev, d, half)
		} else {
			first = d
		}
		prev = d
	}
	if closed && prev != (Pt{}) {
		c.mitre(pts[0], prev, first, half)
	}
}

// mitreLimit is how far a mitre may reach, in half widths, before it is cut to
// a bevel.
const mitreLimit = 4

// mitre fills the outer gap of a corner at p between directions d and e.
func (c *Canvas) mitre(p, d, e Pt, half float64) {
	turn := d.X*e.Y - d.Y*e.X
	if math.Abs(turn) < 1e-6 && d.X*e.X+d.Y*e.Y > 0 {
		return
	}
	side := -half // the outer side is away from the turn
	if turn < 0 {
		side = half
	}
	a, b := d.normal().Mul(side), e.normal().Mul(side)
	mid := a.Add(b)
	tip := mid.Mul(0.5) // bevel
	if l2 := mid.X*mid.X + mid.Y*mid.Y; l2 > 4*half*half*4/(mitreLimit*mitreLimit) {
		tip = mid.Mul(2 * half * half / l2)
	}
	if turn < 0 {
		c.quad(p, p.Add(b), p.Add(tip), p.Add(a))
	} else {
		c.quad(p, p.Add(a), p.Add(tip), p.Add(b))
	}
}

// strokeDashes walks c.path and strokes what the pattern leaves. It begins with
// a full dash and cuts butt ends.
func (c *Canvas) strokeDashes(closed bool, dash []float64, half float64) {
	n := len(c.path)
	segs := n - 1
	if closed {
		segs = n
	}
	k, left, on := 0, dash[0]*c.scale, true
	c.run = append(c.run[:0], c.path[0])
	for i := range segs {
		a, b := c.path[i], c.path[(i+1)%n]
		l := b.Sub(a).Len()
		d := b.Sub(a).unit()
		at := 0.0
		for l-at > left {
			at += math.Max(left, 0.25) // a pattern of nothing would never end
			p := a.Add(d.Mul(at))
			if on {
				c.run = append(c.run, p)
				c.strokeRun(c.run, false, half)
			}
			c.run = append(c.run[:0], p)
			k = (k + 1) % len(dash)
			on, left = !on, dash[k]*c.scale
		}
		left -= l - at
		c.run = append(c.run, b)
	}
	if on && len(c.run) > 1 {
		c.strokeRun(c.run, false, half)
	}
}
