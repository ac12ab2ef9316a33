package inspect

import (
	"math"

	"evenwear/physics"
)

// dischargeCoefficient of a torn joint [1]: a sharp-edged orifice, common
// engineering practice 0.6–0.65.
const dischargeCoefficient = 0.6

// weep is the flow [m³/s] out of a wheel's pipe joint: C_d·A·√(2p/ρ).
func (w *World) weep(s *physics.State, wheel physics.Wheel) float64 {
	area := w.Model.Condition().Wheels[wheel].Leak
	return dischargeCoefficient * area * math.Sqrt(2*max(0, s.Pressure[wheel])/w.Model.Spec().Fluid.Density)
}

// lining is what is left of a half pad's lining [m].
func (w *World) lining(wheel physics.Wheel, pad, half int) float64 {
	cond := w.Model.Condition()
	return w.Model.Spec().Corner(wheel).LiningNew - cond.Wheels[wheel].Wear[pad][half]
}

// release is the car after a firm press and a second with the pedal free: what
// a corner remembers of it stays in the state.
func (w *World) release() (physics.State, error) {
	return w.cache.released.get(func() (physics.State, error) {
		f := w.foot(true)
		f.to(pressForce, 400)
		f.rest(1000, long)
		f.to(0, 200)
		f.rest(1000, short)
		return f.s, f.err
	})
}

// opening looks at one lining's edge through the wheel.
func opening(id ID, pad int, sigma float64) Check {
	return Check{
		ID: id, Station: WheelOn, PerWheel: true, Minutes: 0.5,
		Cautions: []string{"caution.hot_disc"},
		Meter: Meter{
			// A lining judged beside its backing plate; the inner one is seen past
			// the disc, so worse. A quarter inch is plenty, 3 mm is when to renew
			// (common practice, no source); Sigma and Bias assumed.
			Instrument: "eye", Unit: "word", PerUnit: physics.Millimetre, Resolution: 1, Division: 1,
			Sigma: sigma, Bias: 0.5, Slip: DefaultSlip, Lo: 0, Hi: 14,
			Words: []string{"thin", "middling", "plenty"}, Cuts: []float64{3, 6.4},
		},
		Measure: func(w *World, wheel physics.Wheel) (float64, error) {
			return (w.lining(wheel, pad, physics.Upper) + w.lining(wheel, pad, physics.Lower)) / 2, nil
		},
	}
}

func wheelOnChecks() []Check {
	return []Check{
		opening("opening_outer", physics.Outer, 0.8),
		opening("opening_inner", physics.Inner, 1.2),
		{
			// The joint is wiped dry, then looked at after ten seconds under a heavy foot.
			ID: "wetness", Station: WheelOn, PerWheel: true, Minutes: 1.5,
			Cautions: []string{"caution.fluid_skin_paint", "caution.not_under_jack"},
			Meter: Meter{
				// A drop is about 0.05 cm³; a tenth of it makes a wiped joint shine, ten
				// of them run. Sigma: what a wipe leaves behind. Assumed.
				Instrument: "eye_wet", Unit: "word", PerUnit: physics.CubicCentimetre, Resolution: 1, Division: 1,
				Sigma: 0.002, Bias: 0, Slip: LookSlip, Lo: 0, Hi: 20,
				Words: []string{"dry", "damp", "wet"}, Cuts: []float64{0.008, 0.5},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				h, err := w.hold()
				return h.wet[wheel], err
			},
		},
		{
			// The swelling of the hose, felt with a hand round it under a heavy foot.
			ID: "hose_bulge", Station: WheelOn, PerWheel: true, Minutes: 1,
			Cautions: []string{"caution.not_under_jack"},
			Meter: Meter{
				// 49 CFR 571.106 Table I allows a hose of the smallest class about
				// 1.4 cm³/m at 10 MPa; 0.4 m of it make the cut. Sigma assumed.
				Instrument: "hand_hose", Unit: "word", PerUnit: physics.CubicCentimetre, Resolution: 1, Division: 1,
				Sigma: 0.08, Bias: 0.05, Slip: DefaultSlip, Lo: 0, Hi: 3,
				Words: []string{"sound", "bulging"}, Cuts: []float64{0.55},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				h, err := w.hold()
				swell := w.Model.Spec().Corner(wheel).HoseSwell + w.Model.Condition().Wheels[wheel].HoseSwell
				return swell * h.peak[wheel], err
			},
		},
		{
			ID: "spin", Station: WheelOn, PerWheel: true, Minutes: 1,
			Needs:    []string{"lift@end", "stand@wheel"},
			Cautions: []string{"caution.not_under_jack"},
			Meter: Meter{
				// Cuts: a wheel that turns on by itself, one that stops at once, one
				// that takes both hands, one that no hand turns (200 N at the tyre).
				// What a hand tells apart is assumed.
				Instrument: "hand_spin", Unit: "word", PerUnit: 1, Resolution: 1, Division: 1,
				Sigma: 0.6, Bias: 0.4, Slip: DefaultSlip, Lo: 0, Hi: 300,
				Words: []string{"free", "rubs", "drags", "held"}, Cuts: []float64{3, 15, 60},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				s, err := w.release()
				if err != nil {
					return 0, err
				}
				return dragTorque(w.Model.Corner(wheel), s.Corners[wheel], s.Pressure[wheel])
			},
		},
		{
			ID: "hub_play", Station: WheelOn, PerWheel: true, Minutes: 1,
			Needs:    []string{"lift@end", "stand@wheel"},
			Cautions: []string{"caution.not_under_jack"},
			Meter:    dial(2),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				return w.Model.Condition().Wheels[wheel].BearingPlay, nil
			},
		},
	}
}
