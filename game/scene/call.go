package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// The panels of the call sheet, in reading order.
const (
	callHead = iota
	callWrong
	callSeal
	callDo
	callWork
	callSays
	callTitle
)

// call is the sheet of belief and remedies, in three steps.
type call struct {
	form
	rows    widget.List // the rows of the call and, last, the empty one
	picking bool        // the catalogue is open
	cause   string      // picked from it
	part    string      // picked of what can be done
	place   string      // picked of the part's places
	groups, causes, places,
	parts, spots, remedies, chosen menu
}

func newCall(j *Job) *call {
	s := &call{}
	s.groups = menu{id: "groups", panel: callWrong, rowH: 31, cols: 1}
	s.causes = menu{id: "causes", panel: callWrong, rowH: 31}
	s.places = menu{id: "places", panel: callWrong, rowH: 31}
	s.chosen = menu{id: "chosen", panel: callDo, rowH: 41, cols: 1, paint: s.paintChosen,
		inner: func(r draw.Rect) draw.Rect {
			h := s.high(32)
			return draw.Rect{X: r.X + r.W - h, Y: r.Y + (r.H-h)/2, W: h, H: h}
		}}
	s.parts = menu{id: "parts", panel: callDo, rowH: 31}
	s.spots = menu{id: "spots", panel: callDo, rowH: 31}
	s.remedies = menu{id: "remedies", panel: callDo, rowH: 43, cols: 1, paint: s.paintRemedy}
	s.places.why = func(i int) string { return s.picked().Places[i].Why }
	s.remedies.why = s.remedyWhy
	s.own = func() stamp {
		return newStamp.add(uint64(s.rows.Selected)).num(s.rows.Top, 1).flag(s.targets.Focus == idRows).flag(s.picking).
			add(uint64(s.remedies.sel)).add(uint64(s.chosen.sel)) // whose caution stands under the list
	}
	s.book.panel, s.book.area = callWrong, draw.Rect{X: 22, Y: 334, W: 600, H: 280}
	if !j.view.Call.Sealed {
		s.targets.Focus = idRows
	}
	s.begin(j, s.lay,
		formPanel{headArea, s.drawHead},
		formPanel{draw.Rect{X: 20, Y: 66, W: 779, H: 549}, s.drawWrong},
		formPanel{draw.Rect{X: 801, Y: 66, W: 460, H: 55}, s.drawSeal},
		formPanel{draw.Rect{X: 801, Y: 121, W: 460, H: 392}, s.drawDo},
		formPanel{draw.Rect{X: 801, Y: 514, W: 460, H: 119}, s.drawWork},
		formPanel{draw.Rect{X: 20, Y: 617, W: 770, H: 84}, s.drawSays},
		formPanel{titleBlock, func(c *draw.Canvas) {
			s.title(c, s.word("call.sheet"), s.word("call.scale_caption"), s.word("call.scale"))
		}})
	return s
}

func (s *call) v() *play.CallView { return s.job.view.Call }

// lay lists what can be pressed as the sheet stands.
func (s *call) lay() {
	v := s.v()
	if v == nil {
		return // the job has gone on to another sheet
	}
	s.headKey("notes", 1056, 94, "sheet.notes", "N", s.book.open, s.book.swap)
	if v.Sealed { // there is no way back to the car
		s.headKey("leave", 1157, 98, "sheet.leave", "Esc", false, s.job.out)
	} else {
		s.headKey("back", 1157, 98, "sheet.back", "Esc", false, s.back)
	}
	s.layRows()
	label := "call.seal"
	switch {
	case v.Sealed:
		label = "call.is_sealed"
	case s.asked():
		label = "call.seal_anyway"
	}
	h := s.high(38)
	s.key(callSeal, idSeal, widget.Key{Rect: draw.Rect{X: 1054, Y: 93 - h/2, W: 200, H: h}, Label: s.word(label), Letter: "Enter", Strong: true, Off: !v.Seal.Enabled}, s.seal)
	s.layDo()
	h = s.high(34)
	s.key(callWork, "work", widget.Key{Rect: draw.Rect{X: 1074, Y: 629 - h, W: 180, H: h}, Label: s.word("call.work"), Letter: "G", Off: !v.Work.Enabled},
		func() { s.job.do(v.Work.Act) })
}

// seal seals the belief; while counters are open it asks first, and the second
// press under that question seals.
func (s *call) seal() {
	v := s.v()
	if v.Ask != "" && !s.asked() {
		s.tell(v.Ask)
		return
	}
	s.picking, s.rows.Top = false, 0
	s.job.do(v.Seal.Act)
	s.targets.Focus = s.parts.id
}

