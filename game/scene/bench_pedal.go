package scene

import (
	"math"

	"evenwear/game/draw"
)

// The left column: the story starts at the foot. A diagram, not to scale.

var (
	pedalArea = draw.Rect{X: 20, Y: 92, W: 237, H: 262}
	tableArea = draw.Rect{X: 158, Y: 364, W: 51, H: 197}
	sumArea   = draw.Rect{X: 20, Y: 594, W: 237, H: 18}
)

// pedalStill draws headings, ground, casings and the rules of the table.
func (b *bench) pedalStill(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 28, Y: 72}, draw.HeadingText, th.Ink, b.word("bench_sheet.pedal_to_line"))
	c.Text(draw.Pt{X: 28, Y: 90}, draw.SmallText, th.Graphite, b.word("bench_sheet.not_to_scale"))
	c.Text(draw.Pt{X: 194, Y: 108}, draw.SmallText.To(draw.Middle), th.Ink, b.word("bench_sheet.reservoir"))
	c.Text(draw.Pt{X: 117, Y: 150}, draw.SmallText.To(draw.Middle), th.Ink, b.word("bench_sheet.booster"))
	c.Text(draw.Pt{X: 166, Y: 267}, draw.SmallText.To(draw.Right), th.Ink, b.word("bench_sheet.other_circuit"))
	for i, line := range b.lines(c, b.word("bench_sheet.master"), draw.SmallText, 110) {
		c.Text(draw.Pt{X: 186, Y: 284 + 16*float64(i)}, draw.SmallText.To(draw.Middle), th.Ink, line)
	}
	c.Line(draw.Pt{X: 52, Y: 142}, draw.Pt{X: 80, Y: 142}, draw.Visible)
	for x := 53.0; x < 82; x += 6.5 {
		c.Line(draw.Pt{X: x, Y: 141}, draw.Pt{X: x + 5, Y: 135}, draw.Thin)
	}
	c.Line(draw.Pt{X: 52, Y: 160}, draw.Pt{X: 80, Y: 160}, draw.Centre)
	c.Line(draw.Pt{X: 66, Y: 146}, draw.Pt{X: 66, Y: 176}, draw.Centre)

	// Reservoir, its marks and cap.
	c.Box(draw.Rect{X: 180, Y: 112, W: 28, H: 10}, &th.Panel, draw.Visible)
	for _, y := range [2]float64{130, 160} {
		c.Line(draw.Pt{X: 239, Y: y}, draw.Pt{X: 246, Y: y}, draw.Thin)
	}
	// Cylinder casing; its bore is drawn with what moves in it.
	o := draw.Rect{X: 132, Y: 187, W: 114, H: 38}.Corners()
	b.part(c, o[:], th.Body, draw.HatchBody, o[0], draw.Visible)

	for i, row := range tableRows {
		y := 381 + 25*float64(i)
		c.Line(draw.Pt{X: 28, Y: y - 19}, draw.Pt{X: 248, Y: y - 19}, draw.Thin)
		name := b.word(row.name)
		if row.ratio {
			name = b.fill(row.name, "ratio", b.num(b.ratio(), 1))
		}
		c.Text(draw.Pt{X: 28, Y: y}, draw.LabelText, th.Ink, name)
		c.Text(draw.Pt{X: 212, Y: y}, draw.LabelText, th.Ink, b.word(row.unit))
	}
	c.Line(draw.Pt{X: 28, Y: 563}, draw.Pt{X: 248, Y: 563}, draw.Thin)
	c.Text(draw.Pt{X: 28, Y: 587}, draw.LabelText, th.Ink, b.word("bench_sheet.balance"))
	for i, id := range balanceNames {
		c.Text(draw.Pt{X: balanceX[i], Y: 625}, draw.SmallText, th.Ink, b.word(id))
	}
}

var balanceNames = [4]string{"bench_sheet.balance_fluid", "bench_sheet.balance_fingers", "bench_sheet.balance_upper", "bench_sheet.balance_lower"}
var balanceX = [4]float64{28, 84, 140, 196}

// A tableRow is one figure of the left column.
type tableRow struct {
	name, unit string
	decimals   int
	ratio      bool
}

var tableRows = [8]tableRow{
	{name: "bench_sheet.row_travel", unit: "bench_sheet.unit_mm"},
	{name: "bench_sheet.row_rod", unit: "bench_sheet.unit_n", ratio: true},
	{name: "bench_sheet.row_booster", unit: "bench_sheet.unit_n"},
	{name: "bench_sheet.row_pressure", unit: "bench_sheet.unit_mpa", decimals: 2},
	{name: "bench_sheet.row_piston", unit: "bench_sheet.unit_kn", decimals: 2},
	{name: "bench_sheet.row_fingers", unit: "bench_sheet.unit_kn", decimals: 2},
	{name: "bench_sheet.row_upper", unit: "bench_sheet.unit_mm", decimals: 2},
	{name: "bench_sheet.row_lower", unit: "bench_sheet.unit_mm", decimals: 2},
}

