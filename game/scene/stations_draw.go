package scene

import (
	"strings"

	"evenwear/game/draw"
	"evenwear/game/widget"
)

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
	c.Text(draw.Pt{X: 28, Y: 41}, draw.SheetText, th.Ink, s.word("stations.job"))
	c.Text(draw.Pt{X: 29, Y: 57}, draw.SmallText, th.Ink, s.word("stations.owner_says"))
	s.complaint(c)
	s.drawPlanPanel(c)
	s.notebook(c)
	s.preparation(c)
	s.bottom(c)
	for i := range s.keys {
		k := &s.keys[i]
		switch {
		case strings.HasPrefix(k.id, "place."), strings.HasPrefix(k.id, partPrefix), k.hand: // drawn with the plan, the brake, the bay
		case k.tick:
			drawTick(c, s.lettering, k)
		default:
			k.Key.Draw(c)
		}
	}
	s.titleBlock(c)
}

// said is what the owner said in lines, smaller rather than cut, and whether that
// is all of it.
func (s *stations) said(c *draw.Canvas) (st draw.TextStyle, lines []string, whole bool) {
	text := s.fill("stations.quote", "said", s.view.Complaint)
	for _, try := range [...]struct {
		size float64
		most int
	}{{16, 2}, {14, 2}, {13, 3}} {
		st = draw.SentenceText.At(try.size)
		all := s.lines(c, text, st, 810)
		if lines = firstLines(all, try.most); len(lines) == len(all) {
			return st, lines, true
		}
	}
	return st, lines, false
}

func (s *stations) complaint(c *draw.Canvas) {
	st, lines, _ := s.said(c)
	pitch := st.Size * 1.15
	y := 45 - pitch*float64(len(lines)-1)/2
	for i, line := range lines {
		c.Text(draw.Pt{X: 128, Y: y + float64(i)*pitch}, st, c.Theme.Ink, line)
	}
}

// drawTick is a preparation that stands.
func drawTick(c *draw.Canvas, l *lettering, k *stationKey) {
	y := k.Rect.Y + k.Rect.H/2
	widget.Tick{At: draw.Pt{X: k.Rect.X + 5, Y: y - 7}, On: true}.Draw(c)
	c.Text(draw.Pt{X: k.Rect.X + 30, Y: y + 5}, draw.LabelText, c.Theme.Ink, fit(c, l, k.Label, draw.LabelText, k.Rect.W-34))
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
	planLegend(c, s.lettering, s.view.Plan, s.split()-10)
}

// preparation says how the car stands, and what is at stake here.
func (s *stations) preparation(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 884, Y: 361}, draw.HeadingText, th.Ink, s.word("stations.preparation"))
	n := node(s.view, "prepare")
	if s.view.Instrument == nil && (n == nil || len(n.Actions) == 0) {
		c.Paragraph(draw.Pt{X: 884, Y: 384}, draw.SentenceText, th.Ink, s.word(s.orOnPaper("stations.no_work", "stations.on_paper_work")), 366)
	}
	if v := s.view.Instrument; v != nil {
		say := s.view.Notice
		if say == "" {
			say = s.word("stations.read_help")
		}
		s.news(c, draw.Pt{X: 884, Y: 382}, say, 366, 16, 4)
	}
}

