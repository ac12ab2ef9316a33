package play

import (
	"fmt"

	"evenwear/physics"
	"evenwear/scenarios"
)

const (
	footMost   = 500   // [N] the heaviest foot of UN R13-H for passenger cars
	footRate   = 0.4   // [N/ms] how fast the foot moves to where it is sent
	turnRate   = 0.001 // [1/ms] of a turn: one turn a second, slow enough to be watched
	plotEvery  = 20    // [ms]
	plotLength = 202   // samples: the last four seconds and one beyond
	settled    = 400   // [ms] a press stands still this long before its share is compared
	comeToRest = 1000  // [ms] after the foot has left, the clock of a press runs on this long
	drivenKm   = 40000 // [km] of the car that a cause is put in
)

// A Bench is one caliper of a live car with a pedal to push: free play, so all
// of it may be shown. It is for one goroutine. Advance does not allocate.
type Bench struct {
	lib    *scenarios.Library
	words  Words
	car    *scenarios.Car
	wheel  physics.Wheel
	pins   [2]string
	cause  string // "cause@place", empty: none
	odd    bool   // the car is not healthy and new: the healthy caliper is shown beside it
	notice string

	model, healthy *physics.Model
	state, ghost   physics.State
	err            error // the physics stopped: nothing moves until something is changed

	foot    float64 // [N] now
	wanted  float64 // [N] set on the slider
	down    bool    // the foot is on the pedal
	slow    float64 // [1] how many times slower than the car
	owed    float64 // [ms] of slow motion not yet stepped
	turning bool
	turn    float64 // [1]
	timed   bool    // a press has begun and is not over yet
	clock   int64   // [ms] since this press
	still   int64   // [ms] since the foot last moved
	axial   float64
	rest    [2]float64 // [m] slide of the body at both pins when the pedal was last at rest

	plot     [plotLength]BenchSample
	first, n int // ring
	said     float64
	computed float64
	asked    float64 // [N] the force that the prediction is about
}

// NewBench lays a healthy car of this id on the bench.
func NewBench(lib *scenarios.Library, words Words, carID string) (*Bench, error) {
	car := lib.Car(carID)
	if car == nil {
		return nil, fmt.Errorf("%q: there is no such car", short(carID))
	}
	b := &Bench{lib: lib, words: words, car: car, pins: [2]string{"free", "free"}, axial: 80, wanted: 33, asked: 33, slow: 1, said: -1, computed: -1}
	var err error
	if b.healthy, err = physics.New(&car.Spec, physics.Condition{}); err != nil {
		return nil, err
	}
	return b, b.rebuild(0, b.pins, "")
}

// ends is the slide of the body at the upper and the lower pin [m].
func (b *Bench) ends() [2]float64 {
	c, at := &b.state.Corners[b.wheel], b.model.Spec().Corner(b.wheel).PinOffset
	return [2]float64{c.Y + at*c.Tilt, c.Y - at*c.Tilt}
}

// atRest reports whether no foot is on the pedal: only then is a share predicted.
func (b *Bench) atRest() bool { return !b.down && b.foot == 0 }

// Do does one act on the bench. The error is a sentence and nothing has changed.
func (b *Bench) Do(a Act) error {
	b.notice = ""
	err := b.do(a)
	if err != nil {
		b.notice = err.Error()
	}
	return err
}

func (b *Bench) do(a Act) error {
	refuse := func(id string, args ...any) error { return &Refusal{id, b.words.Say(id, args...)} }
	switch a.Do {
	case Foot:
		if !(a.N >= 0 && a.N <= footMost) {
			return refuse("no.foot_range", "most", footMost)
		}
		if b.atRest() && a.N != b.asked {
			b.asked, b.computed = a.N, -1 // another question
		}
		b.wanted, b.still = a.N, 0
	case Press:
		if b.atRest() {
			b.press()
		}
		b.down, b.still = !b.down, 0
	case Wheel:
		w, ok := wheelNamed(a.What)
		if !ok {
			return refuse("no.unknown_wheel", "what", short(a.What))
		}
		return b.rebuild(w, b.pins, b.cause)
	case Pin:
		return b.setPin(a.What, a.Text)
	case Put:
		return b.put(a.What)
	case Turn:
		b.turning = a.N != 0
	case Slow:
		if !(a.N >= 1 && a.N <= 100) {
			return refuse("no.slow_range")
		}
		b.slow = a.N
	case Say:
		if !(a.N >= 0 && a.N <= 150) {
			return refuse("no.percent_range")
		}
		if !b.atRest() {
			return refuse("no.predict_pressed")
		}
		b.said, b.computed = a.N, -1
	case Rub:
		b.said, b.computed = -1, -1
	default:
		return refuse("no.unknown_act", "act", short(string(a.Do)))
	}
	return nil
}

