package scene

import (
	"strings"

	"evenwear/game/draw"
	"evenwear/game/widget"
)

// jobTitle is the lettering of the job's name.
var jobTitle = draw.SheetText.At(18)

// noteRows is how many lines of the notebook are in sight.
const noteRows = 7

// Still draws all but the centre.
func (s *stations) Still(c *draw.Canvas) {
	s.layout()
	th := c.Theme
	c.Sheet()
	for _, l := range [][4]float64{{18, 62, 1262, 62}, {262, 62, 262, s.split()}, {872, 62, 872, 634}, {18, s.split(), 872, s.split()}, {872, 340, 1262, 340}, {792, 634, 1262, 634}} {
		c.Line(draw.Pt{X: l[0], Y: l[1]}, draw.Pt{X: l[2], Y: l[3]}, draw.Thin)
	}
	if s.view.Instrument != nil {
		c.Line(draw.Pt{X: 262, Y: 532}, draw.Pt{X: 872, Y: 532}, draw.Thin)
	}
	title := fit(c, s.lettering, s.view.Title.Job, jobTitle, 250)
	c.Text(draw.Pt{X: 28, Y: 40}, jobTitle, th.Ink, title)
	c.Text(draw.Pt{X: 29, Y: 57}, draw.SmallText, th.Ink, s.word("stations.owner_says"))
	x := max(150, 28+c.Measure(jobTitle, strings.ToUpper(title))+18)
	for i, line := range firstLines(c.Wrap(draw.SentenceText.At(16), "“"+s.view.Complaint+"”", 1034-x), 2) {
		c.Text(draw.Pt{X: x, Y: 37 + float64(i)*19}, draw.SentenceText.At(16), th.Ink, line)
	}
	s.drawPlanPanel(c)
	s.notebook(c)
	s.preparation(c)
	s.bottom(c)
	for i := range s.keys {
		k := &s.keys[i]
		if strings.HasPrefix(k.id, "place.") {
			continue
		}
		k.Key.Draw(c)
	}
	s.titleBlock(c)
}

// firstLines is lines cut to n, the last with an ellipsis when more follow.
func firstLines(lines []string, n int) []string {
	if len(lines) <= n {
		return lines
	}
	out := append([]string(nil), lines[:n]...)
	out[n-1] += " …"
	return out
}

func (s *stations) drawPlanPanel(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 28, Y: 84}, draw.HeadingText, th.Ink, s.word("stations.where"))
	c.Text(draw.Pt{X: 28, Y: 101}, draw.SmallText, th.Ink, s.word("stations.strokes"))
	drawPlan(c, s.view.Plan)
	for i := range s.view.Plan.Places {
		p := s.view.Plan.Places[i]
		if s.view.Instrument != nil {
			p.Action.Enabled = false // one thing at a time
		}
		placeKey(c, p, planKeys[p.ID], s.word("stations.plan_"+p.ID), s.targets.Focus == "place."+p.ID)
	}
	y := 512.0
	line := func(id string) {
		if y < s.split()-8 {
			c.Text(draw.Pt{X: 30, Y: y}, draw.SmallText, th.Ink, s.word(id))
			y += 19
		}
	}
	p := s.view.Plan
	if p.Handbrake {
		line("stations.handbrake")
	}
	if p.Chocked[0] || p.Chocked[1] {
		line("stations.chocked")
	}
	if p.Lifted[0] || p.Lifted[1] {
		line("stations.lifted")
	}
	for w := range p.OnStand {
		if p.OnStand[w] || p.WheelOff[w] {
			line("stations.dashed")
			break
		}
	}
}

