package physics

import (
	"fmt"
	"math"
)

const mostFoot = 5000 // [N] beyond any foot

// An InputError says which input a step refused.
type InputError struct {
	What   string
	Value  float64
	Wanted string
}

func (e *InputError) Error() string {
	return fmt.Sprintf("step: %s is %.6g, want %s", e.What, e.Value, e.Wanted)
}

// Step advances s by ms milliseconds: 1 to follow a pulse, 20 and 1000 for
// checks and descents. Every length is the same implicit step. On error the
// state returned is the one given.
func (m *Model) Step(s State, in Input, ms int64) (State, error) {
	if err := in.check(ms); err != nil {
		return s, err
	}
	dt := float64(ms) / 1000
	var f flow // what one step works out and forgets
	next := s
	if err := m.hydraulics(&f, &next, &in, dt); err != nil {
		return s, s.lost(err)
	}
	if err := m.roll(&next, &in, ms); err != nil {
		return s, s.lost(err)
	}
	return next, nil
}

// roll is the rest of a step, its forces as they are: the road and the heat.
func (m *Model) roll(s *State, in *Input, ms int64) error {
	m.move(s, in, float64(ms)/1000)
	s.Millis += ms
	return s.runsAway()
}

func (in *Input) check(ms int64) error {
	if ms < 1 || ms > 1000 {
		return &InputError{"length of the step in ms", float64(ms), "1 to 1000"}
	}
	if !(in.Foot >= 0 && in.Foot <= mostFoot) {
		return &InputError{"pedal force in N", in.Foot, "0 to 5000"}
	}
	for w := range Wheel(NumWheels) {
		at := w.String()
		switch {
		case !(in.Bleed[w] >= 0 && in.Bleed[w] <= 1e-4):
			return &InputError{"open area of the bleed screw " + at + " in m²", in.Bleed[w], "0 to 1e-4"}
		case !(math.Abs(in.Piston[w]) <= 1e5):
			return &InputError{"force on the piston " + at + " in N", in.Piston[w], "-1e5 to 1e5"}
		case !(math.Abs(in.Body[w]) <= 1e5):
			return &InputError{"force on the body " + at + " in N", in.Body[w], "-1e5 to 1e5"}
		case !(in.Surface[w] >= 0 && in.Surface[w] <= 1):
			return &InputError{"missing adhesion " + at, in.Surface[w], "0 to 1"}
		}
	}
	switch {
	case !(math.Abs(in.Ambient) <= 80):
		return &InputError{"change of the air in °C", in.Ambient, "-80 to 80"}
	case !(math.Abs(in.Grade) <= 1):
		return &InputError{"grade", in.Grade, "-1 to 1"}
	case !(math.Abs(in.Side) <= 15):
		return &InputError{"sideways acceleration in m/s²", in.Side, "-15 to 15"}
	case !(math.Abs(in.Drive) <= 1e6):
		return &InputError{"drive force in N", in.Drive, "-1e6 to 1e6"}
	}
	return nil
}