// tableFigures are the values of tableRows in their order.
func (b *bench) tableFigures() [8]float64 {
	v := b.view
	return [8]float64{v.Pedal, v.Rod, v.Booster, v.Now.Pressure,
		v.Balance[0], v.Balance[1], v.BodyEnds[0], v.BodyEnds[1]}
}

func (b *bench) tableMoving(c *draw.Canvas) {
	for i, x := range b.tableFigures() {
		c.Text(draw.Pt{X: 205, Y: 381 + 25*float64(i)}, draw.ValueText.To(draw.Right), c.Theme.Ink, b.num(x, tableRows[i].decimals))
	}
}

// sumMoving letters the balance of the body: fluid = fingers + pins. The terms
// are rounded as shown, so the last takes what rounding left.
func (b *bench) sumMoving(c *draw.Canvas) {
	st, ink := draw.SmallText, c.Theme.Ink
	terms := b.view.Balance
	// A sum of rounded terms may miss the rounded sum by a last figure.
	left := hundredth(terms[0]) - hundredth(terms[1]) - hundredth(terms[2])
	if math.Abs(left-terms[3]) < 0.016 {
		terms[3] = left
	}
	for i, x := range terms {
		c.Text(draw.Pt{X: balanceX[i], Y: 607}, st, ink, b.num(x, 2))
		if i > 0 {
			c.Text(draw.Pt{X: balanceX[i] - 9, Y: 607}, st.To(draw.Middle), ink, [4]string{"", "=", "+", "+"}[i])
		}
	}
}

func hundredth(x float64) float64 { return math.Round(x*100) / 100 }

// pedalMoving draws pedal, booster, pistons and reservoir as they stand.
func (b *bench) pedalMoving(c *draw.Canvas) {
	th, v := c.Theme, b.view
	if v.Pedal > 0.5 {
		pedal(c, 0, draw.Hidden, false)
	}
	turn := v.Pedal * 0.0028 // [rad/mm] of the diagram
	pad := pedal(c, turn, draw.Thin.Wide(1.8), true)
	pivot := draw.Pt{X: 66, Y: 160}
	c.Circle(pivot, 5, nil, draw.Visible)

	// The rod's travel in the diagram; the pistons share it as they share it in the car.
	rod := swing(draw.Pt{X: 66.5, Y: 206}, turn)
	sec := min(v.Stroke[1]*0.75, 14)
	pri := min(sec+v.Stroke[0]*0.75, 26)
	shift := rod.X - 66.5
	c.Line(rod, draw.Pt{X: 104, Y: 206}, draw.Pen{Width: 4})
	c.Circle(rod, 3, &th.Paper, draw.Thin.Wide(1.6))
	booster := []draw.Pt{{X: 110, Y: 160}, {X: 127, Y: 160}, {X: 132, Y: 187}, {X: 132, Y: 225}, {X: 127, Y: 252}, {X: 110, Y: 252}, {X: 104, Y: 222}, {X: 104, Y: 190}}
	c.Polygon(booster, th.Body)
	c.Outline(booster, draw.Visible)
	d := min(shift*0.4, 6.0)
	c.Polyline([]draw.Pt{{X: 115, Y: 162}, {X: 117 + d, Y: 188}, {X: 117 + d, Y: 224}, {X: 115, Y: 250}}, draw.Thin)
	c.Line(draw.Pt{X: 117 + d, Y: 188}, draw.Pt{X: 117 + d, Y: 224}, draw.Pen{Width: 3})

	bore := draw.Rect{X: 138, Y: 195, W: 99, H: 22}
	c.Box(bore, &th.Panel, draw.Thin.Wide(1.6))
	p1, p2 := 145+pri, 185+sec
	b.chamber(c, p1+10, p2, v.Chamber[0])
	b.chamber(c, p2+10, 237, v.Chamber[1])
	for _, x := range [2]float64{p1, p2} {
		o := draw.Rect{X: x, Y: 195, W: 10, H: 22}.Corners()
		b.part(c, o[:], th.Piston, draw.HatchPiston, o[0], draw.Thin.Wide(1.6))
	}
	c.Line(draw.Pt{X: 117 + d, Y: 206}, draw.Pt{X: p1, Y: 206}, draw.Pen{Width: 4})

	b.reservoir(c)
	mine := 0
	if !b.primary() {
		mine = 1
	}
	b.pipe(c, []draw.Pt{{X: 220, Y: 226}, {X: 220, Y: 240}, {X: 257, Y: 240}}, v.Chamber[mine])
	b.pipe(c, []draw.Pt{{X: 176, Y: 226}, {X: 176, Y: 262}, {X: 252, Y: 262}}, v.Chamber[1-mine])

	if v.Foot >= 1 {
		n := 1.0 // [N/unit]
		for v.Foot > 34*n {
			n *= 2
		}
		d, l := draw.Pt{X: 0.74, Y: 0.67}, max(v.Foot/n, draw.ShortestForce)
		c.BlockArrow(pad.Add(d.Mul(l)), d.Mul(-1), l, th.Ink, true)
		c.Text(draw.Pt{X: 106, Y: 349}, draw.SmallText, th.Ink, b.fill("bench_sheet.pedal_scale", "n", b.num(n, 0)))
	}
	foot := b.word("bench_sheet.foot_off")
	if v.Foot > 0 {
		foot = b.fill("bench_sheet.foot", "n", b.num(v.Foot, 0))
	}
	c.Text(draw.Pt{X: 106, Y: 332}, draw.ValueText, th.Ink, foot)
}

