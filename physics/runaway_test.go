package physics_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// TestRunawayEndsTheRun: a state that runs away ends the run with an error that names
// the quantity and the tick and holds the last state that was good: of a step, a stop,
// a descent, a tour and bends. Nothing half-converged is returned.
func TestRunawayEndsTheRun(t *testing.T) {
	m, rest := model(t, physicstest.Hatchback(), physics.Condition{})
	rest.Millis = 1234
	for name, c := range map[string]struct {
		spoil func(s *physics.State)
		says  string
	}{
		"no number":     {func(s *physics.State) { s.Distance = math.NaN() }, "way"},
		"infinite heat": {func(s *physics.State) { s.Heat[physics.RearLeft].Disc[0] = math.Inf(1) }, "temperature rear_left"},
		"molten disc":   {func(s *physics.State) { s.Heat[physics.RearLeft].CoolTo(1e5) }, "temperature rear_left"},
		"burst":         {func(s *physics.State) { s.Cavity[physics.FrontRight] += 1e-3 }, "pressure"},
		"piston out": {func(s *physics.State) {
			s.Corners[physics.FrontLeft].X, s.Corners[physics.FrontLeft].SealAnchor = math.NaN(), 0
		}, "caliper front_left"},
		"no vacuum":   {func(s *physics.State) { s.Vacuum = math.NaN() }, ""},
		"empty":       {func(s *physics.State) { s.Standing = math.Inf(-1) }, "fluid"},
		"pin nowhere": {func(s *physics.State) { s.Corners[physics.RearRight].PinAnchor[0] = math.NaN() }, "caliper rear_right"},
		"gas":         {func(s *physics.State) { s.AirWarm[physics.RearRight] = math.NaN(); s.Air[physics.RearRight] = 1e-6 }, "fluid"},
	} {
		s := rest
		s.Speed = 20
		c.spoil(&s)
		for run, err := range map[string]error{
			"step":    second(m.Step(s, physics.Input{Foot: 50, Engine: true, Hold: true}, 1)),
			"second":  second(m.Step(s, physics.Input{Foot: 50, Engine: true, Hold: true}, 1000)),
			"stop":    second(m.Stop(s, physics.StopPlan{Speed: 20, Foot: 100})),
			"descent": second(m.Descend(s, 0.06, 1000, 10)),
			"tour":    second(m.Tour(s, physics.MixedDuty(), 3)),
		} {
			var e *physics.DivergedError
			if !errors.As(err, &e) {
				t.Errorf("%s, %s: %T %v", name, run, err, err)
				continue
			}
			if !strings.Contains(e.Quantity, c.says) || e.Quantity == "" || e.Millis < 1234 || e.Millis != e.Last.Millis || !strings.Contains(err.Error(), e.Quantity) {
				t.Errorf("%s, %s: %v; last good at %d ms", name, run, err, e.Last.Millis)
			}
		}
	}
}

func second[T any](_ T, err error) error { return err }

// TestRunawayKeepsTheLastGood: the state in the error is the one before the tick that
// failed, to the bit, however far into the run that was.
func TestRunawayKeepsTheLastGood(t *testing.T) {
	m, s := model(t, physicstest.Hatchback(), physics.Condition{})
	s.Speed = 20
	s = run(t, m, s, physics.Input{Foot: 50, Engine: true, Hold: true}, 0.3, 1)
	good := s
	good.Cavity[physics.FrontRight] += 1e-3
	next, err := m.Step(good, physics.Input{Engine: true}, 1)
	var e *physics.DivergedError
	if !errors.As(err, &e) || e.Last != good || next != good || e.Millis != 300 {
		t.Errorf("%v: not the state that was given", err)
	}
}

// TestHardUseIsNoRunaway: what a car can do is not taken for running away: the
// hardest foot, boiling fluid, a trapped port under a hot caliper, 60 m/s.
func TestHardUseIsNoRunaway(t *testing.T) {
	for name, cond := range map[string]physics.Condition{"sound": {}, "trapped": {PortCover: [2]float64{2 * mm, 2 * mm}, Water: 0.05}, "leak": at(physics.FrontLeft, physics.WheelCondition{Leak: 1e-4, Air: 20 * cm3})} {
		m, s := model(t, physicstest.Hatchback(), cond)
		s.Speed = 60
		for w := range s.Heat {
			s.Heat[w].CoolTo(300)
		}
		for _, foot := range []float64{5000, 0, 5000} {
			for range 20 {
				var err error
				if s, err = m.Step(s, physics.Input{Foot: foot, Engine: true, Hold: true}, 20); err != nil {
					t.Fatalf("%s: %v", name, err)
				}
			}
		}
	}
}
