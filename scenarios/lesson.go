package scenarios

import "evenwear/physics"

// A Lesson is an ordered walk on the bench: at each step something is set, the
// learner says beforehand what will come, the pedal is worked, and they look.
type Lesson struct {
	ID, Title string
	About     string  // what it is about, in a sentence
	Order     float64 // [1] lessons are offered in its order, those that share it by id
	Car       *Car
	Wheel     physics.Wheel // whose caliper is on the bench
	Steps     []LessonStep
	End       string // what was shown, and what to practise next; empty: nothing is said
}

// A LessonStep is one of them. What it asks is answered by the physics: a file
// has no key for the answer.
type LessonStep struct {
	Tell    string   // what is set and why
	Fresh   bool     // the car begins new and healthy again
	Set     []Change // what is then changed, at the lesson's wheel
	DriveKm float64  // [km] driven after that
	Ask     Question
	Press   []float64 // [N] forces the pedal is pressed with, one after the other; none: it stays free
	Release bool      // the pedal is let go at the end, and a turn of the disc made
	Vacuum  bool      // the booster has its vacuum
	Look    string    // what to look at
}

// A Question asks what a quantity will be.
type Question struct {
	Kind    string // "number", "choice" or "curve"
	Of      string // id of a [Quantity]
	Text    string
	Choices []string  // of a choice, in rising order of the quantity …
	Cuts    []float64 // [its unit] … and what parts them
}

// QuestionKinds are the kinds of questions. A curve asks for a number at each of
// the step's presses.
var QuestionKinds = []string{"number", "choice", "curve"}

// A Quantity is what the bench can be asked for.
type Quantity struct {
	ID     string
	Unit   string
	Lo, Hi float64 // what can be said
	Near   float64 // within this, what was said was right
	Digits int     // shown behind the point
}

// Quantities is every one of them. "near" is a judgement: about what a careful
// guesser could reach.
var Quantities = []Quantity{
	{"outer_share_percent", "%", 0, 150, 5, 0},
	{"inner_kn", "kN", 0, 60, 0.5, 2},
	{"outer_kn", "kN", 0, 60, 0.5, 2},
	{"pressure_mpa", "MPa", 0, 20, 0.3, 2},
	{"pedal_mm", "mm", 0, 200, 4, 0},
	{"body_slid_mm", "mm", -2, 2, 0.03, 2},
	{"drag_n", "N", 0, 2000, 15, 0},
	{"level_percent", "%", -200, 200, 8, 0},
	{"lining_inner_mm", "mm", 0, 25, 0.4, 1},
	{"lining_outer_mm", "mm", 0, 25, 0.4, 1},
	{"outer_taper_mm", "mm", -20, 20, 0.3, 1},
	{"inner_taper_mm", "mm", -20, 20, 0.3, 1},
}

// FindQuantity returns a quantity by its id, or nil.
func FindQuantity(id string) *Quantity {
	for i := range Quantities {
		if Quantities[i].ID == id {
			return &Quantities[i]
		}
	}
	return nil
}

// Put makes the step's changes and drives the car; was is how the last step left it.
func (s *LessonStep) Put(l *Lesson, was physics.Condition) (physics.Condition, error) {
	cond, err := s.Change(l, was)
	if err == nil && s.DriveKm > 0 {
		return physics.Drive(&l.Car.Spec, cond, physics.MixedDuty(), s.DriveKm)
	}
	return cond, err
}

// Change makes the step's changes and does not drive the car.
func (s *LessonStep) Change(l *Lesson, was physics.Condition) (physics.Condition, error) {
	cond := was
	if s.Fresh {
		cond = physics.Condition{}
	}
	for i := range s.Set {
		if err := s.Set[i].apply(&l.Car.Spec, &cond, Place(l.Wheel.String()), 1); err != nil {
			return was, err
		}
	}
	return cond, nil
}
