package play

import (
	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// takeNotes takes over what somebody else has read of the car: as their instruments
// showed it, at a first look of its own.
func (s *Session) takeNotes() error {
	var given []evidence.Reading
	for _, inst := range s.job.Notes {
		check, _ := inspect.Find(inst.Check)
		value, err := s.found.Clone().Measure(inst)
		if err != nil {
			return err
		}
		name := inst.String()
		display := look(s.seed, s.job.ID, inst, check, value, s.tries[name])
		s.tries[name]++
		r := reading{inst: inst, made: inst, check: check, display: display}
		s.given = append(s.given, note{reading: r, written: display})
		given = append(given, evidence.Reading{Check: inst, Display: display})
	}
	if given != nil {
		s.table = s.table.handed(given)
	}
	return nil
}

// away tells that the car is not there: only notes of it are.
func (s *Session) away() bool { return s.given != nil && s.job.Minutes == 0 }

// givenNodes are those notes in words.
func (s *Session) givenNodes(v *View) {
	for _, n := range s.given {
		nv := s.noteView(n)
		value := nv.Written
		if nv.Unit != "" {
			value += " " + nv.Unit
		}
		v.add(Node{ID: "fact_" + nv.Check, Role: "text", Name: s.say("view.given"),
			Value: s.words.Say("play.given", "what", nv.What, "place", nv.Where, "value", value)})
	}
}
