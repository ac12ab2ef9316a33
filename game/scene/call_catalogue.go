package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// The whole catalogue, the same for every job: groups, their causes, what the
// cause in focus means, then the places of the cause that was picked.

// group is the one whose causes are listed.
func (s *call) group() *play.GroupView {
	g := s.v().Groups
	if len(g) == 0 {
		return &play.GroupView{}
	}
	return &g[min(s.groups.sel, len(g)-1)]
}

// picked is the cause whose places are listed; nil before one is picked.
func (s *call) picked() *play.CauseView {
	g := s.group()
	for i := range g.Causes {
		if g.Causes[i].ID == s.cause {
			return &g.Causes[i]
		}
	}
	return nil
}

// explained is the cause whose explanation stands in the catalogue: the one that
// the arrows are at, else the picked one; nil before either.
func (s *call) explained() *play.CauseView {
	if g := s.group(); s.targets.Focus == s.causes.id && len(g.Causes) > 0 {
		return &g.Causes[min(s.causes.sel, len(g.Causes)-1)]
	}
	return s.picked()
}

// explainStyle letters what a cause means.
var explainStyle = draw.SentenceText.At(14)

// explainLines is how many lines the longest explanation of the group takes, so
// that nothing moves while its causes are looked through.
func (s *call) explainLines() int {
	n, g := 1, s.group()
	for i := range g.Causes {
		n = max(n, len(s.lines(s.app.sheet, g.Causes[i].Explain, explainStyle, explainWide)))
	}
	return n
}

const (
	catalogueEnd = 567.0 // where the open catalogue ends [unit]
	explainWide  = 548.0 // [unit]
)

// bookTop is where it begins: under the rows that are left in sight.
func (s *call) bookTop() float64 {
	gap := 5.0
	if s.app.Touch {
		gap = 1
	}
	return s.rows.Rect.Y + s.rows.Rect.H + gap
}

func (s *call) layCatalogue() {
	v := s.v()
	s.groups.items = s.groups.items[:0]
	for i := range v.Groups {
		g := &v.Groups[i]
		k := widget.Key{Label: g.Name, Value: s.num(float64(len(g.Causes)), 0), Left: true, Chosen: i == s.groups.sel, Size: 14}
		s.groups.items = append(s.groups.items, menuItem{k, func() { s.openGroup() }})
	}
	top := s.bookTop()
	s.groups.area = draw.Rect{X: 33, Y: top + 1, W: 184, H: catalogueEnd - 2 - top}
	s.groups.rowH = s.groups.area.H / float64(max(1, len(v.Groups)))
	if least := s.high(28) + menuGap; s.groups.rowH < least {
		s.groups.rowH = least
	}
	s.menu(&s.groups)

	s.causes.items, s.places.items = s.causes.items[:0], s.places.items[:0]
	g := s.group()
	for i := range g.Causes {
		k := &g.Causes[i]
		s.causes.items = append(s.causes.items, menuItem{widget.Key{Label: k.Name, Left: true, Chosen: k.ID == s.cause}, func() { s.openCause(k) }})
	}
	if k := s.picked(); k != nil {
		for i := range k.Places {
			a := &k.Places[i]
			s.places.items = append(s.places.items, menuItem{widget.Key{Label: a.Label, Off: !a.Enabled, Chosen: a.Chosen}, func() { s.openRow(a) }})
		}
	}
	number(s.places.items)
	const wide, low = 560.0, catalogueEnd - 3
	s.places.cols = columns(s.places.items, wide, 6, s.app.Touch)
	h := float64(max(1, min(3, (len(s.places.items)+s.places.cols-1)/s.places.cols))) * (s.high(28) + menuGap)
	s.places.area = draw.Rect{X: 226, Y: low - h, W: wide, H: h + 0.5}
	s.causes.cols = columns(s.causes.items, wide, 2, s.app.Touch)
	explain := 11 + explainStyle.LineHeight()*float64(s.explainLines())
	s.causes.area = draw.Rect{X: 226, Y: top + 24, W: wide, H: low - h - 22 - explain - 4 - top - 24} // the ring of a rail reaches 4 below it
	s.menu(&s.causes)
	s.menu(&s.places)
}

func (s *call) openGroup() {
	s.cause, s.causes.sel, s.causes.list.Top = "", 0, 0
	s.targets.Focus = s.causes.id
}

func (s *call) openCause(k *play.CauseView) {
	s.cause, s.places.sel, s.places.list.Top = k.ID, 0, 0
	s.targets.Focus = s.places.id
}

// openRow makes a row of the picked cause at a place and rings it.
func (s *call) openRow(a *play.Action) {
	rows := len(s.v().Rows)
	s.job.do(a.Act)
	if len(s.v().Rows) == rows {
		return // refused; the notice says why
	}
	s.picking, s.cause = false, ""
	s.layRows()
	s.ring(rows)
	s.rows.Show(rows + 1)
	s.rows.Show(rows)
}

func (s *call) drawCatalogue(c *draw.Canvas) {
	th := c.Theme
	top := s.bookTop()
	box := draw.Rect{X: 28, Y: top, W: 763, H: catalogueEnd - top}
	c.Fill(box, th.Panel)
	c.Box(box, nil, draw.Visible)
	rule(c, 220, top, 220, catalogueEnd)
	c.Text(draw.Pt{X: 232, Y: top + 19}, draw.HeadingText, th.Ink, s.group().Name)
	n := 0
	for i := range s.v().Groups {
		n += len(s.v().Groups[i].Causes)
	}
	c.Text(draw.Pt{X: 783, Y: top + 18}, draw.SmallText.To(draw.Right), th.Ink,
		s.words.Say("call.catalogue", "causes", s.num(float64(n), 0), "groups", s.num(float64(len(s.v().Groups)), 0)))
	y := s.causes.area.Y + s.causes.area.H + 4
	rule(c, 220, y+2, 791, y+2)
	if k := s.explained(); k != nil {
		s.block(c, draw.Pt{X: 232, Y: y + 4 + explainStyle.LineHeight()}, explainStyle, k.Explain, explainWide, s.explainLines())
	} else {
		c.Text(draw.Pt{X: 232, Y: y + 19}, draw.SmallText, th.Graphite, s.word("call.explain_help"))
	}
	y = s.places.area.Y
	rule(c, 220, y-20, 791, y-20)
	c.Text(draw.Pt{X: 232, Y: y - 5}, draw.LabelText, th.Ink, s.word("call.place"))
	if s.picked() == nil {
		c.Text(draw.Pt{X: 783, Y: y - 5}, draw.SmallText.To(draw.Right), th.Graphite, s.word("call.place_help"))
	}
}
