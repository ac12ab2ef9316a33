package scenarios

import "evenwear/physics"

// A Library is every car, cause, remedy and job, sorted by id. It is immutable.
type Library struct {
	Cars     []*Car
	Groups   []Group
	Causes   []*Cause
	Parts    []Part
	Remedies []*Remedy
	Jobs     []*Job
}

// A Car is one of the demo cars.
type Car struct {
	ID, Name string
	Spec     physics.Spec
	Duty     physics.Duty
}

// A Group is one of the nine groups of the catalogue.
type Group struct{ ID, Name string }

// A Part is what remedies are sorted by on the call sheet.
type Part struct{ ID, Name string }

// A Place says where a cause or remedy sits: "car", "front_left",
// "front_left.upper_pin", "front_axle", "primary_circuit".
type Place string

// A Cause is one entry of the fault catalogue.
type Cause struct {
	ID, Name, Explain string
	Group             string
	Places            []Place
	Severities        []Severity
	Prior             float64    // weight, shared equally by places, by weight by severities
	Healthy           bool       // "nothing wrong": a false alarm when called otherwise
	SinceKm           [2]float64 // [km] likely range of how long it has been there
	Changes           []Change
}

// A Severity is how bad a cause is.
type Severity struct {
	ID     string
	Value  float64 // in the unit of the change that uses it
	Weight float64
}

// A Change is one number of the condition that a cause moves: set at its start
// (before it is driven on with) or at its end (just before the inspector comes).
type Change struct {
	Path      string  // "wheel.pin_upper_friction_n": resolved at the place
	Times     float64 // × severity value
	PerMm     float64 // unused by most; see Cause.Apply
	AtEnd     bool
	GrowPerMm float64
}

// A Remedy is what can be done.
type Remedy struct {
	ID, Name, Part string
	Places         []Place
	Minutes        float64
	PartsCost      float64 // in minutes' worth
	Who            string  // "owner", "licensed", "licensed_unless_trained", "nobody"
	Caution        string
	Harmful        string // rule id it breaks, e.g. petroleum grease
	Refers         bool
}

// A Fault is a cause put into a car.
type Fault struct {
	Cause    *Cause
	Place    Place
	Severity Severity
	SinceKm  float64
}

// A Job is one car with one story.
type Job struct {
	ID        string
	Car       *Car
	Complaint string // the owner's sentence
	Claims    []Claim
	Facts     []Fact
	Driven    Driven
	Faults    []Fault // none: nothing wrong
	Minutes   float64
	Aim       float64 // difficulty aimed at, bits
	Goal      string
}

// Driven is how the car has been used.
type Driven struct {
	Km        float64 // on the clock
	PadsKm    float64 // since the pads were fitted
	PadsNewMm float64 // lining thickness when they were fitted; 0 = new
	Harshness float64 // [1] factor on stops per kilometre
	AmbientC  float64
}

// A Claim is something the owner noticed; loading computes it and refuses a false one.
type Claim struct {
	ID    string // "pull", "hotter", "pedal", "lamp", "pulse", "none"
	Value string // "right", "front_right", "long", "soft", "sinks"
}

// A Fact is something known for sure, in words, with what it narrows.
type Fact struct{ ID, Text string }
