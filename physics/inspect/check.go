package inspect

import "evenwear/physics"

// A Station is where the inspector stands.
type Station string

// The stations, in the order an inspector would walk.
const (
	Bonnet   Station = "bonnet"
	Seat     Station = "seat"
	WheelOn  Station = "wheel_on"  // at a wheel that is on the car
	WheelOff Station = "wheel_off" // at a wheel that has been taken off
	Road     Station = "road"
)

// A Part is what a hand or an eye goes to at a place with many checks.
type Part string

// The parts of a wheel's brake, from the outside to the inside of the car.
const (
	HubPart      Part = "hub"
	DiscPart     Part = "disc"
	OuterPadPart Part = "outer_pad"
	InnerPadPart Part = "inner_pad"
	PinsPart     Part = "pins"
	PistonPart   Part = "piston"
	ScrewPart    Part = "screw"
	HosePart     Part = "hose"
)

// Parts lists every part, in the order in which they are offered. It must not be changed.
func Parts() []Part { return parts }

var parts = []Part{HubPart, DiscPart, OuterPadPart, InnerPadPart, PinsPart, PistonPart, ScrewPart, HosePart}

// An ID names a check; it is written into records and never changes meaning.
type ID string

// An Instance is one check at one place: "lining_inner_upper@front_left",
// "pedal_travel" at the seat.
type Instance struct {
	Check ID
	Wheel physics.Wheel // only where PerWheel
	// PerWheel tells whether Wheel counts.
	PerWheel bool
}

// A Check is one thing an inspector can do to a car.
type Check struct {
	ID       ID
	Station  Station
	Part     Part     // what is looked at, where a place has many checks
	PerWheel bool     // one instance a wheel
	BareToo  bool     // of [WheelOn]: made alike with the wheel off
	Minutes  float64  // [min] without the preparation; common practice, no source
	Needs    []string // preparations, "@wheel" and "@end" to be filled in; see [Needs]
	Cautions []string // ids of the cautions that stand at the act
	Harmful  string   // id of the rule that makes it harmful when broken; empty for most
	Meter    Meter

	Wants  []string // preparations without which it is made all the same, and shows something else
	Spoils []string // preparations with which it does
	Of     ID       // of a form made in spite of these: the check itself; see [Instance.Made]
	Amiss  []string // of such a form: the wants that do not stand and the spoils that do

	// Of a check whose answer hangs on how the car stands; see [vessel].
	level func(*physics.Model, physics.Bonnet) float64
	doubt func(stand) float64

	// Measure returns the noise-free answer in SI. It steps its own copy of the
	// world, never the caller's.
	Measure func(w *World, wheel physics.Wheel) (float64, error)
}
