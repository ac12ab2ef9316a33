package learner

import (
	"strings"

	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// A Way is how a wrong idea bends what faults show.
type Way int

// The ways.
const (
	Only   Way = iota // no fault but these shows there: others look as the sound car does
	Never             // these faults do not show there
	Shows             // these faults always show there, by at least so much
	Turned            // what shows there, shows to the other side
	Swaps             // what shows at one of the checks shows at the other
)

// A Rule is one part of a wrong idea.
type Rule struct {
	Way    Way
	Checks []inspect.ID
	Causes []string // empty: every fault
	By     float64  // [unit of the meter] of Shows, negative for less
}

// A Misconception is a wrong likelihood table, as what differs from the real one.
type Misconception struct {
	ID    string
	Rules []Rule
}

// soundCause is the cause of the catalogue with which nothing is wrong: what
// does not show looks as it does there.
const soundCause = "honestly_worn"

// Bend is the table of somebody who holds the misconception. ok is false when
// nothing of it differs from t: then nobody can be told to hold it.
func (m *Misconception) Bend(t *evidence.Table) (bent *evidence.Table, ok bool) {
	problem := t.Problem()
	sound := -1
	for h := range problem.Hypotheses {
		if problem.Hypotheses[h].Cause == soundCause {
			sound = h
			break
		}
	}
	if sound < 0 {
		return t, false
	}
	bent = t.Bent(func(h int, inst inspect.Instance, f evidence.Fit) evidence.Fit {
		hyp := &problem.Hypotheses[h]
		if hyp.Cause == soundCause {
			return f
		}
		for i := range m.Rules {
			if g, changed := m.Rules[i].bend(t, h, sound, inst, f); changed {
				f, ok = g, true
			}
		}
		return f
	})
	return bent, ok
}

// About tells that the idea is about what a check shows.
func (m *Misconception) About(check inspect.ID) bool {
	for i := range m.Rules {
		if find(m.Rules[i].Checks, check) >= 0 {
			return true
		}
	}
	return false
}

// bend is what hypothesis h shows at a check by the rule, if that differs.
func (r *Rule) bend(t *evidence.Table, h, sound int, inst inspect.Instance, f evidence.Fit) (evidence.Fit, bool) {
	at := find(r.Checks, inst.Check)
	if at < 0 {
		return f, false
	}
	hyp := &t.Problem().Hypotheses[h]
	concerned := len(r.Causes) == 0 || find(r.Causes, hyp.Cause) >= 0 || find(r.Causes, hyp.Also.Cause) >= 0
	plain, known := t.Fit(sound, inst)
	if !known || !plain.OK || r.Way == Only == concerned {
		return f, false
	}
	switch r.Way {
	case Only, Never:
		return plain, true
	case Turned:
		f.Mean = float64(2*plain.Mean) - f.Mean
		return f, true
	case Shows:
		if at := inst.Wheel.String(); inst.PerWheel && !strings.HasPrefix(hyp.Place, at) && !strings.HasPrefix(hyp.Also.Place, at) {
			return f, false
		}
		want := plain.Mean + r.By
		if r.By > 0 == (f.Mean >= want) {
			return f, false // it shows already
		}
		f.Mean = want
		return f, true
	case Swaps:
		other := inst
		other.Check = r.Checks[at^1] // they stand in pairs
		g, known := t.Fit(h, other)
		return g, known && g.OK
	}
	return f, false
}

func find[T comparable](all []T, one T) int {
	for i, x := range all {
		if x == one {
			return i
		}
	}
	return -1
}
