package scene

import (
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// The keys of the inspection while no instrument waits: places, preparations, checks.

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
	if a.Act.Do != play.Write {
		if say := s.shortOf(a.Act.What); say != "" {
			return say
		}
	}
	return a.Label
}

// shortOf is the short name of a check or a preparation; empty: it has none.
func (s *stations) shortOf(name string) string {
	what, wheel, _ := strings.Cut(name, "@")
	id := "stations.short." + what
	if !s.words.Has(id) {
		return ""
	}
	return s.fill(id, "wheel", s.word("stations.plan_"+wheel))
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

// checks are what can be looked at here: at the open part, where there are parts.
// By touch, where keys are large, what the car's state rules out is left away and
// counted.
func (s *stations) checks() (list []play.Action, away int) {
	n, sorted := s.openPart()
	if !sorted {
		n = node(s.view, "checks")
	}
	if n == nil {
		return nil, 0
	}
	for i, a := range n.Actions {
		if sorted {
			a.Key = checkLetters[min(i, len(checkLetters)-1):][:1]
		}
		if s.app.Touch && !a.Enabled {
			away++
			continue
		}
		list = append(list, a)
	}
	return list, away
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
