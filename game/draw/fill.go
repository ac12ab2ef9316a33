package draw

import (
	"image/color"
	"math"

	"golang.org/x/image/math/fixed"
)

// begin prepares a rasterizer for a shape within lo to hi [px]; false when none
// of it can be seen.
func (c *Canvas) begin(lo, hi Pt) bool {
	x0, y0 := max(int(math.Floor(lo.X))-1, c.clip.Min.X), max(int(math.Floor(lo.Y))-1, c.clip.Min.Y)
	x1, y1 := min(int(math.Ceil(hi.X))+2, c.clip.Max.X), min(int(math.Ceil(hi.Y))+2, c.clip.Max.Y)
	if x0 >= x1 || y0 >= y1 {
		return false
	}
	if y1-y0 <= 256 {
		c.small.SetBounds(x1-x0, y1-y0)
		c.ras, c.rasAt = &c.small, Pt{float64(x0), float64(y0)}
	} else {
		c.ras, c.rasAt = &c.tall, Pt{}
	}
	c.ras.Dx, c.ras.Dy = int(c.rasAt.X), int(c.rasAt.Y)
	c.ras.Clear()
	return true
}

// fix rounds a pixel place to the rasterizer's 1/64 px.
func (c *Canvas) fix(p Pt) fixed.Point26_6 {
	return fixed.Point26_6{
		X: fixed.Int26_6(math.Floor((p.X-c.rasAt.X)*64 + 0.5)),
		Y: fixed.Int26_6(math.Floor((p.Y-c.rasAt.Y)*64 + 0.5)),
	}
}

// ring adds one closed contour [px].
func (c *Canvas) ring(pts []Pt) {
	first := c.fix(pts[0])
	c.ras.Start(first)
	for _, p := range pts[1:] {
		c.ras.Add1(c.fix(p))
	}
	c.ras.Add1(first)
}

func (c *Canvas) quad(a, b, d, e Pt) {
	first := c.fix(a)
	c.ras.Start(first)
	c.ras.Add1(c.fix(b))
	c.ras.Add1(c.fix(d))
	c.ras.Add1(c.fix(e))
	c.ras.Add1(first)
}

// end paints what was added since begin.
func (c *Canvas) end(col color.RGBA) {
	c.paint.col = col
	c.ras.Rasterize(&c.paint)
}

// load takes pts to pixels in c.path and returns their bounds.
func (c *Canvas) load(pts []Pt) (lo, hi Pt) {
	c.path = c.path[:0]
	for _, p := range pts {
		c.path = append(c.path, c.px(p))
	}
	return bounds(c.path)
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
	if lo, hi := c.load(pts); c.begin(lo, hi) {
		c.ring(c.path)
		c.end(fill)
	}
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
	lo, hi := bounds(c.path)
	if fill != nil && c.begin(lo, hi) {
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
