package play

// An Act is one thing a learner does. A session is its seed and its acts:
// nothing derived and no wall time stands in it.
type Act struct {
	Do   Verb    `json:"do"`
	What string  `json:"what,omitempty"` // id of what it is done to
	Text string  `json:"text,omitempty"` // what was written
	N    float64 `json:"n,omitempty"`    // a number that belongs to the act
}

// A Verb is the kind of an act.
type Verb string

// The verbs. What names, in this order: a place, a preparation, a check instance, …
const (
	Go       Verb = "go"       // What: place "bonnet", "seat", "front_left" … "road", "ground"
	Prepare  Verb = "prepare"  // What: preparation id, "chock_rear", "lift_front", "wheel_off@front_left" …
	Check    Verb = "check"    // What: check instance, "lining_outer_upper@front_left"
	Write    Verb = "write"    // What: check instance; Text: figure or word as read
	Skip     Verb = "skip"     // What: check instance: not read
	Strike   Verb = "strike"   // N: line of the notebook
	OpenCall Verb = "call"     // to the call sheet
	Back     Verb = "back"     // from the call sheet to the car
	Row      Verb = "row"      // What: "cause@place": open a row
	DropRow  Verb = "drop"     // What: "cause@place"
	Counter  Verb = "counter"  // What: "cause@place"; N: new number of counters
	Seal     Verb = "seal"     // seal the belief
	Remedy   Verb = "remedy"   // What: "remedy@place"
	DropRem  Verb = "unremedy" // What: "remedy@place"
	Work     Verb = "work"     // do the remedies
	Release  Verb = "release"  // What: release id
	Tell     Verb = "tell"     // Text: what the owner is told
	HandOver Verb = "handover" // ends the job

	// On the bench.
	Foot  Verb = "foot"  // N: newtons wanted on the pedal, kept while it is let go
	Press Verb = "press" // press with that force, or let go
	Pin   Verb = "pin"   // What: "upper" or "lower"; Text: "free", "dry" or "stuck"
	Put   Verb = "put"   // What: "cause@place" put in alone; empty: none
	Wheel Verb = "wheel" // What: the wheel whose caliper is on the bench
	Say   Verb = "say"   // N: share predicted [%]
	Rub   Verb = "rub"   // rub the prediction out
	Turn  Verb = "turn"  // N: 1 the disc turns, 0 it stands
	Slow  Verb = "slow"  // N: how many times slower than the car, 1 or more

	// In a lesson.
	Answer Verb = "answer" // N: what was asked for; of a choice, its number from 1; of a curve, one point after the other
	Run    Verb = "run"    // work the pedal and see
	Next   Verb = "next"   // to the next step
	Before Verb = "before" // to the step before
)
