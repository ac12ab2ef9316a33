package inspect

import "evenwear/physics"

// The steps of the reduced experiments [ms]: short while the foot presses, long
// while it rests. The step is implicit, so a resting
// pedal loses nothing by long steps; a test holds both against 1 ms.
const (
	short = 20
	long  = 1000
)

// A foot works a copy of the car's pedal and remembers the first thing that
// went wrong, so that an experiment reads as its list of movements.
type foot struct {
	m      *physics.Model
	s      physics.State
	engine bool
	hold   bool    // the car is kept at its speed
	force  float64 // [N] now
	fine   bool    // every step 1 ms: the reference of the tests
	err    error
	each   func(s *physics.State, seconds float64) // after every step; nil: nothing
}

func (w *World) foot(engine bool) *foot {
	w.ran = w.ran || engine
	return &foot{m: w.Model, s: w.Rest, engine: engine, fine: w.fine}
}

// to moves the foot evenly to a force [N] within ms milliseconds.
func (f *foot) to(force float64, ms int64) { f.ramp(force, ms, short) }

// letGo takes the foot off within ms milliseconds, in steps of dt: short ones,
// because fluid rushes past cups and through a hose that closes.
func (f *foot) letGo(ms, dt int64) { f.ramp(0, ms, dt) }

func (f *foot) ramp(force float64, ms, dt int64) {
	from := f.force
	dt = f.step(dt)
	for t := dt; t <= ms; t += dt {
		f.force = from + float64((force-from)*float64(t)/float64(ms))
		f.do(dt)
	}
	f.force = force
}

// rest keeps the foot where it is for ms milliseconds, in steps of at most dt.
func (f *foot) rest(ms, dt int64) {
	dt = f.step(dt)
	for t := dt; t <= ms; t += dt {
		f.do(dt)
	}
}

// calm is rest in steps that double from short on: what moved the foot dies away.
func (f *foot) calm(ms int64) {
	dt := f.step(short)
	for left := ms; left > 0; left -= dt {
		if !f.fine && left < ms {
			dt *= 2
		}
		dt = min(dt, left)
		f.do(dt)
	}
}

func (f *foot) step(dt int64) int64 {
	if f.fine {
		return 1
	}
	return dt
}

func (f *foot) do(dt int64) {
	if f.err != nil {
		return
	}
	f.s, f.err = f.m.Step(f.s, physics.Input{Foot: f.force, Engine: f.engine, Hold: f.hold}, dt)
	if f.err == nil && f.each != nil {
		f.each(&f.s, float64(dt)/1000)
	}
}

// travel is the pedal's travel [m].
func (f *foot) travel() float64 { return f.m.PedalTravel(&f.s) }

// stroke is one brisk press to force [N] and release, a second long; it
// returns the travel at its end [m].
func (f *foot) stroke(force float64) float64 {
	f.to(force, 200)
	f.calm(300)
	t := f.travel()
	f.letGo(100, 5)
	f.rest(20, 1) // fluid rushes past the cups: 20 ms at once would let too much by
	f.calm(380)
	return t
}
