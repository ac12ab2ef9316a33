package scenarios

import (
	"cmp"
	"slices"

	"evenwear/physics"
	"evenwear/physics/inspect"
)

// A Library is every car, cause, remedy and job, sorted by id; groups and parts
// stand in the order of the catalogue. It is immutable.
type Library struct {
	Cars     []*Car
	Groups   []Group
	Causes   []*Cause
	Parts    []Part
	Remedies []*Remedy
	Jobs     []*Job
	Lessons  []*Lesson

	Pairs     []Pair  // causes that may be in a car at once
	PairShare float64 // [1] of all cars have two faults
	Twins     []Twins // causes that are not told apart

	owners *Owners // of drawn cars
}

// Car returns the car with this id, or nil.
func (l *Library) Car(id string) *Car { return byID(l.Cars, id, func(c *Car) string { return c.ID }) }

// Cause returns the cause with this id, or nil.
func (l *Library) Cause(id string) *Cause {
	return byID(l.Causes, id, func(c *Cause) string { return c.ID })
}

// Worn returns the cause that changes nothing: nothing wrong, honestly worn.
func (l *Library) Worn() *Cause {
	for _, c := range l.Causes {
		if c.Healthy && !c.Changes() {
			return c
		}
	}
	return nil
}

// Truth is the ids of the causes in a job's car; of a car with nothing wrong, the
// cause that says so.
func (l *Library) Truth(j *Job) []string {
	var list []string
	for i := range j.Faults {
		list = append(list, j.Faults[i].Cause.ID)
	}
	if c := l.Worn(); len(list) == 0 && c != nil {
		list = []string{c.ID}
	}
	return list
}

// Remedy returns the remedy with this id, or nil.
func (l *Library) Remedy(id string) *Remedy {
	return byID(l.Remedies, id, func(r *Remedy) string { return r.ID })
}

// Lesson returns the lesson with this id, or nil.
func (l *Library) Lesson(id string) *Lesson {
	return byID(l.Lessons, id, func(x *Lesson) string { return x.ID })
}

// Job returns the job with this id, or nil.
func (l *Library) Job(id string) *Job { return byID(l.Jobs, id, func(j *Job) string { return j.ID }) }

// ByAim is the jobs from the easiest to the hardest, those of equal difficulty by
// their titles: the order in which a list offers them.
func (l *Library) ByAim() []*Job {
	list := slices.Clone(l.Jobs)
	slices.SortStableFunc(list, func(a, b *Job) int { return cmp.Or(cmp.Compare(a.Aim, b.Aim), cmp.Compare(a.Title, b.Title)) })
	return list
}

func byID[T any](all []*T, id string, of func(*T) string) *T {
	for _, x := range all {
		if of(x) == id {
			return x
		}
	}
	return nil
}

func ids[T any](all []*T, of func(*T) string) []string {
	out := make([]string, len(all))
	for i, x := range all {
		out[i] = of(x)
	}
	return out
}

// A Car is one of the demo cars.
type Car struct {
	ID, Name string
	Spec     physics.Spec
}

// A Group is one of the nine groups of the catalogue of causes.
type Group struct{ ID, Name string }

// A Part is what remedies are sorted by on the call sheet.
type Part struct{ ID, Name string }

// A Cause is one entry of the fault catalogue.
type Cause struct {
	ID, Name, Explain string
	Group             string
	Places            []Place
	Where             string // what the car as its place is called, such as "washer bottle"; empty: whole car
	Severities        []Severity
	Prior             float64    // weight, shared equally by places, by weight by severities
	Healthy           bool       // "nothing wrong": a false alarm when called otherwise
	SinceKm           [2]float64 // [km] likely range of how long it has been there
	Notes             []string   // checks whose readings are handed over with a car of this cause: see [Noted]
}

// Changes tells that the cause is a change to a car honestly worn; of those that
// are nothing wrong one is that car itself.
func (c *Cause) Changes() bool {
	for _, s := range c.Severities {
		if len(s.Start)+len(s.End) > 0 {
			return true
		}
	}
	return false
}

