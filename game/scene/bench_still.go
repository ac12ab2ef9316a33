package scene

import "evenwear/game/draw"

// Still draws the bench without what moves.
func (b *bench) Still(c *draw.Canvas) {
	th := c.Theme
	c.Sheet()
	c.Line(draw.Pt{X: 18, Y: 50}, draw.Pt{X: 1262, Y: 50}, draw.Thin)
	c.Line(draw.Pt{X: 258, Y: 50}, draw.Pt{X: 258, Y: 634}, draw.Thin)
	c.Line(draw.Pt{X: 944, Y: 50}, draw.Pt{X: 944, Y: 634}, draw.Thin)
	c.Line(draw.Pt{X: 258, Y: 293}, draw.Pt{X: 944, Y: 293}, draw.Thin)
	if !b.drawer {
		c.Line(draw.Pt{X: 944, Y: 412}, draw.Pt{X: 1262, Y: 412}, draw.Thin)
	}
	c.Line(draw.Pt{X: 18, Y: 634}, draw.Pt{X: 1262, Y: 634}, draw.Thin)
	c.Text(draw.Pt{X: 29, Y: 42}, draw.SheetText, th.Ink, b.word("bench_sheet.name"))
	b.pedalStill(c)
	b.axialStill(c)
	b.pinsStill(c)
	b.plotStill(c)
	b.predictStill(c)
	b.footStill(c)
	b.barStill(c)
}

// StillStamp changes with the car and the wheel on the bench.
func (b *bench) StillStamp() uint64 {
	v := b.view
	return uint64(newStamp.text(v.Title.Car).text(v.Wheel).text(v.Cause).flag(v.Vented).num(v.Disc, 1).num(v.PinAt, 0.1).num(v.Now.DiscThickness, 0.05).num(v.Ratio, 0.05).flag(b.bare).flag(b.drawer))
}