// press begins a press: the plot starts again, movement counts from here, and
// the axial factor is chosen for where the foot is going.
func (b *Bench) press() {
	b.clock, b.n, b.first, b.computed = 0, 0, 0, -1
	b.timed, b.asked, b.rest = true, b.wanted, b.ends()
	b.axial = b.factor(b.expected(b.wanted))
}

// expected is the caliper under the pressure a foot will make, friction of the
// pedal left out: good enough to choose a factor by.
func (b *Bench) expected(foot float64) CaliperView {
	spec := b.model.Spec()
	rod := spec.Pedal.Ratio * foot
	push := spec.Master.Efficiency * (rod + b.model.BoosterForce(rod, b.state.Vacuum))
	p := max(0, push-spec.Master.SpringPreload[0]) / (0.25 * 3.141592653589793 * spec.Master.Bore * spec.Master.Bore)
	cs, f, err := b.model.Corner(b.wheel).Settle(b.state.Corners[b.wheel], &physics.CornerLoad{Pressure: p})
	if err != nil {
		return caliper(b.model, &b.state, b.wheel)
	}
	s := b.state
	s.Corners[b.wheel], s.Forces[b.wheel], s.Pressure[b.wheel] = cs, f, p
	return caliper(b.model, &s, b.wheel)
}

// factor is the largest axial enlargement at which no lining is drawn thinner
// than three fifths of itself.
func (b *Bench) factor(c CaliperView) float64 {
	for _, f := range [...]float64{80, 40, 20, 10} {
		if fits(&c, f) {
			return f
		}
	}
	return 1
}

func fits(c *CaliperView, f float64) bool {
	for i := range 2 {
		for j := range 2 {
			if -c.Gap[i][j]*f > 0.4*c.Lining[i][j] {
				return false
			}
		}
	}
	return true
}

// Advance moves the bench on by whole milliseconds, at most a second at once.
func (b *Bench) Advance(ms int64) {
	b.owed += float64(min(ms, 1000)) / b.slow
	for ; b.owed >= 1; b.owed-- {
		if b.err != nil {
			return
		}
		b.step()
	}
}

func (b *Bench) step() {
	moved, aim := b.foot, 0.0
	if b.down {
		aim = b.wanted
	}
	switch {
	case b.foot < aim:
		b.foot = min(aim, b.foot+footRate)
	case b.foot > aim:
		b.foot = max(aim, b.foot-4*footRate) // a foot leaves faster than it comes
	}
	if b.foot != moved {
		b.still = 0
	} else {
		b.still++
	}
	if b.timed = b.timed && (b.down || b.foot > 0 || b.still < comeToRest); b.timed {
		b.clock++
	}
	in := physics.Input{Foot: b.foot, Engine: true}
	if b.turning {
		b.turn += turnRate
		if b.turn >= 1 {
			b.turn--
		}
		for w := range b.state.Turn {
			b.state.Turn[w], b.ghost.Turn[w] = b.turn, b.turn
		}
	}
	s, err := b.model.Step(b.state, in, 1)
	if err == nil {
		b.state = s
		s, err = b.healthy.Step(b.ghost, in, 1)
	}
	if err != nil {
		b.err, b.notice = err, err.Error()
		return
	}
	b.ghost = s
	f := &b.state.Forces[b.wheel]
	if b.timed && b.clock%plotEvery == 0 {
		b.sample(BenchSample{float64(b.clock) / 1000, b.state.Pressure[b.wheel] / physics.Megapascal, f.Inner() / 1000, f.Outer() / 1000})
	}
	if b.said >= 0 && b.computed < 0 && b.foot > 0 && b.foot == b.asked && b.still >= settled && f.Inner() > 0 {
		b.computed = 100 * f.Outer() / f.Inner()
	}
}

func (b *Bench) sample(p BenchSample) {
	b.plot[(b.first+b.n)%plotLength] = p
	if b.n < plotLength {
		b.n++
		return
	}
	b.first = (b.first + 1) % plotLength
}
