package scene

import (
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// A paper laid over the left of the sheet: the model inspector's trail beside
// the learner's own notes, or all of the debrief in words.

// drawPaper draws the paper that is out.
func (s *debrief) drawPaper(c *draw.Canvas) {
	th := c.Theme
	area := draw.Rect{X: 26, Y: 69, W: endSplit - 34, H: 558}
	c.Fill(area, th.Panel)
	c.Box(area, nil, draw.Visible)
	left, right := &s.sheets[0], &s.sheets[1]
	left.items, right.items = left.items[:0], right.items[:0]
	inner := area.Inset(12)
	inner.Y, inner.H = inner.Y+26, inner.H-26
	if s.paper == wordsPaper {
		left.area, right.area = inner, draw.Rect{X: inner.X, Y: inner.Y}
		c.Text(draw.Pt{X: inner.X, Y: 93}, draw.HeadingText, th.Ink, s.word("debrief_sheet.words_heading"))
		s.layWords(c, left)
		left.draw(c, s.targets.Focus == left.id)
		return
	}
	half := (inner.W - 24) / 2
	left.area = draw.Rect{X: inner.X, Y: inner.Y, W: half, H: inner.H}
	right.area = draw.Rect{X: inner.X + half + 24, Y: inner.Y, W: half, H: inner.H}
	x := inner.X + half + 12
	rule(c, x, area.Y+8, x, area.Y+area.H-8)
	c.Text(draw.Pt{X: left.area.X, Y: 93}, draw.HeadingText, th.Ink, s.word("debrief_sheet.trail_heading"))
	c.Text(draw.Pt{X: right.area.X, Y: 93}, draw.HeadingText, th.Ink, s.word("debrief_sheet.notes_heading"))
	s.layTrail(c, left)
	s.layNotes(c, right)
	left.draw(c, s.targets.Focus == left.id)
	right.draw(c, s.targets.Focus == right.id)
}

// line adds lines of a text to a roll, with room under the last.
func (s *debrief) lineUp(c *draw.Canvas, r *roll, st draw.TextStyle, text string, under float64) {
	lines := s.lines(c, text, st, r.area.W-rollRail-4)
	for i, l := range lines {
		h := st.LineHeight() + 1
		if i == len(lines)-1 {
			h += under
		}
		r.add(h, func(c *draw.Canvas, at draw.Rect) {
			c.Text(draw.Pt{X: at.X, Y: at.Y + st.Size}, st, c.Theme.Ink, fit(c, s.lettering, l, st, at.W))
		})
	}
}

// layTrail lists what the model inspector did: where the owner's words left it, then
// a line a check.
func (s *debrief) layTrail(c *draw.Canvas, r *roll) {
	for _, t := range s.v().Trail {
		s.lineUp(c, r, draw.SentenceText.At(14), t, 7)
	}
	if len(s.v().Trail) < 2 {
		s.lineUp(c, r, draw.SentenceText, s.word("debrief_sheet.trail_none"), 0)
	}
}

// layNotes lists the learner's readings: what was looked at in print, what was
// written in pencil.
func (s *debrief) layNotes(c *draw.Canvas, r *roll) {
	notes := s.job.view.Notebook
	if len(notes) == 0 {
		s.lineUp(c, r, draw.SentenceText, s.word("debrief_sheet.notes_none"), 0)
	}
	for i := range notes {
		n := &notes[i]
		what := s.words.Say("play.at", "what", n.What, "place", n.Where)
		if n.Again {
			what = s.words.Say("debrief_sheet.again", "what", what)
		}
		s.lineUp(c, r, draw.SentenceText.At(14), what, 0)
		s.layWritten(c, r, n)
	}
}

// layWritten adds what the learner wrote, struck through where it was rubbed out.
func (s *debrief) layWritten(c *draw.Canvas, r *roll, n *play.NoteView) {
	st := draw.HandText
	text := strings.TrimSpace(n.Written + " " + n.Unit)
	lines := s.lines(c, text, st, r.area.W-rollRail-24)
	for i, l := range lines {
		h := 22.0
		if i == len(lines)-1 {
			h += 5
		}
		r.add(h, func(c *draw.Canvas, at draw.Rect) {
			x := at.X + 18
			l := fit(c, s.lettering, l, st, at.W-18)
			c.Text(draw.Pt{X: x, Y: at.Y + 17}, st, c.Theme.Graphite, l)
			if n.Struck {
				c.Pencil([]draw.Pt{{X: x - 2, Y: at.Y + 12}, {X: x + c.Measure(st, l) + 3, Y: at.Y + 11}})
			}
		})
	}
}

// layWords lists every node of the view in reading order.
func (s *debrief) layWords(c *draw.Canvas, r *roll) {
	for i := range s.job.view.Nodes {
		n := &s.job.view.Nodes[i]
		st := draw.SentenceText.At(14)
		if n.Role == "heading" {
			st = draw.StrongText
		}
		text := n.Name
		if n.Value != "" && text != "" {
			text += ": "
		}
		s.lineUp(c, r, st, text+n.Value, 5)
	}
}
