package play

import (
	"fmt"
	"slices"
	"strings"

	"evenwear/physics"
	"evenwear/scenarios"
)

const (
	sampleAfter = 600  // [ms] the foot stands still before a figure is taken
	freeAfter   = 1000 // [ms] the pedal has been free before the disc is turned
	turnFor     = 1000 // [ms] the disc then turns: once
)

// A Lesson walks a learner over the bench: each step sets the car, asks what
// will come, works the pedal and shows it. It is a [Bench] whose pedal the
// lesson works. It is for one goroutine.
type Lesson struct {
	*Bench
	lesson *scenarios.Lesson
	at     int         // step
	cars   []lessonCar // as each step that was reached has it
	said   []float64   // answers to this step's question
	got    []float64   // computed so far
	stage  lessonStage
	nth    int   // of the step's presses, the one that is on
	turned int64 // [ms] the disc has turned
}

// A lessonCar is the car of a step: as it is, and as it would be had it never been
// driven. The second is drawn until the learner has said what will come, else the
// drawing would tell what the drive has done.
type lessonCar struct{ is, undriven physics.Condition }

// A lessonStage is how far a step has come.
type lessonStage int

const (
	asking lessonStage = iota
	running
	shown
)

// NewLesson begins a lesson.
func NewLesson(lib *scenarios.Library, words Words, id string) (*Lesson, error) {
	l := lib.Lesson(id)
	if l == nil {
		known := make([]string, len(lib.Lessons))
		for i, x := range lib.Lessons {
			known[i] = x.ID
		}
		return nil, fmt.Errorf("%q: there is no such lesson; there are %s", short(id), strings.Join(known, ", "))
	}
	b, err := NewBench(lib, words, l.Car.ID)
	if err != nil {
		return nil, err
	}
	x := &Lesson{Bench: b, lesson: l}
	return x, x.begin(0)
}

// begin sets the car of a step. When that fails nothing has changed.
func (l *Lesson) begin(at int) error {
	if at == len(l.cars) {
		var was, c lessonCar
		var err error
		if at > 0 {
			was = l.cars[at-1]
		}
		s := &l.lesson.Steps[at]
		if c.is, err = s.Put(l.lesson, was.is); err != nil {
			return err
		}
		if c.undriven, err = s.Change(l.lesson, was.undriven); err != nil {
			return err
		}
		l.cars = append(l.cars, c)
	}
	if err := l.put(at, l.cars[at].undriven); err != nil {
		return err
	}
	l.at, l.said, l.got, l.stage, l.turning, l.turned = at, nil, nil, asking, false, 0
	l.enlarge()
	return nil
}

// put lays the car of a step on the bench. When that fails nothing has changed.
func (l *Lesson) put(at int, cond physics.Condition) error {
	if !l.lesson.Steps[at].Vacuum {
		cond.BoosterLoss = 1
	}
	if err := l.lay(l.lesson.Wheel, cond); err != nil {
		return err
	}
	l.odd = cond != physics.Condition{}
	return nil
}

// enlarge chooses the factor of the axial movement for the hardest press of the step.
func (l *Lesson) enlarge() {
	l.axial = l.factor(l.expected(slices.Max(append(slices.Clone(l.step().Press), 1))))
}

// undriven reports whether the car is drawn as it was before it was driven.
func (l *Lesson) undriven() bool {
	return l.stage == asking && l.cars[l.at].is != l.cars[l.at].undriven
}

func (l *Lesson) step() *scenarios.LessonStep { return &l.lesson.Steps[l.at] }

func (l *Lesson) quantity() *scenarios.Quantity { return scenarios.FindQuantity(l.step().Ask.Of) }

// answers is how many the question wants.
func (l *Lesson) answers() int {
	if l.step().Ask.Kind == "curve" {
		return len(l.step().Press)
	}
	return 1
}

// Do does one act of a lesson. The error is a sentence and nothing has changed.
func (l *Lesson) Do(a Act) error {
	l.notice = ""
	err := l.do(a)
	if err != nil {
		l.notice = err.Error()
	}
	return err
}

func (l *Lesson) do(a Act) error {
	refuse := func(id string, args ...any) error { return &Refusal{id, l.words.Say(id, args...)} }
	if l.stage == running {
		return refuse("lesson.wait")
	}
	switch a.Do {
	case Answer:
		if l.stage != asking {
			return refuse("lesson.seen")
		}
		q, lo, hi := l.quantity(), 0.0, 0.0
		if lo, hi = q.Lo, q.Hi; l.step().Ask.Kind == "choice" {
			lo, hi = 1, float64(len(l.step().Ask.Choices))
			a.N = float64(int(a.N))
		}
		if !(a.N >= lo && a.N <= hi) {
			return refuse("lesson.range", "lo", fixed(lo, 0), "hi", fixed(hi, 0))
		}
		if len(l.said) == l.answers() {
			l.said = nil
		}
		l.said = append(l.said, a.N)
	case Rub:
		if l.stage == asking {
			l.said = nil
		}
	case Run:
		if l.stage == shown {
			return refuse("lesson.seen")
		}
		if len(l.said) < l.answers() {
			return refuse("lesson.answer_first")
		}
		return l.run()
	case Next:
		if l.stage != shown {
			return refuse("lesson.see_first")
		}
		if l.at+1 == len(l.lesson.Steps) {
			return refuse("lesson.last")
		}
		return l.begin(l.at + 1)
	case Before:
		if l.at == 0 {
			return refuse("lesson.first")
		}
		return l.begin(l.at - 1)
	case Slow:
		return l.Bench.do(a)
	default:
		return refuse("no.unknown_act", "act", short(string(a.Do)))
	}
	return nil
}

