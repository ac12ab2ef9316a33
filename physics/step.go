package physics

import "fmt"

// maxFoot is the strongest foot the equations are asked about [N].
const maxFoot = 5000

// A DivergedError says that a step found no answer, and where.
type DivergedError struct {
	Tick      int64 // [ms] since rest
	Quantity  string
	Residual  float64
	Tolerance float64
	Unit      string
}

func (e *DivergedError) Error() string {
	return fmt.Sprintf("the step from %d ms found no balance of %s: %.3g %s left, wanted below %.3g",
		e.Tick, e.Quantity, e.Residual, e.Unit, e.Tolerance)
}

// An InputError refuses what no driver or mechanic can do.
type InputError struct {
	What     string
	Value    float64
	Unit     string
	Low, Top float64
}

func (e *InputError) Error() string {
	return fmt.Sprintf("%s of %g %s: allowed are %g to %g %s", e.What, e.Value, e.Unit, e.Low, e.Top, e.Unit)
}

// Step advances s by ms milliseconds (1, 20 or 1000; any positive number works)
// and leaves s itself unchanged. Each stage reads only what the stages above wrote.
func (m *Model) Step(s State, in Input, ms int64) (State, error) {
	if !(in.Foot >= 0 && in.Foot <= maxFoot) { // written so that NaN fails too
		return s, &InputError{What: "pedal force", Value: in.Foot, Unit: "N", Low: 0, Top: maxFoot}
	}
	if ms <= 0 {
		return s, &InputError{What: "step", Value: float64(ms), Unit: "ms", Low: 1, Top: 1000}
	}
	dt := float64(ms) / 1000
	next := s
	if err := m.fluidStage(&next, &s, &in, dt); err != nil {
		return s, err
	}
	m.move(&next, &in, dt)
	next.Millis = s.Millis + ms
	if q := next.notFinite(); q != "" {
		return s, &DivergedError{Tick: s.Millis, Quantity: q, Residual: 1, Tolerance: 0}
	}
	return next, nil
}

// notFinite names the first quantity that is not a number.
func (s *State) notFinite() string {
	for w := range s.Pressure {
		if !finite(s.Pressure[w]) || !finite(s.Corners[w].X) || !finite(s.Corners[w].Y) {
			return "pressure at " + Wheel(w).String()
		}
		if !finite(s.Heat[w].Fluid) || !finite(s.Heat[w].Disc[0]) {
			return "temperature at " + Wheel(w).String()
		}
	}
	switch {
	case !finite(s.Speed) || !finite(s.Distance):
		return "speed"
	case !finite(s.Master.Stroke[0]) || !finite(s.Master.Stroke[1]):
		return "pedal"
	case !finite(s.Standing) || !finite(s.Vacuum):
		return "reservoir"
	}
	return ""
}
