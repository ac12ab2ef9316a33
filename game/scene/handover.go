package scene

import (
	"slices"
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// The panels of the hand-over sheet, in reading order.
const (
	handHead = headPanel + iota
	handLook // plan and looks
	handRelease
	handDone
	handTitle
)

// handover is the sheet after the work: look again, release, tell the owner.
type handover struct {
	form
	looks, releases menu
	others          bool // the table holds the readings that are not advised
	first           int  // [look] of the table's first row
	told            widget.TextField
	letter          bool // the field was opened by its letter, which is not to be typed
	pad             letterPad
}

const (
	idTold = "told"
	idOver = "handover"
)

func newHandover(j *Job) Scene {
	s := &handover{form: form{job: j}, told: widget.TextField{Rect: draw.Rect{X: 884, Y: 476, W: 370, H: 86}, Max: 290, Text: j.view.Work.Told}}
	s.looks = menu{id: "looks", panel: handLook, area: lookArea, cols: 1, paint: s.paintLook,
		inner: func(r draw.Rect) draw.Rect { return draw.Rect{X: r.X, Y: r.Y + 1, W: 232, H: s.high(40)} }}
	s.releases = menu{id: "releases", panel: handRelease, area: draw.Rect{X: 882, Y: 92, W: 374, H: 232}, cols: 1, rowH: 77, paint: s.paintRelease,
		inner: func(r draw.Rect) draw.Rect { return draw.Rect{X: r.X, Y: r.Y + 1, W: r.W, H: r.H - 3} }}
	s.book.panel, s.book.area = handLook, draw.Rect{X: 22, Y: 334, W: 600, H: 298}
	s.own = func() stamp {
		return newStamp.text(s.told.Text).flag(s.told.Focused).flag(s.others).flag(s.pad.open).flag(s.capital())
	}
	s.over = s.drawPad
	s.targets.Focus = s.looks.id
	if slices.ContainsFunc(j.view.Notebook, func(n play.NoteView) bool { return n.Again }) {
		s.targets.Leave("leave") // a reading was just written: Enter makes no other, Tab goes to the looks
	}
	s.showLast()
	s.begin(j, s.lay,
		formPanel{headArea, s.drawHead},
		formPanel{draw.Rect{X: 20, Y: 66, W: 851, H: 567}, s.drawLook},
		formPanel{draw.Rect{X: 873, Y: 66, W: 388, H: 567}, s.drawRelease},
		formPanel{draw.Rect{X: 20, Y: 635, W: 771, H: 66}, s.drawDone},
		formPanel{titleBlock, func(c *draw.Canvas) {
			s.title(c, s.word("handover.sheet"), s.word("call.scale_caption"), s.word("handover.scale"))
		}})
	s.looks.list.Show(s.looks.sel)
	return s
}

func (s *handover) v() *play.WorkView { return s.job.view.Work }

func (s *handover) lay() {
	v := s.v()
	if v == nil {
		return // the job has gone on to another sheet
	}
	s.headKey("notes", 1056, 94, "sheet.notes", "N", s.book.open, s.book.swap)
	s.headKey("leave", 1157, 98, "sheet.leave", "Esc", false, s.job.out)
	s.layLooks()

	s.releases.items = s.releases.items[:0]
	for i := range v.Releases {
		a := &v.Releases[i]
		k := widget.Key{Radio: true, Letter: a.Key, Chosen: a.Chosen, Off: !a.Enabled && !a.Chosen}
		s.releases.items = append(s.releases.items, menuItem{k, func() { s.choose(a.Act) }})
	}
	s.menu(&s.releases)
	if s.told.Focused = s.targets.Focus == idTold; !s.told.Focused {
		s.pad.open = false
	}
	t := s.told.Target(idTold, handRelease)
	t.Key = v.Tell.Key
	s.targets.Add(t)
	h := s.high(28)
	s.key(handRelease, "letters", widget.Key{Rect: draw.Rect{X: 1158, Y: 471 - h, W: 96, H: h}, Label: s.word("handover.letters"), Letter: "X", Size: 14, Chosen: s.pad.open}, s.openPad)
	s.key(handRelease, idOver, widget.Key{Rect: draw.Rect{X: 1040, Y: 574, W: 214, H: 44}, Label: s.word("handover.over"), Letter: v.HandOver.Key, Strong: true, Off: !v.HandOver.Enabled},
		func() { s.tell(); s.job.do(s.v().HandOver.Act) })
	if s.pad.open {
		s.layPad()
	}
}

// choose takes a release; the ring goes on to the key that hands over.
func (s *handover) choose(a play.Act) {
	if s.job.do(a) {
		s.targets.Focus = idOver
	}
}

// tell writes down what the owner is told, when it has changed.
func (s *handover) tell() {
	if text := strings.TrimSpace(s.told.Text); s.v() != nil && text != s.v().Told {
		a := s.v().Tell.Act
		a.Text = text
		s.job.do(a)
	}
}

// Handle answers one event. While the owner's note is in focus everything but
// Esc, Tab and a pointer is its own.
func (s *handover) Handle(e widget.Event) {
	if s.letter && e.Kind == widget.TextIn && strings.EqualFold(string(e.Rune), s.v().Tell.Key) {
		s.letter = false
		return
	}
	s.letter = false
	if s.told.Focused {
		switch {
		case s.told.Handle(e):
			return
		case e.Kind == widget.KeyDown && e.Key == "Esc":
			s.endTold()
			return
		case s.handlePad(e):
			return
		}
	}
	s.letter = e.Kind == widget.KeyDown && e.Key == s.v().Tell.Key
	was := s.told.Focused
	s.handle(e)
	if was && s.targets.Focus != idTold {
		s.tell()
	} else if !was && s.targets.Focus == idTold && e.Touch {
		s.pad.open = true // a finger has no keyboard
	}
	if s.job.sheet == Scene(s) {
		s.layout()
	}
}

// endTold leaves the owner's note, which is written down.
func (s *handover) endTold() {
	s.targets.Focus = idOver
	s.tell()
	s.layout()
}

// StillStamp changes with nothing but the size of keys: all else stands in the panels.
func (s *handover) StillStamp() uint64 { return uint64(newStamp.text("handover").flag(s.app.Touch)) }

// Still draws the lines of the sheet and what never changes on it.
func (s *handover) Still(c *draw.Canvas) {
	th := c.Theme
	c.Sheet()
	rule(c, 18, 62, 1262, 62)
	rule(c, 414, 62, 414, 634)
	rule(c, 872, 62, 872, 634)
	rule(c, 18, 634, 1262, 634)
	rule(c, 872, 331, 1262, 331)
	rule(c, 872, 416, 1262, 416)
	c.Text(draw.Pt{X: 29, Y: 650}, draw.HeadingText, th.Ink, s.word("handover.done"))
}

func (s *handover) drawHead(c *draw.Canvas) {
	v := s.job.view
	text := v.Notice
	if text == "" {
		total := 0.0
		for i := range s.v().Done {
			total += s.v().Done[i].Minutes
		}
		text = s.words.Say("handover.sentence", "job", v.Title.Job, "minutes", s.num(total, 0))
	}
	s.head(c, s.word("handover.name"), text, 1046)
}