func (s *stations) bottom(c *draw.Canvas) {
	th := c.Theme
	v := s.view.Instrument
	if v == nil {
		end := c.Heading(draw.Pt{X: 28, Y: s.split() + 17}, s.word("stations.checks"), "")
		say := s.word("stations.minutes_each")
		open, sorted := s.openPart()
		switch list, away := s.checks(); {
		case sorted && open == nil:
			say = s.word("stations.pick_part")
		case len(list) == 0 && away == 0:
			say = s.word(s.orOnPaper("stations.no_checks", "stations.on_paper_checks"))
		case away > 0:
			say = s.fill("stations.away", "n", s.num(float64(away), 0))
		}
		c.Text(draw.Pt{X: end.X + 12, Y: s.split() + 17}, draw.SmallText, th.Ink, fit(c, s.lettering, say, draw.SmallText, 480-end.X))
	} else {
		for i, l := range firstLines(c.Wrap(draw.SentenceText, v.Question, 304), 3) {
			c.Text(draw.Pt{X: 274, Y: 550 + float64(i)*18}, draw.SentenceText, th.Ink, l)
		}
		if len(v.Words) == 0 {
			s.field.Draw(c)
			c.Text(draw.Pt{X: 682, Y: 574}, draw.LabelText, th.Ink, fit(c, s.lettering, v.Unit, draw.LabelText, 46))
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
		s.words.Say("stations.spent", "n", s.minutes(t.Minutes), "all", s.minutes(t.Limit)))
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
	if s.help {
		s.helpText(c)
		return
	}
	if v := s.view.Instrument; v != nil {
		drawInstrument(c, s.words, v, s.look.frame(), s.swing)
		scale := s.scale
		if s.look.big {
			scale = s.fill("stations.enlarged", "scale", scale)
		}
		c.TextOn(draw.Pt{X: 862, Y: 84}, draw.SmallText.To(draw.Right), th.Ink, th.Paper, scale)
		name := fit(c, s.lettering, v.Name, draw.HeadingText, 570-c.Measure(draw.SmallText, scale))
		c.Fill(draw.Rect{X: 266, Y: 66, W: 14 + c.Measure(draw.HeadingText, name), H: 24}, th.Paper)
		c.Text(draw.Pt{X: 274, Y: 84}, draw.HeadingText, th.Ink, name)
		return
	}
	c.Text(draw.Pt{X: 274, Y: 84}, draw.HeadingText, th.Ink, s.view.Title.Place)
	say := s.view.Notice
	if say == "" {
		say = s.word(s.orOnPaper("stations.pick", "stations.on_paper"))
	}
	lines := len(firstLines(c.Wrap(draw.SentenceText, say, s.newsRoom(586)), 3))
	end := s.newsTop(lines)
	s.news(c, draw.Pt{X: 274, Y: end + 20}, say, 586, newsPitch, 3)
	s.known(c, 112, s.textEnd(lines))
	switch _, sorted := s.openPart(); {
	case sorted:
		s.brake(c)
	case s.underBonnet():
		s.drawBay(c)
	}
}

const newsPitch = 19.0 // [unit]

// newsTop is how far down other text may stand over so many lines of news.
func (s *stations) newsTop(lines int) float64 {
	return min(s.split(), centreArea.Y+centreArea.H) - 14 - newsPitch*float64(lines)
}

// news letters the last news or refusal, with the caution sign where it warns.
func (s *stations) news(c *draw.Canvas, at draw.Pt, say string, width, pitch float64, most int) {
	room := s.newsRoom(width)
	if room < width {
		c.Triangle(draw.Pt{X: at.X + 10, Y: at.Y + 3}, 15)
		at.X += width - room
	}
	for i, l := range firstLines(c.Wrap(draw.SentenceText, say, room), most) {
		c.Text(draw.Pt{X: at.X, Y: at.Y + pitch*float64(i)}, draw.SentenceText, c.Theme.Ink, l)
	}
}

// newsRoom is what the caution sign leaves of a width.
func (s *stations) newsRoom(width float64) float64 {
	if s.view.Warns && s.view.Notice != "" {
		return width - 28
	}
	return width
}

// known letters what is known of the car and every caution of what can be done
// now from y down to end, closer together where that is needed, beside the brake
// where that is drawn. It returns where it ended.
func (s *stations) known(c *draw.Canvas, y, end float64) float64 {
	width := 586.0
	if _, sorted := s.openPart(); sorted {
		width = brakeRoom
	}
	var st draw.TextStyle
	var gap float64
	for _, size := range [...]float64{draw.SentenceText.Size, 14, 13} { // smaller rather than over the news
		st = draw.SentenceText.At(size)
		text, n := s.knownHeight(c, st, width)
		gap = clamp((end-y-text)/max(float64(n), 1), 0, 8)
		if y+text <= end {
			break
		}
	}
	for i := range s.view.Nodes {
		k := &s.view.Nodes[i]
		switch {
		case strings.HasPrefix(k.ID, "fact_"):
			y = c.Paragraph(draw.Pt{X: 274, Y: y}, st, c.Theme.Ink, k.Name+": "+k.Value, width).Y + gap
		case k.Role == "caution" && s.here(k):
			c.Triangle(draw.Pt{X: 284, Y: y + 3}, 15)
			y = c.Paragraph(draw.Pt{X: 302, Y: y}, st, c.Theme.Ink, k.Name, width-cautionSign).Y + gap
		}
	}
	return y - gap
}

const cautionSign = 30.0 // [unit] width of the sign with its room

// knownHeight is how high the text of [stations.known] is without gaps, and of how
// many pieces.
func (s *stations) knownHeight(c *draw.Canvas, st draw.TextStyle, width float64) (height float64, pieces int) {
	for i := range s.view.Nodes {
		switch k := &s.view.Nodes[i]; {
		case strings.HasPrefix(k.ID, "fact_"):
			height += st.LineHeight() * float64(len(s.lines(c, k.Name+": "+k.Value, st, width)))
			pieces++
		case k.Role == "caution" && s.here(k):
			height += st.LineHeight() * float64(len(s.lines(c, k.Name, st, width-cautionSign)))
			pieces++
		}
	}
	return height, pieces
}

// helpText says how the sheet is used.
func (s *stations) helpText(c *draw.Canvas) {
	c.Text(draw.Pt{X: 274, Y: 84}, draw.HeadingText, c.Theme.Ink, s.word("stations.help"))
	y := 116.0
	for _, id := range [...]string{"go", "prepare", "check", "read", "enlarge", "strike", "call", "keys"} {
		at := c.Paragraph(draw.Pt{X: 274, Y: y}, draw.SentenceText, c.Theme.Ink, s.word("stations.help_"+id), 580)
		y = at.Y + 10
	}
}
