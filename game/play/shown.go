package play

import (
	"math"
	"slices"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// firstShown is the reading of the learner's own that showed most clearly what
// they called: it lies nearer to what that cause makes of this check than to
// what the car would show without it, by the most spreads of its meter. One that
// their work should change goes before one that it leaves as it is, such as wear.
// It is worked out from the call alone, so that it tells nothing of the truth;
// ok is false where no reading does, or nothing was called.
func (s *Session) firstShown() (inst inspect.Instance, ok bool) {
	fault, called := s.calledFault()
	if !called {
		return inst, false
	}
	driven := scenarios.Vary(s.job.Driven, nil) // what an inspector believes without looking
	with, err := buildWorld(s.job.Car, driven, []scenarios.Fault{fault})
	if err != nil {
		return inst, false
	}
	without, err := buildWorld(s.job.Car, driven, nil)
	if err != nil {
		return inst, false
	}
	mended := with
	if cond, err := s.desk.repaired(s.job.Car, with.Model.Condition(), s.chosen); err == nil {
		if w, err := inspect.NewWorld(&s.job.Car.Spec, cond); err == nil {
			mended = w
		}
	}
	best := 0.0
	for _, n := range s.notes {
		if n.skipped || n.struck || n.again {
			continue
		}
		if n.inst.PerWheel && !slices.Contains(fault.Place.Wheels(&s.job.Car.Spec), n.inst.Wheel) {
			continue // a sound wheel beside a sick one wears otherwise too, but shows nothing of it
		}
		sick, errSick := with.Measure(n.made)
		well, errWell := without.Measure(n.made)
		after, errAfter := mended.Measure(n.made)
		if errSick != nil || errWell != nil || errAfter != nil {
			continue // this check cannot be made on such a car: it shows nothing of it
		}
		m := &n.check.Meter
		a, b, c := m.Show(sick/m.PerUnit), m.Show(well/m.PerUnit), m.Show(after/m.PerUnit)
		if m.Apart(a, b) < 1 || m.Apart(n.written, a) >= m.Apart(n.written, b) {
			continue
		}
		clear := math.Abs(m.Value(a)-m.Value(b)) / math.Sqrt(float64(m.Sigma*m.Sigma)+float64(m.Bias*m.Bias)+float64(m.Resolution*m.Resolution/12))
		if m.Apart(a, c) >= 1 {
			clear += changes
		}
		if clear > best+1e-9 {
			inst, ok, best = n.inst, true, clear
		}
	}
	return inst, ok
}

// changes is more spreads than any meter has.
const changes = 1e6

// calledFault is the row with most counters as it would most likely be.
func (s *Session) calledFault() (scenarios.Fault, bool) {
	top := s.topRow()
	if top == nil || top.counters == 0 {
		return scenarios.Fault{}, false
	}
	for _, c := range s.desk.lib.Causes {
		for _, p := range c.Places {
			if rowID(c, p) != top.id || len(c.Severities) == 0 {
				continue
			}
			bad := c.Severities[0]
			for _, v := range c.Severities {
				if v.Weight > bad.Weight {
					bad = v
				}
			}
			driven := scenarios.Vary(s.job.Driven, nil)
			return scenarios.Fault{Cause: c, Place: p, Severity: bad, SinceKm: since(c, driven, nil)}, true
		}
	}
	return scenarios.Fault{}, false
}
