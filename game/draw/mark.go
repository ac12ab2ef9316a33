package draw

import (
	"image/color"
	"math"
)

// An ArrowKind is what stands at the end of a thin line.
type ArrowKind uint8

// The ends.
const (
	Head ArrowKind = iota // filled head, 8 × 5
	Both                  // filled head at either end
	Dot                   // leader that ends inside a part
)

// Arrow draws a thin ink line from a to b with its end at b.
func (c *Canvas) Arrow(a, b Pt, kind ArrowKind) { c.ArrowIn(a, b, kind, Thin) }

// ArrowIn is Arrow with a pen.
func (c *Canvas) ArrowIn(a, b Pt, kind ArrowKind, p Pen) {
	c.Line(a, b, p)
	if kind == Dot {
		col := c.ink(p.Col)
		c.Circle(b, 2, &col, Pen{})
		return
	}
	c.head(b, b.Sub(a).unit(), p.Col)
	if kind == Both {
		c.head(a, a.Sub(b).unit(), p.Col)
	}
}

// head draws an arrowhead 8 long and 5 wide whose tip is at b.
func (c *Canvas) head(b, d Pt, col color.RGBA) {
	k := b.Sub(d.Mul(8))
	o := d.normal().Mul(2.5)
	c.Polygon([]Pt{b, k.Add(o), k.Sub(o)}, c.ink(col))
}

// Leader draws a thin line through pts that ends with a dot in the part.
func (c *Canvas) Leader(pts ...Pt) {
	if len(pts) < 2 {
		return
	}
	c.Polyline(pts, Thin)
	ink := c.Theme.Ink
	c.Circle(pts[len(pts)-1], 2, &ink, Pen{})
}

// Force arrows are drawn to scale; one shorter than ShortestForce is left out
// and only its figure stands.
const (
	UnitsPerKN    = 22.0 // [unit/kN]
	ShortestForce = 8.0  // [unit]
)

// ForceArrow draws a force [kN] from at along dir, to scale, filled with ink. It
// returns the tip, and false when the force is too small to draw.
func (c *Canvas) ForceArrow(at, dir Pt, kN float64) (Pt, bool) {
	return c.BlockArrow(at, dir, UnitsPerKN*kN, c.Theme.Ink, true)
}

// BlockArrow draws a force arrow of a length [unit] in a colour, filled or, for
// a reaction, hollow.
func (c *Canvas) BlockArrow(at, dir Pt, length float64, col color.RGBA, filled bool) (Pt, bool) {
	if length < 0 {
		length, dir = -length, dir.Mul(-1)
	}
	if !(length >= ShortestForce) || length > 1e4 {
		return at, false
	}
	d := dir.unit()
	n := d.normal()
	tip := at.Add(d.Mul(length))
	neck := at.Add(d.Mul(math.Max(length-13, 0)))
	pts := [7]Pt{
		at.Add(n.Mul(3)), neck.Add(n.Mul(3)), neck.Add(n.Mul(8)), tip,
		neck.Sub(n.Mul(8)), neck.Sub(n.Mul(3)), at.Sub(n.Mul(3)),
	}
	if filled {
		c.Polygon(pts[:], col)
	} else {
		c.Polygon(pts[:], c.Theme.Paper)
		c.Outline(pts[:], Thin.In(col).Wide(1.4))
	}
	return tip, true
}

// Dimension draws the distance from a to b with its figure: two extension lines
// out to a dimension line that stands off by off to the right of a→b, narrow
// lines all (ISO 128-24). Over a short distance the heads point in from outside
// and the figure stands beyond b.
func (c *Canvas) Dimension(a, b Pt, off float64, figure string) {
	d := b.Sub(a).unit()
	n := d.normal().Mul(off)
	p, q := a.Add(n), b.Add(n)
	over := n.unit().Mul(4)
	gap := n.unit().Mul(2)
	c.Line(a.Add(gap), p.Add(over), Thin)
	c.Line(b.Add(gap), q.Add(over), Thin)
	w := c.Measure(SmallText, figure)
	if q.Sub(p).Len() > 20 {
		c.Arrow(p, q, Both)
	} else {
		c.Arrow(p.Sub(d.Mul(18)), p, Head)
		c.Arrow(q.Add(d.Mul(18)), q, Head)
	}
	if q.Sub(p).Len() > w+20 || (q.Sub(p).Len() > 20 && math.Abs(d.Y) > 0.7) {
		mid := p.Add(q).Mul(0.5)
		c.TextOn(mid.Add(Pt{0, 5}), SmallText.To(Middle), color.RGBA{}, c.Theme.Paper, figure)
		return
	}
	st := SmallText
	out := q.Add(d.Mul(22))
	if d.X < -0.5 {
		st = st.To(Right)
	}
	c.Text(out.Add(Pt{0, 5}), st, color.RGBA{}, figure)
}

// Triangle draws the caution sign, its foot's middle at a place, h high [unit].
func (c *Canvas) Triangle(foot Pt, h float64) {
	half := h * 0.58
	in := h * 0.09
	pts := [3]Pt{{foot.X - half + in, foot.Y - in}, {foot.X, foot.Y - h + in}, {foot.X + half - in, foot.Y - in}}
	c.Outline(pts[:], Visible.In(c.Theme.Caution).Wide(h*0.09))
	c.Line(Pt{foot.X, foot.Y - h*0.66}, Pt{foot.X, foot.Y - h*0.34}, Pen{Width: h * 0.1, Col: c.Theme.Caution})
	col := c.Theme.Caution
	c.Circle(Pt{foot.X, foot.Y - h*0.22}, h*0.06, &col, Pen{})
}

// Rust draws rust marks along a line: short irregular strokes across it, in
// caution, so that rust is seen in grey as well.
func (c *Canvas) Rust(a, b Pt) {
	d := b.Sub(a)
	l := d.Len()
	u, n := d.unit(), d.unit().normal()
	seed := uint32(7)
	c.path = c.path[:0]
	for s := 0.0; s < math.Min(l, 2000); s += 2.4 {
		p := a.Add(u.Mul(s))
		c.path = append(c.path, c.px(p.Add(n.Mul(2.2*noise(&seed)))))
	}
	c.strokePath(false, Thin.In(c.Theme.Caution).Wide(1.2))
}