// swing turns a place of the pedal about its pivot by a [rad], foot forwards.
func swing(p draw.Pt, a float64) draw.Pt {
	s, k := math.Sincos(-a)
	x, y := p.X-66, p.Y-160
	return draw.Pt{X: 66 + x*k - y*s, Y: 160 + x*s + y*k}
}

// pedal draws the lever turned by a and returns the middle of its pad.
func pedal(c *draw.Canvas, a float64, pen draw.Pen, pad bool) draw.Pt {
	at := func(x, y float64) draw.Pt { return swing(draw.Pt{X: x, Y: y}, a) }
	c.Polyline([]draw.Pt{at(61, 163), at(49, 277), at(35, 293)}, pen)
	if pad {
		c.Polyline([]draw.Pt{at(71, 164), at(60, 282), at(44, 303)}, pen)
		c.Line(at(28, 288), at(48, 309), draw.Pen{Width: 6})
	}
	return at(40, 302)
}

// chamber draws the fluid between two places of the bore, and the return spring in it.
func (b *bench) chamber(c *draw.Canvas, x0, x1, pressure float64) {
	if x1-x0 < 2 {
		return
	}
	o := draw.Rect{X: x0, Y: 195, W: x1 - x0, H: 22}.Corners()
	b.fluid(c, o[:], pressure)
	b.zigzag(c, draw.Pt{X: x0 + 1, Y: 206}, draw.Pt{X: x1 - 1, Y: 206}, 4, 7, draw.Thin)
}

func (b *bench) reservoir(c *draw.Canvas) {
	th := c.Theme
	shape := []draw.Pt{{X: 150, Y: 122}, {X: 238, Y: 122}, {X: 238, Y: 166}, {X: 228, Y: 172}, {X: 160, Y: 172}, {X: 150, Y: 166}}
	for _, x := range [2]float64{162, 214} {
		c.Fill(draw.Rect{X: x, Y: 172, W: 7, H: 14}, th.Fluid[0])
		c.Line(draw.Pt{X: x, Y: 172}, draw.Pt{X: x, Y: 186}, draw.Thin)
		c.Line(draw.Pt{X: x + 7, Y: 172}, draw.Pt{X: x + 7, Y: 186}, draw.Thin)
	}
	c.Polygon(shape, th.Paper)
	if x := b.view.Lesson; x != nil && x.LevelHidden { // it is what is asked
		c.Text(draw.Pt{X: 194, Y: 154}, draw.ValueText.At(20).To(draw.Middle), th.Ink, "?")
		c.Outline(shape, draw.Visible)
		return
	}
	y := clamp(160-30*b.view.Level, 123, 171)
	fluid := []draw.Pt{{X: 150, Y: y}, {X: 238, Y: y}, {X: 238, Y: max(166, y)}, {X: 228, Y: 172}, {X: 160, Y: 172}, {X: 150, Y: max(166, y)}}
	c.Polygon(fluid, th.Fluid[0])
	c.Level(fluid, 0, draw.Pt{X: 150, Y: y})
	c.Line(draw.Pt{X: 194, Y: 144}, draw.Pt{X: 194, Y: 172}, draw.Visible)
	c.Outline(shape, draw.Visible)
}

func (b *bench) pipe(c *draw.Canvas, path []draw.Pt, pressure float64) {
	c.Polyline(path, draw.Pen{Width: 6})
	c.Polyline(path, draw.Pen{Width: 3.4, Col: c.Theme.Fluid[draw.FluidStep(pressure)]})
}

func clamp(x, lo, hi float64) float64 { return max(lo, min(hi, x)) }
