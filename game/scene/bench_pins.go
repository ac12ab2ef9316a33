package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

// Section B–B: on the piston's axis, seen from the rim. Both pins are in it, so
// a body that hangs on one pin can be seen to lean.

// pinsArea is all of section B–B: its labels carry figures, so they move too.
var pinsArea = draw.Rect{X: 259, Y: 294, W: 685, H: 337}

// pinsStill draws the carrier, the disc's walls and the lettering that stays.
func (b *bench) pinsStill(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 268, Y: 312}, draw.HeadingText, th.Ink, b.word("bench_sheet.section_bb"))
	c.Text(draw.Pt{X: 268, Y: 329}, draw.SmallText, th.Ink, b.word("bench_sheet.seen_from_rim"))
	b.paragraph(c, 268, 371, 100, "bench_sheet.label_bleed")
	b.paragraph(c, 268, 450, 100, "bench_sheet.label_reaction")
	b.paragraph(c, 268, 560, 120, "bench_sheet.label_seal")
	b.paragraph(c, 268, 600, 120, "bench_sheet.label_bolt")
	b.carrier(c)
}

// carrier draws the carrier round both pins: it never moves.
func (b *bench) carrier(c *draw.Canvas) {
	th := c.Theme
	for _, up := range [2]float64{1, -1} {
		// The carrier round the pin: open towards the body, blind at the far end.
		// h is measured for a pin 133 from the axis; the carrier goes with its pins.
		y := func(h float64) float64 { return axisBB - up*(h-133+b.view.PinAt*trueScale) }
		block := []draw.Pt{{X: 525, Y: y(156.5)}, {X: 609, Y: y(156.5)}, {X: 609, Y: y(111)}, {X: 525, Y: y(111)},
			{X: 525, Y: y(119)}, {X: 602, Y: y(119)}, {X: 602, Y: y(147)}, {X: 525, Y: y(147)}}
		b.part(c, block, th.Carrier, draw.HatchCarrier, block[0], draw.Visible)
		far := []draw.Pt{{X: 663, Y: y(156.5)}, {X: 710, Y: y(156.5)}, {X: 722, Y: y(147)}, {X: 722, Y: y(111)}, {X: 663, Y: y(111)}}
		b.part(c, far, th.Carrier, draw.HatchCarrier, far[0], draw.Visible)
		c.Line(draw.Pt{X: 609, Y: y(156.5)}, draw.Pt{X: 663, Y: y(156.5)}, draw.InFront)
		c.Line(draw.Pt{X: 609, Y: y(124)}, draw.Pt{X: 663, Y: y(124)}, draw.InFront)
	}
}

// discFromRim draws the disc: walls, and ribs that travel when it turns.
func (b *bench) discFromRim(c *draw.Canvas, turn float64) {
	th := c.Theme
	half := b.view.Now.DiscThickness / 2 * trueScale
	const top, bottom, pitch, rib = axisBB - 153.0, axisBB + 152.0, 29.3, 10.0
	if !b.vented() {
		o := draw.Rect{X: discX - half, Y: top, W: 2 * half, H: bottom - top}.Corners()
		b.part(c, o[:], th.Disc, draw.HatchDisc, o[0], draw.Visible)
		return
	}
	wall := half * 0.62
	in, out := discX-half+wall, discX+half-wall
	first := top - pitch + frac(turn*discRibs)*pitch
	for y := first; y < bottom; y += pitch {
		a, z := max(y, top), min(y+rib, bottom)
		if z <= a {
			continue
		}
		o := []draw.Pt{{X: in, Y: a}, {X: out, Y: a}, {X: out, Y: z}, {X: in, Y: z}}
		b.part(c, o, th.Disc, draw.HatchDisc, draw.Pt{X: in, Y: y}, draw.Thin)
	}
	for _, x := range [2]float64{discX - half, out} {
		o := draw.Rect{X: x, Y: top, W: wall, H: bottom - top}.Corners()
		b.part(c, o[:], th.Disc, draw.HatchDisc, o[0], draw.Visible)
	}
}

// discRibs is the number of ribs round the ventilated disc.
const discRibs = 36

