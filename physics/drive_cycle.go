package physics

import "math"

const (
	roundTolerance = 7e-3 // [1] of a cycle's greatest wear, by which its rounds may err
	roundsBase     = 16   // rounds a cycle is first cut into at most
	roundsMost     = 128  // at which nearly every stop stands alone
	roundsLess     = 8.0  // [1] less than allowed that half as many rounds ask for at first
	lumpOften      = 2.0  // stops of a class in a round from which on they are mingled with others
	dragCoarse     = 0.1  // [1] of what a lump's stops wear, below which one round does for a wheel's drag
	dragWorth      = 0.03 // [1] of what a lump's stops wear, below which its drag is taken as constant
)

// lore is what a wheel has learned from the cycles taken so far.
type lore struct {
	rounds int     // in which it takes a cycle
	less   float64 // [1] less than allowed that its rounds must err before there are half as many
	mean   float64 // [°C] of the disc
	bend   float64 // [1] see [wornWheel.bends]; 0 before anything is known
	warms  bool    // power is known
	power  float64 // [1] of its rate of wear that its wear in a cycle goes by
}

// cycle takes one wheel through a cycle at the car's pressures, in rounds.
func (w *wornWheel) cycle(d *trip) error {
	w.work, w.slip, w.drags, w.torque = 0, 0, false, [4]float64{}
	w.falls, w.bent = [2][2]fall{}, 0
	for round := range w.rounds {
		if err := w.round(d, round); err != nil {
			return err
		}
	}
	return nil
}

// tune chooses rounds after a cycle begun at start, and tells whether those it was
// taken with will do. Their number does not rise before the temperature is close.
//
// One round does for a wheel that hardly drags. One that does gets at least as
// many as the second rarest class has stops, since a hard stop sets the drag which
// the softer ones after it wear away, and twice as many until the estimate of
// [wornWheel.lumps] is small. Half as many err by four times as much or, at a kink,
// by more; each time it goes back to them takes four times less than the time
// before, so that it does not come and go.
func (w *wornWheel) tune(d *trip, start *wornWheel, close, aimed bool) (settled bool) {
	base := d.base * d.fine.rounds
	allowed := roundTolerance / float64(d.fine.rounds*d.fine.rounds) * w.since(&start.cond) / (1 + w.heats())
	w.bend = w.bent
	// In a single round only a part of the error shows, so a tenth of it is too much.
	coarse := float64(w.rounds*w.rounds) * w.slip
	switch drags := w.drags || coarse > allowed/10; {
	case w.rounds < base && drags:
		w.rounds = base
		return false
	case w.rounds >= base && 2*w.rounds <= roundsMost && w.slip > allowed && allowed > 0:
		if !close {
			return true
		}
		w.rounds *= 2
		if w.slip > 6*allowed && 2*w.rounds <= roundsMost {
			w.rounds *= 2
		}
		return false
	case w.rounds > base && w.less*w.slip <= allowed && close && aimed:
		w.rounds /= 2
		w.less *= 4
	case w.rounds == base && !drags:
		w.rounds = d.fine.rounds
	}
	return true
}

// heats is by which power of its work a disc's rate of wear grows [1], heat being lost
// in proportion to its temperature: so much more a cycle errs that makes its own heat.
func (w *wornWheel) heats() float64 {
	const by = 1.0 // [K]
	return float64((hotWear(w.mean+by)/hotWear(w.mean) - 1) / by * (w.mean - roomAir))
}

// again goes back to start, but keeps what has been learned since.
func (w *wornWheel) again(start *wornWheel) {
	learned := w.lore
	*w = *start
	w.lore = learned
}

// since is the greatest wear of a half pad since start [m].
func (w *wornWheel) since(start *WheelCondition) float64 {
	most := 0.0
	for i := range 2 {
		for j := range 2 {
			most = max(most, w.cond.Wear[i][j]-start.Wear[i][j])
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
		if number := d.share(stops, round, w.rounds); number > 0 {
			group[0] = d.lump(w, class, number)
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

// share is how many of a class's stops in a cycle fall on one of its rounds. A class
// with fewer stops than there are rounds comes in as many rounds as it has stops. The
// rare classes come last; between two stops of theirs the others are spread evenly, and
// each such stretch has its full share of them: one stop more or less in the stretch
// after a hard stop would make a stuck piston wear 1 % more or less.
func (d *trip) share(stops float64, round, rounds int) float64 {
	times := min(rounds, int(max(1, math.Round(stops))))
	if times <= d.base || rounds%d.base != 0 {
		if (round+1)*times/rounds > round*times/rounds {
			return stops / float64(times)
		}
		return 0
	}
	comes := func(round int) bool {
		return ((round+1)*times+rounds/2)/rounds > (round*times+rounds/2)/rounds
	}
	if !comes(round) {
		return 0
	}
	stretch, count := rounds/d.base, 0
	for r := range stretch {
		if comes(round/stretch*stretch + r) {
			count++
		}
	}
	return stops / float64(d.base*count)
}
