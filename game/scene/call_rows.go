package scene

import (
	"strconv"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

const (
	idRows     = "rows"
	idSeal     = "seal"
	pickLetter = "P"
)

// layRows lists step one: rods with their keys, the empty row, the catalogue.
func (s *call) layRows() {
	v, l := s.v(), &s.rows
	s.picking = s.picking && !v.Sealed
	l.RowH = 41.5
	shown := 2.0 // rows that the open catalogue leaves in sight
	if s.app.Touch {
		l.RowH, shown = 49, 1
	}
	l.Rect = draw.Rect{X: 26, Y: 90, W: 770, H: 474}
	if s.picking {
		l.Rect.H = l.RowH * shown
	}
	l.Rows = len(v.Rows)
	if !v.Sealed {
		l.Rows++
	}
	l.Selected = max(0, min(l.Selected, l.Rows-1))
	l.Focused = s.targets.Focus == idRows
	if l.Rows > 0 {
		s.targets.Add(widget.Target{ID: idRows, Rect: draw.Rect{X: l.Rect.X, Y: l.Rect.Y - 6, W: 1, H: 1}, Panel: callWrong, Enabled: true})
	}
	if v.Sealed {
		return
	}
	from, to := l.Visible()
	for i := from; i < to; i++ {
		r := l.Row(i)
		if i == len(v.Rows) {
			h := s.high(32)
			k := widget.Key{Rect: draw.Rect{X: 50, Y: r.Y + (r.H-h)/2, W: 246, H: h}, Label: s.word("call.pick"), Letter: pickLetter, Drop: true, Left: true, Chosen: s.picking}
			s.key(callWrong, "pick", k, s.pick)
			continue
		}
		row := &v.Rows[i]
		h := s.high(32)
		less := widget.Key{Rect: draw.Rect{X: 347 - h, Y: r.Y + (r.H-h)/2, W: h, H: h}, Label: "−", Off: !row.Less.Enabled}
		if row.Counters == 0 { // nothing to take off: the row itself goes
			less.Label, less.Off = "×", !row.Drop.Enabled
		}
		id := strconv.Itoa(i)
		s.hand(callWrong, "less"+id, less, func() { s.ring(i); s.rod(widget.Less) })
		more := widget.Key{Rect: draw.Rect{X: 707, Y: r.Y + (r.H-h)/2, W: h, H: h}, Label: "+", Off: !row.More.Enabled}
		s.because("more"+id, row.More.Why)
		s.hand(callWrong, "more"+id, more, func() { s.ring(i); s.rod(widget.More) })
	}
	if s.picking {
		s.layCatalogue()
	}
}

func (s *call) ring(i int) { s.rows.Selected, s.targets.Focus = i, idRows }

// pick opens and shuts the catalogue at the empty row.
func (s *call) pick() {
	if s.picking {
		s.back()
		return
	}
	s.picking, s.cause = true, ""
	s.targets.Focus = s.groups.id
	s.layRows()
	s.rows.Show(s.rows.Rows - 1)
	s.rows.Selected = s.rows.Rows - 1
}

// rod does an act to the ringed row; one that it has no counter for takes it out.
func (s *call) rod(act widget.RodAct) {
	rows := s.v().Rows
	if s.rows.Selected >= len(rows) {
		return
	}
	r := &rows[s.rows.Selected]
	switch act {
	case widget.More:
		s.count(r.More.Act)
	case widget.Less:
		if r.Counters == 0 {
			s.job.do(r.Drop.Act)
		} else {
			s.job.do(r.Less.Act)
		}
	case widget.ClearRod:
		s.job.do(r.Clear.Act)
	case widget.DropRow:
		s.job.do(r.Drop.Act)
	}
}

// rodOf is the rod of a row that stands in r.
func rodOf(row *play.RowView, r draw.Rect) widget.Rod {
	return widget.Rod{Rect: draw.Rect{X: 355, Y: r.Y + r.H/2 - 14, W: 348, H: 28}, Nuts: row.Counters}
}

// onRod threads counters up to where a rod was pressed, as far as there are any
// left; it says whether a rod was.
func (s *call) onRod(at draw.Pt) bool {
	rows := s.v().Rows
	from, to := s.rows.Visible()
	for i := from; i < min(to, len(rows)); i++ {
		r, rod := &rows[i], rodOf(&rows[i], s.rows.Row(i))
		if !rod.Rect.Contains(at) {
			continue
		}
		s.ring(i)
		a := r.More.Act
		a.N = float64(min(rod.At(at), r.Counters+widget.Counters-s.v().Placed))
		if int(a.N) == r.Counters || s.v().Sealed {
			s.tell(r.More.Why)
		} else {
			s.count(a)
		}
		return true
	}
	return false
}

// count gives a row its counters; with the last one the ring goes on to the seal.
func (s *call) count(a play.Act) {
	if s.job.do(a) && s.v().Placed == widget.Counters {
		s.targets.Focus = idSeal
	}
}

// handleRows answers the arrows on the ringed row, and scrolling.
func (s *call) handleRows(e widget.Event) bool {
	l := &s.rows
	if e.Kind != widget.KeyDown {
		inRows := l.Rect.Contains(e.At)
		if e.Kind == widget.PointerDown && inRows {
			l.Handle(e)
			return s.onRod(e.At) // else a key in the row may have been meant
		}
		return e.Kind != widget.PointerDown && l.Handle(e)
	}
	if e.Key == pickLetter && !s.v().Sealed {
		s.pick() // the empty row may have been scrolled out of sight
		return true
	}
	if back := e.Key == "Left" || e.Key == "Up"; back && s.targets.Focus == idSeal && l.Rows > 0 {
		s.targets.Focus = idRows
		return true
	}
	if s.targets.Focus != idRows {
		return false
	}
	if e.Key == "Enter" {
		switch {
		case s.v().Sealed:
		case l.Selected == len(s.v().Rows):
			s.pick()
		default:
			s.targets.Focus = idSeal
		}
		return true
	}
	if act := widget.RodKey(e); act != widget.Nothing && !s.v().Sealed {
		if act == widget.Less && s.v().Rows != nil && l.Selected < len(s.v().Rows) && s.v().Rows[l.Selected].Counters == 0 {
			return true // ← stops at none: only Delete takes a row out
		}
		s.rod(act)
		return true
	}
	switch e.Key {
	case "Up", "Down", "Home", "End", "PageUp", "PageDown":
		l.Handle(e)
		return true
	}
	return false
}

// drawWrong draws the rows and, when it is open, the catalogue under them.
func (s *call) drawWrong(c *draw.Canvas) {
	v, l, th := s.v(), &s.rows, c.Theme
	from, to := l.Visible()
	for i := from; i < to; i++ {
		r := l.Row(i)
		mid := r.Y + r.H/2
		c.Text(draw.Pt{X: 30, Y: mid + 1}, draw.LabelText, th.Ink, rowLetter(i))
		if i < len(v.Rows) {
			s.drawRow(c, &v.Rows[i], r)
		} else {
			c.Line(draw.Pt{X: 355, Y: mid}, draw.Pt{X: 703, Y: mid}, draw.Hidden)
			c.TextOn(draw.Pt{X: 529, Y: mid - 6}, draw.SmallText.To(draw.Middle), th.Graphite, th.Paper, s.word("call.no_rod"))
			c.Text(draw.Pt{X: 776, Y: mid + 5}, draw.LabelText.To(draw.Right), th.Ink, "–")
		}
		rule(c, 29, r.Y+r.H-0.5, 788, r.Y+r.H-0.5)
		if l.Focused && i == l.Selected {
			c.Box(draw.Rect{X: 23, Y: r.Y + 1, W: r.W - 2, H: r.H - 4}, nil, draw.Thin.In(th.Key).Wide(1.4))
		}
	}
	if !s.picking || !s.app.Touch { // one row has no room for a rail
		l.Draw(c)
	}
	if s.picking {
		s.drawCatalogue(c)
	}
	s.drawFoot(c)
}

// noteStyle letters the sheet's answer at its foot.
var noteStyle = draw.SentenceText.At(14)

const noteWide, noteMost = 756.0, 3

// note is what the foot answers, in as many lines as it takes; three are smaller.
func (s *call) note(c *draw.Canvas) ([]string, draw.TextStyle) {
	note, st := s.job.view.Notice, noteStyle
	if note == "" {
		note = s.word("call.rest")
	}
	if len(s.lines(c, note, st, noteWide)) > 2 {
		st = st.At(13)
	}
	return s.lines(c, note, st, noteWide), st
}

// drawFoot says how many counters are threaded, which keys thread them, and the
// answer to what was done last; a long one takes the place of the others.
func (s *call) drawFoot(c *draw.Canvas) {
	v, th := s.v(), c.Theme
	lines, st := s.note(c)
	if n := min(len(lines), noteMost); n > 1 {
		y := 609 - st.LineHeight()*float64(n-1)
		s.block(c, draw.Pt{X: 29, Y: y}, st, s.job.view.Notice, noteWide, noteMost)
		return
	}
	x := 29.0
	placed := s.words.Say("call.threaded", "n", s.num(float64(v.Placed), 0), "of", s.num(widget.Counters, 0))
	c.Text(draw.Pt{X: x, Y: 586}, draw.LabelText, th.Ink, placed)
	x += c.Measure(draw.LabelText, placed) + 16
	help := s.word("call.rod_help")
	switch {
	case v.Sealed:
		help = s.word("call.sealed_help")
	case s.picking:
		help = s.word("call.pick_help")
	}
	c.Text(draw.Pt{X: x, Y: 586}, draw.SmallText, th.Ink, fit(c, s.lettering, help, draw.SmallText, 786-x))
	c.Text(draw.Pt{X: 29, Y: 606}, noteStyle, th.Ink, lines[0])
}

func (s *call) drawRow(c *draw.Canvas, row *play.RowView, r draw.Rect) {
	th, mid := c.Theme, r.Y+r.H/2
	c.Text(draw.Pt{X: 50, Y: mid - 1}, draw.LabelText, th.Ink, fit(c, s.lettering, row.Cause, draw.LabelText, 248))
	c.Text(draw.Pt{X: 50, Y: mid + 15}, draw.SmallText, th.Graphite, fit(c, s.lettering, row.Place, draw.SmallText, 248))
	rod := rodOf(row, r)
	rod.Draw(c)
	c.Text(draw.Pt{X: 771, Y: mid + 6}, draw.HandText.To(draw.Right), th.Graphite, s.num(float64(row.Counters), 0))
}

// rowLetter names a row: A … Z, AA …
func rowLetter(i int) string {
	if i >= 26 {
		return rowLetter(i/26-1) + rowLetter(i%26)
	}
	return string(rune('A' + i))
}
