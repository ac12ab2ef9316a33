package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

// The eight marks, each with its weight, its bar from a zero line and its
// reason; the total and its cap; the check worth most for its minutes.

const (
	markX0    = endSplit + 12 // [unit] left edge of the lettering
	markX1    = 1251.0
	markUnit  = 0.8 // [unit] a mark of 1
	markZero  = 1112.0
	markFloor = -115.0 // the least a diagnosis can be, about
)

// reasonText letters reasons: sentences, small enough that all eight stand.
var reasonText = draw.SentenceText.At(13)

const reasonLine = 14.5

func (s *debrief) drawMarks(c *draw.Canvas) {
	d, th := s.v(), c.Theme
	if d == nil {
		return
	}
	c.Text(draw.Pt{X: markX0, Y: 82}, draw.HeadingText, th.Ink, s.word("debrief_sheet.marks"))
	c.Text(draw.Pt{X: markX0 + 90, Y: 82}, draw.SmallText, th.Graphite, s.word("debrief_sheet.weight"))
	c.Text(draw.Pt{X: markX1, Y: 82}, draw.SmallText.To(draw.Right), th.Ink, s.word("debrief_sheet.of"))
	top := s.drawWorth(c)
	top = s.drawTotal(c, top)
	s.marks.area = draw.Rect{X: markX0, Y: 88, W: markX1 + 6 - markX0, H: top - 88}
	s.marks.items = s.marks.items[:0]
	for i := range d.Marks {
		s.layMark(c, &d.Marks[i])
	}
	s.marks.draw(c, s.targets.Focus == s.marks.id)
}

// layMark adds a mark's bar and the lines of its reason.
func (s *debrief) layMark(c *draw.Canvas, m *play.MarkView) {
	s.marks.add(18, func(c *draw.Canvas, r draw.Rect) { s.mark(c, m, r) })
	lines := s.lines(c, m.Reason, reasonText, markX1-markX0-rollRail)
	for i, line := range lines {
		h := reasonLine
		last := i == len(lines)-1
		if last {
			h += 5
		}
		s.marks.add(h, func(c *draw.Canvas, r draw.Rect) {
			c.Text(draw.Pt{X: r.X, Y: r.Y + 11}, reasonText, c.Theme.Ink, line)
			if last {
				rule(c, r.X, r.Y+r.H-1, r.X+r.W-4, r.Y+r.H-1)
			}
		})
	}
}

// mark draws name, weight, bar and figure of one mark.
func (s *debrief) mark(c *draw.Canvas, m *play.MarkView, r draw.Rect) {
	th := c.Theme
	base := r.Y + 14
	c.Text(draw.Pt{X: r.X, Y: base}, draw.LabelText, th.Ink, fit(c, s.lettering, m.Name, draw.LabelText, 88))
	c.Text(draw.Pt{X: r.X + 112, Y: base}, draw.SmallText.To(draw.Right), th.Graphite, s.num(m.Weight, 0))
	room := draw.Rect{X: markZero, Y: r.Y + 4, W: 100 * markUnit, H: 10}
	c.Box(room, nil, draw.Thin)
	if m.ID == "diagnosis" {
		below := draw.Rect{X: markZero + markFloor*markUnit, Y: room.Y, W: -markFloor * markUnit, H: room.H}.Corners()
		c.Outline(below[:], draw.Hidden)
	}
	v := min(max(m.Value, markFloor), 100)
	bar := draw.Rect{X: markZero + min(v, 0)*markUnit, Y: room.Y, W: max(v, -v) * markUnit, H: room.H}.Corners()
	if v != 0 {
		c.Polygon(bar[:], th.Panel)
		c.Hatch(bar[:], draw.HatchBar, draw.Pt{})
		c.Outline(bar[:], draw.Thin)
	}
	c.Line(draw.Pt{X: markZero, Y: room.Y - 4}, draw.Pt{X: markZero, Y: room.Y + room.H + 4}, draw.Visible)
	c.Text(draw.Pt{X: r.X + r.W - 6, Y: base + 1}, draw.ValueText.To(draw.Right), th.Ink, s.num(m.Value, 0))
}

// drawWorth draws the check worth most from the foot up, and returns where it begins.
func (s *debrief) drawWorth(c *draw.Canvas) float64 {
	if s.v().Worth == "" {
		return 630
	}
	lines := s.lines(c, s.v().Worth, reasonText, markX1-markX0)
	lines = lines[:min(len(lines), 4)]
	y := 628 - reasonLine*float64(len(lines))
	for i, l := range lines {
		c.Text(draw.Pt{X: markX0, Y: y + 10 + reasonLine*float64(i)}, reasonText, c.Theme.Ink, fit(c, s.lettering, l, reasonText, markX1-markX0))
	}
	c.Text(draw.Pt{X: markX0, Y: y - 8}, draw.HeadingText, c.Theme.Ink, s.word("debrief_sheet.worth"))
	rule(c, endSplit, y-25, 1262, y-25)
	return y - 25
}

// drawTotal draws the total above foot with what holds it down, and returns
// where it begins.
func (s *debrief) drawTotal(c *draw.Canvas, foot float64) float64 {
	d, th := s.v(), c.Theme
	var lines []string
	indent := 0.0
	if d.Cap != "" {
		if d.Capped {
			indent = 24
		}
		lines = s.lines(c, d.Cap, reasonText, markX1-markX0-indent)
	} else {
		lines = s.lines(c, s.word("debrief_sheet.no_cap"), reasonText, markX1-markX0)
	}
	lines = lines[:min(len(lines), 6)]
	y := foot - 8 - reasonLine*float64(len(lines))
	for i, l := range lines {
		c.Text(draw.Pt{X: markX0 + indent, Y: y + 10 + reasonLine*float64(i)}, reasonText, th.Ink, fit(c, s.lettering, l, reasonText, markX1-markX0-indent))
	}
	if d.Capped {
		c.Triangle(draw.Pt{X: markX0 + 9, Y: y + 14}, 17)
	}
	c.Text(draw.Pt{X: markX0, Y: y - 7}, draw.HeadingText, th.Ink, s.word("debrief_sheet.total"))
	c.Text(draw.Pt{X: markX0 + 76, Y: y - 7}, draw.SmallText, th.Ink, s.word("debrief_sheet.weighted"))
	c.Text(draw.Pt{X: markX1, Y: y - 5}, draw.SheetText.To(draw.Right), th.Ink, s.num(d.Total, 0))
	c.Line(draw.Pt{X: markX0, Y: y - 30}, draw.Pt{X: markX1, Y: y - 30}, draw.Visible)
	return y - 34
}
