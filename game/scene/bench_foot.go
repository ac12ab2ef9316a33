package scene

import "evenwear/game/draw"

// The foot of the sheet: the pedal's slider and the title block.

const (
	slideX0, slideX1 = 178.0, 598.0
	slideMost        = 300.0 // [N]
)

// The line over the slider ends short of the marker at the heaviest foot.
const helpEnd, helpY = 580.0, 647.0

var (
	slideArea = draw.Rect{X: 20, Y: 636, W: 605, H: 65} // its ticks stay; all else moves
	titleArea = draw.Rect{X: 790, Y: 632, W: 474, H: 72}
)

func (b *bench) footStill(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 28, Y: 656}, draw.HeadingText, th.Ink, b.word("bench_sheet.pedal_force"))
	for n := 0; n <= int(slideMost); n += 10 {
		x, h := slideAt(float64(n)), 4.0
		if n%50 == 0 {
			h = 7
			c.Text(draw.Pt{X: x, Y: 696}, draw.SmallText.To(draw.Middle), th.Ink, b.num(float64(n), 0))
		}
		c.Line(draw.Pt{X: x, Y: 677}, draw.Pt{X: x, Y: 676 + h}, draw.Thin)
	}
	last := b.num(slideMost, 0)
	c.Text(draw.Pt{X: slideX1 + c.Measure(draw.SmallText, last)/2 + 4, Y: 696}, draw.SmallText, th.Ink, b.word("bench_sheet.unit_n"))
}

func slideAt(n float64) float64 { return slideX0 + (slideX1-slideX0)*n/slideMost }

func (b *bench) footMoving(c *draw.Canvas) {
	th, v := c.Theme, b.view
	arrows := b.fill("bench_sheet.scale_arrows", "n", b.num(b.scaleKN(), 0))
	axial := b.fill("bench_sheet.scale_axial", "n", b.num(b.axial, 0))
	c.Text(draw.Pt{X: 28, Y: 676}, draw.SmallText, th.Ink, arrows)
	c.Text(draw.Pt{X: 28, Y: 693}, draw.SmallText, th.Ink, axial)
	if b.scaled {
		w := c.Measure(draw.SmallText, axial)
		c.Line(draw.Pt{X: 28, Y: 696}, draw.Pt{X: 28 + w, Y: 696}, draw.Thin)
	}
	if b.kN > 0 {
		w := c.Measure(draw.SmallText, arrows)
		c.Line(draw.Pt{X: 28, Y: 679}, draw.Pt{X: 28 + w, Y: 679}, draw.Thin)
	}
	b.slider.Draw(c)
	x := slideAt(clamp(v.Wanted, 0, slideMost))
	n := b.fill("bench_sheet.foot_set", "n", b.num(v.Wanted, 0))
	b.helpLine(c)
	if at := x + 16; at+c.Measure(draw.ValueText, n) < slideX1 {
		c.Text(draw.Pt{X: at, Y: 662}, draw.ValueText, th.Ink, n)
	} else {
		c.Text(draw.Pt{X: x - 16, Y: 662}, draw.ValueText.To(draw.Right), th.Ink, n)
	}
}

// helpLine letters how the slider is moved, or the last refusal in its place.
func (b *bench) helpLine(c *draw.Canvas) {
	th := c.Theme
	if s := b.notice(); s != "" {
		s = fit(c, b.lettering, s, draw.SmallText, helpEnd-slideX0)
		c.Text(draw.Pt{X: helpEnd, Y: helpY}, draw.SmallText.To(draw.Right), th.Ink, s)
		return
	}
	help := b.word("bench_sheet.slider_help")
	c.Text(draw.Pt{X: helpEnd, Y: helpY}, draw.SmallText.To(draw.Right), th.Ink, help)
	x, y := helpEnd-c.Measure(draw.SmallText, help)-8, helpY-4.0
	c.Arrow(draw.Pt{X: x - 19, Y: y}, draw.Pt{X: x - 31, Y: y}, draw.Head)
	c.Arrow(draw.Pt{X: x - 13, Y: y}, draw.Pt{X: x - 1, Y: y}, draw.Head)
}

func (b *bench) notice() string {
	if b.refused != "" {
		return b.refused
	}
	return b.view.Notice
}

func (b *bench) titleMoving(c *draw.Canvas) {
	v := b.view
	b.beside[0] = Fact{Caption: b.word("bench_sheet.fact_sheet"), Value: b.word("bench_sheet.fact_bench"), Width: 94}
	b.beside[1] = Fact{Caption: b.word("bench_sheet.fact_car"), Value: v.Title.Car, Width: 146}
	b.beside[2] = Fact{Caption: b.word("bench_sheet.fact_km"), Value: b.num(v.Title.Km, 0)}
	b.under[0] = Fact{Caption: b.word("bench_sheet.fact_job"), Value: b.word("bench_sheet.fact_free_play"), Width: 96}
	b.under[1] = Fact{Caption: b.word("bench_sheet.fact_pressure"), Value: b.fill("bench_sheet.mpa", "n", b.num(v.Now.Pressure, 2)), Width: 90}
	b.under[2] = Fact{Caption: b.word("bench_sheet.fact_time"), Value: b.fill("bench_sheet.seconds", "n", b.num(v.Time, 1)), Width: 58}
	b.under[3] = Fact{Caption: b.word("bench_sheet.fact_seed"), Value: b.num(float64(v.Title.Seed), 0), Width: 59}
	b.under[4] = Fact{Caption: b.word("bench_sheet.fact_scale"), Value: b.fill("bench_sheet.fact_movement", "n", b.num(b.axial, 0)), Marked: b.scaled}
	drawTitle(c, b.lettering, b.beside[:], b.under[:])
}

func (b *bench) footStamp() uint64 {
	return uint64(newStamp.num(b.view.Wanted, 0.5).flag(b.slider.Focused).text(b.notice()).num(b.axial, 1).add(uint64(b.kN)).flag(b.scaled))
}

func (b *bench) titleStamp() uint64 {
	v := b.view
	return uint64(newStamp.num(v.Now.Pressure, 0.01).num(v.Time, 0.1).num(b.axial, 1).num(v.Title.Km, 1).add(v.Title.Seed).text(v.Title.Car).flag(b.scaled))
}
