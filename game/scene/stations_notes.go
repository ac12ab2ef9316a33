package scene

import (
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// A notePage is how the notebook is ruled: by touch in fewer and higher rows, so
// that a finger meets the key at the end of a line.
type notePage struct {
	rows                           int
	top, pitch                     float64 // [unit] of the first row, from row to row
	what, value, unit, min, strike float64 // [unit] columns; value and min at their right edge
	keyW, keyH                     float64
}

func (s *stations) page() notePage {
	if s.app.Touch {
		return notePage{rows: 4, top: 115, pitch: 45, what: 936, value: 1146, unit: 1150, min: 1204, strike: 1211, keyW: 44, keyH: 44}
	}
	return notePage{rows: 7, top: 115, pitch: 28, what: 936, value: 1162, unit: 1167, min: 1225, strike: 1230, keyW: 26, keyH: 24}
}

// sight is the first line in sight and the one after the last.
func (s *stations) sight() (first, end int) {
	n, rows := len(s.view.Notebook), s.page().rows
	s.late = min(max(s.late, 0), max(0, n-rows))
	first = max(0, n-rows-s.late)
	return first, min(n, first+rows)
}

// noteKeys are the keys that strike a line of the notebook out, and scroll it.
func (s *stations) noteKeys() {
	p := s.page()
	first, end := s.sight()
	if s.view.Instrument == nil {
		for i := first; i < end; i++ {
			if n := node(s.view, "note"+s.num(float64(i+1), 0)); n != nil && len(n.Actions) > 0 {
				a := n.Actions[0]
				r := draw.Rect{X: p.strike, Y: p.top + float64(i-first)*p.pitch + (p.pitch-p.keyH)/2, W: p.keyW, H: p.keyH}
				s.add(n.ID, panelNotes, widget.Key{Rect: r, Label: "−"}, func() { s.do(a.Act) })
			}
		}
	}
	if len(s.view.Notebook) > p.rows {
		h := max(24, p.keyH)
		y := 339 - h
		s.add("earlier", panelNotes, widget.Key{Rect: draw.Rect{X: 976, Y: y, W: 134, H: h}, Label: s.word("stations.earlier"), Letter: "PageUp", Off: first == 0, Size: 13}, func() { s.late++ })
		s.add("later", panelNotes, widget.Key{Rect: draw.Rect{X: 1116, Y: y, W: 138, H: h}, Label: s.word("stations.later"), Letter: "PageDown", Off: s.late == 0, Size: 13}, func() { s.late-- })
	}
}

// strike strikes out the line whose key is in focus.
func (s *stations) strike() bool {
	n := node(s.view, s.targets.Focus)
	if n == nil || !strings.HasPrefix(n.ID, "note") || len(n.Actions) == 0 {
		return false
	}
	return s.do(n.Actions[0].Act)
}

func (s *stations) notebook(c *draw.Canvas) {
	th, p := c.Theme, s.page()
	c.Text(draw.Pt{X: 884, Y: 84}, draw.HeadingText, th.Ink, s.word("stations.notebook"))
	c.Text(draw.Pt{X: 1252, Y: 84}, draw.LabelText.To(draw.Right), th.Ink,
		s.words.Say("stations.readings", "n", s.view.Title.Readings, "minutes", s.minutes(s.noteMinutes())))
	for _, h := range []struct {
		x  float64
		id string
		to draw.Align
	}{{884, "where", draw.Left}, {p.what, "what", draw.Left}, {p.value, "value", draw.Right}, {p.unit, "unit", draw.Left}, {p.min, "min", draw.Right}, {1254, "out", draw.Right}} {
		c.Text(draw.Pt{X: h.x, Y: 107}, draw.SmallText.To(h.to), th.Ink, s.word("stations.head_"+h.id))
	}
	c.Line(draw.Pt{X: 884, Y: 112}, draw.Pt{X: 1254, Y: 112}, draw.Thin)
	first, end := s.sight()
	for i := first; i < end; i++ {
		s.noteLine(c, p, s.view.Notebook[i], p.top+float64(i-first)*p.pitch)
	}
	if len(s.view.Notebook) == 0 {
		c.Paragraph(draw.Pt{X: 884, Y: 134}, draw.SentenceText, th.Ink, s.word(s.orOnPaper("stations.empty", "stations.on_paper_notes")), 360)
	}
}

// noteLine draws one line under a height. What was written is never cut for the
// sake of what was looked at.
func (s *stations) noteLine(c *draw.Canvas, p notePage, n play.NoteView, top float64) {
	th := c.Theme
	y := top + p.pitch/2 + 4
	if n.Written == s.word("play.not_read") {
		n.Unit = ""
	}
	hand := draw.HandText.At(17)
	written := fit(c, s.lettering, n.Written, hand, 130)
	c.Text(draw.Pt{X: 884, Y: y}, draw.SmallText, th.Ink, fit(c, s.lettering, s.noteWhere(&n), draw.SmallText, p.what-890))
	c.Text(draw.Pt{X: p.what, Y: y}, draw.SmallText, th.Ink, fit(c, s.lettering, s.noteName(&n), draw.SmallText, p.value-p.what-8-c.Measure(hand, written)))
	c.Text(draw.Pt{X: p.value, Y: y}, hand.To(draw.Right), th.Graphite, written)
	c.Text(draw.Pt{X: p.unit, Y: y}, draw.SmallText, th.Ink, fit(c, s.lettering, n.Unit, draw.SmallText, 34))
	c.Text(draw.Pt{X: p.min, Y: y}, draw.SmallText.To(draw.Right), th.Ink, s.minutes(n.Minutes))
	if n.Struck {
		c.Pencil([]draw.Pt{{X: 884, Y: y - 5}, {X: p.min - 3, Y: y - 4}})
	}
	if n.Written == "" {
		pts := (draw.Rect{X: 880, Y: y - 18, W: 374, H: 25}).Corners()
		c.Outline(pts[:], draw.Hidden)
		return
	}
	c.Line(draw.Pt{X: 884, Y: top + p.pitch - 2}, draw.Pt{X: p.min + 1, Y: top + p.pitch - 2}, draw.Thin.Wide(0.6))
}

// noteMinutes is what the readings took, preparations left out.
func (s *stations) noteMinutes() (m float64) {
	for i := range s.view.Notebook {
		m += s.view.Notebook[i].Minutes
	}
	return m
}

// noteWhere is the place as it stands on the plan.
func (s *stations) noteWhere(n *play.NoteView) string {
	for i := range s.view.Plan.Places {
		id := s.view.Plan.Places[i].ID
		if n.Where == s.word("place."+id) {
			return s.word("stations.plan_" + id)
		}
	}
	return n.Where
}

// noteName is what a line was, as short as on its key.
func (s *stations) noteName(n *play.NoteView) string {
	if say := s.shortOf(n.Check); say != "" {
		return say
	}
	return n.What
}

// orOnPaper picks the id of a sentence by whether the car is there or only notes of it.
func (s *stations) orOnPaper(there, onPaper string) string {
	if s.view.OnPaper {
		return onPaper
	}
	return there
}
