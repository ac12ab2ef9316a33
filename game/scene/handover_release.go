package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// drawRelease draws what surrounds the release and the owner's note.
func (s *handover) drawRelease(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 884, Y: 84}, draw.HeadingText, th.Ink, s.word("handover.release"))
	c.Text(draw.Pt{X: 1254, Y: 84}, draw.SmallText.To(draw.Right), th.Ink, s.word("handover.choose"))
	c.Triangle(draw.Pt{X: 897, Y: 368}, 22)
	s.block(c, draw.Pt{X: 921, Y: 352}, draw.SentenceText.At(14), s.releaseCaution(), 334, 4)
	c.Text(draw.Pt{X: 884, Y: 440}, draw.HeadingText, th.Ink, s.word("handover.over_heading"))
	tell := fit(c, s.lettering, s.word("handover.tell"), draw.LabelText, 244)
	c.Text(draw.Pt{X: 884, Y: 463}, draw.LabelText, th.Ink, tell)
	box := draw.Rect{X: 884 + c.Measure(draw.LabelText, tell) + 8, Y: 449, W: 18, H: 18}
	c.Box(box, nil, draw.Thin.In(th.Key))
	c.Text(draw.Pt{X: box.X + 9, Y: 463}, draw.SmallText.To(draw.Middle), th.Key, s.v().Tell.Key)
	s.told.Draw(c)
	why := s.word("handover.final")
	if a := &s.v().HandOver; !a.Enabled && a.Why != "" {
		why = a.Why
	}
	s.block(c, draw.Pt{X: 884, Y: 591}, draw.SmallText, why, 148, 3)
}

// releaseCaution is what an unsafe release costs.
func (s *handover) releaseCaution() string {
	if n := node(s.job.view, "release_caution"); n != nil {
		return n.Name
	}
	return ""
}

// paintRelease letters a release in full words.
func (s *handover) paintRelease(c *draw.Canvas, i int, r draw.Rect) {
	a := &s.v().Releases[i]
	col := keyColour(c, &s.releases.items[i].Key)
	st := draw.StrongText
	lines := s.lines(c, a.Label, st, r.W-84)
	if len(lines) > 3 {
		st = st.At(13)
		lines = s.lines(c, a.Label, st, r.W-84)
	}
	y := r.Y + r.H/2 + 5 - st.LineHeight()*float64(min(3, len(lines))-1)/2
	for k, line := range lines[:min(3, len(lines))] {
		c.Text(draw.Pt{X: r.X + 40, Y: y + st.LineHeight()*float64(k)}, st, col, fit(c, s.lettering, line, st, r.W-84))
	}
}

// drawDone draws what the work was.
func (s *handover) drawDone(c *draw.Canvas) {
	th, v := c.Theme, s.v()
	c.Text(draw.Pt{X: 770, Y: 650}, draw.SmallText.To(draw.Right), th.Ink,
		s.words.Say("handover.sealed", "n", s.num(float64(s.job.view.Title.Counters), 0), "of", s.num(widget.Counters, 0)))
	if len(v.Done) == 0 {
		c.Text(draw.Pt{X: 29, Y: 674}, draw.LabelText, th.Ink, s.word("handover.nothing"))
	}
	// One column while three lines hold it, then two, then three.
	cols := max(1, (len(v.Done)+2)/3)
	w := 744 / float64(cols)
	for i := range v.Done {
		d := &v.Done[i]
		text := s.words.Say("handover.work", "n", s.num(float64(i+1), 0), "what", d.Name, "place", d.Place)
		c.Text(draw.Pt{X: 29 + w*float64(i/3), Y: 667 + 15.5*float64(i%3)}, draw.SmallText, th.Ink, fit(c, s.lettering, text, draw.SmallText, w-10))
	}
}