// pinsMoving draws the parts that move, at p.
func (b *bench) pinsMoving(c *draw.Canvas, p *pose, v *play.CaliperView) {
	th := c.Theme
	at := func(dx, h float64) draw.Pt { return p.body(axisBB, dx, h) }
	b.discFromRim(c, b.view.Turn)

	r, up := p.radius, p.pinAt+24
	// Bleed screw: the passage leaves the bore at its highest point.
	b.fluid(c, []draw.Pt{at(4, r+14), at(10, r+14), at(10, r), at(4, r)}, v.Pressure)
	b.fluid(c, []draw.Pt{at(0, r), p.inner(axisBB, 0, r), p.inner(axisBB, 0, -r), at(0, -r)}, v.Pressure)
	shell := []draw.Pt{at(-20, r+18), at(-9, r+18), at(-9, r+32), at(2, r+32), at(2, r+10), at(4, r+10), at(4, r), at(0, r), at(0, -r), at(104, -r),
		at(104, -r-18), at(59, -r-18), at(59, -up), at(35, -up), at(35, -r-18), at(-20, -r-18)}
	crown := []draw.Pt{at(10, r), at(10, r+10), at(12, r+10), at(12, r+32), at(17, r+32), at(17, r+18), at(35, r+18), at(35, up), at(59, up),
		at(59, r+18), at(104, r+18), at(104, r)}
	b.part(c, shell, th.Body, draw.HatchBody, at(0, 0), draw.Visible)
	b.part(c, crown, th.Body, draw.HatchBody, at(0, 0), draw.Visible)
	screw := []draw.Pt{at(2, r+11), at(2, r+36), at(-2, r+38), at(-2, r+48), at(3, r+50), at(3, r+63), at(11, r+63), at(11, r+50), at(16, r+48), at(16, r+38), at(12, r+36), at(12, r+11)}
	b.part(c, screw, th.Pin, plain, screw[0], draw.Thin.Wide(1.6))
	c.Line(at(7, r+8), at(7, r+68), draw.Centre)

	b.pistonSection(c, p, axisBB)
	b.seal(c, p, axisBB, v)
	pad := p.pad()
	for _, h := range [2]float64{pad - 17, 17 - pad} { // edges of the bridge, in front of the cut
		c.Line(draw.Pt{X: p.bore + 107, Y: axisBB - h}, p.finger(axisBB, 0, h), draw.InFront)
	}
	b.pads(c, p, axisBB, pad, -pad, pad-10, 10-pad)
	for _, f := range [2][2]float64{{pad - 17, 25}, {-25, 17 - pad}} {
		o := []draw.Pt{p.finger(axisBB, 0, f[0]), p.finger(axisBB, fingerW, f[0]), p.finger(axisBB, fingerW, f[1]), p.finger(axisBB, 0, f[1])}
		b.part(c, o, th.Body, draw.HatchBody, p.finger(axisBB, 0, 0), draw.Visible)
	}
	rub := draw.Visible.Wide(3).In(th.Rub)
	for _, side := range [2]float64{1, -1} {
		b.zigzag(c, at(105, side*(r+9)), p.inner(axisBB, 110, side*(r+3)), 6, 5, rub)
	}
	for i := range 2 {
		b.pin(c, p, i, v)
	}
	c.Line(at(-45, 0), draw.Pt{X: p.fingers + 72, Y: axisBB}, draw.Centre)
	b.figureInFluid(c, p, p.piston+66, axisBB, v.Pressure)
}

// pin draws one guide pin: bolt, sleeve, boot, and what is in its bore.
func (b *bench) pin(c *draw.Canvas, p *pose, i int, v *play.CaliperView) {
	th := c.Theme
	root := p.body(axisBB, 0, p.pin(i)) // it moves along its bore, and never leans
	at := func(dx, dh float64) draw.Pt { return draw.Pt{X: root.X + dx, Y: root.Y - dh} }
	end := at(162, 0).X
	const blind = 602.0

	bore := draw.Rect{X: 525, Y: root.Y - 14, W: blind - 525, H: 28}.Corners()
	c.Polygon(bore[:], th.Paper)
	state := v.Pins[i]
	tip := min(end, blind-1)
	switch state {
	case "stuck":
		red := draw.HatchPen.In(th.Caution)
		for x := tip + 2; x < blind-4; x += 3 {
			c.Line(draw.Pt{X: x, Y: root.Y + 9}, draw.Pt{X: x + 2, Y: root.Y - 9}, red)
		}
		c.Rust(draw.Pt{X: 527, Y: root.Y - 13}, draw.Pt{X: blind - 3, Y: root.Y - 13})
		c.Rust(draw.Pt{X: 527, Y: root.Y + 13}, draw.Pt{X: blind - 3, Y: root.Y + 13})
	case "dry":
	default:
		if tip < blind-5 {
			pool := draw.Rect{X: tip + 2, Y: root.Y - 12, W: blind - 2 - (tip + 2), H: 24}.Corners()
			c.Polygon(pool[:], th.Fluid[0])
			c.Hatch(pool[:], draw.Grease, draw.Pt{X: blind, Y: root.Y})
		}
		for _, s := range [2]float64{-13, 13} {
			c.Line(draw.Pt{X: 526, Y: root.Y + s}, draw.Pt{X: blind - 2, Y: root.Y + s}, draw.Pen{Width: 1, Dash: []float64{2, 2}, Col: th.FluidLine})
		}
	}
	if state == "tight" {
		bush := draw.Visible.Wide(2.6).In(th.Rub)
		for _, s := range [2]float64{-13, 13} {
			c.Line(draw.Pt{X: 532, Y: root.Y + s}, draw.Pt{X: tip - 3, Y: root.Y + s}, bush)
		}
	}
	sleeve := []draw.Pt{at(59, 12), {X: tip - 3, Y: root.Y - 12}, {X: tip, Y: root.Y - 8}, {X: tip, Y: root.Y + 8}, {X: tip - 3, Y: root.Y + 12}, at(59, -12)}
	b.part(c, sleeve, th.Pin, plain, sleeve[0], draw.Visible)
	bolt := []draw.Pt{at(35, 7), at(90, 7), at(95, 0), at(90, -7), at(35, -7)}
	b.part(c, bolt, th.Pin, plain, bolt[0], draw.Thin)
	c.Line(at(59, 4.5), at(88, 4.5), draw.HatchPen)
	c.Line(at(59, -4.5), at(88, -4.5), draw.HatchPen)
	head := []draw.Pt{at(21, 16), at(35, 16), at(35, -16), at(21, -16)}
	b.part(c, head, th.Pin, plain, head[0], draw.Visible)
	c.Line(at(21, 7), at(35, 7), draw.Thin)
	c.Line(at(21, -7), at(35, -7), draw.Thin)
	bend := 0.0
	if state == "bent" {
		bend = 5
	}
	c.Polyline([]draw.Pt{at(14, 0), at(100, 0), {X: tip + 6, Y: root.Y - bend}}, draw.Centre)
	rub := draw.Visible.Wide(2.6).In(th.Rub)
	for _, s := range [2]float64{16.5, -16.5} {
		b.zigzag(c, at(60, s), draw.Pt{X: 525, Y: root.Y - s}, 4, 3.6, rub)
	}
}
