package play

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring"
	"evenwear/scoring/evidence"
)

// debrief puts the outcome into words.
func (s *Session) debrief() *DebriefView {
	o := s.settled
	d := &DebriefView{Truth: s.truth(), Total: o.Marks.Total, Capped: o.Marks.Capped, Faults: o.faults}
	for _, r := range o.Rows {
		cause, place := s.sayRow(r.Row)
		d.Beliefs = append(d.Beliefs, BeliefView{Cause: cause, Place: place, Counters: r.Counters,
			Said: percent(r.Said), Support: percent(r.Support), Every: percent(r.Every), True: r.True})
	}
	slices.SortStableFunc(d.Beliefs, func(a, b BeliefView) int {
		if a.True != b.True {
			if a.True {
				return -1
			}
			return 1
		}
		return cmp.Compare(max(b.Said, b.Support, b.Every), max(a.Said, a.Support, a.Every))
	})
	for _, m := range o.Marks.Marks {
		d.Marks = append(d.Marks, MarkView{ID: m.ID, Name: s.say("mark." + m.ID), Weight: m.Weight, Value: m.Value, Reason: s.reason(m.Reason)})
		if m.ID == "reading" {
			d.Marks[len(d.Marks)-1].Reason += s.sayAmiss()
		}
		if m.Scale < 1 {
			d.Marks[len(d.Marks)-1].Reason += " " + s.words.Say("mark.scaled", "percent", whole(100*m.Scale))
		}
	}
	for _, n := range o.Marks.Notes {
		if d.Cap != "" {
			d.Cap += " "
		}
		d.Cap += s.reason(n)
	}
	s.roads(d, false, append([]scoring.Road{o.gentle[0]}, o.Found.Stops...))
	s.roads(d, true, append([]scoring.Road{o.gentle[1]}, o.Leaves.Stops...))
	s.linings(d, o)
	d.Lasts = s.words.Say("debrief.lasts", "found", s.lasts(&o.Found), "leaves", s.lasts(&o.Leaves))
	if w := o.Worth; w.Bits > 0 {
		id := "debrief.worth"
		if w.Made > 0 {
			id = "debrief.worth_made"
		}
		d.Worth = s.words.Say(id, "check", s.sayCheck(w.Check), "bits", fixed(w.Bits, 2), "minutes", fixed(w.Minutes, 1), "made", w.Made)
	}
	most := func(b evidence.Belief) []any {
		cause, place := s.sayRow(b.ID)
		return []any{"top", s.words.Say("play.at", "what", cause, "place", place), "percent", whole(100 * b.P)}
	}
	heard := "debrief.heard"
	if s.given != nil {
		heard = "debrief.handed"
	}
	d.Trail = append(d.Trail, s.words.Say(heard, most(o.Best.Heard)...))
	for _, l := range o.Best.Looks {
		c, _ := inspect.Find(l.Reading.Check.Check)
		d.Trail = append(d.Trail, s.words.Say("debrief.look", append(most(l.Top), "minutes", fixed(l.Minutes, 1), "check", s.sayCheck(l.Reading.Check),
			"reading", strings.TrimSpace(s.sayDisplay(c, l.Reading.Display)+" "+s.sayUnit(c.Meter.Unit)))...))
	}
	return d
}

// truth is what was put into the car, in a sentence.
func (s *Session) truth() string {
	if s.job.Sound() {
		cause, _ := s.sayRow(s.trueRows()[0])
		return s.words.Say("debrief.true_sound", "cause", cause)
	}
	var said []string
	for _, f := range s.job.Faults {
		id := "debrief.true_fault"
		if f.SinceKm == 0 {
			id = "debrief.true_now"
		}
		said = append(said, s.words.Say(id, "cause", f.Cause.Name, "place", s.sayWhere(f.Cause.Where, string(f.Place)), "km", grouped(f.SinceKm)))
	}
	return Joined(s.words, said)
}

// The gentle stop: firm enough to feel a pull, too gentle to lock a wheel, after
// which both sides brake as hard as the road allows and nothing shows.
const (
	gentleID    = "stop.80.gentle"
	gentleSpeed = 80 * physics.KmPerHour // [m/s]
	gentleFoot  = 150.0                  // [N]
)

func gentleStop(m *physics.Model) (scoring.Road, error) {
	rest, err := m.Rest()
	if err != nil {
		return scoring.Road{}, err
	}
	r, err := m.Stop(rest, physics.StopPlan{Speed: gentleSpeed, Foot: gentleFoot, Millis: 20})
	return scoring.Road{ID: gentleID, Speed: gentleSpeed, Distance: r.Distance, MFDD: r.MFDD, Pull: r.Pull, Foot: r.Foot}, err
}

