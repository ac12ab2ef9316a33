package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

// Section A–A: through the piston, radially outwards upwards. It shows why
// squeezing from one side clamps both: the bridge goes over the rim.

// axialArea is what moves in section A–A; its labels stand to the right.
var axialArea = draw.Rect{X: 259, Y: 80, W: 487, H: 209}

// axialStill draws what never moves: disc, carrier, knuckle and lettering.
func (b *bench) axialStill(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 268, Y: 70}, draw.HeadingText, th.Ink, b.word("bench_sheet.section_aa"))
	c.Text(draw.Pt{X: 268, Y: 87}, draw.SmallText, th.Ink, b.word("bench_sheet.through_piston"))
	c.Text(draw.Pt{X: 627, Y: 74}, draw.SmallText.To(draw.Right), th.Ink, b.word("bench_sheet.inboard"))
	c.Text(draw.Pt{X: 646, Y: 74}, draw.SmallText, th.Ink, b.word("bench_sheet.outboard"))
	in := 627 - c.Measure(draw.SmallText, b.word("bench_sheet.inboard"))
	out := 646 + c.Measure(draw.SmallText, b.word("bench_sheet.outboard"))
	c.Arrow(draw.Pt{X: in - 6, Y: 69}, draw.Pt{X: in - 33, Y: 69}, draw.Head)
	c.Arrow(draw.Pt{X: out + 6, Y: 69}, draw.Pt{X: out + 33, Y: 69}, draw.Head)

	b.axialFixed(c)
	for i, id := range axialLabels {
		if id == "bench_sheet.label_disc" && !b.vented() {
			id = "bench_sheet.label_disc_solid"
		}
		c.Text(draw.Pt{X: 750, Y: 91 + 22*float64(i)}, draw.SmallText, th.Ink, b.fill(id, "n", b.num(b.view.Disc, 0)))
	}
	b.paragraph(c, 750, 245, 186, "bench_sheet.label_beam")
	b.paragraph(c, 268, 116, 76, "bench_sheet.label_hose")
	c.Text(draw.Pt{X: 268, Y: 273}, draw.SmallText, th.Ink, b.word("bench_sheet.label_boot"))
}

// axialFixed draws disc, knuckle and carrier beam.
func (b *bench) axialFixed(c *draw.Canvas) {
	th := c.Theme
	// Disc: two walls, the channel between them open to the rim, the web below.
	half := (b.view.Now.DiscThickness / 2) * trueScale
	wall := half * 0.62
	if !b.vented() {
		wall = half
	}
	top, bottom := axisAA-49, axisAA+110.0
	web := []draw.Pt{{X: discX - half + wall, Y: axisAA + 54}, {X: discX + half - wall, Y: axisAA + 54},
		{X: discX + half - wall, Y: bottom}, {X: discX - half + wall, Y: bottom}}
	if b.vented() {
		c.Line(draw.Pt{X: discX - half + wall, Y: top}, draw.Pt{X: discX + half - wall, Y: top}, draw.Thin)
		b.part(c, web, th.Disc, draw.HatchDisc, web[0], draw.Thin)
	}
	for _, x := range [2]float64{discX - half, discX + half - wall} {
		w := []draw.Pt{{X: x, Y: top}, {X: x + wall, Y: top}, {X: x + wall, Y: bottom}, {X: x, Y: bottom}}
		c.Polygon(w, th.Disc)
		c.Hatch(w, draw.HatchDisc, w[0])
		c.Polyline([]draw.Pt{w[3], w[0], w[1], w[2]}, draw.Visible)
		if !b.vented() {
			break
		}
	}
	b.breakLine(c, draw.Pt{X: discX - half - 8, Y: bottom}, draw.Pt{X: discX + half + 8, Y: bottom})

	// Knuckle and carrier beam: these never move.
	kn := []draw.Pt{{X: 433, Y: 270}, {X: 472, Y: 270}, {X: 488, Y: 256}, {X: 529, Y: 256}, {X: 529, Y: 283}, {X: 433, Y: 283}}
	c.Hatch(kn, draw.HatchKnuckle, kn[0])
	c.Polyline(kn, draw.Visible)
	b.breakLine(c, draw.Pt{X: 433, Y: 286}, draw.Pt{X: 433, Y: 266})
	beam := draw.Rect{X: 529, Y: 256, W: 37, H: 27}.Corners()
	b.part(c, beam[:], th.Carrier, draw.HatchCarrier, beam[0], draw.Visible)
	c.Line(draw.Pt{X: 478, Y: 269}, draw.Pt{X: 578, Y: 269}, draw.Hidden)
}

