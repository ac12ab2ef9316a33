package scene

import (
	"math"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// What happens next: a stop before and after the remedy on a road to scale, and
// what is left of the linings.

const (
	nextLeft  = 588.0 // [unit]
	nextX0    = 599.0
	nextX1    = 858.0
	laneWidth = 3.5  // [m] common practice, no source
	laneMost  = 26.0 // [unit] a lane is drawn no wider
)

var stopKey = draw.Rect{X: nextX0, Y: 344, W: nextX1 - nextX0, H: 28}

// stops are the stops that can be shown, as found.
func (s *debrief) stops() []*play.StopView {
	var list []*play.StopView
	for i := range s.v().Next {
		if n := &s.v().Next[i]; !n.Leaves {
			list = append(list, n)
		}
	}
	return list
}

func (s *debrief) drawNext(c *draw.Canvas) {
	c.Text(draw.Pt{X: nextX0, Y: 337}, draw.HeadingText, c.Theme.Ink, s.word("debrief_sheet.next"))
	if list := s.stops(); len(list) > 0 {
		c.Text(draw.Pt{X: nextX1, Y: 337}, draw.SmallText.To(draw.Right), c.Theme.Ink, s.fill("debrief_sheet.lane", "width", s.num(laneWidth, 1)))
		s.drawRoads(c, list[s.stop%len(list)])
	}
	rule(c, nextLeft, 492, endSplit, 492)
	s.drawLinings(c)
}

// drawRoads draws the stop as found over the same stop as the car leaves.
func (s *debrief) drawRoads(c *draw.Canvas, found *play.StopView) {
	pair := []*play.StopView{found}
	for i := range s.v().Next {
		if n := &s.v().Next[i]; n.Leaves && n.ID == found.ID {
			pair = append(pair, n)
		}
	}
	longest := 1.0
	for _, n := range pair {
		longest = max(longest, n.Distance)
	}
	step := 10.0
	for longest/step > 5 {
		step *= 2
	}
	ends := math.Ceil(longest/step) * step
	scale := min((nextX1-nextX0)/ends, laneMost/laneWidth) // [unit/m]
	for i, n := range pair {
		id := "debrief_sheet.stop_found"
		if n.Leaves {
			id = "debrief_sheet.stop_leaves"
		}
		y := 388 + 47*float64(i)
		text := s.words.Say(id, "stop", s.stopText(n))
		c.Text(draw.Pt{X: nextX0, Y: y}, draw.SmallText, c.Theme.Ink, fit(c, s.lettering, text, draw.SmallText, nextX1-nextX0+6))
		s.road(c, draw.Pt{X: nextX0, Y: y + 19}, n, scale, ends)
	}
	th := c.Theme
	for x := 0.0; x <= ends+0.1; x += step {
		at := nextX0 + x*scale
		c.Line(draw.Pt{X: at, Y: 470}, draw.Pt{X: at, Y: 474}, draw.Thin)
		st := draw.SmallText.To(draw.Middle)
		if x == 0 {
			st = draw.SmallText
		} else if at > nextX1-12 {
			st, at = st.To(draw.Right), nextX1
		}
		text := s.num(x, 0)
		if x+step > ends+0.1 {
			text = s.fill("debrief_sheet.metres", "n", text)
		}
		c.Text(draw.Pt{X: at, Y: 487}, st, th.Ink, text)
	}
}

// stopText is a stop's length and where it ends aside, in words.
func (s *debrief) stopText(n *play.StopView) string {
	id, aside := "debrief.stop", math.Abs(n.Aside)
	switch {
	case aside < 0.005:
	case n.Aside > 0:
		id = "debrief_sheet.stop_right"
	default:
		id = "debrief_sheet.stop_left"
	}
	return s.words.Say(id, "distance", s.num(n.Distance, 1), "aside", s.num(aside, 2))
}

// road draws one lane from above, the way the car takes when nobody steers, and
// where it stands. Along and across have one scale.
func (s *debrief) road(c *draw.Canvas, mid draw.Pt, n *play.StopView, scale, ends float64) {
	th := c.Theme
	half := laneWidth / 2 * scale
	end := mid.X + ends*scale
	stop := mid.X + min(n.Distance, ends)*scale
	swept := []draw.Pt{{X: mid.X, Y: mid.Y - half}, {X: stop, Y: mid.Y - half}, {X: stop, Y: mid.Y + half}, {X: mid.X, Y: mid.Y + half}}
	c.Polygon(swept, th.Panel)
	c.Hatch(swept, draw.HatchBar, draw.Pt{})
	for _, side := range [2]float64{-half, half} {
		c.Line(draw.Pt{X: mid.X, Y: mid.Y + side}, draw.Pt{X: end, Y: mid.Y + side}, draw.Visible)
	}
	c.Line(mid, draw.Pt{X: end, Y: mid.Y}, draw.Hidden)
	// The pull stays the same through the stop, so the way aside grows with the
	// square of time while speed falls steadily: with u = 1 − v/v₀ the car is at
	// (2u − u²) of its way and u² of its drift.
	const pieces, room = 32, laneMost/2 + 5
	var way [pieces + 1]draw.Pt
	last := 0
	for i := range way {
		u := float64(i) / pieces
		way[i] = draw.Pt{X: mid.X + (stop-mid.X)*(2*u-u*u), Y: mid.Y + n.Aside*u*u*scale}
		if d := way[i].Y - mid.Y; d > room || d < -room {
			break // beyond what is drawn: the figure tells the rest
		}
		last = i
	}
	c.Polyline(way[:last+1], draw.Visible)
	if last == pieces {
		c.Circle(way[last], 3, &th.Ink, draw.Pen{})
	} else if last > 0 {
		c.ArrowIn(way[last-1], way[last], draw.Head, draw.Visible)
	}
	c.Line(draw.Pt{X: stop, Y: mid.Y - half - 3}, draw.Pt{X: stop, Y: mid.Y + half + 3}, draw.Visible.Wide(3))
}

const (
	liningX0 = 712.0 // [unit] no lining
	liningMM = 6.8   // [unit/mm]
	liningY0 = 515.0
)

// drawLinings draws each lining now as an outline and what is left later hatched
// in it, against the marks of 3 and 2 mm.
func (s *debrief) drawLinings(c *draw.Canvas) {
	d, th := s.v(), c.Theme
	title := ""
	if len(d.Faults) > 0 {
		title = s.fill("debrief_sheet.linings", "place", s.word("place."+d.Faults[0].Wheel))
	}
	then := s.word("debrief_sheet.then")
	if km := s.onward(); km > 0 {
		then = s.fill("debrief_sheet.onward", "km", s.num(km, 0))
	}
	c.Text(draw.Pt{X: nextX1, Y: 508}, draw.SmallText.To(draw.Right), th.Ink, then)
	now := nextX1 - c.Measure(draw.SmallText, then) - 10
	c.Text(draw.Pt{X: now, Y: 508}, draw.SmallText.To(draw.Right), th.Ink, s.word("debrief_sheet.now"))
	c.Text(draw.Pt{X: nextX0, Y: 508}, draw.SmallText, th.Ink, fit(c, s.lettering, title, draw.SmallText, now-c.Measure(draw.SmallText, s.word("debrief_sheet.now"))-nextX0-6))
	y := liningY0
	for _, leaves := range [2]bool{false, true} {
		for _, pad := range [2]string{"inner", "outer"} {
			s.lining(c, y, pad, leaves)
			y += 16
		}
	}
	for i, mm := range [2]float64{2, 3} {
		x := liningX0 + mm*liningMM
		pen := draw.Visible.Wide(1.6).In(th.Caution)
		if i == 1 {
			pen = draw.Hidden.Wide(1.4)
		}
		c.Line(draw.Pt{X: x, Y: liningY0 - 4}, draw.Pt{X: x, Y: y + 2}, pen)
	}
	c.Text(draw.Pt{X: liningX0 + 2*liningMM + 2, Y: y + 14}, draw.SmallText.To(draw.Right), th.Ink, s.word("debrief_sheet.two"))
	c.Text(draw.Pt{X: liningX0 + 3*liningMM, Y: y + 14}, draw.SmallText, th.Ink, s.word("debrief_sheet.three_mm"))
	s.block(c, draw.Pt{X: nextX0, Y: y + 30}, reasonText, d.Lasts, nextX1-nextX0+4, 2)
}

// onward is how far on the later linings are [km], where it is one distance.
func (s *debrief) onward() float64 {
	km := 0.0
	for i := range s.v().Linings {
		switch l := &s.v().Linings[i]; {
		case !l.Onward || l.Km == km:
		case km == 0:
			km = l.Km
		default:
			return 0
		}
	}
	return km
}

// lining draws one lining now and later.
func (s *debrief) lining(c *draw.Canvas, y float64, pad string, leaves bool) {
	th := c.Theme
	id := "debrief_sheet." + pad + "_found"
	if leaves {
		id = "debrief_sheet." + pad + "_leaves"
	}
	c.Text(draw.Pt{X: nextX0, Y: y + 11}, draw.SmallText, th.Ink, fit(c, s.lettering, s.word(id), draw.SmallText, liningX0-nextX0-4))
	for i := range s.v().Linings {
		l := &s.v().Linings[i]
		if l.Pad != pad || l.Leaves != leaves {
			continue
		}
		k := draw.Rect{X: liningX0, Y: y + 1, W: min(max(l.Left, 0), 12) * liningMM, H: 11}.Corners()
		right := 818.0
		if l.Onward {
			right = nextX1
			c.Hatch(k[:], draw.HatchLining, k[0])
		} else {
			c.Polygon(k[:], th.Lining)
		}
		c.Outline(k[:], draw.Thin)
		c.Text(draw.Pt{X: right, Y: y + 12}, draw.SmallText.To(draw.Right), th.Ink, s.num(l.Left, 1))
	}
}
