package play

import (
	"errors"
	"slices"
	"strings"

	"evenwear/physics/inspect"
	"evenwear/scoring"
)

// A reading is a check that has been made and not yet been written down. It
// holds the display, never the true value: the view is drawn from it, so cars
// that show the same look the same.
type reading struct {
	inst    inspect.Instance
	made    inspect.Instance // the form in which inst was made
	check   *inspect.Check
	display int64
	try     uint64
	minutes float64
	base    float64 // [unit] where an instrument stands whose reading is a difference
}

// beside names, for checks whose reading is a difference, the check that tells
// where the instrument stands.
var beside = map[inspect.ID]inspect.ID{"thickness_variation": "disc_thickness", "pump_running": "pedal_travel"}

// A note is one line of the notebook.
type note struct {
	reading
	written int64 // the learner's display
	skipped bool
	struck  bool
	again   bool // on the repaired car
}

// places in the order of the plan.
var places = []string{"bonnet", "seat", "front_left", "front_right", "rear_left", "rear_right", "road", "ground"}

func (s *Session) refuseGo(place string) no {
	if n := s.only(Inspecting); !n.allows() {
		return n
	}
	return unless(slices.Contains(places, place), "no.unknown_place")
}

func unless(ok bool, id string) no {
	if ok {
		return no{}
	}
	return because(id)
}

// placeOf is where a check is made.
func placeOf(inst inspect.Instance, c *inspect.Check) string {
	if inst.PerWheel && c.Station != inspect.Road {
		return inst.Wheel.String()
	}
	return string(c.Station)
}

// wherePut is the place a note is put down under: the wheel, also for what is
// read at a wheel by the road.
func wherePut(inst inspect.Instance, c *inspect.Check) string {
	if inst.PerWheel {
		return inst.Wheel.String()
	}
	return placeOf(inst, c)
}

// placeOfWork is where a preparation is done.
func placeOfWork(w inspect.Work) string {
	switch {
	case w.PerWheel:
		return w.Wheel.String()
	case w.ID == "drive" || w.ID == "stop_50" || w.ID == "clear_road":
		return "road"
	case w.ID == "roll_level" || w.ID == "run_back" || w.ID == "engine_cold":
		return "bonnet"
	}
	return "ground"
}

func (s *Session) refusePrepare(what string) no {
	if n := s.only(Inspecting); !n.allows() {
		return n
	}
	w, err := inspect.ParseWork(what)
	if err != nil {
		return because("no.unknown_preparation", "what", short(what))
	}
	if placeOfWork(w) != s.place {
		return because("no.elsewhere", "place", s.say("place."+placeOfWork(w)))
	}
	return s.setup.refuseWork(w, s.sayWork)
}

// prepare does a preparation. A drive that comes too soon is not made, but that
// it was asked for stays: it counts as harmful.
func (s *Session) prepare(what string) (string, no) {
	w, err := inspect.ParseWork(what)
	if err != nil {
		return "", because("no.unknown_preparation", "what", short(what))
	}
	if w.Harmful == inspect.HarmRoad {
		if missing := s.roadMissing(); missing != "" {
			s.harm(w.Harmful)
			return missing, no{}
		}
	}
	s.heed(w.Needs())
	if w.ID == "torque_nuts" {
		s.caution(w.Cautions[0], true)
	}
	notice := s.breach(s.setup.breaks(w))
	minutes := s.minutesOf(w)
	s.setup = s.setup.after(w)
	s.spend(minutes, w.Undoes())
	return notice, no{}
}

// breach keeps broken cautions and says those that are new.
func (s *Session) breach(rules []string) string {
	var broken []string
	for _, r := range rules {
		if !s.caution(r, false) {
			broken = append(broken, r)
		}
	}
	if broken == nil {
		return ""
	}
	s.warns = true
	return s.words.Say("play.broken", "n", len(broken), "cautions", s.sayIDs(broken))
}

// caution notes that a caution was due, and whether it was kept. Broken once is
// broken. It reports whether it was known to be broken before.
func (s *Session) caution(id string, kept bool) bool {
	for i := range s.due {
		if c := &s.due[i]; c.ID == id {
			was := !c.Kept
			c.Kept = c.Kept && kept
			return was
		}
	}
	s.due = append(s.due, scoring.Caution{ID: id, Kept: kept})
	return false
}

// heed notes the cautions that these needs stand for as due and kept.
func (s *Session) heed(needs []string) {
	for _, n := range needs {
		if w, err := inspect.ParseWork(n); err == nil && w.Safety && s.setup.stands(n) {
			s.caution(w.Cautions[0], true)
		}
	}
}

func (s *Session) harm(rule string) {
	s.warns = true
	if !slices.Contains(s.harmful, rule) {
		s.harmful = append(s.harmful, rule)
	}
}