// noteKeys are the keys that strike a line of the notebook out, and scroll it.
func (s *stations) noteKeys() {
	notes := s.view.Notebook
	s.late = min(s.late, max(0, len(notes)-noteRows))
	first := max(0, len(notes)-noteRows-s.late)
	if s.view.Instrument == nil {
		for i := first; i < min(len(notes), first+noteRows); i++ {
			if n := node(s.view, "note"+s.num(float64(i+1), 0)); n != nil && len(n.Actions) > 0 {
				a := n.Actions[0]
				s.add(n.ID, panelNotes, widget.Key{Rect: draw.Rect{X: 1230, Y: 117 + float64(i-first)*28, W: 26, H: 24}, Label: "−"}, func() { s.do(a.Act) })
			}
		}
	}
	if len(notes) > noteRows {
		s.add("earlier", panelNotes, widget.Key{Rect: draw.Rect{X: 1040, Y: 313, W: 104, H: 24}, Label: s.word("stations.earlier"), Off: first == 0, Size: 13}, func() { s.late++ })
		s.add("later", panelNotes, widget.Key{Rect: draw.Rect{X: 1150, Y: 313, W: 104, H: 24}, Label: s.word("stations.later"), Off: s.late == 0, Size: 13}, func() { s.late-- })
	}
}

func (s *stations) notebook(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 884, Y: 84}, draw.HeadingText, th.Ink, s.word("stations.notebook"))
	c.Text(draw.Pt{X: 1252, Y: 84}, draw.LabelText.To(draw.Right), th.Ink,
		s.words.Say("stations.readings", "n", s.view.Title.Readings, "minutes", s.num(s.view.Title.Minutes, 0)))
	y := 107.0
	for _, h := range []struct {
		x  float64
		id string
		to draw.Align
	}{{884, "where", draw.Left}, {960, "what", draw.Left}, {1178, "value", draw.Right}, {1184, "unit", draw.Left}} {
		c.Text(draw.Pt{X: h.x, Y: y}, draw.SmallText.To(h.to), th.Ink, s.word("stations.head_"+h.id))
	}
	c.Line(draw.Pt{X: 884, Y: 112}, draw.Pt{X: 1254, Y: 112}, draw.Thin)
	notes := s.view.Notebook
	first := max(0, len(notes)-noteRows-s.late)
	for i := first; i < min(len(notes), first+noteRows); i++ {
		n := &notes[i]
		y := 133 + float64(i-first)*28
		c.Text(draw.Pt{X: 884, Y: y}, draw.SmallText, th.Ink, fit(c, s.lettering, n.Where, draw.SmallText, 74))
		c.Text(draw.Pt{X: 960, Y: y}, draw.SmallText, th.Ink, fit(c, s.lettering, n.What, draw.SmallText, 150))
		if n.Written == "" {
			box := draw.Rect{X: 880, Y: y - 18, W: 374, H: 25}
			pts := box.Corners()
			c.Outline(pts[:], draw.Hidden)
		}
		hand := draw.HandText.At(17)
		room := 1176 - 960 - c.Measure(draw.SmallText, fit(c, s.lettering, n.What, draw.SmallText, 150)) - 8
		c.Text(draw.Pt{X: 1178, Y: y}, hand.To(draw.Right), th.Graphite, fit(c, s.lettering, n.Written, hand, max(60, room)))
		c.Text(draw.Pt{X: 1184, Y: y}, draw.SmallText, th.Ink, fit(c, s.lettering, n.Unit, draw.SmallText, 42))
		if n.Struck {
			c.Pencil([]draw.Pt{{X: 884, Y: y - 5}, {X: 1222, Y: y - 4}})
		}
		c.Line(draw.Pt{X: 884, Y: y + 8}, draw.Pt{X: 1226, Y: y + 8}, draw.Thin.Wide(0.6))
	}
	if len(notes) == 0 {
		c.Paragraph(draw.Pt{X: 884, Y: 134}, draw.SentenceText, th.Ink, s.word("stations.empty"), 360)
	}
}

// preparation says how the car stands, and what is at stake here.
func (s *stations) preparation(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 884, Y: 361}, draw.HeadingText, th.Ink, s.word("stations.preparation"))
	if n := node(s.view, "setup"); n != nil {
		for i, l := range firstLines(c.Wrap(draw.SmallText, n.Value, 366), 2) {
			c.Text(draw.Pt{X: 884, Y: 380 + float64(i)*16}, draw.SmallText, th.Ink, l)
		}
	}
	if v := s.view.Instrument; v != nil {
		c.Paragraph(draw.Pt{X: 884, Y: 424}, draw.SentenceText, th.Ink, s.word("stations.read_help"), 366)
	}
}