// asked tells that the question about open counters stands on the sheet.
func (s *call) asked() bool { return s.v().Ask != "" && s.job.view.Notice == s.v().Ask }

// drawSeal says beside the seal what it does.
func (s *call) drawSeal(c *draw.Canvas) {
	help := "call.seal_help"
	switch {
	case s.v().Sealed:
		help = "call.seal_done"
	case s.asked():
		help = "call.seal_asks"
	}
	c.Text(draw.Pt{X: 812, Y: 105}, draw.SmallText, c.Theme.Ink, s.word(help))
}

// back shuts the catalogue, or goes back to the car.
func (s *call) back() {
	if s.picking {
		s.picking, s.cause = false, ""
		s.targets.Focus = idRows
		return
	}
	s.job.do(play.Act{Do: play.Back})
}

// Handle answers one event.
func (s *call) Handle(e widget.Event) {
	if !s.book.open || !s.book.list.Focused {
		if s.handleRows(e) {
			s.layout()
			return
		}
	}
	s.handle(e)
}

// StillStamp changes with the car and what is open.
func (s *call) StillStamp() uint64 {
	return uint64(newStamp.text("call").flag(s.picking).flag(s.v().Sealed).flag(s.app.Touch))
}

// Still draws the lines of the sheet and what never changes on it.
func (s *call) Still(c *draw.Canvas) {
	th := c.Theme
	c.Sheet()
	rule(c, 18, 62, 1262, 62)
	rule(c, 800, 62, 800, 634)
	rule(c, 18, 616, 800, 616)
	rule(c, 800, 117, 1262, 117)
	rule(c, 800, doEnd, 1262, doEnd)
	y := s.workRule()
	rule(c, 800, y, 1262, y)
	rule(c, 800, 634, 1262, 634)
	heading(c, 29, 84, "1", s.word("call.wrong"), s.word("call.wrong_help"))
	heading(c, 812, 84, "2", s.word("call.seal_heading"), "")
	heading(c, 812, 137, "3", s.word("call.do"), "")
	c.Text(draw.Pt{X: 1254, Y: 136}, draw.SmallText.To(draw.Right), th.Ink, s.word("call.do_help"))
	c.Text(draw.Pt{X: 29, Y: 643}, draw.HeadingText, th.Ink, s.word("call.says"))
}

// heading draws a numbered step.
func heading(c *draw.Canvas, x, y float64, n, name, help string) {
	c.Text(draw.Pt{X: x, Y: y}, draw.HeadingText, c.Theme.Ink, n)
	c.Text(draw.Pt{X: x + 22, Y: y}, draw.HeadingText, c.Theme.Ink, name)
	if help != "" {
		c.Text(draw.Pt{X: x + 22 + c.Measure(draw.HeadingText, name) + 20, Y: y}, draw.LabelText, c.Theme.Ink, help)
	}
}

func (s *call) drawHead(c *draw.Canvas) {
	v := s.job.view
	s.head(c, s.word("call.name"), s.words.Say("sheet.complaint", "job", v.Title.Job, "words", v.Complaint), 1046)
}

// workRule is the line over the key to the work.
func (s *call) workRule() float64 { return 629 - s.high(34) - 5 }

// drawSays says the spread back, in words and on a pencil scale.
func (s *call) drawSays(c *draw.Canvas) {
	v, th := s.v(), c.Theme
	s.block(c, draw.Pt{X: 29, Y: 662}, draw.SentenceText.At(14), v.Says, 450, 3)
	const x0, x1, y = 519.0, 781.0, 677.0
	c.Line(draw.Pt{X: x0, Y: y}, draw.Pt{X: x1, Y: y}, draw.Thin.Wide(1.7))
	for i := range 5 {
		x := x0 + (x1-x0)*float64(i)/4
		c.Line(draw.Pt{X: x, Y: y - 6}, draw.Pt{X: x, Y: y}, draw.Thin.Wide(1.7))
	}
	c.Text(draw.Pt{X: x0 - 18, Y: 694}, draw.SmallText, th.Ink, s.word("call.guess"))
	c.Text(draw.Pt{X: (x0 + x1) / 2, Y: 694}, draw.SmallText.To(draw.Middle), th.Ink, s.word("call.fairly_sure"))
	c.Text(draw.Pt{X: x1, Y: 694}, draw.SmallText.To(draw.Right), th.Ink, s.word("call.certain"))
	if v.Placed > 0 {
		x := x0 + (x1-x0)*min(max(v.Sure, 0), 1)
		c.Pencil([]draw.Pt{{X: x - 6, Y: y - 19}, {X: x, Y: y - 3}, {X: x + 6, Y: y - 20}})
	}
}
