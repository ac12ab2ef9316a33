package play

import (
	"slices"

	"evenwear/physics/inspect"
)

// How the car stands under its bonnet: its engine's heat, the oil that hangs in
// it, the ground. What a vessel shows there hangs on it.

// arrived is what stands when the learner comes to the car.
func (s *Session) arrived() []string {
	if s.job.Driven.Stood {
		return inspect.StoodOvernight()
	}
	return inspect.Standing()
}

// spend lets minutes pass. Oil runs back while anything is done with the engine
// at rest; what undoes that has run it.
func (s *Session) spend(minutes float64, undone []string) {
	s.minutes += minutes
	wait, _ := inspect.FindPreparation("run_back")
	switch {
	case slices.Contains(undone, wait.ID):
		s.ran = s.minutes
	case !s.setup.stands(wait.ID) && s.minutes-s.ran >= wait.Minutes:
		s.setup = s.setup.after(inspect.Work{Preparation: wait})
	}
}

// minutesOf is what a preparation takes now: of a wait, what is left of it.
func (s *Session) minutesOf(w inspect.Work) float64 {
	if w.ID != "run_back" || s.setup.stands(w.ID) {
		return w.Minutes
	}
	return max(0, w.Minutes-(s.minutes-s.ran))
}

// sayStand tells how the car stands, as anybody sees who comes to it.
func (s *Session) sayStand() string {
	id := func(name, stands, not string) string {
		if s.setup.stands(name) {
			return s.say("stand." + stands)
		}
		return s.say("stand." + not)
	}
	how := []string{id("engine_cold", "cold", "hot"), id("run_back", "at_rest", "just_ran"), id("roll_level", "flat", "yard")}
	if s.job.Driven.Stood && s.ran == 0 {
		how = append([]string{s.say("stand.overnight")}, how...)
	}
	return Joined(s.words, how)
}

// sayAmiss tells of the learner's own readings that were made in spite of what
// they want, and what they would have shown.
func (s *Session) sayAmiss() string {
	said := ""
	for _, n := range s.notes {
		if n.made == n.inst || n.skipped || n.struck || n.again {
			continue
		}
		v, err := s.found.Measure(n.inst)
		if err != nil {
			continue // it could be made, so it can be made well
		}
		form, _ := inspect.Find(n.made.Check)
		why := ""
		for _, a := range form.Amiss {
			one := s.say("amiss." + a)
			if slices.Contains(form.Wants, a) {
				one = s.say("amiss.no_" + a)
			}
			if why != "" {
				one = s.words.Say("view.amiss_and", "list", why, "next", one)
			}
			why = one
		}
		m := &n.check.Meter
		unit := s.sayUnit(m.Unit)
		said += " " + s.words.Say("view.amiss", "what", s.sayCheck(n.inst), "why", why, "unit", unit,
			"written", s.sayDisplay(n.check, n.written), "would", s.sayDisplay(n.check, m.Show(v/m.PerUnit)))
	}
	return said
}
