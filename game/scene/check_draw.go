package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

// Where the table of a self-check stands.
const (
	checkTop   = 92.0 // [unit] first row
	checkRowH  = 46.0 // high enough for a finger
	checkKeyH  = 34.0 // of a key in it, for a mouse
	checkWhat  = 196.0
	checkMarks = 526.0
	checkMarkW = 82.0
	checkTotal = 1251.0 // right edge
)

func checkRow(i int) float64 { return checkTop + checkRowH*float64(i) }

// Still draws the sheet.
func (s *check) Still(c *draw.Canvas) {
	s.layout()
	v := s.view
	c.Sheet()
	rule(c, 18, 62, 1262, 62)
	rule(c, 18, 634, 1262, 634)
	s.head(c, s.word("check.sheet_name"), s.says(), 1146)
	s.drawTable(c)
	s.drawBottom(c)
	s.draw(c)
	came := "—"
	off := came
	if v.Complete {
		came, off = s.num(v.Mean, 1), s.num(v.Error, 1)
	}
	drawTitle(c, s.lettering,
		[]Fact{{Caption: s.word("sheet.fact_sheet"), Value: s.word("check.sheet"), Width: 110}, {Caption: s.word("check.fact_name"), Value: v.Name}},
		[]Fact{{Caption: s.word("check.fact_cars"), Value: s.words.Say("check.of", "n", v.Handed, "all", len(v.Cars)), Width: 110},
			{Caption: s.word("check.mean"), Value: came, Width: 110}, {Caption: s.word("check.error"), Value: off}})
}

// says is what stands at the head: what is wrong, or how far it is.
func (s *check) says() string {
	switch {
	case s.notice != "":
		return s.notice
	case s.view.Notice != "":
		return s.view.Notice
	case s.view.Stale != "":
		return s.view.Stale
	}
	return s.view.Summary
}

// drawTable draws a row a car: what it was and its marks, or how far it is.
func (s *check) drawTable(c *draw.Canvas) {
	v, th := s.view, c.Theme
	head := "check.state_column"
	if v.Over {
		head = "check.truth_column"
		c.Text(draw.Pt{X: 29, Y: 82}, draw.SmallText, th.Graphite, s.word("check.debrief_column"))
		for i, name := range v.Columns {
			c.Text(draw.Pt{X: checkMarks + checkMarkW*float64(i+1) - 8, Y: 82}, draw.SmallText.To(draw.Right), th.Graphite, fit(c, s.lettering, name, draw.SmallText, checkMarkW-4))
		}
		c.Text(draw.Pt{X: checkTotal, Y: 82}, draw.SmallText.To(draw.Right), th.Ink, s.word("check.total_column"))
	}
	c.Text(draw.Pt{X: checkWhat, Y: 82}, draw.SmallText, th.Graphite, s.word(head))
	for i := range v.Cars {
		s.drawCar(c, &v.Cars[i], checkRow(i))
		rule(c, 29, checkRow(i+1), 1251, checkRow(i+1))
	}
}

func (s *check) drawCar(c *draw.Canvas, car *play.CheckCarView, y float64) {
	th, base := c.Theme, y+29
	if car.Open == nil { // its key is drawn with the others
		c.Text(draw.Pt{X: 38, Y: base}, draw.LabelText, th.Ink, car.Name)
	}
	if !car.Marked {
		c.Text(draw.Pt{X: checkWhat, Y: base}, draw.SentenceText, th.Ink, fit(c, s.lettering, car.What, draw.SentenceText, 800))
		return
	}
	st := draw.SentenceText
	lines := s.lines(c, car.What, st, checkMarks-checkWhat-8)
	if len(lines) > 1 {
		st, base = st.At(14), y+20
		lines = s.lines(c, car.What, st, checkMarks-checkWhat-8)
	}
	for _, l := range lines[:min(len(lines), 2)] {
		c.Text(draw.Pt{X: checkWhat, Y: base}, st, th.Ink, fit(c, s.lettering, l, st, checkMarks-checkWhat-8))
		base += st.LineHeight()
	}
	for i, m := range car.Marks {
		c.Text(draw.Pt{X: checkMarks + checkMarkW*float64(i+1) - 8, Y: y + 29}, draw.ValueText.To(draw.Right), th.Ink, s.num(m, 0))
	}
	c.Text(draw.Pt{X: checkTotal, Y: y + 30}, draw.ValueText.At(18).To(draw.Right), th.Ink, s.num(car.Total, 0))
}

