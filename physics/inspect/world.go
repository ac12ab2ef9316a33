package inspect

import (
	"fmt"
	"sync"

	"evenwear/physics"
)

// A World is one car at one moment, with the experiments that several checks
// share computed at most once.
type World struct {
	Model *physics.Model
	Rest  physics.State
	cache *worldCache // shared by the worlds of a [Memo] that are braked alike
	fine  bool        // every step 1 ms: the reference of the tests
	ran   bool        // an experiment had the engine running
}

// NewWorld works a condition into a car and lets it stand, engine idling, at
// 20 °C, pedal free.
func NewWorld(spec *physics.Spec, cond physics.Condition) (*World, error) {
	m, err := physics.New(spec, cond)
	if err != nil {
		return nil, err
	}
	rest, err := m.Rest()
	if err != nil {
		return nil, err
	}
	return &World{Model: m, Rest: rest, cache: &worldCache{}}, nil
}

// Clone returns a world for one more goroutine. What either computes serves both.
func (w *World) Clone() *World {
	c := *w
	return &c
}

// A CheckError says which check failed.
type CheckError struct {
	Check Instance
	Err   error
}

func (e *CheckError) Error() string { return fmt.Sprintf("check %s: %v", e.Check, e.Err) }
func (e *CheckError) Unwrap() error { return e.Err }

// Measure makes a check and returns the noise-free answer [SI]. A car that the
// physics cannot settle and an answer that is no number are a *[CheckError].
func (w *World) Measure(i Instance) (float64, error) {
	c, ok := Find(i.Check)
	switch {
	case !ok:
		return 0, &UnknownError{i.String(), UnknownCheck}
	case c.PerWheel != i.PerWheel:
		return 0, &CheckError{i, fmt.Errorf("at a wheel: %t, want %t", i.PerWheel, c.PerWheel)}
	case i.Wheel < 0 || i.Wheel >= physics.NumWheels:
		return 0, &CheckError{Instance{Check: i.Check}, fmt.Errorf("no wheel %d", int(i.Wheel))}
	}
	v, err := c.Measure(w, i.Wheel)
	if err == nil && v-v != 0 { // only NaN and infinities
		err = fmt.Errorf("the answer is %v, no number", v)
	}
	if err != nil {
		return 0, &CheckError{i, err}
	}
	return v, nil
}

// worldCache holds the experiments that several checks share, or that take long.
// It may be used by several goroutines.
//
// An experiment kept here answers for every car that is braked alike (see
// braked): it must read nothing else of the condition. What a check reads besides,
// it reads outside of get. TestMemo holds every check to that.
type worldCache struct {
	press    once[pressed]
	held     once[held]
	spent    once[spent]
	released once[physics.State]
	turned   [physics.NumWheels]once[turned]
	creep    once[creep]
	stop     once[physics.StopResult]
	slow     once[physics.StopResult]
	tour     once[physics.State]
	pumped   once[float64] // [m]
	assisted once[float64] // [m]
	reserve  once[float64] // [m]
	free     once[float64] // [m]
	bent     once[float64] // [m]
	risen    once[float64] // [m]
	braced   once[[physics.NumWheels]float64]
}

// once is the answer of an experiment that has or has not been made.
type once[T any] struct {
	once  sync.Once
	value T
	err   error
}

func (o *once[T]) get(make func() (T, error)) (T, error) {
	o.once.Do(func() { o.value, o.err = make() })
	return o.value, o.err
}
