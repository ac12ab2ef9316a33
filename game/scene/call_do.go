package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// Step three: what is chosen, and the full list by part, place and remedy.

// doEnd is where the list of what can be done ends [unit].
const doEnd = 513.0

// partNow is the part whose remedies are listed; nil before one is picked.
func (s *call) partNow() *play.PartView {
	v := s.v()
	for i := range v.Parts {
		if v.Parts[i].ID == s.part {
			return &v.Parts[i]
		}
	}
	return nil
}

func (s *call) layDo() {
	v := s.v()
	s.chosen.items = s.chosen.items[:0]
	for i := range v.Remedies {
		a := &v.Remedies[i].Drop
		s.chosen.items = append(s.chosen.items, menuItem{widget.Key{Label: "−", Off: !a.Enabled}, func() { s.job.do(a.Act) }})
	}
	s.chosen.area = draw.Rect{X: 811, Y: 142, W: 445, H: 2*s.high(38) + 2*menuGap}
	s.menu(&s.chosen)

	s.parts.items, s.spots.items, s.remedies.items = s.parts.items[:0], s.spots.items[:0], s.remedies.items[:0]
	for i := range v.Parts {
		p := &v.Parts[i]
		k := widget.Key{Label: p.Name, Left: true, Pencil: p.Chosen, Off: !v.Sealed, Chosen: p.ID == s.part}
		s.parts.items = append(s.parts.items, menuItem{k, func() { s.openPart(p) }})
	}
	const x, wide = 811.0, 445.0
	pitch := s.high(28) + menuGap
	s.parts.cols = columns(s.parts.items, wide, 5, s.app.Touch)
	rows := min(3, (len(s.parts.items)+s.parts.cols-1)/s.parts.cols)
	s.parts.area = draw.Rect{X: x, Y: s.addLine() + 6, W: wide, H: pitch*float64(max(1, rows)) + 0.5}
	s.menu(&s.parts)
	y := s.parts.area.Y + s.parts.area.H + 5
	p := s.partNow()
	if p == nil {
		return
	}
	for _, a := range spotsOf(p) {
		k := widget.Key{Label: a.Label, Chosen: a.Label == s.place}
		s.spots.items = append(s.spots.items, menuItem{k, func() { s.openSpot(a.Label) }})
	}
	s.spots.cols = columns(s.spots.items, wide, 5, s.app.Touch)
	rows = min(2, (len(s.spots.items)+s.spots.cols-1)/s.spots.cols)
	s.spots.area = draw.Rect{X: x, Y: y, W: wide, H: pitch*float64(max(1, rows)) + 0.5}
	s.menu(&s.spots)
	y += s.spots.area.H + 5
	for i := range p.Remedies {
		for j := range p.Remedies[i].Places {
			if a := &p.Remedies[i].Places[j]; a.Label == s.place {
				k := widget.Key{Radio: true, Chosen: a.Chosen, Off: !a.Enabled && !a.Chosen}
				s.remedies.items = append(s.remedies.items, menuItem{k, func() { s.swapRemedy(a) }})
			}
		}
	}
	s.remedies.area = draw.Rect{X: x, Y: y, W: wide, H: doEnd - 1 - y}
	s.menu(&s.remedies)
}

// addLine is the baseline over what can be added.
func (s *call) addLine() float64 { return s.chosen.area.Y + s.chosen.area.H + 14 }

// spotsOf are the places of all remedies of a part, each once, in their order.
func spotsOf(p *play.PartView) []*play.Action {
	var list []*play.Action
	for i := range p.Remedies {
	places:
		for j := range p.Remedies[i].Places {
			a := &p.Remedies[i].Places[j]
			for _, l := range list {
				if l.Label == a.Label {
					continue places
				}
			}
			list = append(list, a)
		}
	}
	return list
}

