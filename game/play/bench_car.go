package play

import (
	"slices"
	"strings"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// The car on the bench: healthy, or with what has been put in.

// pinFriction is what is added to a pin's sliding force [N].
var pinFriction = []struct {
	id    string
	force float64
}{{"free", 0}, {"dry", 235}, {"stuck", 20000}}

// condition is the healthy car with what has been put in, the pins at wheel w.
func (b *Bench) condition(w physics.Wheel, pins [2]string, cause string) (physics.Condition, error) {
	var cond physics.Condition
	if cause != "" {
		id, at, _ := strings.Cut(cause, "@")
		c := b.lib.Cause(id)
		if c == nil || !slices.Contains(c.Places, scenarios.Place(at)) {
			return cond, &Refusal{"no.unknown_row", b.words.Say("no.unknown_row", "what", short(cause))}
		}
		world, err := benchWorld(b.car, c, scenarios.Place(at))
		if err != nil {
			return cond, err
		}
		cond = world.Model.Condition()
	}
	for i, p := range pins {
		force, _ := addedForce(p)
		cond.Wheels[w].PinFriction[i] += force
		if p == "stuck" { // it seized when the caliper was new: this end does not follow the lining
			cond.Wheels[w].PinAnchorSet[i] = true
		}
	}
	return cond, nil
}

// benchWorld is a car driven with the worst severity of a cause, pads half worn.
func benchWorld(car *scenarios.Car, c *scenarios.Cause, at scenarios.Place) (*inspect.World, error) {
	driven := scenarios.Vary(scenarios.Driven{Km: drivenKm}, nil)
	bad := c.Severities[len(c.Severities)-1]
	return buildWorld(car, driven, []scenarios.Fault{{Cause: c, Place: at, Severity: bad, SinceKm: since(c, driven, nil)}})
}

// rebuild makes the car anew, released, with wheel w on the bench, these pins
// and this cause. When that fails nothing has changed.
func (b *Bench) rebuild(w physics.Wheel, pins [2]string, cause string) error {
	cond, err := b.condition(w, pins, cause)
	if err != nil {
		return err
	}
	if err := b.lay(w, cond); err != nil {
		return err
	}
	b.pins, b.cause = pins, cause
	b.odd = cause != "" || pins != [2]string{"free", "free"}
	return nil
}

// lay lays a car in this condition on the bench, released, with wheel w's caliper
// to look at. When that fails nothing has changed.
func (b *Bench) lay(w physics.Wheel, cond physics.Condition) error {
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
	b.wheel, b.err = w, nil
	b.foot, b.down, b.timed, b.clock, b.still, b.n, b.first = 0, false, false, 0, 0, 0, 0
	b.said, b.computed, b.asked = -1, -1, b.wanted
	b.rest = b.ends()
	return nil
}

// setPin sets a pin by hand. What a cause does to the pin stays: it cannot be
// set to less.
func (b *Bench) setPin(which, state string) error {
	unknown := &Refusal{"no.unknown_pin", b.words.Say("no.unknown_pin", "what", short(which))}
	i := slices.Index([]string{"upper", "lower"}, which)
	force, known := addedForce(state)
	if i < 0 || !known {
		return unknown
	}
	now, _ := addedForce(b.pins[i])
	cond := b.model.Condition()
	wheel := &cond.Wheels[b.wheel]
	if is := pinState(wheel, i, wheel.PinGrip(i)-now+force); is != state {
		return &Refusal{"no.pin_held", b.words.Say("no.pin_held", "is", b.words.Say("bench.pin_"+is))}
	}
	pins := b.pins
	pins[i] = state
	return b.rebuild(b.wheel, pins, b.cause)
}

// addedForce is what a pin set so adds to its sliding force [N].
func addedForce(state string) (float64, bool) {
	for _, f := range pinFriction {
		if f.id == state {
			return f.force, true
		}
	}
	return 0, false
}

// put puts a cause in and lays a caliper on the bench that it concerns; none
// makes the whole car healthy, pins set by hand among it.
func (b *Bench) put(cause string) error {
	if cause == "" {
		return b.rebuild(b.wheel, [2]string{"free", "free"}, "")
	}
	w := b.wheel
	if _, at, ok := strings.Cut(cause, "@"); ok {
		if touched := scenarios.Place(at).Wheels(&b.car.Spec); len(touched) > 0 && !slices.Contains(touched, w) {
			w = touched[0]
		}
	}
	turned := w != b.wheel
	if err := b.rebuild(w, b.pins, cause); err != nil {
		return err
	}
	if turned {
		b.notice = b.words.Say("bench.turned_to", "wheel", b.words.Say("place."+w.String()))
	}
	return nil
}
