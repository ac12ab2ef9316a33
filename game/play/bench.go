package play

import (
	"fmt"
	"slices"
	"strings"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

const (
	footMost   = 500   // [N] the heaviest foot of UN R13-H for passenger cars
	footRate   = 0.4   // [N/ms] how fast the foot moves to where it is sent
	turnRate   = 0.001 // [1/ms] of a turn: one turn a second, slow enough to be watched
	plotEvery  = 20    // [ms]
	plotLength = 200   // samples: four seconds
	settled    = 400   // [ms] a press stands still this long before its share is compared
)

// pinFriction is what is added to a pin's sliding force [N].
var pinFriction = []struct {
	id    string
	force float64
}{{"free", 0}, {"dry", 235}, {"stuck", 20000}}

// A Bench is one caliper of a live car with a pedal to push: free play, so all
// of it may be shown. It is for one goroutine. Advance does not allocate.
type Bench struct {
	lib    *scenarios.Library
	words  Words
	car    *scenarios.Car
	wheel  physics.Wheel
	pins   [2]string
	cause  string // "cause@place", empty: none
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
	clock   int64   // [ms] since this press
	still   int64   // [ms] since the foot last moved
	axial   float64

	plot     [plotLength]BenchSample
	first, n int // ring
	said     float64
	computed float64
}

// NewBench lays a healthy car of this id on the bench.
func NewBench(lib *scenarios.Library, words Words, carID string) (*Bench, error) {
	car := lib.Car(carID)
	if car == nil {
		return nil, fmt.Errorf("%q: there is no such car", short(carID))
	}
	b := &Bench{lib: lib, words: words, car: car, pins: [2]string{"free", "free"}, axial: 80, wanted: 33, slow: 1, said: -1, computed: -1}
	var err error
	if b.healthy, err = physics.New(&car.Spec, physics.Condition{}); err != nil {
		return nil, err
	}
	return b, b.rebuild(b.pins, "")
}

// condition is the healthy car with what has been put in.
func (b *Bench) condition(pins [2]string, cause string) (physics.Condition, error) {
	var cond physics.Condition
	if cause != "" {
		id, at, _ := strings.Cut(cause, "@")
		c := b.lib.Cause(id)
		if c == nil || !slices.Contains(c.Places, scenarios.Place(at)) {
			return cond, &Refusal{"no.unknown_row", b.words.Say("no.unknown_row", "what", short(cause))}
		}
		w, err := benchWorld(b.car, c, scenarios.Place(at))
		if err != nil {
			return cond, err
		}
		cond = w.Model.Condition()
	}
	for i, p := range pins {
		for _, f := range pinFriction {
			if f.id == p {
				cond.Wheels[b.wheel].PinFriction[i] += f.force
				if p == "stuck" { // it seized when the caliper was new: this end does not follow the lining
					cond.Wheels[b.wheel].PinAnchorSet[i] = true
				}
			}
		}
	}
	return cond, nil
}

// benchWorld is a car driven with the worst severity of a cause, pads half worn.
func benchWorld(car *scenarios.Car, c *scenarios.Cause, at scenarios.Place) (*inspect.World, error) {
	driven := scenarios.Vary(scenarios.Driven{Km: 40000}, nil)
	bad := c.Severities[len(c.Severities)-1]
	return buildWorld(car, driven, []scenarios.Fault{{Cause: c, Place: at, Severity: bad, SinceKm: since(c, driven, nil)}})
}

// rebuild makes the car anew, released, with these pins and this cause. When
// that fails nothing has changed.
func (b *Bench) rebuild(pins [2]string, cause string) error {
	cond, err := b.condition(pins, cause)
	if err != nil {
		return err
	}
	m, err := physics.New(&b.car.Spec, cond)
	if err != nil {
		return err
	}
	s, err := m.Rest()
	if err != nil {
		return err
	}
	g, err := b.healthy.Rest()
	if err != nil {
		return err
	}
	b.model, b.state, b.ghost = m, s, g
	b.pins, b.cause, b.err = pins, cause, nil
	b.foot, b.down, b.clock, b.still, b.n, b.first = 0, false, 0, 0, 0, 0
	b.said, b.computed = -1, -1
	return nil
}

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
		b.wanted, b.still = a.N, 0
	case Press:
		if b.down = !b.down; b.down && b.foot == 0 {
			b.press(b.wanted)
		}
		b.still = 0
	case Wheel:
		w, ok := wheelNamed(a.What)
		if !ok {
			return refuse("no.unknown_wheel", "what", short(a.What))
		}
		old := b.wheel
		b.wheel = w
		if err := b.rebuild(b.pins, b.cause); err != nil {
			b.wheel = old
			return err
		}
	case Pin:
		pins := b.pins
		which, state := a.What, a.Text
		known := slices.ContainsFunc(pinFriction, func(f struct {
			id    string
			force float64
		}) bool {
			return f.id == state
		})
		switch {
		case !known:
			return refuse("no.unknown_pin", "what", short(a.What))
		case which == "upper":
			pins[physics.Upper] = state
		case which == "lower":
			pins[physics.Lower] = state
		default:
			return refuse("no.unknown_pin", "what", short(a.What))
		}
		return b.rebuild(pins, b.cause)
	case Put:
		return b.rebuild(b.pins, a.What)
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
		b.said, b.computed = a.N, -1
	case Rub:
		b.said, b.computed = -1, -1
	default:
		return refuse("no.unknown_act", "act", short(string(a.Do)))
	}
	return nil
}

// press begins a press: the plot starts again and the axial factor is chosen
// for where the foot is going.
func (b *Bench) press(aim float64) {
	b.clock, b.n, b.first, b.computed = 0, 0, 0, -1
	b.axial = b.factor(b.expected(aim))
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
	b.clock++
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
	if b.clock%plotEvery == 0 {
		b.sample(BenchSample{float64(b.clock) / 1000, b.state.Pressure[b.wheel] / physics.Megapascal, f.Inner() / 1000, f.Outer() / 1000})
	}
	if b.said >= 0 && b.computed < 0 && b.foot > 0 && b.still >= settled && f.Inner() > 0 {
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
