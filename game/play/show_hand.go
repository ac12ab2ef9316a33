package play

import (
	"strconv"
	"strings"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// lookWheels are the wheels whose joints are looked at again: both fronts and
// wherever work was done.
func (s *Session) lookWheels() []physics.Wheel {
	has := [physics.NumWheels]bool{true, true}
	for _, c := range s.chosen {
		_, at, _ := s.desk.findRemedy(c)
		if w, ok := at.Wheel(); ok {
			has[w] = true
		}
	}
	var list []physics.Wheel
	for w, is := range has {
		if is {
			list = append(list, physics.Wheel(w))
		}
	}
	return list
}

// handing is the hand-over sheet.
func (s *Session) handing() *WorkView {
	w := &WorkView{Done: s.remedyViews(), Told: s.told,
		Tell:     s.act("Z", s.say("act.tell"), Act{Do: Tell}),
		HandOver: s.act("Enter", s.say("act.handover"), Act{Do: HandOver}),
	}
	looks, advised := s.looks()
	for i, inst := range looks {
		c, _ := inspect.Find(inst.Check)
		l := LookView{Name: s.sayCheck(inst), Detail: s.say("look." + s.lookKind(inst)), Advised: i < advised, Unit: s.sayUnit(c.Meter.Unit),
			Action: s.act(key(checkKeys, i), s.sayCheck(inst), Act{Do: Check, What: inst.String()})}
		l.Action.Minutes = c.Minutes
		for _, n := range s.notes {
			switch {
			case n.inst != inst || n.skipped || n.struck:
			case n.again:
				l.After = s.sayDisplay(c, n.written)
			default:
				l.Before = s.sayDisplay(c, n.written)
			}
		}
		w.Looks = append(w.Looks, l)
	}
	for i, id := range releases {
		a := s.act(strconv.Itoa(i+1), s.say(id), Act{Do: Release, What: id})
		a.Chosen = s.release == id
		w.Releases = append(w.Releases, a)
	}
	return w
}

// lookKind tells a look that every hand-over has, the reading that first showed
// the fault, and the learner's others apart.
func (s *Session) lookKind(inst inspect.Instance) string {
	for _, id := range alwaysLooked {
		if id == inst.Check {
			return string(id)
		}
	}
	if s.showed && inst == s.first {
		return "first"
	}
	return "own"
}

func (s *Session) showHanding(v *View) {
	v.Work = s.handing()
	s.instrumentNodes(v)
	if s.reading != nil {
		return
	}
	v.add(Node{ID: "done", Role: "heading", Name: s.say("view.done"), Value: strconv.Itoa(len(v.Work.Done))})
	for _, r := range v.Work.Done {
		v.add(Node{ID: "done_" + r.ID, Role: "text", Name: r.Name, Value: r.Place})
	}
	if !s.away() {
		v.add(Node{ID: "looks", Role: "heading", Name: s.say("view.looks")})
	}
	for i, l := range v.Work.Looks {
		n := Node{ID: "look" + strconv.Itoa(i+1), Role: "choice", Name: l.Name, Value: l.Detail, Actions: []Action{l.Action}}
		if l.Before != "" || l.After != "" {
			n.Value = s.words.Say("view.before_after", "before", orNone(s, l.Before, l.Unit), "after", orNone(s, l.After, l.Unit))
		}
		v.add(n)
	}
	s.noteNodes(v)
	v.add(Node{ID: "release", Role: "choice", Name: s.say("view.release"), Actions: v.Work.Releases})
	v.add(Node{ID: "release_caution", Role: "caution", Name: s.say("view.release_caution")})
	v.add(Node{ID: "told", Role: "field", Name: s.say("view.told"), Value: s.told, Actions: []Action{v.Work.Tell}})
	v.add(Node{ID: "handover", Role: "key", Name: s.say("view.handover"), Actions: []Action{v.Work.HandOver}})
}

func orNone(s *Session, written, unit string) string {
	if written == "" {
		return s.say("play.not_read")
	}
	return strings.TrimSpace(written + " " + unit)
}

// wheelOf is the wheel of a place, front left where it has none: the caliper
// that is drawn when the fault sits nowhere in particular.
func wheelOf(p scenarios.Place) physics.Wheel {
	w, ok := p.Wheel()
	if !ok {
		return physics.FrontLeft
	}
	return w
}
