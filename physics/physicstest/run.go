package physicstest

import (
	"math"
	"testing"

	. "evenwear/physics" //lint:ignore ST1001 as in the table beside it
)

// Rest is a car at rest.
func Rest(t testing.TB, spec *Spec, cond Condition) (*Model, State) {
	t.Helper()
	m, err := New(spec, cond)
	if err != nil {
		t.Fatal(err)
	}
	s, err := m.Rest()
	if err != nil {
		t.Fatal(err)
	}
	return m, s
}

// Run steps for seconds with one input, in steps of at most ms [ms].
func Run(t testing.TB, m *Model, s State, in Input, seconds float64, ms int64) State {
	t.Helper()
	for n := int64(math.Round(seconds * 1000)); n > 0; n -= ms {
		var err error
		if s, err = m.Step(s, in, min(ms, n)); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

// Press brings the foot down in 0.3 s and holds it to the end of seconds.
func Press(t testing.TB, m *Model, s State, in Input, seconds float64, ms int64) State {
	t.Helper()
	foot := in.Foot
	for i := range int64(300) / ms {
		in.Foot = foot * float64((i+1)*ms) / 300
		s = Run(t, m, s, in, float64(ms)/1000, ms)
	}
	in.Foot = foot
	return Run(t, m, s, in, seconds-0.3, ms)
}