func (s *call) openPart(p *play.PartView) {
	s.part, s.place, s.spots.sel, s.spots.list.Top, s.remedies.sel, s.remedies.list.Top = p.ID, "", 0, 0, 0, 0
	s.targets.Focus = s.spots.id
	if spots := spotsOf(p); len(spots) == 1 {
		s.openSpot(spots[0].Label)
	}
}

func (s *call) openSpot(label string) {
	s.place, s.remedies.sel, s.remedies.list.Top = label, 0, 0
	s.targets.Focus = s.remedies.id
}

// swapRemedy takes a remedy in, or out when it is in.
func (s *call) swapRemedy(a *play.Action) {
	if !a.Chosen {
		s.job.do(a.Act)
		s.chosen.sel = len(s.v().Remedies) - 1
		s.layDo()
		s.chosen.list.Show(s.chosen.sel)
		return
	}
	for i := range s.v().Remedies {
		if r := &s.v().Remedies[i]; r.ID == a.Act.What {
			s.job.do(r.Drop.Act)
			return
		}
	}
}

// ringed is the remedy of the list that is ringed.
func (s *call) ringed() *play.RemedyChoice {
	p := s.partNow()
	if p == nil {
		return nil
	}
	n := 0
	for i := range p.Remedies {
		for j := range p.Remedies[i].Places {
			if p.Remedies[i].Places[j].Label != s.place {
				continue
			}
			if n == s.remedies.sel {
				return &p.Remedies[i]
			}
			n++
		}
	}
	return nil
}

// remedyWhy is why line i of the list cannot be chosen.
func (s *call) remedyWhy(i int) string {
	if r := s.remedyAt(i); r != nil {
		for _, a := range r.Places {
			if a.Label == s.place {
				return a.Why
			}
		}
	}
	return ""
}

// remedyAt is the remedy of line i of the list.
func (s *call) remedyAt(i int) *play.RemedyChoice {
	was := s.remedies.sel
	s.remedies.sel = i
	r := s.ringed()
	s.remedies.sel = was
	return r
}

func (s *call) paintRemedy(c *draw.Canvas, i int, r draw.Rect) {
	m := s.remedyAt(i)
	if m == nil {
		return
	}
	col := keyColour(c, &s.remedies.items[i].Key)
	st := draw.KeyText.At(14)
	if c.Measure(st, m.Name) > r.W-42 {
		st = smallKey
	}
	mid, x := r.Y+r.H/2, r.X+32
	lines := s.lines(c, m.Name, st, r.W-42)
	c.Text(draw.Pt{X: x, Y: mid - 2}, st, col, lines[0])
	if len(lines) > 1 { // what is left of the name stands before its minutes
		rest := fit(c, s.lettering, lines[1], st, r.W-180)
		c.Text(draw.Pt{X: x, Y: mid + 14}, st, col, rest)
		x += c.Measure(st, rest) + 14
	}
	about := s.words.Say("call.minutes", "minutes", s.num(m.Minutes, 0))
	if m.Who != "" {
		about = s.words.Say("call.who", "minutes", s.num(m.Minutes, 0), "who", m.Who)
	}
	c.Text(draw.Pt{X: x, Y: mid + 14}, draw.SmallText, col, fit(c, s.lettering, about, draw.SmallText, r.X+r.W-10-x))
}

