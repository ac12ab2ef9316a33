package scene

import (
	"strings"
	"unicode"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// A stations sheet is the inspection: the plan of the car is the menu, the
// centre shows what the eye sees at a place, the right is notebook and
// preparation, the bottom what can be done here.
type stations struct {
	*Job
	targets widget.Targets
	hands   widget.Targets // pressed by a pointer only
	field   widget.NumberField
	keys    []stationKey
	from    stamp   // the view that keys was laid out from
	reading string  // check whose figure the field holds
	swing   float64 // [1] share of the disc's turn
	turning bool
	late    int    // notebook lines scrolled back
	part    string // of the brake, whose checks are in sight; empty: none
	help    bool
	look    closeness
	atKey   bool   // when a key went down last, an instrument waited: its letter is no choice of a check
	shrunk  bool   // the minus that went down last showed the instrument whole: it is none of the figure
	scale   string // the division of the instrument, in words
	cells   []Cell
}

// A stationKey is a key with what it does.
type stationKey struct {
	widget.Key
	id    string
	panel int
	do    func()
	why   string // of an unavailable key
	hand  bool   // pressed by a pointer only: the keyboard has another way
	tick  bool   // a preparation that stands: a box with a stroke, no key
}

// The panels in reading order.
const (
	panelTop = iota
	panelPlan
	panelCentre
	panelNotes
	panelWorks
	panelChecks
)

// centreArea is where the eye looks.
var centreArea = draw.Rect{X: 264, Y: 64, W: 606, H: 466}

func newStations(j *Job) *stations {
	s := &stations{Job: j, field: widget.NumberField{Rect: draw.Rect{X: 590, Y: 550, W: 84, H: 36}}}
	s.cells = []Cell{{Area: centreArea, Stamp: s.centreStamp, Draw: s.centre}}
	return s
}

// layout lists everything that can be pressed, from the view's nodes.
func (s *stations) layout() {
	if v := s.view.Instrument; v == nil {
		s.reading, s.field.Text, s.field.Focused, s.turning = "", "", false, false
	} else if s.reading != v.Check {
		s.reading, s.field.Text, s.field.Focused = v.Check, "", len(v.Words) == 0
		s.swing, s.turning = 0, len(v.Needle) > 2 && !s.app.Calm
		s.look = closeness{at: draw.Pt{X: 0.5, Y: 0.5}}
		s.scale = division(s.words, v)
	}
	s.keys = s.keys[:0]
	s.header()
	if s.view.Instrument != nil {
		s.readingKeys()
	} else {
		s.placeKeys()
		s.brakeKeys()
		s.workKeys()
		s.checkKeys()
		s.bayKeys()
	}
	s.noteKeys()
	s.targets.Clear()
	s.hands.Clear()
	for i := range s.keys {
		k := &s.keys[i]
		switch {
		case k.tick:
			continue
		case k.hand:
			s.hands.Add(k.Target(k.id, k.panel))
			continue
		}
		k.Focused = s.targets.Focus == k.id
		s.targets.Add(k.Target(k.id, k.panel))
	}
	if s.view.Instrument != nil && len(s.view.Instrument.Words) == 0 {
		s.targets.Add(s.field.Target(fieldID, panelCentre))
	}
	for i := range s.keys {
		s.keys[i].Letter = s.targets.Letter(s.keys[i].id, s.keys[i].Letter)
	}
	s.from = s.Job.stamp
}

const fieldID = "field"

func (s *stations) add(id string, panel int, k widget.Key, do func()) {
	s.keys = append(s.keys, stationKey{Key: k, id: id, panel: panel, do: do})
}

func (s *stations) turn() {
	if s.app.Calm { // a step by hand
		s.swing += 1.0 / 24
		if s.swing >= 1 {
			s.swing--
		}
		return
	}
	s.turning = !s.turning
}

func (s *stations) write() {
	a := s.view.Instrument.Write.Act
	a.Text = strings.TrimSpace(s.field.Text)
	s.finish(a)
}

// finish ends a reading. Nothing is in focus then, so that another Enter does not
// make the check again; Tab goes on from the check.
func (s *stations) finish(a play.Act) {
	what := "check." + s.view.Instrument.Check
	if s.do(a) {
		s.targets.Leave(what)
	}
}

// Handle works the sheet by key, mouse or finger.
func (s *stations) Handle(e widget.Event) {
	s.fresh()
	if s.looked(e) || e.Kind == widget.PointerMove || e.Kind == widget.PointerUp {
		return
	}
	defer func() {
		s.Job.stamp = s.Job.stamp.add(5)
		if s.Job.sheet == Scene(s) {
			s.layout()
		}
	}()
	if e.Kind == widget.PointerDown && s.touched(e.At, e.Touch) {
		return
	}
	v := s.view.Instrument
	if e.Kind == widget.KeyDown && v != nil && e.Key == "Delete" && s.field.Text == "" {
		s.finish(v.Skip.Act)
		return
	}
	if e.Kind == widget.KeyDown && v == nil && e.Key == "Delete" && s.strike() || s.field.Handle(e) {
		return
	}
	if e.Kind == widget.KeyDown {
		s.atKey = v != nil
	}
	if e.Kind == widget.TextIn && s.atKey && s.field.Focused && unicode.IsLetter(e.Rune) && !s.shows(e.Rune) {
		s.field.Keep(e.Rune)
		s.answer(s.fill("stations.no_figure", "text", string(e.Rune)))
		return
	}
	id := s.targets.Handle(e)
	if e.Kind == widget.KeyDown && e.Key == "Tab" || e.Kind == widget.PointerDown {
		s.field.Focused = s.targets.Focus == fieldID || v != nil && (id != "" && e.Kind == widget.PointerDown || strings.HasPrefix(s.targets.Focus, "pad."))
	}
	for i := range s.keys {
		if k := &s.keys[i]; k.id == id && !k.Off {
			k.do()
			return
		}
	}
	if id == "" && e.Kind == widget.PointerDown {
		if v != nil && wholeFrame.Contains(e.At) {
			s.answer(s.word("stations.words_below"))
		}
		for i := range s.keys { // what cannot be pressed says why
			if k := &s.keys[i]; k.Off && k.Rect.Contains(e.At) && k.why != "" {
				s.answer(k.why)
			}
		}
	}
	if id == "" && e.Kind == widget.KeyDown && v == nil {
		for i := range s.keys {
			if k := &s.keys[i]; k.Off && k.Letter == e.Key && k.why != "" {
				s.answer(k.why)
			}
		}
	}
}

// answer puts the sheet's own answer in the place of the last notice.
func (s *stations) answer(text string) { s.view.Notice, s.view.Warns = text, false }

// shows reports whether a key shows a letter.
func (s *stations) shows(r rune) bool {
	_, ok := s.targets.ByKey(string(unicode.ToUpper(r)))
	return ok
}

// looked gives an event to the instrument that waits to be read.
func (s *stations) looked(e widget.Event) bool {
	v := s.view.Instrument
	if v == nil || len(v.Words) > 0 || s.help {
		return false
	}
	if e.Kind == widget.TextIn && e.Rune == '-' && s.shrunk {
		return true
	}
	was := s.look.big
	took := s.look.handle(e, wholeFrame, s.field.Focused && s.field.Text == "")
	if e.Kind == widget.KeyDown {
		s.shrunk = took && e.Key == "-"
	}
	if was != s.look.big {
		s.layout()
	}
	return took
}

// turnTime is one slow turn of a disc by hand [ms].
const turnTime = 6000

// Advance turns the disc.
func (s *stations) Advance(ms int) {
	if s.turning {
		s.swing += float64(ms) / turnTime
		s.swing -= float64(int(s.swing))
	}
}

// Cells is the centre, where a needle may move.
func (s *stations) Cells() []Cell { return s.cells }

// fresh lays the sheet out for a view that is new. It comes before any stamp is
// taken: laying out also says where field and disc begin.
func (s *stations) fresh() {
	if s.from != s.Job.stamp || len(s.keys) == 0 {
		s.layout()
	}
}

// StillStamp changes with the view, focus and field.
func (s *stations) StillStamp() uint64 {
	s.fresh()
	return uint64(newStamp.flag(s.help).flag(s.look.big).text(s.targets.Focus).text(s.part).text(s.field.Text).flag(s.field.Focused).flag(s.turning).flag(s.app.Touch).
		add(uint64(s.late)).text(s.app.theme.Name))
}

func (s *stations) centreStamp() uint64 {
	return uint64(newStamp.num(s.swing, 1.0/720).add(uint64(s.Job.stamp)).text(s.targets.Focus).text(s.part).text(s.app.theme.Name).flag(s.help).flag(s.look.big).num(s.look.at.X, 0.001).num(s.look.at.Y, 0.001))
}
