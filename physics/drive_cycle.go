package physics

import (
	"math"

	"evenwear/physics/exact"
)

const (
	roundTolerance = 5e-3 // [1] of a cycle's greatest wear, by which its rounds may err
	roundsBase     = 16   // rounds a cycle is first cut into at most
	roundsMost     = 128  // at which nearly every stop stands alone
	lumpOften      = 2.0  // stops of a class in a round from which on they are mingled with others
	warming        = -0.4 // [1] how much hotter a cycle makes itself per kelvin above the knee of wear; seen −0.3 to −0.7
	warmClose      = 0.01 // [1] of the rate of wear, by which a cycle's temperature may be off
	decayLeast     = 1e-3 // [1] below which decay is taken as linear
	dragCoarse     = 0.1  // [1] of what a lump's stops wear, below which one round does for a wheel's drag
	dragWorth      = 0.03 // [1] of what a lump's stops wear, below which its drag is taken as constant
)

// cycle takes one wheel through a cycle at the car's pressures, in rounds.
//
// A round holds its share of every class; a class with fewer stops than there
// are rounds comes in as many rounds as it has stops.
func (w *wornWheel) cycle(d *trip) error {
	w.work, w.slip, w.drags, w.torque = 0, 0, false, [4]float64{}
	for round := range w.rounds {
		if err := w.round(d, round); err != nil {
			return err
		}
	}
	return nil
}

// tune chooses rounds and temperature after a cycle begun at start, and tells
// whether the rounds it was taken with will do.
//
// One round does for a wheel that hardly drags. One that does gets at least as
// many as the second rarest class has stops, since a hard stop sets the drag which
// the softer ones after it wear away, and twice as many until the estimate of
// [wornWheel.lumps] is small. Half as many err by four times as much; it takes
// eight times less than is allowed to go back, so that it does not come and go.
func (w *wornWheel) tune(d *trip, start *wornWheel) (settled bool) {
	base := d.base * d.fine.rounds
	allowed := roundTolerance / float64(d.fine.rounds*d.fine.rounds) * w.since(start)
	settled = true
	// In a single round only a part of the error shows, so a tenth of it is too much.
	coarse := float64(w.rounds*w.rounds) * w.slip
	switch drags := w.drags || coarse > allowed/10; {
	case w.rounds < base && drags:
		w.rounds, settled = base, false
	case w.rounds >= base && w.rounds < roundsMost && w.slip > allowed && allowed > 0:
		w.rounds *= 2
		if w.slip > 6*allowed {
			w.rounds *= 2
		}
		w.rounds, settled = min(roundsMost, w.rounds), false
	case w.rounds > base && 8*w.slip <= allowed:
		w.rounds /= 2
	case w.rounds == base && !drags:
		w.rounds = d.fine.rounds
	}
	w.mean = w.warm(w.warmth(d.duty, d.way*Kilometre, d.spec.Body.TyreRadius))
	return settled
}

// again goes back to start, but keeps what has been learned since.
func (w *wornWheel) again(start *wornWheel) {
	was := *w
	*w = *start
	w.rounds, w.mean = was.rounds, was.mean
}

// warm is the temperature [°C] to try after a cycle at w.mean that makes itself as
// hot as made. Above the knee of wear a hotter lining sheds its drag sooner.
func (w *wornWheel) warm(made float64) float64 {
	if max(made, w.mean) <= wearKnee {
		return made
	}
	return w.mean + (made-w.mean)/(1-warming)
}

// since is the greatest wear of a half pad since start [m].
func (w *wornWheel) since(start *wornWheel) float64 {
	most := 0.0
	for i := range 2 {
		for j := range 2 {
			most = max(most, w.cond.Wear[i][j]-start.cond.Wear[i][j])
		}
	}
	return most
}

// round takes the classes that come often in it all together, then each of the
// others by itself.
func (w *wornWheel) round(d *trip, round int) error {
	var group [4]lump
	n := 0
	for _, class := range d.order {
		stops := d.duty.Stops[class].PerThousandKm * d.way / 1000
		if stops == 0 {
			continue
		}
		if number := stops / float64(w.rounds); number >= lumpOften {
			group[n] = d.lump(w, class, number)
			n++
			continue
		}
		if n > 0 {
			if err := w.lumps(d, group[:n]); err != nil {
				return err
			}
			n = 0
		}
		times := min(w.rounds, int(max(1, math.Round(stops))))
		if (round+1)*times/w.rounds > round*times/w.rounds {
			group[0] = d.lump(w, class, stops/float64(times))
			if err := w.lumps(d, group[:1]); err != nil {
				return err
			}
		}
	}
	if n > 0 {
		return w.lumps(d, group[:n])
	}
	return nil
}

// A lump is some stops of a class with the way between them.
type lump struct {
	class    int
	number   float64
	pressure float64 // [Pa] at the wheel
	pressed  float64 // [m] a pad slides under it
	dragged  float64 // [m] a pad slides in between
}

