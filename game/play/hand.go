package play

import (
	"slices"

	"evenwear/physics/inspect"
	"evenwear/scoring"
)

// releases are the ways to hand a car over, in the order they are offered.
var releases = []string{scoring.ReleaseUse, scoring.ReleaseTrip, scoring.ReleaseCarried}

// mostTold is more characters than a hand-over note needs.
const mostTold = 600

// alwaysLooked are the looks at a repaired car that every hand-over has.
var alwaysLooked = []inspect.ID{"pump_running", "reservoir_level", "wetness", "slow_stop"}

// looks are what may be looked at again: what always is, then every reading of
// the learner's own, because one of them first showed the fault.
func (s *Session) looks() []inspect.Instance {
	var list []inspect.Instance
	add := func(i inspect.Instance) {
		if !slices.Contains(list, i) {
			list = append(list, i)
		}
	}
	for _, id := range alwaysLooked {
		c, ok := inspect.Find(id)
		if !ok {
			continue
		}
		if !c.PerWheel {
			add(inspect.Instance{Check: id})
			continue
		}
		for _, w := range s.lookWheels() {
			add(inspect.Instance{Check: id, Wheel: w, PerWheel: true})
		}
	}
	for _, n := range s.notes {
		if !n.skipped && !n.struck && !n.again {
			add(n.inst)
		}
	}
	return list
}

// lookedAgain keeps a car from being driven before its pedal was pumped.
func (s *Session) lookedAgain(inst inspect.Instance) {
	c, _ := inspect.Find(inst.Check)
	if c.Station != inspect.Road && !slices.Contains(inst.Needs(), "drive") {
		return
	}
	for _, n := range s.notes {
		if n.again && n.inst.Check == alwaysLooked[0] {
			return
		}
	}
	s.breach([]string{"caution.pump_first"})
}

func (s *Session) refuseHand(a Act) no {
	if n := s.only(Handing); !n.allows() {
		return n
	}
	switch a.Do {
	case Release:
		return unless(slices.Contains(releases, a.What), "no.unknown_release")
	case Tell:
		return unless(len(a.Text) <= mostTold, "no.told_too_much")
	}
	return unless(s.release != "", "no.release_first")
}
