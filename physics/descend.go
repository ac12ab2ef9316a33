package physics

import (
	"fmt"
	"math"
	"slices"
)

// A DescentResult is what a long descent did.
type DescentResult struct {
	Foot      float64            // [N] greatest; 500 N means that the speed could not be held
	Travel    float64            // [m] pedal travel at the bottom
	DiscPeak  [NumWheels]float64 // [°C]
	FluidPeak [NumWheels]float64 // [°C]
	PadPeak   [NumWheels]float64 // [°C] of the hotter lining
	Way       float64            // [m] driven: less than the length when a brake burnt
	End       State
}

// Hottest is the greatest temperature [°C] of a face or a lining.
func (r *DescentResult) Hottest() float64 {
	return max(slices.Max(r.DiscPeak[:]), slices.Max(r.PadPeak[:]))
}

// Burnt [°C] is where a descent ends: no driver goes on with a lining that burns. A
// lining's resin is gone long before, so nothing measured says how it rubs beyond;
// assumed.
const Burnt = 1000.0

// Descend holds a speed [m/s] down a grade [1] for a length [m] on the brakes
// alone, in steps of 1 s after the first second. The foot follows what the
// linings still give, at most 500 N. It ends early where a face or a lining is
// hotter than [Burnt], as in a brake whose pressure rises with its own heat:
//
//	Σ T/R = m·g·sin − resistance(v)      [N] a grade is a tangent: sin = grade/√(1 + grade²)
//
// Error: every temperature below 0.5 % of the greatest rise (held against SciPy).
func (m *Model) Descend(s State, grade, length, speed float64) (DescentResult, error) {
	var r DescentResult
	if err := checkDescent(grade, length, speed); err != nil {
		return r, err
	}
	sin, cos := slope(grade)
	want := float64(m.spec.Body.Mass*Gravity*sin) - m.spec.Body.Resistance(speed, cos)
	in := Input{Engine: true, Hold: true, Grade: grade}
	foot, err := 0.0, error(nil)
	if want > 0 {
		if foot, err = m.footFor(&s, want, footLimit, func(t *State) float64 { return m.roadForce(t, speed) }); err != nil {
			return r, err
		}
	}
	s.Speed = speed
	began := s.Distance
	seconds := int(math.Ceil(length / speed))
	for i := range 50 + seconds {
		ms := int64(1000)
		if i < 50 {
			ms = 20
		}
		in.Foot = foot * min(1, float64(i+1)/10)
		if s, err = m.Step(s, in, ms); err != nil {
			return r, err
		}
		for w := range Wheel(NumWheels) {
			h := &s.Heat[w]
			r.DiscPeak[w] = max(r.DiscPeak[w], h.Face())
			r.FluidPeak[w] = max(r.FluidPeak[w], h.Fluid)
			r.PadPeak[w] = max(r.PadPeak[w], h.Pad[Inner], h.Pad[Outer])
		}
		r.Foot = max(r.Foot, in.Foot)
		if r.Hottest() > Burnt {
			break
		}
		if i >= 50 && want > 0 {
			if got := m.roadForce(&s, speed); got > 0 {
				foot = min(footLimit, foot*min(1.2, max(0.8, 1+float64(0.6*(want/got-1)))))
			}
		}
	}
	r.Travel, r.Way = m.PedalTravel(&s), s.Distance-began
	r.End = s
	return r, nil
}

// checkDescent refuses a descent that means nothing.
func checkDescent(grade, length, speed float64) error {
	switch {
	case !(grade >= 0 && grade <= 0.5):
		return fmt.Errorf("descent: grade %g: want 0 to 0.5", grade)
	case !(length > 0 && length <= 1e5):
		return fmt.Errorf("descent: length %g m: want above 0, at most 100000 m", length)
	case !(speed >= 1 && speed <= 60):
		return fmt.Errorf("descent: speed %g m/s: want 1 to 60 m/s", speed)
	}
	return nil
}
