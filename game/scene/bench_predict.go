package scene

import (
	"math"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// The prediction: asked for the force that is set, answered on a scale while the
// pedal is at rest, compared when the press stands still.

var predictArea = draw.Rect{X: 946, Y: 438, W: 315, H: 150}

const (
	shareX0, shareX1 = 978.0, 1228.0
	shareY           = 530.0
)

func (b *bench) predictStill(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 957, Y: 434}, draw.HeadingText, th.Ink, b.word("bench_sheet.predict"))
}

func shareAt(percent float64) float64 { return shareX0 + (shareX1-shareX0)*percent/100 }

func (b *bench) predictMoving(c *draw.Canvas) {
	th, p := c.Theme, &b.view.Predict
	for i, line := range b.lines(c, p.Question, draw.SentenceText, 292) {
		if i < 2 {
			c.Text(draw.Pt{X: 957, Y: 455 + 17*float64(i)}, draw.SentenceText, th.Ink, line)
		}
	}
	b.shareField(c, p)
	for i, line := range b.lines(c, p.Comment, draw.SentenceText.At(14), 296) {
		if i < 2 {
			c.Text(draw.Pt{X: 957, Y: 568 + 17*float64(i)}, draw.SentenceText.At(14), th.Ink, line)
		}
	}
}

// shareField draws the field with its scale, what was said and what was computed.
// While the pedal is pressed it takes nothing and is dashed.
func (b *bench) shareField(c *draw.Canvas, p *play.PredictView) {
	th := c.Theme
	field := widget.Chamfered(shareRect)
	c.Polygon(field[:], th.Panel)
	if p.Open {
		c.Outline(field[:], draw.Visible.In(th.Key))
	} else {
		c.Outline(field[:], draw.Hidden.In(th.Graphite))
	}
	if b.targets.Focus == idShare {
		ring := widget.Chamfered(shareRect.Inset(-4))
		c.Outline(ring[:], draw.Thin.In(th.Key).Wide(1.4))
	}
	c.Line(draw.Pt{X: shareX0, Y: shareY}, draw.Pt{X: shareX1, Y: shareY}, draw.Thin.Wide(1.8))
	for i := range 11 {
		x, h := shareAt(float64(i)*10), 5.0
		if i%5 == 0 {
			h = 9
			c.Text(draw.Pt{X: x, Y: 546}, draw.SmallText.To(draw.Middle), th.Ink, b.fill("bench_sheet.unit_percent_of", "n", b.num(float64(i)*10, 0)))
		}
		c.Line(draw.Pt{X: x, Y: shareY - h}, draw.Pt{X: x, Y: shareY}, draw.Thin)
	}
	said, got := p.Said >= 0, p.Computed >= 0
	sx, gx := shareAt(clamp(p.Said, 0, 100)), shareAt(clamp(p.Computed, 0, 100))
	mine := b.fill("bench_sheet.unit_percent_of", "n", b.num(p.Said, 0))
	s := b.fill("bench_sheet.computed", "n", b.num(p.Computed, 0))
	x, at := shareFigures(p.Said, p.Computed, c.Measure(draw.HandText, mine), c.Measure(draw.LabelText, s))
	if said {
		c.Pencil([]draw.Pt{{X: sx - 6, Y: 508}, {X: sx, Y: 525}, {X: sx + 6, Y: 507}})
		c.Text(draw.Pt{X: x, Y: 502}, draw.HandText.To(draw.Middle), th.Graphite, mine)
	}
	if got {
		c.Polygon([]draw.Pt{{X: gx, Y: shareY - 1}, {X: gx - 6, Y: shareY - 21}, {X: gx + 6, Y: shareY - 21}}, th.Ink)
		c.Text(draw.Pt{X: at, Y: 503}, draw.LabelText, th.Ink, s)
	}
}

// shareFigures is where the two figures over the scale stand in the field: the
// middle of the learner's, saidWide wide, and the left end of the computed one.
// Close together they make room for each other. A figure below 0 is none.
func shareFigures(said, computed, saidWide, wide float64) (middle, left float64) {
	lo, hi := shareRect.X+4, shareRect.X+shareRect.W-12
	sx, gx, half := shareAt(clamp(said, 0, 100)), shareAt(clamp(computed, 0, 100)), saidWide/2
	middle, left = sx, clamp(gx-wide/2, lo, hi-wide)
	both := said >= 0 && computed >= 0
	if both && math.Abs(sx-gx) < half+6 {
		middle += math.Copysign(half+6, sx-gx)
	}
	middle = clamp(middle, lo+half, hi-half)
	if both && left < middle+half+5 && left+wide > middle-half-5 {
		before, after := middle-half-5-wide, middle+half+5
		left = before
		if after+wide <= hi && (sx < gx || before < lo) {
			left = after
		}
	}
	return middle, left
}
