package draw

import (
	"image/color"
	"math"
)

// ring adds one closed contour [px].
func (c *Canvas) ring(pts []Pt) {
	c.scan.start(pts[0])
	for _, p := range pts[1:] {
		c.scan.line(p)
	}
	c.scan.shut()
}

func (c *Canvas) quad(a, b, d, e Pt) {
	c.scan.start(a)
	c.scan.line(b)
	c.scan.line(d)
	c.scan.line(e)
	c.scan.shut()
}

// end paints what was added since the scan began.
func (c *Canvas) end(col color.RGBA) {
	if r := c.scan.bounds().Intersect(c.clip); !r.Empty() {
		c.damage.add(r)
		c.scan.fill(c.img, r, col)
	}
}

// load takes pts to pixels in c.path.
func (c *Canvas) load(pts []Pt) {
	c.path = c.path[:0]
	for _, p := range pts {
		c.path = append(c.path, c.px(p))
	}
}

// seen says whether any of c.path's bounds, widened by more [px], can be seen.
func (c *Canvas) seen(more float64) bool {
	lo, hi := bounds(c.path)
	return hi.X+more >= float64(c.clip.Min.X) && lo.X-more <= float64(c.clip.Max.X) &&
		hi.Y+more >= float64(c.clip.Min.Y) && lo.Y-more <= float64(c.clip.Max.Y)
}

func bounds(pts []Pt) (lo, hi Pt) {
	lo, hi = Pt{math.Inf(1), math.Inf(1)}, Pt{math.Inf(-1), math.Inf(-1)}
	for _, p := range pts {
		lo = Pt{math.Min(lo.X, p.X), math.Min(lo.Y, p.Y)}
		hi = Pt{math.Max(hi.X, p.X), math.Max(hi.Y, p.Y)}
	}
	return lo, hi
}

// Polygon fills a closed outline.
func (c *Canvas) Polygon(pts []Pt, fill color.RGBA) {
	if len(pts) < 3 {
		return
	}
	c.load(pts)
	c.scan.begin()
	c.ring(c.path)
	c.end(fill)
}

// Box fills and outlines an upright rectangle; a nil fill leaves it open.
func (c *Canvas) Box(r Rect, fill *color.RGBA, p Pen) {
	k := r.Corners()
	if fill != nil {
		c.Polygon(k[:], *fill)
	}
	c.Outline(k[:], p)
}

// Circle fills and outlines a circle of radius r [unit]; a nil fill leaves it
// open, a pen of no width draws no outline.
func (c *Canvas) Circle(at Pt, r float64, fill *color.RGBA, p Pen) {
	if !(r > 0) {
		return
	}
	c.arcPath(at, r, 0, 2*math.Pi)
	c.path = c.path[:len(c.path)-1] // the end is the start again
	if fill != nil {
		c.scan.begin()
		c.ring(c.path)
		c.end(*fill)
	}
	c.strokePath(true, p)
}

// Arc draws part of a circle from angle a0 to a1 [rad], clockwise from the
// right as y points down.
func (c *Canvas) Arc(at Pt, r, a0, a1 float64, p Pen) {
	if !(r > 0) || !(math.Abs(a1-a0) < 100) {
		return
	}
	c.arcPath(at, r, a0, a1)
	c.strokePath(false, p)
}

// arcPath puts an arc into c.path in chords that miss it by at most 0.1 px.
func (c *Canvas) arcPath(at Pt, r, a0, a1 float64) {
	px := math.Min(r*c.scale, farthest)
	step := 2 * math.Acos(math.Max(1-0.1/math.Max(px, 0.2), 0))
	n := int(math.Ceil(math.Abs(a1-a0)/step)) + 1
	c.path = c.path[:0]
	for i := 0; i <= n; i++ {
		s, k := math.Sincos(a0 + (a1-a0)*float64(i)/float64(n))
		c.path = append(c.path, c.px(Pt{at.X + r*k, at.Y + r*s}))
	}
}
