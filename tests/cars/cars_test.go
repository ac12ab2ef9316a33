// Package cars holds every car of the library to what any car must do: the rules
// of the road, what a mechanic would call plausible, and instruments that can
// show it. A law of brakes is tested in physics; this is about the numbers in
// scenarios/cars.
package cars

import (
	"path"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
	"evenwear/scenarios"
)

const (
	mm  = physics.Millimetre
	cm3 = physics.CubicCentimetre
)

// every runs a test on each car of the library.
func every(t *testing.T, test func(t *testing.T, spec *physics.Spec)) {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	if len(lib.Cars) < 3 {
		t.Fatalf("%d cars, want three", len(lib.Cars))
	}
	for _, c := range lib.Cars {
		t.Run(c.ID, func(t *testing.T) { test(t, &c.Spec) })
	}
}

// of adds to a row's name the car it is of.
func of(t *testing.T, id string) string { return id + ", " + path.Base(t.Name()) }

var model, run = physicstest.Rest, physicstest.Run

// press brings the foot down in 0.3 s and holds it to the end of seconds.
func press(t testing.TB, m *physics.Model, s physics.State, in physics.Input, seconds float64) physics.State {
	t.Helper()
	return physicstest.Press(t, m, s, in, seconds, 20)
}

// stop is a stop from 100 km/h.
func stop(t testing.TB, m *physics.Model, s physics.State, plan physics.StopPlan) physics.StopResult {
	t.Helper()
	plan.Speed = 100 * physics.KmPerHour
	r, err := m.Stop(s, plan)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// lost is a car whose joint leaks so much at a wheel that its circuit holds nothing.
func lost(w physics.Wheel) (cond physics.Condition) {
	cond.Wheels[w].Leak = 1e-5
	return cond
}
