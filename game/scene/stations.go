package scene

import (
	"strings"

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
	field   widget.NumberField
	keys    []stationKey
	from    stamp   // the view that keys was laid out from
	reading string  // check whose figure the field holds
	swing   float64 // [1] share of the disc's turn
	turning bool
	late    int // notebook lines scrolled back
	help    bool
	big     bool    // the instrument is enlarged
	look    draw.Pt // [1] what of it stands in the middle then, 0 to 1 either way
	cells   []Cell
}

// A stationKey is a key with what it does.
type stationKey struct {
	widget.Key
	id    string
	panel int
	do    func()
	why   string // of an unavailable key
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
		s.big, s.look = false, draw.Pt{X: 0.5, Y: 0.5}
	}
	s.keys = s.keys[:0]
	s.header()
	if s.view.Instrument != nil {
		s.readingKeys()
	} else {
		s.placeKeys()
		s.workKeys()
		s.checkKeys()
	}
	s.noteKeys()
	s.targets.Clear()
	for i := range s.keys {
		k := &s.keys[i]
		if k.tick {
			continue
		}
		k.Focused = s.targets.Focus == k.id
		s.targets.Add(k.Target(k.id, k.panel))
	}
	if s.view.Instrument != nil && len(s.view.Instrument.Words) == 0 {
		s.targets.Add(s.field.Target(fieldID, panelCentre))
	}
	s.from = s.Job.stamp
}

const fieldID = "field"

func (s *stations) add(id string, panel int, k widget.Key, do func()) {
	s.keys = append(s.keys, stationKey{Key: k, id: id, panel: panel, do: do})
}

// addAct adds a key for one of the view's actions.
func (s *stations) addAct(id string, panel int, r draw.Rect, a play.Action) {
	label := a.Label
	if r.W < 300 {
		label = s.short(a)
	}
	k := widget.Key{Rect: r, Label: label, Letter: a.Key, Off: !a.Enabled && !a.Chosen, Chosen: a.Chosen, Left: true, Size: 14}
	if a.Minutes > 0 {
		k.Value = s.minutes(a.Minutes)
	}
	s.keys = append(s.keys, stationKey{Key: k, id: id, panel: panel, why: a.Why, do: func() { s.do(a.Act) }})
}

// short is a name that fits a key: the wording's short one where it has it.
func (s *stations) short(a play.Action) string {
	what, _, _ := strings.Cut(a.Act.What, "@")
	if id := "stations.short." + what; a.Act.Do != play.Write && s.words.Has(id) {
		return s.word(id)
	}
	return a.Label
}

// minutes is a duration as it stands on a key.
func (j *Job) minutes(m float64) string {
	if m != float64(int(m)) {
		return j.num(m, 1)
	}
	return j.num(m, 0)
}

func (s *stations) header() {
	h := 28.0
	if s.app.Touch {
		h = 44
	}
	y := 18 + (44-h)/2
	s.add("leave", panelTop, widget.Key{Rect: draw.Rect{X: 1156, Y: y, W: 100, H: h}, Label: s.word("stations.leave"), Letter: "Esc"}, s.out)
	if n := node(s.view, "to_call"); n != nil && len(n.Actions) > 0 {
		a := n.Actions[0]
		s.add("call", panelTop, widget.Key{Rect: draw.Rect{X: 1050, Y: y, W: 98, H: h}, Label: s.word("stations.call"), Letter: a.Key, Off: !a.Enabled},
			func() { s.do(a.Act) })
	}
	s.add("help", panelTop, widget.Key{Rect: draw.Rect{X: 952, Y: y, W: 90, H: h}, Label: s.word("stations.help"), Letter: "F1", Chosen: s.help},
		func() { s.help = !s.help })
}

func (s *stations) placeKeys() {
	for i := range s.view.Plan.Places {
		p := &s.view.Plan.Places[i]
		a := p.Action
		s.add("place."+p.ID, panelPlan, widget.Key{Rect: planKeys[p.ID], Letter: a.Key, Off: !a.Enabled && !p.Here}, func() { s.do(a.Act) })
	}
}

