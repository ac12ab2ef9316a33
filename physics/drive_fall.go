package physics

import (
	"math"

	"evenwear/physics/exact"
)

const (
	decayLeast = 1e-3 // [1] below which decay is taken as linear
	bendLeast  = 0.05 // [1] least [wornWheel.bends]
	bendSure   = 2.0  // [1] times what two lumps tell of it
)

// A fall is how a half pad's wear fell in a lump of the most frequent class, to compare
// the next lump's with and to foresee what a single stop of another class changes.
type fall struct {
	touch       [4]contact // as it began
	same        bool       // and ended
	by, mean    float64    // [1] of its wear, [N·m]
	press, drag float64    // [N/m] change of that class's forces per wear
}

// rubs is force times way [N·m] of a half pad in a lump.
func (l *lump) rubs(press, drag float64) float64 {
	return float64(press*l.pressed) + float64(drag*l.dragged)
}

// between sets the forces of first to their mean up to second and returns the
// estimate of how much wear that is off [m].
//
// Where forces N are straight in the wear, the wear goes by an exponential: if a half
// pad's falls by the share x, it is on average at (1 − (1 − e^(−x))/x)/x of what
// forces that stay would wear; there all means are taken. A class after the first is
// looked at a stop late, so its mean lies as much earlier.
//
// The estimate is what the mean of both ends (Heun's rule) errs by where N falls in
// proportion to itself, (N₂ − N₁)²/6N, times [wornWheel.bends]. Where the drag is
// left over at first and established afresh at the end, there is a kink between, and
// the estimate is half of what that may make.
func (w *wornWheel) between(group []lump, first, second *phase, often bool) (errs float64) {
	for i := range 2 {
		for j := range 2 {
			wears, will := 0.0, 0.0
			for l := range group {
				wears += group[l].rubs(first.press[l][i][j], first.drag[l][i][j])
				will += group[l].rubs(second.press[l][i][j], second.drag[l][i][j])
			}
			if wears == 0 {
				continue
			}
			worn := wears * w.wearRate()
			kink := false
			for l := range group {
				kink = kink || first.held[l] && !second.held[l]
			}
			now := fall{
				touch: first.touch, same: first.touch == second.touch && !kink,
				by: 1 - will/wears, mean: (wears + will) / 2,
				press: (second.press[0][i][j] - first.press[0][i][j]) / worn,
				drag:  (second.drag[0][i][j] - first.drag[0][i][j]) / worn,
			}
			place := 0.5
			if x := now.by; x > decayLeast {
				place = (1 - (1-exact.Exp(-x))/x) / x
			}
			off, late, later := 0.0, 0.0, 0.0 // of the first and the second look
			for l := range group {
				g, press, drag := &group[l], &first.press[l][i][j], &first.drag[l][i][j]
				endPress, endDrag := second.press[l][i][j], second.drag[l][i][j]
				share := (place - late) / (1 + later - late)
				late += g.rubs(*press, *drag) / (g.number * wears)
				later += g.rubs(endPress, endDrag) / (g.number * wears)
				if n := max(*drag, endDrag); n > 0 && w.cond.Wear[i][j] < w.spec.LiningNew {
					x := math.Abs(endDrag - *drag)
					e := x * x / (6 * n)
					if first.held[l] && !second.held[l] {
						e = max(e, x/4)
					}
					off += float64(e * g.dragged)
				}
				*press += float64((endPress - *press) * share)
				*drag += float64((endDrag - *drag) * share)
			}
			if often {
				off *= w.bends(&w.falls[i][j], &now)
				w.falls[i][j] = now
			}
			errs = max(errs, off)
		}
	}
	return w.wearRate() * errs
}

// bends is how much the forces of a lump bend with wear, as a share of what they would
// if they fell in proportion to themselves [1]: how much less steeply they fall in this
// lump than in the last one, where that lay elsewhere and the pads touched alike. Where
// it tells nothing, the greatest of the cycle before stands for it.
func (w *wornWheel) bends(last, now *fall) float64 {
	if !now.same || now.by <= 0 {
		return 1
	}
	far := math.Abs(now.mean - last.mean)
	if last.touch != now.touch || far <= now.by*now.mean/2 {
		if w.bend > 0 {
			return w.bend
		}
		return 1
	}
	bend := min(1, max(bendLeast, bendSure*math.Abs(now.by-last.by)*now.mean/(now.by*far)))
	w.bent = max(w.bent, bend)
	return bend
}

// foresees tells whether what a single stop wears off will change forces as it did in
// the last lump of the most frequent class.
func (w *wornWheel) foresees(touch contact) bool {
	for i := range w.falls {
		for j := range w.falls[i] {
			if f := &w.falls[i][j]; !f.same || f.touch[0] != touch {
				return false
			}
		}
	}
	return true
}

// foresee is what a single stop's first look will have become by what has worn since start.
func (w *wornWheel) foresee(first *phase, start *WheelCondition) phase {
	second := *first
	for i := range w.falls {
		for j := range w.falls[i] {
			f, worn := &w.falls[i][j], w.cond.Wear[i][j]-start.Wear[i][j]
			second.press[0][i][j] = max(0, first.press[0][i][j]+float64(f.press*worn))
			second.drag[0][i][j] = max(0, first.drag[0][i][j]+float64(f.drag*worn))
		}
	}
	return second
}
