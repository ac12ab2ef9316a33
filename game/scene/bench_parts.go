package scene

import (
	"image/color"
	"math"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// plain is the hatch of a part that is not hatched: pins and bolts are not when
// cut lengthwise, by drawing convention.
const plain = draw.HatchKind(255)

// part fills, hatches and outlines one cut part. The hatch is fixed to origin,
// so it moves with the part.
func (b *bench) part(c *draw.Canvas, outline []draw.Pt, tint color.RGBA, k draw.HatchKind, origin draw.Pt, pen draw.Pen) {
	c.Polygon(outline, tint)
	if k != plain {
		c.Hatch(outline, k, origin)
	}
	c.Outline(outline, pen)
}

// fluid fills an outline with fluid at a pressure [MPa].
func (b *bench) fluid(c *draw.Canvas, outline []draw.Pt, pressure float64) {
	if outline[1].X-outline[0].X < 0.5 {
		return
	}
	step := draw.FluidStep(pressure)
	c.Level(outline, step, outline[0])
	c.Outline(outline, draw.Thin)
}

// figureInFluid letters the pressure in the chamber, or in the hollow of the
// piston with a leader where the chamber is too narrow for it.
func (b *bench) figureInFluid(c *draw.Canvas, p *pose, hollow, axis, pressure float64) {
	if b.halved {
		return
	}
	x, width := (p.bore+p.piston)/2, p.piston-p.bore
	th := c.Theme
	n, unit := b.num(pressure, 2), b.word("bench_sheet.unit_mpa")
	st := draw.LabelText.To(draw.Middle)
	if width < 44 {
		if b.pressed() {
			return // the hollow carries the force; the table carries the pressure
		}
		up, down := 16.0, 26.0
		if p.narrow() {
			up, down = 6, 17
		}
		c.Text(draw.Pt{X: hollow, Y: axis - up}, st, th.Ink, n)
		c.Text(draw.Pt{X: hollow, Y: axis + down}, st, th.Ink, unit)
		c.Line(draw.Pt{X: hollow - 20, Y: axis - up - 4}, draw.Pt{X: x, Y: axis - up - 4}, draw.Thin)
		b.dot(c, draw.Pt{X: x, Y: axis - up - 4})
		return
	}
	for i, s := range [2]string{n, unit} {
		y := axis - 16 + 45*float64(i)
		w := c.Measure(st, s)
		c.Fill(draw.Rect{X: x - w/2 - 2, Y: y - 12, W: w + 4, H: 14}, th.Fluid[draw.FluidStep(pressure)])
		c.Text(draw.Pt{X: x, Y: y}, st, th.Ink, s)
	}
}

// hose draws the flexible hose from the pipe's end on the left to the banjo.
func (b *bench) hose(c *draw.Canvas, eye draw.Pt, pressure float64) {
	var mid [13]draw.Pt
	a, d := draw.Pt{X: 259, Y: 240}, eye
	e, f := draw.Pt{X: 330, Y: 240}, draw.Pt{X: eye.X, Y: 222}
	for i := range mid {
		t := float64(i) / float64(len(mid)-1)
		u := 1 - t
		mid[i] = a.Mul(u * u * u).Add(e.Mul(3 * u * u * t)).Add(f.Mul(3 * u * t * t)).Add(d.Mul(t * t * t))
	}
	th := c.Theme
	c.Polyline(mid[:], draw.Pen{Width: 8})
	c.Polyline(mid[:], draw.Pen{Width: 4.6, Col: th.Fluid[draw.FluidStep(pressure)]})
	c.Polyline(mid[:], draw.Pen{Width: 0.9, Dash: hoseDash, Col: th.FluidLine})
}

var hoseDash = []float64{5, 3}

// pistonSection draws the hollow piston, open towards the pad.
func (b *bench) pistonSection(c *draw.Canvas, p *pose, axis float64) {
	at := func(dx, h float64) draw.Pt { return p.inner(axis, dx, h) }
	r := p.radius
	w := p.hollow()
	hollow := []draw.Pt{at(25, w), at(pistonL, w), at(pistonL, -w), at(25, -w)}
	c.Polygon(hollow, c.Theme.Paper)
	cup := []draw.Pt{at(0, r), at(pistonL, r), at(pistonL, w), at(25, w), at(25, -w), at(pistonL, -w), at(pistonL, -r), at(0, -r)}
	b.part(c, cup, c.Theme.Piston, draw.HatchPiston, at(0, 0), draw.Visible)
	c.Line(at(pistonL, w), at(pistonL, -w), draw.Visible)
	if b.view.Now.PistonStuck {
		for _, h := range [2]float64{r + 1, -r - 1} {
			c.Rust(at(8, h), at(70, h))
		}
	}
}

// seal draws the square seal in its groove. It rolls with the piston until the
// groove stops it: its inner edge is drawn over by the piston's travel.
func (b *bench) seal(c *draw.Canvas, p *pose, axis float64, v *play.CaliperView) {
	r, roll := p.radius, 0.0
	if v.Seal != 0 {
		roll = math.Copysign(min(math.Abs(v.Seal)*4, 3), v.Seal)
	}
	for _, s := range [2]float64{1, -1} {
		o := []draw.Pt{p.body(axis, 80, s*(r+9)), p.body(axis, 92, s*(r+9)), p.body(axis, 92+roll, s*r), p.body(axis, 80+roll, s*r)}
		groove := []draw.Pt{p.body(axis, 79, s*(r+10)), p.body(axis, 94, s*(r+10)), p.body(axis, 96, s*r), p.body(axis, 79, s*r)}
		c.Polygon(groove, c.Theme.Paper)
		c.Outline(groove, draw.Thin)
		c.Polygon(o, c.Theme.Rub)
	}
}

// pads draws both backing plates and linings, from plate height to plate foot
// and lining height to lining foot.
func (b *bench) pads(c *draw.Canvas, p *pose, axis, top, foot, liningTop, liningFoot float64) {
	th := c.Theme
	for pad := range 2 {
		l := []draw.Pt{p.front(axis, pad, liningTop), p.face(axis, pad, liningTop), p.face(axis, pad, 0), p.face(axis, pad, liningFoot), p.front(axis, pad, liningFoot)}
		b.part(c, l, th.Lining, draw.HatchLining, p.front(axis, pad, 0), draw.Thin.Wide(1.5))
		o := []draw.Pt{p.back(axis, pad, top), p.front(axis, pad, top), p.front(axis, pad, foot), p.back(axis, pad, foot)}
		b.part(c, o, th.Plate, draw.HatchPlate, p.back(axis, pad, 0), draw.Visible)
	}
}

// zigzag draws a bellows or a row of rust from a to z with n teeth.
func (b *bench) zigzag(c *draw.Canvas, a, z draw.Pt, n int, high float64, pen draw.Pen) {
	pts := b.pts[:0]
	d := z.Sub(a)
	l := d.Len()
	if l < 1 {
		return
	}
	pen.Width = min(pen.Width, max(l/float64(4*n), 0.8)) // folded up, it would blacken into one block
	up := draw.Pt{X: -d.Y / l, Y: d.X / l}
	for i := range 2*n + 1 {
		s := -high
		if i%2 == 1 {
			s = high
		}
		pts = append(pts, a.Add(d.Mul(float64(i)/float64(2*n))).Add(up.Mul(s)))
	}
	b.pts = pts
	c.Polyline(pts, pen)
}

// leader runs from a label on the right to a dot on the part.
func (b *bench) leader(c *draw.Canvas, label, end draw.Pt) {
	c.Polyline([]draw.Pt{label, {X: label.X - 8, Y: label.Y}, end}, draw.Thin)
	b.dot(c, end)
}

// dotLine is a leader without the short level piece, for labels on the left.
func (b *bench) dotLine(c *draw.Canvas, label, end draw.Pt) {
	c.Line(label, end, draw.Thin)
	b.dot(c, end)
}

func (b *bench) dot(c *draw.Canvas, at draw.Pt) {
	ink := c.Theme.Ink
	c.Circle(at, 2.2, &ink, draw.Pen{})
}

// breakLine ends a part that goes on beyond the drawing.
func (b *bench) breakLine(c *draw.Canvas, a, z draw.Pt) {
	d := z.Sub(a)
	l := d.Len()
	d = d.Mul(1 / l)
	n := draw.Pt{X: -d.Y, Y: d.X}
	m := a.Add(z).Mul(0.5)
	c.Polyline([]draw.Pt{a, m.Sub(d.Mul(6)), m.Sub(d.Mul(3)).Add(n.Mul(4)), m.Add(d.Mul(3)).Sub(n.Mul(4)), m.Add(d.Mul(6)), z}, draw.Thin)
}

func frac(x float64) float64 { return x - math.Floor(x) }

// paragraph letters a label broken at width, from a first baseline down.
func (b *bench) paragraph(c *draw.Canvas, x, y, width float64, id string) {
	for i, line := range b.lines(c, b.word(id), draw.SmallText, width) {
		c.Text(draw.Pt{X: x, Y: y + 16*float64(i)}, draw.SmallText, c.Theme.Ink, line)
	}
}
