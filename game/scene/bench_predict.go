package scene

import (
	"math"

	"evenwear/game/draw"
	"evenwear/game/widget"
)

// The prediction: asked before the pedal moves, answered on a scale, compared
// when the press is over.

var predictArea = draw.Rect{X: 946, Y: 438, W: 315, H: 150}

const (
	shareX0, shareX1 = 966.0, 1238.0
	shareY           = 528.0
)

func (b *bench) predictStill(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 957, Y: 434}, draw.HeadingText, th.Ink, b.word("bench_sheet.predict"))
}

func shareAt(percent float64) float64 { return shareX0 + (shareX1-shareX0)*percent/100 }

func (b *bench) predictMoving(c *draw.Canvas) {
	th, p := c.Theme, &b.view.Predict
	for i, line := range b.lines(c, p.Question, draw.SentenceText, 292) {
		if i < 3 {
			c.Text(draw.Pt{X: 957, Y: 455 + 17*float64(i)}, draw.SentenceText, th.Ink, line)
		}
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
	if b.targets.Focus == idShare {
		ring := widget.Chamfered(shareRect.Inset(-4))
		c.Outline(ring[:], draw.Thin.In(th.Key).Wide(1.4))
	}
	said, got := p.Said >= 0, p.Computed >= 0
	sx, gx := shareAt(clamp(p.Said, 0, 100)), shareAt(clamp(p.Computed, 0, 100))
	if got {
		c.Polygon([]draw.Pt{{X: gx, Y: shareY - 1}, {X: gx - 6, Y: shareY - 21}, {X: gx + 6, Y: shareY - 21}}, th.Ink)
		s := b.fill("bench_sheet.computed", "n", b.num(p.Computed, 0))
		w := c.Measure(draw.LabelText, s)
		x := gx - w/2
		if said && math.Abs(sx-gx) < w/2+16 { // make room for the learner's own figure
			if sx < gx {
				x = gx - 4
			} else {
				x = gx + 4 - w
			}
		}
		c.Text(draw.Pt{X: clamp(x, 954, 1256-w), Y: 501}, draw.LabelText, th.Ink, s)
	}
	if said {
		c.Pencil([]draw.Pt{{X: sx - 6, Y: 506}, {X: sx, Y: 523}, {X: sx + 6, Y: 505}})
		x := sx
		if got && math.Abs(sx-gx) < 20 {
			x += math.Copysign(14, sx-gx)
		}
		c.Text(draw.Pt{X: clamp(x, 962, 1246), Y: 500}, draw.HandText.To(draw.Middle), th.Graphite, b.num(p.Said, 0))
	}
	for i, line := range b.lines(c, p.Comment, draw.SentenceText.At(14), 296) {
		if i < 2 {
			c.Text(draw.Pt{X: 957, Y: 566 + 17*float64(i)}, draw.SentenceText.At(14), th.Ink, line)
		}
	}
}
