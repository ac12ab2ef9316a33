package play

import (
	"fmt"
	"math"
	"strings"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scoring"
)

func (s *Session) showDebrief(v *View) {
	s.collect(false)
	if s.settled == nil {
		w := &WaitView{Text: s.say("debrief.waiting")}
		if a := s.await; a != nil {
			w.Share = math.Float64frombits(a.share.Load())
			select {
			case <-a.done:
				w.Error = a.err.Error()
			default:
			}
		}
		v.Waiting = w
		v.add(Node{ID: "waiting", Role: "text", Name: w.Text, Value: s.words.Say("debrief.percent", "percent", whole(100*w.Share))})
		return
	}
	v.Debrief = s.debrief()
	d := v.Debrief
	v.add(Node{ID: "truth", Role: "heading", Name: s.say("debrief.truth"), Value: d.Truth})
	for i, b := range d.Beliefs {
		v.add(Node{ID: fmt.Sprintf("belief%d", i+1), Role: "reading", Name: s.words.Say("play.at", "what", b.Cause, "place", b.Place),
			Value: s.words.Say("debrief.belief", "said", whole(b.Said), "support", whole(b.Support), "every", whole(b.Every))})
	}
	for _, m := range d.Marks {
		v.add(Node{ID: "mark_" + m.ID, Role: "mark", Name: m.Name,
			Value: s.words.Say("debrief.mark", "value", fixed(m.Value, 0), "weight", fixed(m.Weight, 0), "reason", m.Reason)})
	}
	v.add(Node{ID: "total", Role: "mark", Name: s.say("debrief.total"), Value: fixed(d.Total, 1)})
	if d.Cap != "" {
		v.add(Node{ID: "cap", Role: "caution", Name: d.Cap})
	}
	for i, n := range d.Next {
		v.add(Node{ID: fmt.Sprintf("stop%d", i+1), Role: "reading", Name: n.Name, Value: s.sayStop(&n)})
	}
	for i, l := range d.Linings {
		v.add(Node{ID: fmt.Sprintf("lining%d", i+1), Role: "reading", Name: l.Name, Value: s.words.Say("debrief.lining", "left", fixed(l.Left, 1))})
	}
	v.add(Node{ID: "lasts", Role: "text", Name: d.Lasts})
	v.add(Node{ID: "worth", Role: "text", Name: d.Worth})
	v.add(Node{ID: "trail", Role: "heading", Name: s.say("debrief.trail")})
	for i, t := range d.Trail {
		v.add(Node{ID: fmt.Sprintf("trail%d", i+1), Role: "text", Name: t})
	}
	s.noteNodes(v)
}

// debrief puts the outcome into words.
func (s *Session) debrief() *DebriefView {
	o := s.settled
	d := &DebriefView{Truth: s.truth(), Total: o.Marks.Total, Capped: o.Marks.Capped, Fault: o.fault}
	for _, r := range o.Rows {
		cause, place := s.sayRow(r.Row)
		d.Beliefs = append(d.Beliefs, BeliefView{Cause: cause, Place: place, Counters: r.Counters,
			Said: 100 * r.Said, Support: 100 * r.Support, Every: 100 * r.Every, True: r.True})
	}
	for _, m := range o.Marks.Marks {
		d.Marks = append(d.Marks, MarkView{ID: m.ID, Name: s.say("mark." + m.ID), Weight: m.Weight, Value: m.Value, Reason: s.reason(m.Reason)})
	}
	for _, n := range o.Marks.Notes {
		if d.Cap != "" {
			d.Cap += " "
		}
		d.Cap += s.reason(n)
	}
	s.roads(d, "debrief.found", &o.Found)
	s.roads(d, "debrief.leaves", &o.Leaves)
	s.linings(d, o)
	id := "debrief.lasts"
	if o.Leaves.Worn {
		id = "debrief.worn"
	}
	d.Lasts = s.words.Say(id, "km", grouped(o.Leaves.Lasts/physics.Kilometre))
	if w := o.Worth; w.Bits > 0 {
		id := "debrief.worth"
		if w.Made > 0 {
			id = "debrief.worth_made"
		}
		d.Worth = s.words.Say(id, "check", s.sayCheck(w.Check), "bits", fixed(w.Bits, 2), "minutes", fixed(w.Minutes, 1), "made", w.Made)
	}
	for _, l := range o.Best.Looks {
		c, _ := inspect.Find(l.Reading.Check.Check)
		cause, place := s.sayRow(l.Top.ID)
		d.Trail = append(d.Trail, s.words.Say("debrief.look", "minutes", fixed(l.Minutes, 1), "check", s.sayCheck(l.Reading.Check),
			"reading", s.sayDisplay(c, l.Reading.Display), "unit", s.sayUnit(c.Meter.Unit), "top", s.words.Say("play.at", "what", cause, "place", place), "percent", whole(100*l.Top.P)))
	}
	return d
}