// workKeys are the preparations of this place.
func (s *stations) workKeys() {
	n := node(s.view, "")
	for i := range s.view.Nodes {
		if k := &s.view.Nodes[i]; k.Role == "choice" && len(k.Actions) > 0 && k.Actions[0].Act.Do == play.Prepare {
			n = k
		}
	}
	if n == nil {
		return
	}
	columns := 1 + (len(n.Actions)-1)/8
	if s.app.Touch {
		columns = 2
	}
	for i, r := range (widget.Metrics{Touch: s.app.Touch}).Grid(draw.Rect{X: 883, Y: 374, W: 372}, columns, len(n.Actions), 4) {
		s.addAct("work."+n.Actions[i].Act.What, panelWorks, r, n.Actions[i])
		if k := &s.keys[len(s.keys)-1]; n.Actions[i].Chosen && !n.Actions[i].Enabled {
			k.tick = true
		}
	}
}

// checks are what can be looked at here. By touch, where keys are large, what the
// car's state rules out is left away and counted.
func (s *stations) checks() (list []play.Action, away int) {
	n := node(s.view, "checks")
	if n == nil {
		return nil, 0
	}
	if !s.app.Touch {
		return n.Actions, 0
	}
	for _, a := range n.Actions {
		if a.Enabled {
			list = append(list, a)
		}
	}
	return list, len(n.Actions) - len(list)
}

func (s *stations) checkKeys() {
	w := (760 - 6*float64(checkColumns-1)) / checkColumns
	y := s.split() + 23
	list, _ := s.checks()
	for i, a := range list {
		r := draw.Rect{X: 27 + float64(i%checkColumns)*(w+6), Y: y + float64(i/checkColumns)*s.pitch(), W: w, H: s.pitch() - 3}
		s.addAct("check."+a.Act.What, panelChecks, r, a)
	}
}

const checkColumns = 3

// pitch is from row to row of the checks [unit].
func (s *stations) pitch() float64 {
	if s.app.Touch {
		return 47
	}
	return 32
}

// split is where the checks begin [unit]: a wheel has more of them than a seat.
func (s *stations) split() float64 {
	list, _ := s.checks()
	if s.view.Instrument != nil || len(list) == 0 {
		return 596
	}
	rows := (len(list) + checkColumns - 1) / checkColumns
	return min(596, 678-s.pitch()*float64(rows))
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
	s.do(a)
}

// Handle works the sheet by key, mouse or finger.
func (s *stations) Handle(e widget.Event) {
	s.fresh()
	defer func() {
		s.Job.stamp = s.Job.stamp.add(5)
		if s.Job.sheet == Scene(s) {
			s.layout()
		}
	}()
	v := s.view.Instrument
	if e.Kind == widget.KeyDown && v != nil {
		switch {
		case s.big && s.pan(e.Key):
			return
		case e.Key == "Delete" && s.field.Text == "":
			s.do(v.Skip.Act)
			return
		case e.Key == "Enter" && len(v.Words) == 0 && (s.targets.Focus == "" || s.targets.Focus == fieldID || s.field.Focused):
			s.write()
			return
		}
	}
	if s.field.Handle(e) {
		return
	}
	id := s.targets.Handle(e)
	if e.Kind == widget.KeyDown && e.Key == "Tab" || e.Kind == widget.PointerDown {
		s.field.Focused = s.targets.Focus == fieldID || v != nil && strings.HasPrefix(s.targets.Focus, "pad.")
	}
	for i := range s.keys {
		if k := &s.keys[i]; k.id == id && !k.Off {
			k.do()
			return
		}
	}
	if id == "" && e.Kind == widget.PointerDown {
		for i := range s.keys { // what cannot be pressed says why
			if k := &s.keys[i]; k.Off && k.Rect.Contains(e.At) && k.why != "" {
				s.view.Notice = k.why
			}
		}
	}
	if id == "" && e.Kind == widget.KeyDown && v == nil {
		for i := range s.keys {
			if k := &s.keys[i]; k.Off && k.Letter == e.Key && k.why != "" {
				s.view.Notice = k.why
			}
		}
	}
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
	return uint64(newStamp.flag(s.help).flag(s.big).text(s.targets.Focus).text(s.field.Text).flag(s.field.Focused).flag(s.turning).flag(s.app.Touch).
		add(uint64(s.late)).text(s.app.theme.Name))
}

func (s *stations) centreStamp() uint64 {
	return uint64(newStamp.num(s.swing, 1.0/720).add(uint64(s.Job.stamp)).flag(s.help).flag(s.big).num(s.look.X, 0.01).num(s.look.Y, 0.01))
}
