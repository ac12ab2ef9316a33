package scene

import (
	"strconv"
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// The panels of the hand-over sheet, in reading order.
const (
	handHead = iota
	handLook // plan and looks
	handRelease
	handDone
	handTitle
)

// handover is the sheet after the work: look again, release, tell the owner.
type handover struct {
	form
	looks, releases menu
	told            widget.TextField
	letter          bool // the field was opened by its letter, which is not to be typed
}

const (
	idTold     = "told"
	toldLetter = "Z"
)

func newHandover(j *Job) Scene {
	s := &handover{told: widget.TextField{Rect: draw.Rect{X: 884, Y: 474, W: 370, H: 84}, Max: 290, Text: j.view.Work.Told}}
	s.looks = menu{id: "looks", panel: handLook, area: draw.Rect{X: 424, Y: 114, W: 440, H: 458}, cols: 1, paint: s.paintLook,
		inner: func(r draw.Rect) draw.Rect { return draw.Rect{X: r.X, Y: r.Y + 3, W: 232, H: 40} }}
	s.releases = menu{id: "releases", panel: handRelease, area: draw.Rect{X: 882, Y: 92, W: 374, H: 232}, cols: 1, rowH: 77, paint: s.paintRelease}
	s.book.panel, s.book.area = handLook, draw.Rect{X: 22, Y: 334, W: 600, H: 298}
	s.own = func() stamp { return newStamp.text(s.told.Text).flag(s.told.Focused) }
	s.targets.Focus = s.looks.id
	for i := range j.view.Work.Looks {
		if l := &j.view.Work.Looks[i]; l.After != "" && j.lastLook() == l.Action.Act.What {
			s.looks.sel = i
		}
	}
	s.begin(j, s.lay,
		formPanel{draw.Rect{X: 20, Y: 20, W: 1241, H: 41}, s.drawHead},
		formPanel{draw.Rect{X: 20, Y: 63, W: 851, H: 570}, s.drawLook},
		formPanel{draw.Rect{X: 873, Y: 63, W: 388, H: 570}, s.drawRelease},
		formPanel{draw.Rect{X: 20, Y: 635, W: 771, H: 66}, s.drawDone},
		formPanel{titleBlock, func(c *draw.Canvas) {
			s.title(c, s.word("handover.sheet"), s.word("call.scale_caption"), s.word("handover.scale"))
		}})
	s.looks.list.Show(s.looks.sel)
	return s
}

// lastLook is the check written down last since the work.
func (j *Job) lastLook() string {
	for i := len(j.view.Notebook) - 1; i >= 0; i-- {
		if n := &j.view.Notebook[i]; n.Again {
			return n.Check
		}
	}
	return ""
}

func (s *handover) v() *play.WorkView { return s.job.view.Work }

func (s *handover) lay() {
	v := s.v()
	if v == nil {
		return // the job has gone on to another sheet
	}
	s.key(handHead, "notes", widget.Key{Rect: draw.Rect{X: 1062, Y: 26, W: 92, H: 29}, Label: s.word("sheet.notes"), Letter: "N", Chosen: s.book.open}, s.book.swap)
	s.key(handHead, "leave", widget.Key{Rect: draw.Rect{X: 1160, Y: 26, W: 95, H: 29}, Label: s.word("sheet.leave"), Letter: "Esc"}, s.job.out)

	s.looks.items = s.looks.items[:0]
	for i := range v.Looks {
		a := &v.Looks[i].Action
		s.looks.items = append(s.looks.items, menuItem{widget.Key{Letter: a.Key, Value: s.words.Say("call.minutes", "minutes", minutesText(s.lettering, a.Minutes)), Off: !a.Enabled}, func() { s.job.do(a.Act) }})
	}
	s.looks.rowH = min(92, max(66, s.looks.area.H/float64(max(1, len(v.Looks)))))
	s.menu(&s.looks)

	s.releases.items = s.releases.items[:0]
	for i := range v.Releases {
		a := &v.Releases[i]
		k := widget.Key{Radio: true, Letter: a.Key, Chosen: a.Chosen, Off: !a.Enabled && !a.Chosen}
		s.releases.items = append(s.releases.items, menuItem{k, func() { s.job.do(a.Act) }})
	}
	s.menu(&s.releases)
	s.told.Focused = s.targets.Focus == idTold
	t := s.told.Target(idTold, handRelease)
	t.Key = toldLetter
	s.targets.Add(t)
	s.key(handRelease, "handover", widget.Key{Rect: draw.Rect{X: 1040, Y: 574, W: 214, H: 44}, Label: s.word("handover.over"), Letter: "Enter", Strong: true, Off: !v.HandOver.Enabled},
		func() { s.tell(); s.job.do(s.v().HandOver.Act) })
}

func minutesText(l *lettering, m float64) string {
	if m < 1 {
		return l.num(m, 1)
	}
	return l.num(m, 0)
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
	if s.letter && e.Kind == widget.TextIn && strings.EqualFold(string(e.Rune), toldLetter) {
		s.letter = false
		return
	}
	s.letter = false
	if s.told.Focused {
		if s.told.Handle(e) {
			return
		}
		if e.Kind == widget.KeyDown && e.Key == "Esc" {
			s.targets.Focus = "handover"
			s.tell()
			s.layout()
			return
		}
	}
	s.letter = e.Kind == widget.KeyDown && e.Key == toldLetter
	was := s.told.Focused
	s.handle(e)
	if was && s.targets.Focus != idTold {
		s.tell()
		if s.job.sheet == Scene(s) {
			s.layout()
		}
	}
}

// StillStamp never changes: all that does stands in the panels.
func (s *handover) StillStamp() uint64 { return uint64(newStamp.text("handover")) }

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
	s.head(c, s.word("handover.name"), text, 1052)
}

