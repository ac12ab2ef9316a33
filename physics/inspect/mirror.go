package inspect

import (
	"strings"

	"evenwear/physics"
)

// Mirrored is the check that shows on a car what this one shows on its mirror
// image: side changes left and right, half the upper and lower half of every
// caliper. What points to a side or an end, such as a pull, is turned round as
// well. It returns false where no check shows it: who sees the upper end alone sees
// the lower one nowhere.
func (i Instance) Mirrored(side, half bool) (Instance, bool) {
	if half && i.Check == upperOnly {
		return i, false
	}
	if side && i.PerWheel {
		i.Wheel = i.Wheel.Mate()
	}
	if half {
		for at, end := range halfEnds {
			if name, ok := strings.CutSuffix(string(i.Check), end); ok {
				if other := ID(name + halfEnds[1-at]); known(other) {
					i.Check = other
				}
				break
			}
		}
	}
	return i, true
}

// upperOnly is the check that sees only the upper half though its name does not say so.
const upperOnly ID = "opening_inner"

// halfEnds is how the ids of checks at one half of a caliper end.
var halfEnds = [2]string{physics.Upper: "_upper", physics.Lower: "_lower"}

func known(id ID) bool {
	_, ok := Find(id)
	return ok
}
