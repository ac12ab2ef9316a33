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

// alwaysLooked are the looks at a repaired car that every hand-over has, in the
// order in which they are made: the last of them drives the car.
var alwaysLooked = []inspect.ID{"pump_running", "reservoir_level", "wetness", "slow_stop"}

// looks are what may be looked at again, the first so many of them advised: what
// always is, with the reading that first showed the fault before the car is
// driven; then every other reading of the learner's own.
func (s *Session) looks() (list []inspect.Instance, advised int) {
	if s.away() {
		return nil, 0
	}
	add := func(i inspect.Instance) {
		if !slices.Contains(list, i) {
			list = append(list, i)
		}
	}
	for k, id := range alwaysLooked {
		if k == len(alwaysLooked)-1 && s.showed {
			add(s.first)
		}
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
	advised = len(list)
	for _, n := range s.notes {
		if !n.skipped && !n.struck && !n.again {
			add(n.inst)
		}
	}
	return list, advised
}

// lookedAgain goes to where a look is taken, and keeps a car from being driven
// before its pedal was pumped: it says so the first time.
func (s *Session) lookedAgain(inst inspect.Instance) string {
	c, _ := inspect.Find(inst.Check)
	s.place = placeOf(inst, c)
	if c.Station != inspect.Road && !slices.Contains(inst.Needs(), "drive") {
		return ""
	}
	for _, n := range s.notes {
		if n.again && n.inst.Check == alwaysLooked[0] {
			return ""
		}
	}
	return s.breach([]string{"caution.pump_first"})
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