// drawLook draws the plan and the table of looks without its keys.
func (s *handover) drawLook(c *draw.Canvas) {
	th := c.Theme
	s.drawPlan(c)
	c.Text(draw.Pt{X: 426, Y: 84}, draw.HeadingText, th.Ink, s.word("handover.look"))
	total := 0.0
	v := s.v()
	for i := range v.Looks {
		total += v.Looks[i].Action.Minutes
	}
	c.Text(draw.Pt{X: 860, Y: 84}, draw.SmallText.To(draw.Right), th.Ink,
		s.words.Say("handover.looks", "n", s.num(float64(len(v.Looks)), 0), "minutes", s.num(total, 0)))
	c.Text(draw.Pt{X: 429, Y: 106}, draw.SmallText, th.Ink, s.word("handover.check"))
	c.Text(draw.Pt{X: 674, Y: 106}, draw.SmallText, th.Ink, s.word("handover.before"))
	c.Text(draw.Pt{X: lookRight, Y: 106}, draw.SmallText.To(draw.Right), th.Ink, s.word("handover.now"))
	c.Line(draw.Pt{X: 426, Y: 111}, draw.Pt{X: 860, Y: 111}, draw.Thin.Wide(1.7))
	s.block(c, draw.Pt{X: 426, Y: 594}, draw.SentenceText.At(14), s.word("handover.pencil"), 436, 2)
}

// lookRight is where the new readings end, clear of the rail of a long table.
const lookRight = 844.0

// paintLook letters one look: its key, the old reading, the new one, its detail.
func (s *handover) paintLook(c *draw.Canvas, i int, r draw.Rect) {
	l, th := &s.v().Looks[i], c.Theme
	col := th.Key
	if s.looks.items[i].Off {
		col = th.Graphite
	}
	lines := s.lines(c, l.Name, draw.KeyText.At(13), 134)
	y := r.Y + r.H/2 + 5
	if len(lines) > 1 {
		y -= 8
	}
	for k, line := range lines[:min(2, len(lines))] {
		if k == 1 && len(lines) > 2 {
			line += " " + lines[2]
		}
		c.Text(draw.Pt{X: r.X + 8, Y: y + 16*float64(k)}, draw.KeyText.At(13), col, fit(c, s.lettering, line, draw.KeyText.At(13), 136))
	}
	base := r.Y + 26
	s.written(c, 674, base, 90, false, l.Before, l.Unit)
	s.written(c, lookRight, base, 84, true, l.After, l.Unit)
	c.Text(draw.Pt{X: r.X + 3, Y: r.Y + r.H + 15}, draw.SmallText, th.Ink, fit(c, s.lettering, l.Detail, draw.SmallText, 414))
	bottom := r.Y - 6 + s.looks.list.RowH
	c.Line(draw.Pt{X: 426, Y: bottom}, draw.Pt{X: lookRight, Y: bottom}, draw.Thin.In(th.Graphite))
}

// written letters a reading in pencil with its unit in print.
func (s *handover) written(c *draw.Canvas, x, y, width float64, right bool, text, unit string) {
	th := c.Theme
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
