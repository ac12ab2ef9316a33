package physics

import (
	"math"

	"evenwear/physics/exact"
)

const (
	warmClose = 0.01 // [1] of the rate of wear, by which a cycle's temperature may be off
	warmKnown = 0.03 // [1] the same where it is known what comes of it
	rateTells = 0.02 // [1] by which the rate of wear must differ between two tries to tell that
	powerMost = 1.5  // [1]
	powerSays = 0.5  // [1] supposed before it is known
)

// learn takes in that a cycle has worn so many times as much as before at so many
// times the rate of wear. Drag that a pad wears itself free of makes it hardly wear
// more at a higher rate; drag that every stop makes afresh, in proportion.
func (w *wornWheel) learn(wear, rate float64) {
	if wear > 0 && math.Abs(rate-1) > rateTells {
		w.warms, w.power = true, max(0, min(powerMost, exact.Log(wear)/exact.Log(rate)))
	}
}

// near tells whether a cycle may stand that should have been taken at so many times
// its rate of wear.
func (w *wornWheel) near(rate float64) bool {
	off := math.Abs(rate - 1)
	return off <= warmClose || w.warms && off <= warmKnown
}

// mend makes the wear since start what it would have been at so many times its rate.
func (w *wornWheel) mend(start *wornWheel, rate float64) {
	if rate == 1 {
		return
	}
	power := powerSays
	if w.warms {
		power = w.power
	}
	var by slow
	was := start.slow()
	for k, is := range w.slow() {
		switch {
		case k >= slowWear:
			by[k] = float64((is - was[k]) * power * (rate - 1))
		case k >= slowDisc: // by force alone, at any temperature
			by[k] = float64((is - was[k]) * (power - 1) * (rate - 1))
		}
	}
	var stuck [2]bool
	for i := range stuck {
		stuck[i] = w.rest.PinAnchor[i] == start.rest.PinAnchor[i]
	}
	w.move(&by, 0, [2]float64{}, stuck)
}