// Severity returns the severity with this id, or nil.
func (c *Cause) Severity(id string) *Severity {
	for i := range c.Severities {
		if c.Severities[i].ID == id {
			return &c.Severities[i]
		}
	}
	return nil
}

// A Severity is how bad a cause is: what it changes in the car's condition.
type Severity struct {
	ID     string
	Weight float64
	// Start is put into the car before it is driven on with the fault.
	Start []Change
	// End happens just before the inspector comes.
	End []Change
	// GrowsFrom is the share of what Start adds that was there at first; the rest
	// came in proportion to the distance driven since. 1 does not grow.
	GrowsFrom float64
}

// A Change is one number of the condition that is moved.
type Change struct {
	Op    Op
	Path  string  // "wheel.pin_friction_n", resolved at the place; empty for [Pour]
	Value float64 // in the path's unit; a factor for [Scale]
}

// An Op is how a change moves its number.
type Op string

// The operations.
const (
	Set      Op = "set"
	Add      Op = "add"
	Scale    Op = "scale"
	AtLeast  Op = "at_least"  // raise to this, never lower
	AtMost   Op = "at_most"   // wear a part until no more than this is left of it; see left.go
	StandsAt Op = "stands_at" // fill a vessel under the bonnet, or let it run down, to there; see stand.go
	FillTo   Op = "fill_to"   // the same, but only up
	DrawTo   Op = "draw_to"   // the same, but only down
	Pour     Op = "pour"      // fill the reservoir to MAX
)

// A Remedy is what can be done.
type Remedy struct {
	ID, Name, Part string
	Places         []Place
	Where          string  // as of a [Cause]
	Minutes        float64 // [min]
	PartsCost      float64 // [min] the parts' price in minutes' worth
	Who            string  // one of [Whos]
	Cautions       []string
	Harmful        string // id of the rule it breaks; empty for most
	Refers         bool   // hands the car to a licensed mechanic
	Renews         bool   // puts a new part in, not only work, grease or fluid
	Changes        []Change
}

// A Fault is a cause put into a car.
type Fault struct {
	Cause    *Cause
	Place    Place
	Severity Severity
	SinceKm  float64 // [km]
}

// A Job is one car with one story.
type Job struct {
	ID        string
	Title     string // a few words for lists; tells nothing of the truth
	Car       *Car
	Complaint string // the owner's sentences
	Claims    []Claim
	Facts     []Fact
	Driven    Driven
	Faults    []Fault            // none: nothing wrong, honestly worn
	Minutes   float64            // [min] allowed
	Notes     []inspect.Instance // whose readings somebody else took before and hands over
	Aim       float64            // [bits] difficulty aimed at
	Goal      string             // what a learner should take along
	file      string
	verified  func() error // Verify, computed once
}

// Sound tells that nothing is wrong with the car: it has no fault, or what was
// put in is nothing wrong.
func (j *Job) Sound() bool {
	for _, f := range j.Faults {
		if !f.Cause.Healthy {
			return false
		}
	}
	return true
}

// Driven is how the car has been used.
type Driven struct {
	Km            float64 // [km] on the clock
	PadsKm        float64 // [km] since the pads were fitted
	PadsThinnerMm float64 // [mm] by which their linings were thinner than new when fitted
	Harshness     float64 // [1] factor on stops per kilometre
	RoomC         float64 // [°C] of the air
	Stood         bool    // overnight where it is looked at: engine cold, ground flat
	// Known tells, for each of [Backgrounds], whether the inspector was told it.
	Known [NumBackgrounds]bool
}

// A Claim is something the owner noticed; opening the job computes it and
// refuses a false one.
type Claim struct {
	ID    string // "pull", "hotter", "pedal" … see [ClaimIDs]
	Value string // "right", "front_right", "long", "sinks"
	at    Problem
}

// A Fact is something the inspector is told for sure, in words.
type Fact struct {
	ID   string // one of [Backgrounds], or "km"
	Text string
}
