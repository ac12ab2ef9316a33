package cars

import (
	"testing"

	"evenwear/physics"
	"evenwear/tests/published"
)

// TestOutsideDrag: OC-150, what a sound wheel may drag once the foot is off. A
// workshop manual of a light truck (stored page hitpages.com/doc/4503832897781760,
// "Measurement of disc brake drag torque") lets it have 9.8 N·m about 5 s after the
// release and 6.9 N·m after ten turns of the disc: the turns take drag away, because
// the pad that its pins still hold against the disc is pushed back by the run-out.
// Passenger cars' manuals hold the pedal with about 200 N for 5 s and turn the disc
// ten times, too. Dry pins would fail it.
func TestOutsideDrag(t *testing.T) {
	const manual = "workshop manual of a light truck, drag torque of disc brakes"
	every(t, func(t *testing.T, spec *physics.Spec) {
		drags := func(cond physics.Condition, w physics.Wheel) (released, turned float64) {
			m, s := model(t, spec, cond)
			s = press(t, m, s, physics.Input{Foot: 200, Engine: true}, 5)
			s = run(t, m, s, physics.Input{Engine: true}, 5, 1)
			released = m.WheelTorque(&s, w)
			s.Speed = 1
			turns := 10 * 2 * 3.15 * spec.Body.TyreRadius // [m]
			s = run(t, m, s, physics.Input{Engine: true, Hold: true}, turns, 5)
			turned, err := m.TurnTorque(&s, w)
			if err != nil {
				t.Fatal(err)
			}
			return released, turned
		}
		var dry physics.Condition
		for w := range dry.Wheels {
			dry.Wheels[w].PinFriction = [2]float64{300, 300}
		}
		for _, c := range corners(spec) {
			released, turned := drags(physics.Condition{}, c.wheel)
			worse, worst := drags(dry, c.wheel)
			published.Bracket{ID: of(t, "OC-150 "+c.name+" released, N·m"), Source: manual, Got: released, Lo: 0, Hi: 9.8, Wrong: worse}.Check(t)
			published.Bracket{ID: of(t, "OC-150 "+c.name+" after ten turns, N·m"), Source: manual, Got: turned, Lo: 0, Hi: 6.9, Wrong: worst}.Check(t)
			if !(turned < 0.7*released) {
				t.Errorf("%s: %.3f N·m after ten turns, %.3f before: they take less away than 9.8 to 6.9 N·m (%s)", c.name, turned, released, manual)
			}
		}
	})
}