// checkScale is the line of the totals, and the bar while they are worked out.
var checkScale = draw.Rect{X: 196, Y: 585, W: 760, H: 16}

// drawBottom draws the totals on a scale with their mean and its standard error to
// each side, or how far the marks are.
func (s *check) drawBottom(c *draw.Canvas) {
	v, th, r := s.view, c.Theme, checkScale
	at := func(total float64) float64 { return r.X + r.W*min(max(total, 0), 100)/100 }
	switch w := v.Waiting; {
	case v.Complete:
		y := r.Y + r.H
		rule(c, r.X, y, r.X+r.W, y)
		for m := 0.0; m <= 100; m += 10 {
			rule(c, at(m), y, at(m), y+6)
			c.Text(draw.Pt{X: at(m), Y: y + 22}, draw.SmallText.To(draw.Middle), th.Graphite, s.num(m, 0))
		}
		for i := range v.Cars {
			c.Line(draw.Pt{X: at(v.Cars[i].Total), Y: y - 14}, draw.Pt{X: at(v.Cars[i].Total), Y: y}, draw.Visible)
		}
		lo, hi, mid := at(v.Mean-v.Error), at(v.Mean+v.Error), y-20
		rule(c, lo, mid, hi, mid)
		rule(c, lo, mid-5, lo, mid+5)
		rule(c, hi, mid-5, hi, mid+5)
		c.Circle(draw.Pt{X: at(v.Mean), Y: mid}, 4, &th.Ink, draw.Thin)
		c.Text(draw.Pt{X: 29, Y: mid + 5}, draw.SmallText, th.Ink, s.word("check.mean_key"))
		c.Text(draw.Pt{X: 29, Y: y}, draw.SmallText, th.Ink, s.word("check.total_key"))
		right := draw.Pt{X: r.X + r.W + 30, Y: mid + 5}
		for _, l := range s.lines(c, v.Model, draw.SmallText, checkTotal-right.X) {
			c.Text(right, draw.SmallText, th.Ink, l)
			right.Y += draw.SmallText.LineHeight()
		}
	case w == nil:
		at := draw.Pt{X: r.X, Y: r.Y}
		for _, l := range s.lines(c, v.Alike, draw.SmallText, checkTotal-at.X) {
			c.Text(at, draw.SmallText, th.Graphite, l)
			at.Y += draw.SmallText.LineHeight()
		}
	default:
		done := draw.Rect{X: r.X, Y: r.Y, W: r.W * min(max(w.Share, 0), 1), H: r.H}.Corners()
		c.Box(r, &th.Panel, draw.Thin)
		c.Hatch(done[:], draw.HatchBar, done[0])
		c.Box(r, nil, draw.Visible)
		text := w.Text
		if w.Error != "" {
			text = w.Error
			c.Triangle(draw.Pt{X: r.X - 16, Y: r.Y + r.H}, 17)
		}
		c.Text(draw.Pt{X: r.X, Y: r.Y + r.H + 20}, draw.SentenceText.At(14), th.Ink, fit(c, s.lettering, text, draw.SentenceText.At(14), r.W))
		c.Text(draw.Pt{X: r.X + r.W + 90, Y: r.Y + r.H}, draw.ValueText.To(draw.Right), th.Ink, s.words.Say("debrief.percent", "percent", s.num(100*w.Share, 0)))
	}
}
