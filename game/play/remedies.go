package play

import (
	"slices"
	"strings"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// findRemedy splits "remedy@place".
func (d *Desk) findRemedy(what string) (*scenarios.Remedy, scenarios.Place, bool) {
	id, at, _ := strings.Cut(what, "@")
	r := d.lib.Remedy(id)
	if r == nil {
		return nil, "", false
	}
	return r, scenarios.Place(at), slices.Contains(r.Places, scenarios.Place(at))
}

func (s *Session) refuseRemedy(a Act) no {
	if !s.sealed {
		return because("no.seal_first")
	}
	if n := s.only(Deciding); !n.allows() {
		return n
	}
	if a.Do == Work {
		return no{}
	}
	r, place, ok := s.desk.findRemedy(a.What)
	if !ok {
		return because("no.unknown_remedy", "what", short(a.What))
	}
	has := slices.Contains(s.chosen, a.What)
	if a.Do == DropRem {
		return unless(has, "no.not_chosen")
	}
	if has {
		return because("no.is_chosen")
	}
	for _, c := range s.chosen {
		o, at, _ := s.desk.findRemedy(c)
		if at == place && o.Excludes(r) {
			return because("no.one_for_a_part", "other", o.Name)
		}
	}
	return no{}
}

func (s *Session) remedy(a Act) {
	if a.Do == Remedy {
		s.chosen = append(s.chosen, a.What)
		return
	}
	s.chosen = slices.DeleteFunc(s.chosen, func(c string) bool { return c == a.What })
}

// work does the remedies: the repaired car is the found car with its condition
// changed, computed anew.
func (s *Session) work() (string, no) {
	world, err := s.desk.repair(s.job.Car, s.found, s.chosen)
	if err != nil {
		return "", because("no.not_computed", "error", err.Error())
	}
	for _, c := range s.chosen {
		if r, _, _ := s.desk.findRemedy(c); r.Harmful != "" {
			s.harm(r.Harmful)
		}
	}
	s.first, s.showed = s.firstShown()
	s.stood = [2]bool{s.setup.stands("chock_front"), s.setup.stands("chock_rear")}
	s.repaired, s.stage = world, Handing
	s.setup = inspect.Standing()
	if s.away() {
		return s.say("play.worked_on_paper"), no{}
	}
	return s.say("play.worked"), no{}
}