// axialLabels run down the right of section A–A, 22 units apart.
var axialLabels = []string{"bench_sheet.label_bridge", "bench_sheet.label_fingers", "bench_sheet.label_outer_lining",
	"bench_sheet.label_outer_plate", "bench_sheet.label_disc", "bench_sheet.label_inner_lining", "bench_sheet.label_inner_plate"}

// axialMoving draws the parts that move, at p.
func (b *bench) axialMoving(c *draw.Canvas, p *pose, v *play.CaliperView) {
	th := c.Theme
	at := func(dx, h float64) draw.Pt { return p.body(axisAA, dx, h) }
	tip := func(dx, h float64) draw.Pt { return p.finger(axisAA, dx, h) }

	r := p.radius
	in := r * 0.535 // height of the inlet

	b.hose(c, at(-37, in-15), v.Pressure)
	b.fluid(c, []draw.Pt{at(-20, in+5), at(1, in+5), at(1, in-5), at(-20, in-5)}, v.Pressure)
	chamber := []draw.Pt{at(0, r), {X: p.piston, Y: axisAA - r}, {X: p.piston, Y: axisAA + r}, at(0, -r)}
	b.fluid(c, chamber, v.Pressure)

	shell := []draw.Pt{at(-20, r+18), at(60, r+18), at(80, 88), tip(16, 88), tip(fingerW, 76), tip(fingerW, -45), tip(0, -37),
		tip(0, 59), at(106, 59), at(106, r), at(0, r), at(0, in+5), at(-20, in+5)}
	lower := []draw.Pt{at(-20, in-5), at(0, in-5), at(0, -r), at(106, -r), at(106, -r-18), at(-20, -r-18)}
	b.part(c, shell, th.Body, draw.HatchBody, at(0, 0), draw.Visible)
	b.part(c, lower, th.Body, draw.HatchBody, at(0, 0), draw.Visible)

	b.pistonSection(c, p, axisAA)
	b.seal(c, p, axisAA, v)
	b.pads(c, p, axisAA, 54, -49, 47, -45)
	b.zigzag(c, at(106, -r-8), draw.Pt{X: p.piston + 108, Y: axisAA + r + 4}, 6, 5, draw.Visible.Wide(3).In(th.Rub))

	// Banjo: bolt head, two washers, eye, all on the body.
	for _, q := range [...]struct {
		x, w, h float64
		k       draw.HatchKind
	}{{-68, 15, 13.5, plain}, {-53, 5, 12, draw.HatchWasher}, {-48, 23, 15, plain}, {-25, 5, 12, draw.HatchWasher}} {
		o := []draw.Pt{at(q.x, in+q.h), at(q.x+q.w, in+q.h), at(q.x+q.w, in-q.h), at(q.x, in-q.h)}
		pen := draw.Visible
		if q.k == draw.HatchWasher {
			pen = draw.Thin
		}
		b.part(c, o, th.Piston, q.k, o[0], pen)
	}
	c.Line(at(-80, in), at(8, in), draw.Centre)
	c.Line(at(-28, 0), draw.Pt{X: p.fingers + 40, Y: axisAA}, draw.Centre)
	c.Line(draw.Pt{X: discX, Y: 80}, draw.Pt{X: discX, Y: 283}, draw.Centre)
	b.figureInFluid(c, p, p.piston+58, axisAA, v.Pressure)
	if b.bare {
		return
	}
	ends := [...]draw.Pt{tip(-118, 74), tip(12, 49), {X: p.plate[1] - 9, Y: axisAA - 33}, {X: p.plate[1] + plateOut/2, Y: axisAA + 17},
		{X: p.disc[1] - 8, Y: axisAA + 29}, {X: p.plate[0] + 7, Y: axisAA + 38}, {X: p.plate[0] - plateIn/2, Y: axisAA + 46}}
	for i, e := range ends {
		b.leader(c, draw.Pt{X: 746, Y: 87 + 22*float64(i)}, e)
	}
	b.leader(c, draw.Pt{X: 746, Y: 241}, draw.Pt{X: 548, Y: 269})
	b.dotLine(c, draw.Pt{X: 322, Y: 128}, at(-37, in-6))
	b.dotLine(c, draw.Pt{X: 330, Y: 269}, draw.Pt{X: p.piston + 83, Y: axisAA + r + 14})
}
