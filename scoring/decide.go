package scoring

import (
	"slices"

	"evenwear/physics"
)

// A Choice is a set of remedies with a release, and the car it leaves.
type Choice struct {
	Minutes  float64 // [min] of the remedies
	Parts    float64 // [min] the parts' price in minutes' worth
	Needless int     // parts renewed that the car did not need
	Refers   bool
	Release  string
	Sound    bool      // the car as found had nothing wrong and nothing unsafe
	Findings []Finding // of the car it leaves
	Lasts    float64   // [m] it drives on until 12 000 km or a worn lining
	DragFuel float64   // [m³] lost to drag over 12 000 km
	Again    float64   // [min worth] of the work that a part left faulty will ask for at another visit; 0 when all is mended
	Pedal    float64   // [1] of the pedal's way that is lost, 1 at the limit; see [Outlook.PedalUsed]
}

// What a choice may lose beside its own minutes and parts [min worth]. No
// source: they order choices as a workshop would, an unsafe car before all.
const (
	lossUnsafe    = 100  // an unsafe car on the road, for the first finding
	lossFurther   = 10   // each further one, at most 5
	lossNeedless  = 5    // a part that was not needed
	lossReferral  = 40   // a sound car sent away or kept off the road
	lossLife      = 60   // linings that last nothing instead of 12 000 km
	lossPerLitre  = 2    // fuel lost to drag
	lossPedal     = 100  // a pedal's way lost up to its limit: there an unsafe car begins, and the loss joins on
	lossVisit     = 30   // coming again for what was left
	lossStanding  = 30   // a car without danger that is not given back for use
	lossUndone    = 100  // a car kept off the road with its danger, and nobody asked to mend it: what a referral costs
	furtherAtMost = 5    // findings
	cubicToLitre  = 1000 // [l/m³]
)

// Loss is what a choice costs in minutes' worth:
//
//	minutes + parts + 5·needless
//	+ 100 + 10·(further dangers) when the release lets an unsafe car on the road
//	+ 30 + the work of another visit when a faulty part was left as it was, and nobody asked to mend it
//	+ 60·(1 − km/12 000) + 2·litres + 100·(share of the pedal's way lost, from when new to the limit of
//	  49 CFR 570.55(c)) for what is left undone in a car given back for use, or kept from it with nobody
//	  asked to mend it (then at most 100)
//	+ 100 when a dangerous car is kept off the road and nobody is asked to mend it
//	+ 30 when a car without danger is not given back for use, 40 when it was sound or is referred for nothing
func (c *Choice) Loss() float64 {
	l := c.Minutes + c.Parts + float64(lossNeedless*float64(c.Needless))
	if d := Danger(c.Findings, c.Release); len(d) > 0 {
		l += lossUnsafe + float64(lossFurther*float64(min(len(d)-1, furtherAtMost)))
	}
	if c.Again > 0 && !c.Refers {
		l += lossVisit + c.Again
	}
	undone := float64(lossLife*clamp(1-c.Lasts/(onward*physics.Kilometre), 0, 1)) + float64(lossPerLitre*cubicToLitre*c.DragFuel)
	if !slices.ContainsFunc(c.Findings, func(f Finding) bool { return f.ID == UnsafeTravel }) { // else it has been counted
		undone += float64(lossPedal * c.Pedal)
	}
	switch {
	case c.Release == ReleaseUse:
		l += undone
		if c.Sound && c.Refers {
			l += lossReferral
		}
	case c.Sound:
		l += lossReferral
	case len(c.Findings) == 0:
		l += lossStanding
		if !c.Refers { // standing still mends nothing
			l += min(undone, lossUndone)
		}
	case !c.Refers:
		l += lossUndone
	}
	return l
}

// Decide returns the choice that loses least for the true car; of equals the
// first. It returns −1 when there is none.
func Decide(choices []Choice) (best int, loss float64) {
	best = -1
	for i := range choices {
		if l := choices[i].Loss(); best < 0 || l < loss {
			best, loss = i, l
		}
	}
	return best, loss
}