func (s *call) paintChosen(c *draw.Canvas, i int, r draw.Rect) {
	m, th := &s.v().Remedies[i], c.Theme
	mid := r.Y + r.H/2
	c.Circle(draw.Pt{X: 822, Y: mid}, 10, nil, draw.Thin.Wide(1.4))
	c.Text(draw.Pt{X: 822, Y: mid + 5}, draw.SmallText.To(draw.Middle), th.Ink, s.num(float64(i+1), 0))
	right := r.X - 10
	minutes := s.words.Say("call.minutes", "minutes", s.num(m.Minutes, 0))
	c.Text(draw.Pt{X: right, Y: mid - 2}, draw.LabelText.To(draw.Right), th.Ink, minutes)
	who := fit(c, s.lettering, m.Who, draw.SmallText, 270)
	c.Text(draw.Pt{X: right, Y: mid + 14}, draw.SmallText.To(draw.Right), th.Ink, who)
	c.Text(draw.Pt{X: 840, Y: mid - 2}, draw.LabelText, th.Ink, fit(c, s.lettering, m.Name, draw.LabelText, right-848-c.Measure(draw.LabelText, minutes)))
	c.Text(draw.Pt{X: 840, Y: mid + 14}, draw.SmallText, th.Graphite, fit(c, s.lettering, m.Place, draw.SmallText, right-848-c.Measure(draw.SmallText, who)))
	if s.chosen.list.Rows <= 2 || !s.app.Touch {
		y := s.chosen.list.Row(i).Y + s.chosen.list.RowH - 0.5
		rule(c, 812, y, 1254, y)
	}
}

func (s *call) drawDo(c *draw.Canvas) {
	v, th := s.v(), c.Theme
	if len(v.Remedies) == 0 && v.Sealed {
		c.Text(draw.Pt{X: 812, Y: 166}, draw.LabelText, th.Ink, s.word("call.none_chosen"))
	}
	total := 0.0
	for i := range v.Remedies {
		total += v.Remedies[i].Minutes
	}
	c.Text(draw.Pt{X: 812, Y: s.addLine()}, draw.LabelText, th.Ink, s.word("call.add"))
	c.Text(draw.Pt{X: 1254, Y: s.addLine()}, draw.SmallText.To(draw.Right), th.Ink, s.words.Say("call.so_far", "minutes", s.num(total, 0)))
	y := s.parts.area.Y + s.parts.area.H + 2
	rule(c, 812, y, 1254, y)
	switch {
	case !v.Sealed:
		s.block(c, draw.Pt{X: 812, Y: y + 24}, draw.SentenceText, s.word("call.do_opens"), 440, 3)
	case s.part == "":
		s.block(c, draw.Pt{X: 812, Y: y + 24}, draw.SentenceText, s.word("call.pick_part")+" "+s.word("view.who_may"), 440, 5)
	case s.place == "":
		s.block(c, draw.Pt{X: 812, Y: s.spots.area.Y + s.spots.area.H + 24}, draw.SentenceText, s.word("call.pick_place"), 440, 3)
	default:
		y = s.spots.area.Y + s.spots.area.H + 2
		rule(c, 812, y, 1254, y)
	}
}

// drawWork draws the caution of what is ringed or was chosen last, and why the
// work cannot begin yet.
func (s *call) drawWork(c *draw.Canvas) {
	v := s.v()
	text := s.word("call.caution")
	if m := s.ringed(); m != nil && s.place != "" {
		text = m.Caution
	} else if n := len(v.Remedies); n > 0 {
		text = v.Remedies[min(s.chosen.sel, n-1)].Caution
	}
	if text == "" {
		text = s.word("call.no_caution")
	} else {
		c.Triangle(draw.Pt{X: 823, Y: (doEnd+s.workRule())/2 + 9}, 22)
	}
	const most = 4
	st := draw.SentenceText
	room := s.workRule() - doEnd - 6
	if n := len(s.lines(c, text, st, 408)); n > most || float64(n)*st.LineHeight() > room {
		st = st.At(13)
	}
	n := min(most, len(s.lines(c, text, st, 408)))
	y := doEnd + 3 + (room-float64(n)*st.LineHeight())/2 + st.Size
	s.block(c, draw.Pt{X: 846, Y: y}, st, text, 408, most)
	help := s.word("call.work_help")
	if !v.Work.Enabled && v.Work.Why != "" && v.Sealed {
		help = v.Work.Why
	} else if v.Sealed {
		help = s.word("call.work_ready")
	}
	s.block(c, draw.Pt{X: 812, Y: s.workRule() + 17}, draw.SmallText, help, 254, 2)
}
