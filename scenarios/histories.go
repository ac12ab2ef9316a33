package scenarios

import (
	"strings"
	"sync"

	"evenwear/physics"
)

// Histories builds many imagined cars of one design, each with one fault, and
// works out once what they share: the way driven sound, and the whole story of
// faults that mirror each other. The left and right half of a car are driven
// alike, and so are the upper and lower half of a caliper. It may be used by
// several goroutines; what it returns does not hang on the order of the calls.
type Histories struct {
	spec *physics.Spec

	mu    sync.Mutex
	sound map[soundWay]*history
	whole map[story]*history
}

// A soundWay is a car driven without a fault.
type soundWay struct {
	driven Driven
	km     float64
}

// A story is one fault on the left of a car.
type story struct {
	driven   Driven
	cause    *Cause
	severity string
	place    Place
	sinceKm  float64
}

// A history is a condition worked out at most once.
type history struct {
	once sync.Once
	cond physics.Condition
	err  error
}

// NewHistories prepares a collection without any.
func NewHistories(spec *physics.Spec) *Histories {
	return &Histories{spec: spec, sound: map[soundWay]*history{}, whole: map[story]*history{}}
}

// entry returns what m holds for key, empty when it is new.
func entry[K comparable](h *Histories, m map[K]*history, key K) *history {
	h.mu.Lock()
	defer h.mu.Unlock()
	e := m[key]
	if e == nil {
		e = &history{}
		m[key] = e
	}
	return e
}

// Build is [Build] of one fault, but for rounding: where it sits on the right
// or at a lower pin, its mirror image is built and mirrored.
func (h *Histories) Build(driven Driven, f Fault) (physics.Condition, error) {
	at, side, half := f.Severity.mirrors(f.Place)
	if !f.Felt(h.spec) {
		f.SinceKm = 0
	}
	e := entry(h, h.whole, story{driven, f.Cause, f.Severity.ID, at, f.SinceKm})
	e.once.Do(func() {
		f := f
		f.Place = at
		e.cond, e.err = h.Together(driven, []Fault{f})
	})
	cond := e.cond
	if side {
		mirrorSides(&cond)
	}
	if half {
		mirrorHalves(&cond)
	}
	return cond, e.err
}

// Together is [Build] of several faults, the way driven sound shared.
func (h *Histories) Together(driven Driven, faults []Fault) (physics.Condition, error) {
	return build(h.spec, driven, faults, func(spec *physics.Spec, cond physics.Condition, duty physics.Duty, km float64) (physics.Condition, error) {
		way := entry(h, h.sound, soundWay{driven, km})
		way.once.Do(func() { way.cond, way.err = physics.Drive(spec, cond, duty, km) })
		return way.cond, way.err
	})
}

// Kin names the story that a fault shares with its mirror images.
func Kin(c *Cause, s *Severity, p Place) string {
	at, _, _ := s.mirrors(p)
	return c.ID + "#" + s.ID + "@" + string(at)
}

// Image tells what must be mirrored to come from the first of a fault's kin to
// it: left and right, upper and lower.
func Image(s *Severity, p Place) (side, half bool) {
	_, side, half = s.mirrors(p)
	return side, half
}

// mirrors returns the mirror image of a place that stands for it: on the left,
// at the upper pin; and what must be mirrored to come back. A severity that
// names a wheel, a half or a circuit outright has no mirror image.
func (s *Severity) mirrors(p Place) (at Place, side, half bool) {
	wheel, ok := p.Wheel()
	if !ok {
		return p, false, false
	}
	sides, halves := true, true
	for _, changes := range [2][]Change{s.Start, s.End} {
		for i := range changes {
			head, key, _ := strings.Cut(changes[i].Path, ".")
			sides = sides && (head != "wheel" || !strings.Contains(key, ".")) && head != "circuit"
			halves = halves && !strings.Contains(key, "upper") && !strings.Contains(key, "lower")
		}
	}
	side = sides && wheel.Mate() < wheel
	if side {
		wheel = wheel.Mate()
	}
	at = Place(wheel.String())
	if pin, ok := p.Pin(); ok {
		half = halves && pin == physics.Lower
		at += [2]Place{".upper_pin", ".lower_pin"}[pin]
		if half {
			at = Place(wheel.String()) + ".upper_pin"
		}
	}
	return at, side, half
}

// mirrorSides changes left and right.
func mirrorSides(c *physics.Condition) {
	for w := range physics.Wheel(physics.NumWheels) {
		if mate := w.Mate(); mate < w {
			c.Wheels[w], c.Wheels[mate] = c.Wheels[mate], c.Wheels[w]
		}
	}
}

// mirrorHalves changes upper and lower at every wheel.
func mirrorHalves(c *physics.Condition) {
	swap := func(v *[2]float64) { v[physics.Upper], v[physics.Lower] = v[physics.Lower], v[physics.Upper] }
	for i := range c.Wheels {
		w := &c.Wheels[i]
		swap(&w.PinFriction)
		swap(&w.PinSwelling)
		swap(&w.PinSoaked)
		swap(&w.PinRusting)
		swap(&w.PinBend)
		swap(&w.PinPinch)
		swap(&w.PinAnchor)
		set := &w.PinAnchorSet
		set[physics.Upper], set[physics.Lower] = set[physics.Lower], set[physics.Upper]
		for pad := range 2 {
			swap(&w.Wear[pad])
			swap(&w.MuLoss[pad])
		}
	}
}
