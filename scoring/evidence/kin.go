package evidence

import "math"

// A sight is how the first of a kin showed one check, so that the others can be
// told from it.
type sight struct {
	ok     bool    // it had an answer at the centre and at every probe
	centre float64 // [unit]
	probe  int     // the point that moved it more
	moved  float64 // [unit] from the centre to there
}

// sight sums up the check that was just fitted.
func (w *rowWork) sight(f Fit) sight {
	if !f.OK || len(w.t.probes) == 0 || !w.have[0] {
		return sight{}
	}
	s := sight{ok: true, centre: w.values[0]}
	for _, i := range w.t.probes {
		if !w.have[i] || w.pull[i] != 1 || !finite(w.values[i]) {
			return sight{}
		}
		if d := w.values[i] - s.centre; s.probe == 0 || math.Abs(d) > math.Abs(s.moved) {
			s.probe, s.moved = i, d
		}
	}
	return s
}

// alike tells a check from what the first of the kin shows at the mirror image
// of it: its own centre, moved by the background as there. Kin differ only by
// the circuit a wheel hangs on, which moves the centre and hardly how it moves.
//
// Where the elder stood still, within half of [still], the centre is all.
// Elsewhere the point that moved the elder most is computed too: where it moves
// this one as far, to the same side or (a pull) to the other, the elder's line is
// taken; where it does not, nothing is known and false is returned.
func (w *rowWork) alike(c int) (Fit, bool, error) {
	p := w.t.problem
	if w.elder == nil || w.elder.err != nil || p.Mirror == nil || p.Thorough {
		return Fit{}, false, nil
	}
	there, ok := p.Mirror(w.h, w.eldest, p.Checks[c])
	if !ok {
		return Fit{}, false, nil
	}
	i := find(p.Checks, there)
	if i < 0 || !w.elder.have[i] || !w.elder.seen[i].ok {
		return Fit{}, false, nil
	}
	seen, line := &w.elder.seen[i], &w.elder.fits[i]
	centre, err := w.value(c, 0)
	if err != nil || !finite(centre) {
		return Fit{}, false, err
	}
	side, tolerance := 1.0, still(&w.t.checks[c].Meter)
	if math.Abs(seen.moved) > tolerance/2 {
		v, err := w.value(c, seen.probe)
		if err != nil || !finite(v) || w.pull[seen.probe] != 1 {
			return Fit{}, false, err
		}
		switch moved := v - centre; {
		case math.Abs(moved-seen.moved) <= tolerance:
		case math.Abs(moved+seen.moved) <= tolerance:
			side = -1
		default:
			return Fit{}, false, nil
		}
	}
	f := Fit{Mean: centre + float64(side*(line.Mean-seen.centre)), Slope: make([]float64, len(line.Slope)), Residual: line.Residual, OK: true}
	for k, s := range line.Slope {
		f.Slope[k] = side * s
	}
	return f, true, nil
}

// forKin is what the first of a kin must show: what is wanted of any of them.
func (t *Table) forKin(kin, want []int) []int {
	if t.problem.Mirror == nil || len(kin) == 1 || len(want) == len(t.checks) {
		return want
	}
	all := append([]int(nil), want...)
	for _, h := range kin[1:] {
		for _, c := range want {
			if there, ok := t.problem.Mirror(h, kin[0], t.problem.Checks[c]); ok {
				if i := find(t.problem.Checks, there); i >= 0 && find(all, i) < 0 {
					all = append(all, i)
				}
			}
		}
	}
	return all
}
