package scene

import (
	"strconv"
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// The table of looks: what every hand-over should have stands in it without
// scrolling; a key turns it to the learner's other readings and back.

// lookArea is where the rows stand, lookRight where their new readings end,
// clear of the rail of a long table.
var lookArea = draw.Rect{X: 424, Y: 114, W: 440, H: 468}

const lookRight = 844.0

// advised is how many of the looks stand first.
func (s *handover) advised() int {
	n := 0
	for n < len(s.v().Looks) && s.v().Looks[n].Advised {
		n++
	}
	return n
}

// showLast rings the look that was taken last, on the side it stands on.
func (s *handover) showLast() {
	v := s.job.view
	last := ""
	for i := range v.Notebook {
		if n := &v.Notebook[i]; n.Again {
			last = n.Check
		}
	}
	s.others, s.looks.sel = false, 0
	n := s.advised()
	for i := range v.Work.Looks {
		if l := &v.Work.Looks[i]; last != "" && l.Action.Act.What == last {
			if s.others, s.looks.sel = !l.Advised, i; s.others {
				s.looks.sel -= n
			}
		}
	}
}

func (s *handover) layLooks() {
	looks, n := s.v().Looks, s.advised()
	shown, least := looks[:n], 57.0
	s.first = 0
	if s.others && n < len(looks) {
		shown, s.first = looks[n:], n
	}
	s.looks.items = s.looks.items[:0]
	for i := range shown {
		a := &shown[i].Action
		s.looks.items = append(s.looks.items, menuItem{widget.Key{Letter: a.Key, Value: s.words.Say("call.minutes", "minutes", s.job.minutes(a.Minutes)), Off: !a.Enabled}, func() { s.job.do(a.Act) }})
	}
	s.looks.rowH = min(92, max(least, s.looks.area.H/float64(max(1, len(shown)))))
	s.menu(&s.looks)
	if n == len(looks) {
		return
	}
	h := s.high(32)
	k := widget.Key{Rect: draw.Rect{X: 668, Y: 628 - h, W: 194, H: h}, Label: s.word("handover.others"), Value: s.num(float64(len(looks)-n), 0), Letter: "M", Chosen: s.others, Size: 14}
	s.key(handLook, "others", k, s.swapOthers)
}

// swapOthers turns the table to the other readings and back.
func (s *handover) swapOthers() {
	s.others = !s.others
	s.looks.sel, s.looks.list.Top = 0, 0
	s.targets.Focus = s.looks.id
}

// drawLook draws the plan and the table of looks without its keys.
func (s *handover) drawLook(c *draw.Canvas) {
	th := c.Theme
	s.drawPlan(c)
	c.Text(draw.Pt{X: 426, Y: 84}, draw.HeadingText, th.Ink, s.word("handover.look"))
	v := s.v()
	total := 0.0
	shown := v.Looks[s.first : s.first+len(s.looks.items)]
	for i := range shown {
		total += shown[i].Action.Minutes
	}
	c.Text(draw.Pt{X: 860, Y: 84}, draw.SmallText.To(draw.Right), th.Ink,
		s.words.Say("handover.looks", "n", s.num(float64(len(shown)), 0), "minutes", s.job.minutes(total)))
	c.Text(draw.Pt{X: 429, Y: 106}, draw.SmallText, th.Ink, s.word("handover.check"))
	c.Text(draw.Pt{X: 674, Y: 106}, draw.SmallText, th.Ink, s.word("handover.before"))
	c.Text(draw.Pt{X: lookRight, Y: 106}, draw.SmallText.To(draw.Right), th.Ink, s.word("handover.now"))
	c.Line(draw.Pt{X: 426, Y: 111}, draw.Pt{X: 860, Y: 111}, draw.Thin.Wide(1.7))
	width := 436.0
	if s.advised() < len(v.Looks) {
		width = 234
	}
	s.block(c, draw.Pt{X: 426, Y: 595}, draw.SmallText, s.word("handover.pencil"), width, 3)
}

// paintLook letters one look: its key, the old reading, the new one, its detail.
func (s *handover) paintLook(c *draw.Canvas, i int, r draw.Rect) {
	l, th := &s.v().Looks[s.first+i], c.Theme
	col := keyColour(c, &s.looks.items[i].Key)
	lines := s.lines(c, l.Name, smallKey, 134)
	y := r.Y + r.H/2 + 5
	if len(lines) > 1 {
		y -= 8
	}
	for k, line := range lines[:min(2, len(lines))] {
		if k == 1 && len(lines) > 2 {
			line += " " + lines[2]
		}
		c.Text(draw.Pt{X: r.X + 8, Y: y + 16*float64(k)}, smallKey, col, fit(c, s.lettering, line, smallKey, 136))
	}
	base := r.Y + r.H/2 + 7
	s.written(c, 674, base, 90, false, l.Before, l)
	s.written(c, lookRight, base, 76, true, l.After, l)
	rowH := s.looks.list.RowH
	c.Text(draw.Pt{X: r.X + 3, Y: r.Y + r.H + min(15, rowH-r.H-3.5)}, draw.SmallText, th.Ink, fit(c, s.lettering, l.Detail, draw.SmallText, 414))
	if rowH >= r.H+20 && i < len(s.looks.items)-1 {
		bottom := s.looks.list.Row(i).Y + rowH - 2
		c.Line(draw.Pt{X: 426, Y: bottom}, draw.Pt{X: lookRight, Y: bottom}, draw.Thin.In(th.Graphite).Wide(0.6))
	}
}

// written letters a reading in pencil with its unit in print.
func (s *handover) written(c *draw.Canvas, x, y, width float64, right bool, text string, l *play.LookView) {
	th, unit := c.Theme, l.Unit
	if text == "" {
		text, unit = "–", ""
	}
	if _, err := strconv.ParseFloat(strings.ReplaceAll(text, "−", "-"), 64); err != nil {
		unit = ""
	}
	uw := 0.0
	if unit != "" {
		uw = c.Measure(draw.SmallText, unit) + 5
	}
	st := draw.HandText.At(20)
	if c.Measure(st, text) > width-uw {
		st = st.At(15)
	}
	text = fit(c, s.lettering, text, st, width-uw)
	if right {
		x -= c.Measure(st, text) + uw
	}
	c.Text(draw.Pt{X: x, Y: y}, st, th.Graphite, text)
	c.Text(draw.Pt{X: x + c.Measure(st, text) + 5, Y: y}, draw.SmallText, th.Ink, unit)
}
