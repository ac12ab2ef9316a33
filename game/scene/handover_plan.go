package scene

import (
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// placeBoxes are where the places stand on the plan of the repaired car. They
// show what was looked at and are not pressed, so they have no chamfer.
var placeBoxes = map[string]draw.Rect{
	"bonnet": {X: 176, Y: 128, W: 80, H: 48}, "seat": {X: 176, Y: 323, W: 80, H: 48},
	"front_left": {X: 28, Y: 187, W: 76, H: 48}, "front_right": {X: 328, Y: 187, W: 76, H: 48},
	"road": {X: 28, Y: 323, W: 76, H: 48}, "ground": {X: 328, Y: 323, W: 76, H: 48},
	"rear_left": {X: 28, Y: 436, W: 76, H: 48}, "rear_right": {X: 328, Y: 436, W: 76, H: 48},
}

// repairedWheels are the middles of the wheels, in the order of physics.Wheel.
var repairedWheels = [4]draw.Pt{{X: 147, Y: 214}, {X: 285, Y: 214}, {X: 147, Y: 463}, {X: 285, Y: 463}}

var repairedBody = []draw.Pt{{X: 189, Y: 119}, {X: 243, Y: 119}, {X: 265, Y: 135}, {X: 273, Y: 170}, {X: 276, Y: 240}, {X: 279, Y: 410},
	{X: 276, Y: 500}, {X: 261, Y: 551}, {X: 171, Y: 551}, {X: 156, Y: 500}, {X: 153, Y: 410}, {X: 156, Y: 240}, {X: 159, Y: 170}, {X: 167, Y: 135}}

// drawPlan draws the repaired car from above: new parts, dashed chocks where
// they stood, strokes for what was looked at since.
func (s *handover) drawPlan(c *draw.Canvas) {
	th, p := c.Theme, s.job.view.Plan
	c.Text(draw.Pt{X: 29, Y: 84}, draw.HeadingText, th.Ink, s.word("handover.car"))
	c.Text(draw.Pt{X: 29, Y: 101}, draw.SmallText, th.Ink, s.word("handover.strokes"))
	c.Polygon(repairedBody, th.Panel)
	c.Outline(repairedBody, draw.Visible)
	c.Outline([]draw.Pt{{X: 166, Y: 272}, {X: 266, Y: 272}, {X: 259, Y: 308}, {X: 173, Y: 308}}, draw.Thin)
	c.Outline([]draw.Pt{{X: 173, Y: 485}, {X: 259, Y: 485}, {X: 266, Y: 518}, {X: 166, Y: 518}}, draw.Thin)
	c.Line(draw.Pt{X: 173, Y: 308}, draw.Pt{X: 173, Y: 485}, draw.Thin)
	c.Line(draw.Pt{X: 259, Y: 308}, draw.Pt{X: 259, Y: 485}, draw.Thin)
	c.Line(draw.Pt{X: 216, Y: 110}, draw.Pt{X: 216, Y: 566}, draw.Centre)
	rubber := th.Tint(draw.Rubber)
	for w, at := range repairedWheels {
		r := draw.Rect{X: at.X - 10, Y: at.Y - 29, W: 20, H: 58}
		c.Box(r, &rubber, draw.Visible)
		if p.Stood[w/2] {
			for _, y := range [2]float64{r.Y - 15, r.Y + r.H + 2} {
				chock(c, draw.Pt{X: at.X, Y: y}, 12)
			}
		}
		if len(p.NewParts[w]) > 0 {
			newPads(c, draw.Pt{X: at.X + [2]float64{22, -22}[w%2], Y: at.Y})
		}
	}
	for i := range p.Places {
		s.placeBox(c, &p.Places[i])
	}
	for w, parts := range p.NewParts {
		if len(parts) == 0 {
			continue
		}
		at := draw.Pt{X: 28, Y: 252}
		if w%2 == 1 {
			at.X = 300
		}
		most := 4
		if w >= 2 {
			at.Y, most = 501, 4
		}
		s.block(c, at, draw.SmallText, strings.Join(parts, ", "), 104, most)
	}
	rule(c, 29, 572, 404, 572)
	chock(c, draw.Pt{X: 38, Y: 579}, 12)
	c.Text(draw.Pt{X: 56, Y: 590}, draw.SmallText, th.Ink, s.word("handover.chocks"))
	c.Box(draw.Rect{X: 33, Y: 596, W: 10, H: 13}, &rubber, draw.Thin)
	c.Text(draw.Pt{X: 56, Y: 607}, draw.SmallText, th.Ink, s.word("handover.down"))
	newPads(c, draw.Pt{X: 38, Y: 619})
	c.Text(draw.Pt{X: 56, Y: 624}, draw.SmallText, th.Ink, s.word("handover.pads"))
}

// chock is a dashed wedge: it stood here and is gone.
func chock(c *draw.Canvas, top draw.Pt, h float64) {
	c.Outline([]draw.Pt{top, {X: top.X + h*0.9, Y: top.Y + h}, {X: top.X - h*0.9, Y: top.Y + h}}, draw.Pen{Width: 1.2, Dash: []float64{4, 2.5}})
}

// newPads marks a wheel with new parts: a disc between two pads.
func newPads(c *draw.Canvas, at draw.Pt) {
	h := 34.0
	if at.X < 60 {
		h = 14 // in the legend
	}
	disc, lining := c.Theme.Disc, c.Theme.Lining
	c.Box(draw.Rect{X: at.X - 9, Y: at.Y - h*0.3, W: 6, H: h * 0.6}, &lining, draw.Thin)
	c.Box(draw.Rect{X: at.X + 3, Y: at.Y - h*0.3, W: 6, H: h * 0.6}, &lining, draw.Thin)
	c.Box(draw.Rect{X: at.X - 2.5, Y: at.Y - h/2, W: 5, H: h}, &disc, draw.Thin)
}

// placeBox shows a place with a pencil stroke for each look taken there.
func (s *handover) placeBox(c *draw.Canvas, p *play.PlanPlace) {
	r, ok := placeBoxes[p.ID]
	if !ok {
		return
	}
	th := c.Theme
	c.Box(r, &th.Panel, draw.Thin)
	c.Text(draw.Pt{X: r.X + 8, Y: r.Y + 19}, draw.LabelText, th.Ink, fit(c, s.lettering, s.word("stations.plan_"+p.ID), draw.LabelText, r.W-14))
	y := r.Y + 28
	switch n := p.Readings; {
	case n == 0:
		c.Line(draw.Pt{X: r.X + 9, Y: y + 7}, draw.Pt{X: r.X + 16, Y: y + 7}, draw.Thin.In(th.Graphite))
	case n > 10:
		c.Text(draw.Pt{X: r.X + 9, Y: y + 14}, draw.HandText, th.Graphite, s.num(float64(n), 0))
	default:
		for i := range n {
			x := r.X + 10 + 6*float64(i)
			c.Pencil([]draw.Pt{{X: x + 1, Y: y}, {X: x, Y: y + 14}})
		}
	}
}
