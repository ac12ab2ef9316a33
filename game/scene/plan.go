package scene

import (
	"math"
	"strconv"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// planKeys are where the places of the plan are pressed, by place id.
var planKeys = map[string]draw.Rect{
	"bonnet": {X: 102, Y: 153, W: 78, H: 48}, "seat": {X: 102, Y: 281, W: 78, H: 48},
	"front_left": {X: 26, Y: 163, W: 60, H: 48}, "front_right": {X: 199, Y: 163, W: 60, H: 48},
	"rear_left": {X: 26, Y: 329, W: 60, H: 48}, "rear_right": {X: 199, Y: 329, W: 60, H: 48},
	"road": {X: 26, Y: 430, W: 112, H: 48}, "ground": {X: 146, Y: 430, W: 112, H: 48},
}

// wheelAt is the middle of each wheel on the plan, in the order of physics.Wheel.
var wheelAt = [4]draw.Pt{{X: 93, Y: 188}, {X: 189, Y: 188}, {X: 93, Y: 354}, {X: 189, Y: 354}}

// drawPlan draws the car from above with what stands around it.
func drawPlan(c *draw.Canvas, p *play.PlanView) {
	th := c.Theme
	disc, rubber := th.Tint(draw.HatchDisc), th.Tint(draw.Rubber)
	body := []draw.Pt{{X: 122, Y: 124}, {X: 160, Y: 124}, {X: 176, Y: 134}, {X: 182, Y: 160}, {X: 178, Y: 240}, {X: 184, Y: 385},
		{X: 178, Y: 402}, {X: 168, Y: 412}, {X: 114, Y: 412}, {X: 104, Y: 402}, {X: 98, Y: 385}, {X: 104, Y: 240}, {X: 100, Y: 160}, {X: 106, Y: 134}}
	c.Polygon(body, th.Panel)
	c.Outline(body, draw.Visible)
	c.Outline([]draw.Pt{{X: 106, Y: 226}, {X: 176, Y: 226}, {X: 167, Y: 250}, {X: 115, Y: 250}}, draw.Thin)
	c.Outline([]draw.Pt{{X: 115, Y: 360}, {X: 167, Y: 360}, {X: 176, Y: 384}, {X: 106, Y: 384}}, draw.Thin)
	c.Line(draw.Pt{X: 141, Y: 112}, draw.Pt{X: 141, Y: 424}, draw.Centre)
	for w, at := range wheelAt {
		r := draw.Rect{X: at.X - 7, Y: at.Y - 21, W: 14, H: 42}
		if p.WheelOff[w] {
			pts := r.Corners()
			c.Outline(pts[:], draw.Hidden)
			c.Box(draw.Rect{X: at.X - 2, Y: at.Y - 12, W: 4, H: 24}, &disc, draw.Thin)
		} else {
			c.Box(r, &rubber, draw.Thin)
		}
		axle := w / 2
		if p.Chocked[axle] {
			for _, y := range [2]float64{r.Y - 10, r.Y + r.H + 2} {
				c.Polygon([]draw.Pt{{X: at.X, Y: y}, {X: at.X + 6, Y: y + 9}, {X: at.X - 6, Y: y + 9}}, th.Paper)
				c.Outline([]draw.Pt{{X: at.X, Y: y}, {X: at.X + 6, Y: y + 9}, {X: at.X - 6, Y: y + 9}}, draw.Thin)
			}
		}
		outward := -1.0
		if w%2 == 1 {
			outward = 1
		}
		if p.NutsSlack[w] {
			slackNut(c, draw.Pt{X: at.X + 13*outward, Y: at.Y - 33})
		}
		if p.DiscHot[w] {
			hotDisc(c, draw.Pt{X: at.X + 14*outward, Y: at.Y + 33})
		}
		inward := 22.0
		if w%2 == 1 {
			inward = -inward
		}
		foot := draw.Pt{X: at.X + inward, Y: at.Y + 34}
		if p.OnStand[w] {
			c.Box(draw.Rect{X: foot.X - 2, Y: foot.Y - 12, W: 4, H: 6}, &th.Ink, draw.Thin)
			c.Outline([]draw.Pt{{X: foot.X - 5, Y: foot.Y - 6}, {X: foot.X + 5, Y: foot.Y - 6}, {X: foot.X + 9, Y: foot.Y + 3}, {X: foot.X - 9, Y: foot.Y + 3}}, draw.Visible)
		}
		if p.Lifted[axle] && w%2 == 0 {
			c.Circle(draw.Pt{X: 141, Y: at.Y + 30}, 6, &th.Paper, draw.Visible) // clear of the bonnet key
		}
	}
}

// slackNut is a wheel nut that is loose: a hexagon and the turn it was given.
func slackNut(c *draw.Canvas, at draw.Pt) {
	var o [6]draw.Pt
	for i := range o {
		sin, cos := math.Sincos(float64(i) * math.Pi / 3)
		o[i] = at.Add(draw.Pt{X: 4 * cos, Y: 4 * sin})
	}
	c.Polygon(o[:], c.Theme.Panel)
	c.Outline(o[:], draw.Thin)
	c.Arc(at, 7, -2.6, -0.5, draw.Thin)
}

// hotDisc is heat that rises: two wavy strokes.
func hotDisc(c *draw.Canvas, at draw.Pt) {
	for _, x := range [2]float64{-3, 3} {
		var o [9]draw.Pt
		for i := range o {
			o[i] = at.Add(draw.Pt{X: x + 1.6*math.Sin(float64(i)*math.Pi/4), Y: 6 - 1.5*float64(i)})
		}
		c.Polyline(o[:], draw.Thin.In(c.Theme.Caution).Wide(1.5))
	}
}

// placeKey is the key of one place: its name, its number, pencil strokes for readings.
func placeKey(c *draw.Canvas, a play.PlanPlace, r draw.Rect, label string, focused bool) {
	k := widget.Key{Rect: r, Chosen: a.Here, Focused: focused, Off: !a.Action.Enabled && !a.Here}
	k.Draw(c)
	col := c.Theme.Key
	if a.Here {
		col = c.Theme.OnKey
	}
	if k.Off {
		col = c.Theme.Graphite
	}
	c.Text(draw.Pt{X: r.X + 7, Y: r.Y + 18}, draw.KeyText, col, c.Fit(draw.KeyText, label, r.W-14))
	box := draw.Rect{X: r.X + r.W - 24, Y: r.Y + r.H - 22, W: 18, H: 17}
	pts := box.Corners()
	c.Outline(pts[:], draw.Thin.In(col))
	c.Text(draw.Pt{X: box.X + 9, Y: box.Y + 13}, draw.SmallText.To(draw.Middle), col, a.Action.Key)
	pencil := c.Theme.Graphite
	if a.Here {
		pencil = c.Theme.OnKey
	}
	x, y := r.X+8, r.Y+r.H-20
	switch n := a.Readings; {
	case n == 0:
		c.Line(draw.Pt{X: x, Y: y + 8}, draw.Pt{X: x + 7, Y: y + 8}, draw.Thin.In(pencil))
	case n*5 > int(r.W)-38:
		c.Text(draw.Pt{X: x, Y: y + 14}, draw.HandText.At(17), pencil, strconv.Itoa(n))
	default:
		for i := range n {
			dx := x + 5*float64(i)
			c.Line(draw.Pt{X: dx + 1, Y: y}, draw.Pt{X: dx, Y: y + 14}, draw.Thin.In(pencil).Wide(1.7))
		}
	}
}