// sayStop is how far a stop goes, and how far aside when that can be seen.
func (s *Session) sayStop(n *StopView) string {
	aside := fixed(math.Abs(n.Aside), 2)
	id := "debrief.stop"
	switch {
	case aside == fixed(0, 2):
	case n.Aside > 0:
		id = "debrief.stop_right"
	default:
		id = "debrief.stop_left"
	}
	return s.words.Say(id, "distance", fixed(n.Distance, 1), "aside", aside)
}

// truth is what was put into the car, in a sentence.
func (s *Session) truth() string {
	if len(s.job.Faults) == 0 {
		cause, _ := s.sayRow(s.trueRows()[0])
		return s.words.Say("debrief.true_sound", "cause", cause)
	}
	said := ""
	for i, f := range s.job.Faults {
		one := s.words.Say("debrief.true_fault", "cause", f.Cause.Name, "place", s.sayPlace(string(f.Place)), "km", grouped(f.SinceKm))
		if i > 0 {
			one = s.words.Say("view.and", "list", said, "next", one)
		}
		said = one
	}
	return said
}

// drawnStops are the stops drawn on the road; the rest of an outlook is in its numbers.
var drawnStops = []string{"stop.50.cold", "stop.80.cold", "stop.100.cold", "stop.100.hot", "stop.100.wet"}

func (s *Session) roads(d *DebriefView, when string, o *scoring.Outlook) {
	for _, id := range drawnStops {
		for _, r := range o.Stops {
			if r.ID != id {
				continue
			}
			aside := 0.0
			if r.MFDD > 0 {
				t := r.Speed / r.MFDD // let drift for as long as the stop takes
				aside = r.Pull * t * t / 2
			}
			d.Next = append(d.Next, StopView{Name: s.words.Say("play.at", "what", s.say(id), "place", s.say(when)), Distance: r.Distance, Aside: aside})
		}
	}
}

// linings are the thinner half of both pads at the wheel of the fault.
func (s *Session) linings(d *DebriefView, o *outcome) {
	w, _ := wheelNamed(o.fault.Wheel)
	thin := func(l *[physics.NumWheels][2][2]float64, pad int) float64 {
		return min(l[w][pad][physics.Upper], l[w][pad][physics.Lower]) * perMm
	}
	for pad, name := range [2]string{"inner", "outer"} {
		for _, x := range []struct {
			when string
			of   *[physics.NumWheels][2][2]float64
		}{{"debrief.found", &o.Found.Lining}, {"debrief.onward_found", &o.Found.Left}, {"debrief.onward_leaves", &o.Leaves.Left}} {
			d.Linings = append(d.Linings, LiningView{Name: s.words.Say("play.at", "what", s.say("debrief.lining_"+name), "place", s.say(x.when)), Left: thin(x.of, pad)})
		}
	}
}

// reason is a mark's reason in words with its numbers.
func (s *Session) reason(r scoring.Reason) string {
	args := make([]any, 0, 2*len(r.Args))
	for _, a := range r.Args {
		var v any = fixed(a.Number, decimals(a.Number))
		if a.Text != "" {
			v = s.sayID(a.Text)
		}
		args = append(args, a.Name, v)
	}
	return s.words.Say(r.ID, args...)
}

// sayID names whatever a reason points at: a check, a row, or an id of words.
func (s *Session) sayID(id string) string {
	if inst, err := inspect.ParseInstance(id); err == nil {
		return s.sayCheck(inst)
	}
	for _, r := range s.catalog.rows {
		if r == id {
			cause, place := s.sayRow(id)
			return s.words.Say("play.at", "what", cause, "place", place)
		}
	}
	switch {
	case strings.HasPrefix(id, choicePrefix):
		return s.sayChoice(id)
	case strings.HasPrefix(id, showedPrefix):
		return s.sayShowed(id)
	case id == "petroleum_grease":
		return s.say("harm." + id)
	}
	return s.say(id)
}
