package play

import (
	"fmt"
	"math"

	"evenwear/physics"
)

func (s *Session) showDebrief(v *View) {
	s.collect(false)
	if s.settled == nil {
		v.Waiting = s.waiting()
		w := v.Waiting
		v.add(Node{ID: "waiting", Role: "text", Name: w.Text, Value: s.words.Say("debrief.percent", "percent", whole(100*w.Share))})
		if w.Error != "" {
			v.add(Node{ID: "failed", Role: "caution", Name: s.say("debrief.failed"), Value: w.Error})
		}
		return
	}
	v.Debrief = s.debrief()
	d := v.Debrief
	v.add(Node{ID: "truth", Role: "heading", Name: s.say("debrief.truth"), Value: d.Truth})
	for i, b := range d.Beliefs {
		id := "debrief.belief"
		switch spread := b.Counters == 0 && b.Said > 0; {
		case b.True && spread:
			id = "debrief.belief_true_spread"
		case b.True:
			id = "debrief.belief_true"
		case spread:
			id = "debrief.belief_spread"
		}
		v.add(Node{ID: fmt.Sprintf("belief%d", i+1), Role: "reading", Name: s.words.Say("play.at", "what", b.Cause, "place", b.Place),
			Value: s.words.Say(id, "counters", b.Counters, "said", whole(b.Said), "support", whole(b.Support), "every", whole(b.Every))})
	}
	for _, m := range d.Marks {
		v.add(Node{ID: "mark_" + m.ID, Role: "mark", Name: m.Name,
			Value: s.words.Say("debrief.mark", "value", fixed(m.Value, 0), "weight", fixed(m.Weight, 0), "reason", m.Reason)})
	}
	v.add(Node{ID: "total", Role: "mark", Name: s.say("debrief.total"), Value: fixed(d.Total, 1)})
	if d.Cap != "" {
		v.add(Node{ID: "cap", Role: "caution", Name: d.Cap})
	}
	for i := range d.Faults {
		s.faultNodes(v, i, &d.Faults[i])
	}
	for i, n := range d.Next {
		v.add(Node{ID: fmt.Sprintf("stop%d", i+1), Role: "reading", Name: s.words.Say("play.at", "what", n.Name, "place", n.When), Value: s.sayStop(&n)})
	}
	for i, l := range d.Linings {
		v.add(Node{ID: fmt.Sprintf("lining%d", i+1), Role: "reading", Name: s.words.Say("play.at", "what", l.Name, "place", l.When), Value: s.words.Say("debrief.lining", "left", fixed(l.Left, 1))})
	}
	v.add(Node{ID: "lasts", Role: "text", Name: d.Lasts})
	if d.Drawn = s.sayDrawn(); d.Drawn != "" {
		v.add(Node{ID: "drawn", Role: "text", Name: d.Drawn})
	}
	if d.Worth != "" {
		v.add(Node{ID: "worth", Role: "text", Name: d.Worth})
	}
	v.add(Node{ID: "trail", Role: "heading", Name: s.say("debrief.trail")})
	for i, t := range d.Trail {
		v.add(Node{ID: fmt.Sprintf("trail%d", i+1), Role: "text", Name: t})
	}
	s.noteNodes(v)
}

// waiting is how far the debrief is.
func (s *Session) waiting() *WaitView {
	w := &WaitView{Text: s.say("debrief.waiting")}
	a := s.await
	if a == nil {
		p := s.table.Progress()
		if p.Total > 0 {
			w.Share = tableShare * float64(p.Done+p.Failed) / float64(p.Total)
		}
		w.Text = s.say("debrief.stopped")
		return w
	}
	w.Share = math.Float64frombits(a.share.Load())
	select {
	case <-a.done:
		w.Error, w.Text = a.err.Error(), s.say("debrief.stopped")
	default:
		w.Going = true
	}
	return w
}

// faultNodes are the drawing of one fault in words.
func (s *Session) faultNodes(v *View, i int, f *FaultView) {
	name := s.say("debrief.sound")
	if f.Cause != "" {
		name = s.words.Say("play.at", "what", f.Cause, "place", f.Place)
	}
	id := "debrief.pressed"
	if f.Released {
		id = "debrief.released"
	}
	if f.Kind == "fluid" {
		id = "debrief.level"
	}
	value := s.words.Say(id, "pressure", fixed(DebriefPressure/physics.Megapascal, 2), "place", f.Place,
		"sound", whole(100*f.Level[0]), "now", whole(100*f.Level[1]))
	v.add(Node{ID: fmt.Sprintf("fault%d", i+1), Role: "heading", Name: name, Value: value})
	for k, l := range f.Labels {
		v.add(Node{ID: fmt.Sprintf("fault%d.%d", i+1, k+1), Role: "text", Name: l.Text})
	}
}

// sayStop is a stop's length and where the car would be at its end.
func (s *Session) sayStop(n *StopView) string {
	id, aside := "debrief.stop_right", n.Aside
	switch {
	case aside < 0:
		id, aside = "debrief.stop_left", -aside
	}
	if aside < 0.005 {
		id = "debrief.stop"
	}
	return s.words.Say(id, "distance", fixed(n.Distance, 1), "aside", fixed(aside, 2))
}