// run lets the driven car be seen and begins to work the pedal.
func (l *Lesson) run() error {
	if l.undriven() {
		if err := l.put(l.at, l.cars[l.at].is); err != nil {
			return err
		}
		l.enlarge()
	}
	l.stage, l.nth, l.got = running, 0, nil
	if len(l.step().Press) == 0 {
		l.end()
		return nil
	}
	l.wanted = l.step().Press[0]
	l.Bench.press()
	l.down, l.still = true, 0
	return nil
}

// Running reports whether the pedal is being worked.
func (l *Lesson) Running() bool { return l.stage == running }

// Advance moves the bench on and the foot to what comes next.
func (l *Lesson) Advance(ms int64) {
	for range min(ms, 1000) {
		l.Bench.Advance(1)
		if l.stage == running {
			l.work()
		}
	}
}

// work decides what the foot does next.
func (l *Lesson) work() {
	s := l.step()
	switch {
	case l.err != nil:
		l.stage = asking // the bench tells why it stands
	case l.turning:
		if l.turned++; l.turned >= turnFor {
			l.turning = false
			l.end()
		}
	case l.down && l.foot == l.wanted && l.still >= sampleAfter:
		if s.Ask.Kind == "curve" {
			l.take()
		}
		if l.nth++; l.nth < len(s.Press) {
			l.wanted, l.still = s.Press[l.nth], 0
			return
		}
		if !s.Release {
			l.end()
			return
		}
		l.down, l.still = false, 0
	case !l.down && l.foot == 0 && l.still >= freeAfter:
		l.turning, l.turned = true, 0
	}
}

// take notes the quantity as it is now.
func (l *Lesson) take() {
	v, err := quantities[l.step().Ask.Of](l.Bench)
	if err != nil {
		l.err, l.notice = err, err.Error()
		return
	}
	l.got = append(l.got, v)
}

// end shows what came.
func (l *Lesson) end() {
	if len(l.got) < l.answers() {
		l.take()
	}
	l.stage = shown
}

// quantities are what can be asked for, in the units of [scenarios.Quantities].
var quantities = map[string]func(*Bench) (float64, error){
	"outer_share_percent": func(b *Bench) (float64, error) {
		f := &b.state.Forces[b.wheel]
		if f.Inner() <= 0 {
			return 0, nil
		}
		return 100 * f.Outer() / f.Inner(), nil
	},
	"inner_kn":     func(b *Bench) (float64, error) { return b.state.Forces[b.wheel].Inner() * perKN, nil },
	"outer_kn":     func(b *Bench) (float64, error) { return b.state.Forces[b.wheel].Outer() * perKN, nil },
	"pressure_mpa": func(b *Bench) (float64, error) { return b.state.Pressure[b.wheel] / physics.Megapascal, nil },
	"pedal_mm":     func(b *Bench) (float64, error) { return b.model.PedalTravel(&b.state) * perMm, nil },
	"body_slid_mm": func(b *Bench) (float64, error) {
		e := b.ends()
		return (e[0] + e[1] - b.rest[0] - b.rest[1]) / 2 * perMm, nil
	},
	"drag_n": func(b *Bench) (float64, error) {
		t, err := b.model.TurnTorque(&b.state, b.wheel)
		return t / b.car.Spec.Body.TyreRadius, err
	},
	"level_percent":   func(b *Bench) (float64, error) { return 100 * b.model.Level(&b.state), nil },
	"lining_inner_mm": func(b *Bench) (float64, error) { return b.lining(physics.Inner, 0.5, 0.5), nil },
	"lining_outer_mm": func(b *Bench) (float64, error) { return b.lining(physics.Outer, 0.5, 0.5), nil },
	"inner_taper_mm":  func(b *Bench) (float64, error) { return b.lining(physics.Inner, 1, -1), nil },
	"outer_taper_mm":  func(b *Bench) (float64, error) { return b.lining(physics.Outer, 1, -1), nil },
}

// lining weighs what is left of the upper and lower half of a pad's lining [mm].
func (b *Bench) lining(pad int, upper, lower float64) float64 {
	c := caliper(b.model, &b.state, b.wheel)
	return upper*c.Lining[pad][physics.Upper] + lower*c.Lining[pad][physics.Lower]
}
