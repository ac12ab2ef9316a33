package inspect

import (
	"fmt"
	"strings"

	"evenwear/physics"
)

// String is the instance's name in records: "lining_inner_upper@front_left",
// "pedal_travel".
func (i Instance) String() string {
	if !i.PerWheel {
		return string(i.Check)
	}
	return string(i.Check) + "@" + i.Wheel.String()
}

// An UnknownError is a name that no check, wheel or preparation has.
type UnknownError struct {
	Name string // as given
	ID   string // one of the Unknown ids: what is wrong with it
}

// What can be wrong with a name.
const (
	UnknownCheck = "unknown.check"
	UnknownPlace = "unknown.place"       // not a wheel behind the @
	MissingPlace = "unknown.no_place"    // a wheel belongs behind an @
	NeedlessAt   = "unknown.needless_at" // no wheel belongs to it
	UnknownWork  = "unknown.preparation"
)

func (e *UnknownError) Error() string {
	const wheels = "@front_left, @front_right, @rear_left or @rear_right"
	switch e.ID {
	case UnknownPlace:
		return fmt.Sprintf("%q: no such wheel; want %s", e.Name, wheels)
	case MissingPlace:
		return fmt.Sprintf("%q: this is done at a wheel; add %s", e.Name, wheels)
	case NeedlessAt:
		return fmt.Sprintf("%q: this is not done at one wheel; leave out what follows the @", e.Name)
	case UnknownWork:
		return fmt.Sprintf("%q: no preparation has this name", e.Name)
	}
	return fmt.Sprintf("%q: no check has this name", e.Name)
}

// ParseInstance is the inverse of [Instance.String]. The error is an *[UnknownError].
func ParseInstance(name string) (Instance, error) {
	id, at, hasWheel := strings.Cut(name, "@")
	c, ok := Find(ID(id))
	if !ok {
		return Instance{}, &UnknownError{name, UnknownCheck}
	}
	w, problem := place(c.PerWheel, at, hasWheel)
	if problem != "" {
		return Instance{}, &UnknownError{name, problem}
	}
	return Instance{Check: c.ID, Wheel: w, PerWheel: c.PerWheel}, nil
}

// place reads what stands behind an @; problem is empty when it fits.
func place(perWheel bool, at string, hasWheel bool) (w physics.Wheel, problem string) {
	switch {
	case !perWheel && hasWheel:
		return 0, NeedlessAt
	case !perWheel:
		return 0, ""
	case !hasWheel:
		return 0, MissingPlace
	}
	for w := range physics.Wheel(physics.NumWheels) {
		if w.String() == at {
			return w, ""
		}
	}
	return 0, UnknownPlace
}