// drawnStops are the stops drawn on the road; the rest of an outlook is in its numbers.
var drawnStops = []string{gentleID, "stop.50.cold", "stop.80.cold", "stop.100.cold", "stop.100.hot", "stop.100.wet"}

func (s *Session) roads(d *DebriefView, leaves bool, stops []scoring.Road) {
	when := "debrief.found"
	if leaves {
		when = "debrief.leaves"
	}
	for _, id := range drawnStops {
		for _, r := range stops {
			if r.ID != id {
				continue
			}
			aside := 0.0
			if r.MFDD > 0 {
				t := r.Speed / r.MFDD // let drift for as long as the stop takes
				aside = r.Pull * t * t / 2
			}
			d.Next = append(d.Next, StopView{ID: id, Leaves: leaves, Name: s.say(id), When: s.say(when), Distance: r.Distance, Aside: aside})
		}
	}
}

// lasts says how far a car drives on its linings.
func (s *Session) lasts(o *scoring.Outlook) string {
	id := "debrief.not_worn"
	if o.Worn {
		id = "debrief.worn"
	}
	return s.words.Say(id, "km", grouped(o.Lasts/physics.Kilometre))
}

// linings are the thinner half of both pads at the wheel of the first fault.
func (s *Session) linings(d *DebriefView, o *outcome) {
	w, _ := wheelNamed(o.faults[0].Wheel)
	for _, x := range []struct {
		when           string
		onward, leaves bool
		look           *scoring.Outlook
	}{
		{"debrief.found", false, false, &o.Found}, {"debrief.onward_found", true, false, &o.Found},
		{"debrief.leaves", false, true, &o.Leaves}, {"debrief.onward_leaves", true, true, &o.Leaves},
	} {
		of, km := &x.look.Lining, 0.0
		if x.onward {
			of, km = &x.look.Left, x.look.Lasts/physics.Kilometre
		}
		when := s.words.Say(x.when, "km", grouped(km))
		for pad, name := range [2]string{"inner", "outer"} {
			half := of[w][pad]
			d.Linings = append(d.Linings, LiningView{Pad: name, Name: s.words.Say("play.at", "what", s.say("debrief.lining_"+name), "place", s.say("place."+o.faults[0].Wheel)), When: when,
				Onward: x.onward, Leaves: x.leaves, Km: km, Left: min(half[physics.Upper], half[physics.Lower]) * perMm})
		}
	}
}

// reason is a mark's reason in words with its numbers.
func (s *Session) reason(r scoring.Reason) string {
	args := make([]any, 0, 2*len(r.Args))
	for _, a := range r.Args {
		var v any = reasonFigure(a.Name, a.Number)
		if len(a.Texts) > 0 {
			v = s.sayIDs(a.Texts)
		}
		args = append(args, a.Name, v)
	}
	return s.words.Say(r.ID, args...)
}

// mostNamed is how many things a reason names before it counts the rest.
const mostNamed = 3

// sayIDs names what a reason points at, without the full stops of sentences: of
// many the first and how many more.
func (s *Session) sayIDs(ids []string) string {
	var said []string
	for _, id := range ids[:min(len(ids), mostNamed)] {
		said = append(said, strings.TrimSuffix(s.sayID(id), "."))
	}
	list := Joined(s.words, said)
	if more := len(ids) - mostNamed; more > 0 {
		return s.words.Say("reason.more", "list", list, "n", more)
	}
	return list
}

// percent is a share in percent, rounded as the marks' reasons have it, so that
// what is written of both agrees.
func percent(share float64) float64 { return math.Floor(1e4*share+0.5) / 100 }

// reasonFigure writes a number of a reason with as many digits as it is worth:
// shares as the rows of the debrief have them, so that the two agree.
func reasonFigure(name string, x float64) string {
	switch name {
	case "brier", "prior", "distance", "mean", "worst_divisions":
		return fixed(x, 2)
	case "bits", "model", "spent":
		return fixed(x, min(1, decimals(x)))
	case "best", "chosen", "loss": // minutes, or minutes' worth
		if 0 < x && x < 0.95 {
			return fixed(x, 1)
		}
	}
	return whole(x)
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
	case slices.Contains(scenarios.Rules, id):
		return s.say("harm." + id)
	}
	return s.say(id)
}