func (s *Session) refuseCheck(what string) no {
	inst, err := inspect.ParseInstance(what)
	if err != nil {
		return because("no.unknown_check", "what", short(what))
	}
	c, _ := inspect.Find(inst.Check)
	if c.Of != "" { // how a check is made is not asked for: it follows from what stands
		return because("no.unknown_check", "what", short(what))
	}
	if s.stage == Handing {
		list, _ := s.looks()
		return unless(slices.Contains(list, inst), "no.not_a_look")
	}
	if n := s.only(Inspecting); !n.allows() {
		return n
	}
	if at := placeOf(inst, c); at != s.place {
		return because("no.elsewhere", "place", s.say("place."+at))
	}
	if inst.Check == "cap_vent" && s.opened {
		return because("no.cap_was_open")
	}
	if c.Station == inspect.WheelOn && !c.BareToo && s.setup.stands("wheel_off@"+inst.Wheel.String()) {
		return because("no.wheel_is_off")
	}
	if stands, _ := s.setup.onWheels(); c.Harmful == inspect.HarmRoad && !stands {
		return because("no.not_on_wheels")
	}
	if impossible, _ := s.setup.missing(inst.Needs()); len(impossible) > 0 {
		return because("no.needs", "what", s.sayWork(impossible[0]))
	}
	return no{}
}

// check makes a check: the experiment on a copy of the car, one look through
// the meter.
func (s *Session) check(what string) (string, no) {
	inst, err := inspect.ParseInstance(what)
	if err != nil {
		return "", because("no.unknown_check", "what", short(what))
	}
	c, _ := inspect.Find(inst.Check)
	world := s.found
	if s.repaired != nil {
		world = s.repaired
	}
	if c.Harmful == inspect.HarmRoad && s.stage == Inspecting {
		if missing := s.roadMissing(); missing != "" {
			s.harm(c.Harmful)
			return missing, no{}
		}
	}
	made := inst // whoever did the work has let it stand as it should
	if s.stage == Inspecting {
		made = inst.Made(s.setup.stands)
	}
	form, _ := inspect.Find(made.Check)
	truth, err := world.Measure(made)
	if err != nil {
		return "", because("no.not_computed", "error", err.Error())
	}
	notice := ""
	if s.stage == Inspecting {
		s.heed(inst.Needs())
		_, cautions := s.setup.missing(inst.Needs())
		if c.Harmful == inspect.HarmRoad {
			_, nuts := s.setup.onWheels()
			cautions = append(cautions, nuts...)
		}
		notice = s.breach(cautions)
	} else {
		notice = s.lookedAgain(inst)
	}
	try := s.tries[what]
	s.tries[what]++
	s.opened = s.opened || inst.OpensCap()
	s.setup = s.setup.without(inst.Undoes())
	s.spend(c.Minutes, inst.Undoes())
	s.reading = &reading{inst: inst, made: made, check: c, try: try, minutes: c.Minutes,
		display: look(s.seed, s.job.ID, made, form, truth, try)}
	if other, ok := beside[c.ID]; ok {
		at := inspect.Instance{Check: other, Wheel: inst.Wheel, PerWheel: inst.PerWheel}
		t, err := world.Measure(at)
		if err != nil {
			return "", because("no.not_computed", "error", err.Error())
		}
		o, _ := inspect.Find(other)
		s.reading.base = o.Meter.Value(look(s.seed, s.job.ID, at, o, t, try))
	}
	return notice, no{}
}

func (s *Session) refuseWrite(a Act) no {
	if s.reading == nil {
		return because("no.nothing_to_read")
	}
	if a.What != "" && a.What != s.reading.inst.String() {
		return because("no.read_this", "what", s.sayCheck(s.reading.inst))
	}
	if a.Do == Skip {
		return no{}
	}
	_, err := s.reading.check.Meter.Parse(s.asWord(a.Text))
	var bad *inspect.ReadingError
	if errors.As(err, &bad) {
		choices := make([]string, len(bad.Words))
		for i, w := range bad.Words {
			choices[i] = s.sayWord(s.reading.check, w)
		}
		return because(bad.ID, "text", short(bad.Text), "lo", plain(bad.Lo), "hi", plain(bad.Hi),
			"unit", s.sayUnit(bad.Unit), "words", strings.Join(choices, ", "))
	}
	return no{}
}

// asWord turns a word in the learner's language into its id.
func (s *Session) asWord(text string) string {
	for _, w := range s.reading.check.Meter.Words {
		if strings.EqualFold(strings.TrimSpace(text), s.sayWord(s.reading.check, w)) {
			return w
		}
	}
	return text
}

func (s *Session) write(a Act) {
	n := note{reading: *s.reading, skipped: a.Do == Skip, again: s.repaired != nil}
	if !n.skipped {
		n.written, _ = n.check.Meter.Parse(s.asWord(a.Text)) // refuseWrite has parsed it
	}
	s.notes = append(s.notes, n)
	s.reading = nil
}

func (s *Session) refuseStrike(line float64) no {
	if n := s.only(Inspecting, Handing); !n.allows() {
		return n
	}
	if line != float64(int(line)) || line < 1 || int(line) > len(s.notes) {
		return because("no.no_such_line", "lines", len(s.notes))
	}
	switch n := s.notes[int(line)-1]; {
	case n.struck:
		return because("no.is_struck")
	case n.again != (s.repaired != nil):
		return because("no.before_the_work")
	}
	return no{}
}