func (s *stations) bottom(c *draw.Canvas) {
	th := c.Theme
	v := s.view.Instrument
	if v == nil {
		c.Text(draw.Pt{X: 28, Y: s.split() + 17}, draw.HeadingText, th.Ink, s.word("stations.checks"))
	} else {
		for i, l := range firstLines(c.Wrap(draw.SentenceText, v.Question, 280), 3) {
			c.Text(draw.Pt{X: 274, Y: 550 + float64(i)*18}, draw.SentenceText, th.Ink, l)
		}
		if len(v.Words) == 0 {
			s.field.Draw(c)
			c.Text(draw.Pt{X: 652, Y: 578}, draw.LabelText, th.Ink, fit(c, s.lettering, v.Unit, draw.LabelText, 46))
		}
		if s.view.Notice != "" {
			for i, l := range firstLines(c.Wrap(draw.SmallText, s.view.Notice, 366), 2) {
				c.Text(draw.Pt{X: 884, Y: 600 + float64(i)*17}, draw.SmallText, th.Ink, l)
			}
		}
	}
	s.timeBar(c)
}

// timeBar shows the minutes spent of those allowed, with a mark every ten.
func (s *stations) timeBar(c *draw.Canvas) {
	t := &s.view.Title
	if t.Limit <= 0 {
		return
	}
	r := draw.Rect{X: 620, Y: s.split() + 5, W: 240, H: 12}
	c.Text(draw.Pt{X: r.X - 10, Y: r.Y + 12}, draw.SmallText.To(draw.Right), c.Theme.Ink,
		s.words.Say("stations.spent", "n", s.num(t.Minutes, 0), "all", s.num(t.Limit, 0)))
	c.Box(r, &c.Theme.Panel, draw.Thin)
	w := r.W * min(1, t.Minutes/t.Limit)
	pts := (draw.Rect{X: r.X, Y: r.Y, W: w, H: r.H}).Corners()
	c.Part(pts[:], draw.HatchBar, draw.Pt{X: r.X, Y: r.Y})
	for m := 10.0; m < t.Limit; m += 10 {
		x := r.X + r.W*m/t.Limit
		c.Line(draw.Pt{X: x, Y: r.Y}, draw.Pt{X: x, Y: r.Y + r.H}, draw.Thin)
	}
}

// centre is what the eye sees here.
func (s *stations) centre(c *draw.Canvas) {
	th := c.Theme
	if v := s.view.Instrument; v != nil {
		c.Text(draw.Pt{X: 274, Y: 84}, draw.HeadingText, th.Ink, v.Name)
		drawInstrument(c, s.words, v, draw.Rect{X: 274, Y: 94, W: 588, H: 430}, s.swing)
		return
	}
	c.Text(draw.Pt{X: 274, Y: 84}, draw.HeadingText, th.Ink, s.view.Title.Place)
	y, end := 112.0, s.split()-8
	say := s.view.Notice
	if say == "" {
		say = s.word("stations.pick")
	}
	lines := firstLines(c.Wrap(draw.SentenceText, say, 586), 3)
	end -= 19 * float64(len(lines))
	for i, l := range lines {
		c.Text(draw.Pt{X: 274, Y: end + 14 + 19*float64(i)}, draw.SentenceText, th.Ink, l)
	}
	for i := range s.view.Nodes {
		n := &s.view.Nodes[i]
		switch {
		case strings.HasPrefix(n.ID, "fact_"):
			at := c.Paragraph(draw.Pt{X: 274, Y: y}, draw.SentenceText, th.Ink, n.Name+": "+n.Value, 586)
			y = at.Y + 8
		case n.Role == "caution" && y < end-20:
			c.Triangle(draw.Pt{X: 284, Y: y + 3}, 15)
			at := c.Paragraph(draw.Pt{X: 302, Y: y}, draw.SentenceText, th.Ink, n.Name, 556)
			y = at.Y + 6
		}
	}
}
