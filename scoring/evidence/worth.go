package evidence

import (
	"fmt"

	"evenwear/physics/inspect"
)

// DecisionGain is the worth of a check: loss[a][class] is what act a costs when class is true, in
// the order of [Posterior.Classes], and the gain is how much the least expected
// loss falls when the check is made first: never negative, and 0 for a check
// none of whose outcomes changes the best act, however many bits it tells.
//
//	min_a Σ_row P(row)·loss − Σ_outcome min_a Σ_row P(row, outcome)·loss
func (p *Posterior) DecisionGain(inst inspect.Instance, loss [][]float64) (float64, error) {
	c, err := p.t.index(inst)
	if err != nil {
		return 0, err
	}
	for a := range loss {
		if len(loss[a]) != len(p.t.classIDs) {
			return 0, fmt.Errorf("evidence: act %d has losses for %d classes; there are %d", a, len(loss[a]), len(p.t.classIDs))
		}
	}
	s := p.scout(p.t.classOf)
	if len(loss) == 0 {
		return 0, nil
	}
	if !s.forecast(c) {
		return 0, errNotComputed(inst)
	}
	s.gather()
	// Each act is first weighed against the one that is best now, so that a check
	// that changes nothing gains exactly nothing.
	best, least := 0, 0.0
	for a := range loss {
		e := 0.0
		for k := range s.classes {
			e += float64(s.class[k] * loss[a][s.seen[k]])
		}
		if a == 0 || e < least {
			best, least = a, e
		}
	}
	gain := 0.0
	for b := range s.f.bins {
		most := 0.0
		for a := range loss {
			saved := 0.0
			for k := range s.classes {
				saved += float64(s.joint[k*s.f.bins+b] * (loss[best][s.seen[k]] - loss[a][s.seen[k]]))
			}
			most = max(most, saved)
		}
		gain += most
	}
	return rounded(gain), nil
}
