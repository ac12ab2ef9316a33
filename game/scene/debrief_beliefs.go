package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

// What could be known: for each cause what was said, what the readings support,
// and what every check would show.

const (
	beliefFoot = 318.0 // [unit]
	beliefLow  = 41.0  // a row is at least so high
	beliefHigh = 58.0  // and at most
	barX0      = 276.0 // 0 %
	barX1      = 738.0 // 100 %
)

var beliefArea = draw.Rect{X: 22, Y: 92, W: 842, H: 5 * beliefLow}

func (s *debrief) drawBeliefs(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 29, Y: 82}, draw.HeadingText, th.Ink, s.word("debrief_sheet.known"))
	x := barX0
	for i, id := range [3]string{"debrief_sheet.said", "debrief_sheet.support", "debrief_sheet.every"} {
		s.beliefBar(c, draw.Rect{X: x, Y: 71, W: 34, H: 11}, i)
		word := s.word(id)
		c.Text(draw.Pt{X: x + 41, Y: 82}, draw.SmallText, th.Ink, word)
		x += 41 + c.Measure(draw.SmallText, word) + 22
	}
	c.Text(draw.Pt{X: beliefArea.X + beliefArea.W - rollRail - 2, Y: 82}, draw.SmallText.To(draw.Right), th.Ink, s.word("debrief_sheet.percent"))
	foot := beliefArea.Y + beliefArea.H
	for i := range 11 {
		at := barX0 + (barX1-barX0)*float64(i)/10
		pen := draw.Pen{Width: 0.8, Dash: []float64{1.5, 4}}
		if i%5 == 0 {
			pen = draw.Thin
		}
		c.Line(draw.Pt{X: at, Y: beliefArea.Y}, draw.Pt{X: at, Y: foot + 4}, pen)
		if i%5 == 0 {
			c.Text(draw.Pt{X: at, Y: foot + 17}, draw.SmallText.To(draw.Middle), th.Ink, s.words.Say("debrief_sheet.of_hundred", "n", s.num(10*float64(i), 0)))
		}
	}
	s.beliefs.items = s.beliefs.items[:0]
	rows := s.v().Beliefs
	height := min(max(beliefArea.H/float64(max(1, len(rows))), beliefLow), beliefHigh)
	for i := range rows {
		s.beliefs.add(height, func(c *draw.Canvas, r draw.Rect) { s.belief(c, &rows[i], r) })
	}
	s.beliefs.draw(c, s.targets.Focus == s.beliefs.id)
}

// belief draws one row: two lines of words, three bars, three figures. The truth
// is named in a box and carries a bar at its left.
func (s *debrief) belief(c *draw.Canvas, b *play.BeliefView, r draw.Rect) {
	th := c.Theme
	if b.True {
		c.Fill(draw.Rect{X: r.X, Y: r.Y + 2, W: 4, H: r.H - 6}, th.Ink)
	}
	c.Text(draw.Pt{X: r.X + 9, Y: r.Y + 15}, draw.LabelText, th.Ink, fit(c, s.lettering, b.Cause, draw.LabelText, barX0-r.X-19))
	where := s.words.Say("debrief_sheet.counters", "place", b.Place, "n", b.Counters)
	c.Text(draw.Pt{X: r.X + 9, Y: r.Y + 31}, draw.SmallText, th.Graphite, fit(c, s.lettering, where, draw.SmallText, barX0-r.X-19))
	for i, share := range [3]float64{b.Said, b.Support, b.Every} {
		w := (barX1 - barX0) * min(max(share, 0), 100) / 100
		high := (r.H - 5) / 3
		s.beliefBar(c, draw.Rect{X: barX0, Y: r.Y + 3 + high*float64(i), W: max(w, 1), H: high - 1}, i)
	}
	right := beliefArea.X + beliefArea.W - rollRail - 2
	figures := s.words.Say("debrief_sheet.three", "said", s.num(b.Said, 0), "support", s.num(b.Support, 0), "every", s.num(b.Every, 0))
	c.Text(draw.Pt{X: right, Y: r.Y + 15}, draw.ValueText.To(draw.Right), th.Ink, figures)
	if b.True {
		word := s.word("debrief_sheet.the_truth")
		w := c.Measure(draw.SmallText, word)
		c.Box(draw.Rect{X: right - w - 8, Y: r.Y + 20, W: w + 8, H: 17}, nil, draw.Thin.Wide(1.4))
		c.Text(draw.Pt{X: right - 4, Y: r.Y + 33}, draw.SmallText.To(draw.Right), th.Ink, word)
	}
}

// beliefBar draws one bar: 0 the learner's scrawl, 1 hatched, 2 solid.
func (s *debrief) beliefBar(c *draw.Canvas, r draw.Rect, kind int) {
	th := c.Theme
	k := r.Corners()
	switch kind {
	case 0:
		if r.W < 4 {
			c.Line(k[0], k[3], draw.Thin.Wide(1.7).In(th.Graphite))
			return
		}
		pts := []draw.Pt{{X: r.X, Y: r.Y + r.H - 1}}
		for x := r.X; x < r.X+r.W; x += 3.5 {
			y := r.Y + 2
			if len(pts)%2 == 0 {
				y = r.Y + r.H - 2
			}
			pts = append(pts, draw.Pt{X: min(x+2, r.X+r.W-1), Y: y})
		}
		c.Polyline(pts, draw.Thin.In(th.Graphite))
		c.Pencil([]draw.Pt{k[0], k[1], k[2], k[3], k[0]})
	case 1:
		c.Polygon(k[:], th.Panel)
		c.Hatch(k[:], draw.HatchBar, draw.Pt{})
		c.Outline(k[:], draw.Thin)
	case 2:
		c.Fill(r, th.Ink)
	}
}
