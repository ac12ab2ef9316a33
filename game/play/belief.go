package play

import (
	"slices"
	"strings"

	"evenwear/scenarios"
	"evenwear/scoring/evidence"
)

// Counters is how many counters a learner has: one is 5 %.
const Counters = 20

// A row is one cause at one place with its counters.
type row struct {
	id       string // "cause@place"
	counters int
}

// A catalog is every row a learner may open, in the order of the library. It
// is the same for every job.
type catalog struct {
	rows  []string
	prior map[string]float64 // only looked up, never walked
}

func newCatalog(lib *scenarios.Library) catalog {
	c := catalog{prior: map[string]float64{}}
	total := 0.0
	for _, cause := range lib.Causes {
		total += cause.Prior
	}
	for _, cause := range lib.Causes {
		for _, p := range cause.Places {
			id := rowID(cause, p)
			c.rows = append(c.rows, id)
			c.prior[id] = cause.Prior / total / float64(len(cause.Places))
		}
	}
	return c
}

func rowID(c *scenarios.Cause, p scenarios.Place) string { return c.ID + "@" + string(p) }

// row finds an open row.
func (s *Session) row(id string) *row {
	for i := range s.rows {
		if s.rows[i].id == id {
			return &s.rows[i]
		}
	}
	return nil
}

func (s *Session) placed() int {
	n := 0
	for _, r := range s.rows {
		n += r.counters
	}
	return n
}

func (s *Session) refuseBelief(a Act) no {
	if s.sealed {
		return because("no.sealed")
	}
	if n := s.only(Calling); !n.allows() {
		return n
	}
	if a.Do == Seal {
		return no{}
	}
	if !slices.Contains(s.catalog.rows, a.What) {
		return because("no.unknown_row", "what", short(a.What))
	}
	r := s.row(a.What)
	if a.Do == Row {
		return unless(r == nil, "no.row_is_open")
	}
	if r == nil {
		return because("no.row_not_open")
	}
	if a.Do == Counter {
		n := int(a.N)
		switch {
		case n == -1 && a.N == -1 && r.counters == 0:
			return because("no.counters_none")
		case float64(n) != a.N || n < 0:
			return because("no.counters_whole", "n", plain(a.N), "of", Counters)
		case s.placed()-r.counters+n > Counters:
			return because("no.too_many_counters", "left", Counters-s.placed()+r.counters)
		}
	}
	return no{}
}

func (s *Session) belief(a Act) (string, no) {
	switch a.Do {
	case Row:
		s.rows = append(s.rows, row{id: a.What})
	case DropRow:
		s.rows = slices.DeleteFunc(s.rows, func(r row) bool { return r.id == a.What })
	case Counter:
		s.row(a.What).counters = int(a.N)
	case Seal:
		left := s.sayLeft("play.put_back")
		s.putBack()
		s.sealed, s.stage, s.sealedAt = true, Deciding, s.minutes
		return strings.TrimSpace(s.say("play.sealed") + " " + left), no{}
	}
	return "", no{}
}

// putBack puts on, lowers and tightens what the inspection has left: no car goes
// on from there without it. Its minutes count, and nuts that were left break their
// caution.
func (s *Session) putBack() {
	for _, w := range s.setup.back() {
		if w.ID == "torque_nuts" {
			s.breach(w.Cautions)
		}
		s.setup = s.setup.after(w)
		s.spend(w.Minutes, w.Undoes())
	}
}

// sayLeft says, as the sentence id, what putBack would do; empty: nothing.
func (s *Session) sayLeft(id string) string {
	var what []string
	minutes := 0.0
	for _, w := range s.setup.back() {
		what, minutes = append(what, s.sayWork(w.String())), minutes+w.Minutes
	}
	if what == nil {
		return ""
	}
	s.warns = true
	return s.words.Say(id, "what", Joined(s.words, what), "minutes", plain(minutes))
}

func (s *Session) refuseBack() no {
	if s.sealed {
		return because("no.sealed_no_back")
	}
	return s.only(Calling)
}

// said is the spread in words, before it can be sealed.
func (s *Session) said() string {
	placed := s.placed()
	if placed == 0 {
		return s.say("says.nothing")
	}
	top := s.topRow()
	cause, place := s.sayRow(top.id)
	var parts []string
	parts = append(parts, s.words.Say("says."+sureness(top.counters), "cause", cause, "place", place, "counters", top.counters))
	at, there := s.topPlace()
	if there > top.counters && at != wholeCar {
		parts = append(parts, s.words.Say("says.place", "counters", there, "place", s.sayPlace(at)))
	}
	if placed < Counters {
		parts = append(parts, s.words.Say("says.rest", "counters", Counters-placed))
	}
	return strings.Join(parts, " ")
}

// sureness names how much of the twenty stands on the longest rod.
func sureness(counters int) string {
	switch {
	case counters == Counters:
		return "certain"
	case counters >= 17:
		return "nearly_sure"
	case counters >= 14:
		return "fairly_sure"
	case counters > 10:
		return "better_than_even"
	case counters == 10:
		return "even"
	case counters >= 6:
		return "leaning"
	}
	return "open"
}

// topRow is the first of the rows with most counters; nil: no row is open.
func (s *Session) topRow() *row {
	var top *row
	for i := range s.rows {
		if r := &s.rows[i]; top == nil || r.counters > top.counters {
			top = r
		}
	}
	return top
}

// sure places the spread between a guess (0) and certainty (1).
func (s *Session) sure() float64 {
	if top := s.topRow(); top != nil {
		return float64(top.counters) / Counters
	}
	return 0
}

// wholeCar is where vessels are too, each of them under a name of its own: what
// they hold together is at no place.
const wholeCar = "car"

// topPlace is the wheel or place that holds most counters.
func (s *Session) topPlace() (string, int) {
	best, most := "", 0
	for _, r := range s.rows {
		_, at, _ := strings.Cut(r.id, "@")
		at, _, _ = strings.Cut(at, ".")
		n := 0
		for _, q := range s.rows {
			_, other, _ := strings.Cut(q.id, "@")
			if other, _, _ = strings.Cut(other, "."); other == at {
				n += q.counters
			}
		}
		if n > most {
			best, most = at, n
		}
	}
	return best, most
}

// sayRow names the cause and the place of a row, or of two at once.
func (s *Session) sayRow(id string) (cause, place string) {
	if a, b, two := strings.Cut(id, evidence.And); two {
		c, p := s.sayRow(a)
		d, q := s.sayRow(b)
		return s.words.Say("view.both", "one", c, "other", d), s.words.Say("view.both", "one", p, "other", q)
	}
	c, at, _ := strings.Cut(id, "@")
	if k := s.desk.lib.Cause(c); k != nil {
		return k.Name, s.sayWhere(k.Where, at)
	}
	return c, s.sayPlace(at)
}

// sayWhere names a place, the car as a cause or a remedy calls it.
func (s *Session) sayWhere(where, at string) string {
	if where != "" {
		return where
	}
	return s.sayPlace(at)
}

// sayPlace names "front_left" or "front_left.upper_pin".
func (s *Session) sayPlace(at string) string {
	wheel, part, more := strings.Cut(at, ".")
	if !more {
		return s.words.Say("place." + wheel)
	}
	return s.words.Say("play.place_part", "place", s.words.Say("place."+wheel), "part", s.words.Say("part_place."+part))
}