func (d *trip) lump(w *wornWheel, class int, number float64) lump {
	perRadian := number * w.spec.EffectiveRadius / d.spec.Body.TyreRadius
	return lump{class, number, w.line(d.spec, d.pressure[class]),
		d.duty.Stops[class].way() * perRadian, d.between() * perRadian}
}

// A phase is what the classes of a group press and drag with [N] at one moment.
type phase struct {
	press, drag [4][2][2]float64
	held        [4]bool // neither piston nor pins slid, so that the drag is what is left of before
}

// lumps wears what a group of lumps wears, mingled.
//
// Every stop re-establishes the drag, from linings that have worn a little more
// since, so both are functions of the wear w: dw/ds = K·N(w). N is looked at before
// and after, N after being what stop and release leave once all has worn off as
// before. Where N falls, its mean is an exponential's, N₁·(1 − e^(−x))/x
// with x = 1 − N₂/N₁: exact for N that falls in proportion to wear.
// The estimate is what the mean of both (Heun's rule) errs by there, (N₂ − N₁)²/6N;
// where the drag is left over at first and established afresh at the end, there is
// a kink between, and the estimate is half of what that may make.
func (w *wornWheel) lumps(d *trip, group []lump) error {
	for i := range group {
		w.loses(d, &group[i])
	}
	var first, second phase
	if err := w.look(group, &first, true); err != nil {
		return err
	}
	rest, work, cond, gap := w.rest, w.work, w.cond, w.corner.gap
	w.wear(group, &first)
	drags := worthLooking(group, &first, dragWorth)
	if often := group[0].number >= lumpOften || group[0].class == d.order[0]; often || drags {
		w.drags = w.drags || often && worthLooking(group, &first, dragCoarse)
		if err := w.look(group, &second, drags); err != nil {
			return err
		}
		w.rest, w.work, w.cond, w.corner.gap = rest, work, cond, gap
		for l := range group {
			w.between(&first.press[l], &second.press[l], false)
			if drags {
				w.slip += float64(w.wearRate() * group[l].dragged * w.between(&first.drag[l], &second.drag[l], first.held[l] && !second.held[l]))
			}
		}
		w.wear(group, &first)
	}
	for l := range group {
		f := CornerForces{Half: first.press[l]}
		w.torque[group[l].class] += float64(group[l].number * w.corner.Torque(&f) * w.spec.Fade(w.mean))
	}
	return nil
}

// worthLooking tells whether drag wears enough to follow how it changes.
func worthLooking(group []lump, at *phase, share float64) bool {
	stops, drag := 0.0, 0.0
	for l := range group {
		for i := range 2 {
			for j := range 2 {
				stops = max(stops, at.press[l][i][j]*group[l].pressed)
				drag = max(drag, at.drag[l][i][j]*group[l].dragged)
			}
		}
	}
	return drag > share*stops
}

// between sets a to the mean from a to b and returns the estimate of how far that
// is from the truth where there is lining left; see [wornWheel.lumps].
func (w *wornWheel) between(a, b *[2][2]float64, kink bool) (errs float64) {
	for i := range 2 {
		for j := range 2 {
			if n := max(a[i][j], b[i][j]); n > 0 && w.cond.Wear[i][j] < w.spec.LiningNew {
				x := math.Abs(b[i][j] - a[i][j])
				errs = max(errs, x*x/(6*n))
				if kink {
					errs = max(errs, x/4)
				}
			}
			if x := 1 - b[i][j]/a[i][j]; a[i][j] > 0 && x > decayLeast {
				a[i][j] *= (1 - exact.Exp(-x)) / x
			} else {
				a[i][j] = (a[i][j] + b[i][j]) / 2
			}
		}
	}
	return errs
}

// look presses and, if asked, releases the wheel once in every class of a group.
// Each class finds what one stop of the one before it has worn; after that the
// wear is as it was.
func (w *wornWheel) look(group []lump, at *phase, drag bool) error {
	work, cond, gap := w.work, w.cond, w.corner.gap
	for i := range group {
		l := &group[i]
		if i > 0 && drag {
			w.takeOff(&at.press[i-1], group[i-1].pressed/group[i-1].number)
			w.takeOff(&at.drag[i-1], group[i-1].dragged/group[i-1].number)
		}
		s, f, err := w.settle(w.rest, &CornerLoad{Pressure: l.pressure}, &w.seen[l.class][0])
		if err != nil {
			return err
		}
		at.press[i] = f.Half
		if drag {
			was := w.rest
			if at.drag[i], err = w.release(s, l); err != nil {
				return err
			}
			at.held[i] = !slid(&was, &w.rest)
		}
	}
	w.work, w.cond, w.corner.gap = work, cond, gap
	return nil
}

// wear takes off what the forces of a phase wear.
func (w *wornWheel) wear(group []lump, at *phase) {
	for i := range group {
		w.takeOff(&at.press[i], group[i].pressed)
		w.takeOff(&at.drag[i], group[i].dragged)
	}
}
