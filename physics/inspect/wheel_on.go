package inspect

import (
	"math"

	"evenwear/physics"
)

// dischargeCoefficient of a torn joint [1]: a sharp-edged orifice, common
// engineering practice 0.6–0.65.
const dischargeCoefficient = 0.6

// weep is the volume [m³/m²] that a second pushes through each square metre of a
// hole at a wheel: C_d·√(2p/ρ).
func (w *World) weep(s *physics.State, wheel physics.Wheel) float64 {
	return dischargeCoefficient * math.Sqrt(2*max(0, s.Pressure[wheel])/w.Model.Spec().Fluid.Density)
}

// wet looks for fluid at a place that was wiped dry, after ten seconds under a
// heavy foot.
func wet(id ID, station Station, part Part, minutes float64, needs, cautions []string, hole func(c *physics.WheelCondition) float64) Check {
	return Check{
		ID: id, Station: station, BareToo: station == WheelOn, Part: part, PerWheel: true, Minutes: minutes, Needs: needs, Cautions: cautions,
		Meter: Meter{
			// A drop is about 0.05 cm³; a tenth of it makes a wiped joint shine, ten
			// of them run. Sigma: what a wipe leaves behind. Assumed.
			Instrument: "eye_wet", Unit: "word", PerUnit: physics.CubicCentimetre, Resolution: 1, Division: 1,
			Sigma: 0.002, Bias: 0, Slip: LookSlip, Lo: 0, Hi: 20,
			Words: []string{"dry", "damp", "wet"}, Cuts: []float64{0.008, 0.5},
		},
		Measure: func(w *World, wheel physics.Wheel) (float64, error) {
			h, err := w.hold()
			cond := w.Model.Condition()
			return hole(&cond.Wheels[wheel]) * h.through[wheel], err
		},
	}
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
		f.letGo(200, 2)
		f.calm(1000)
		return f.s, f.err
	})
}

// opening looks at one lining's edge through the wheel.
func opening(id ID, part Part, sigma float64, left func(w *World, wheel physics.Wheel) float64) Check {
	return Check{
		ID: id, Station: WheelOn, Part: part, PerWheel: true, Minutes: 0.5,
		Cautions: []string{"caution.hot_disc"},
		Meter: Meter{
			// A lining judged beside its backing plate. A quarter inch is plenty, 3 mm is when to renew
			// (common practice, no source); Sigma and Bias assumed.
			Instrument: "eye", Unit: "word", PerUnit: physics.Millimetre, Resolution: 1, Division: 1,
			Sigma: sigma, Bias: 0.5, Slip: DefaultSlip, Lo: 0, Hi: 14,
			Words: []string{"thin", "middling", "plenty"}, Cuts: []float64{3, 6.4},
		},
		Measure: func(w *World, wheel physics.Wheel) (float64, error) { return left(w, wheel), nil },
	}
}

func wheelOnChecks() []Check {
	return []Check{
		opening("opening_outer", OuterPadPart, 0.8, func(w *World, wheel physics.Wheel) float64 {
			return (w.lining(wheel, physics.Outer, physics.Upper) + w.lining(wheel, physics.Outer, physics.Lower)) / 2
		}),
		// Past the disc the eye gets at the inner lining's upper edge alone, and at a
		// flatter angle: disc and body hide the lower half. A lining worn to a wedge
		// that is thin below looks better than it is.
		opening("opening_inner", InnerPadPart, 1.2, func(w *World, wheel physics.Wheel) float64 {
			return w.lining(wheel, physics.Inner, physics.Upper)
		}),
		wet("wetness", WheelOn, HosePart, 1.5, nil, []string{"caution.fluid_skin_paint", "caution.not_under_jack"},
			func(c *physics.WheelCondition) float64 { return c.Leak }),
		{
			// The disc's outer face between the pads, before anything has driven.
			ID: "disc_film", Station: WheelOn, Part: DiscPart, PerWheel: true, Minutes: 0.5,
			Cautions: []string{"caution.hot_disc"},
			Meter: Meter{
				// Share of the face under rust. What an eye tells apart is assumed.
				Instrument: "eye_disc", Unit: "word", PerUnit: 0.01, Resolution: 1, Division: 1,
				Sigma: 5, Bias: 3, Slip: LookSlip, Lo: 0, Hi: 100,
				Words: []string{"bright", "brownish", "rusty"}, Cuts: []float64{15, 60},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) { return w.Rest.Film[wheel], nil },
		},
		{
			// The swelling of the hose, felt with a hand round it under a heavy foot.
			ID: "hose_bulge", Station: WheelOn, BareToo: true, Part: HosePart, PerWheel: true, Minutes: 1,
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
			ID: "spin", Station: WheelOn, Part: HubPart, PerWheel: true, Minutes: 1,
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
				t, err := w.turned(wheel)
				return t.torque, err
			},
		},
		{
			// A cord wound round the tyre, a spring gauge at its end, pulled so that the
			// wheel keeps turning, out of gear: how hard it drags in a figure.
			ID: "turning_force", Station: WheelOn, Part: HubPart, PerWheel: true, Minutes: 2,
			Needs:    []string{"lift@end", "stand@wheel"},
			Cautions: []string{"caution.not_under_jack"},
			Meter:    pull(),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				t, err := w.turned(wheel)
				return t.torque / w.Model.Spec().Body.TyreRadius, err
			},
		},
		{
			// The same cord with a helper's foot on the pedal, engine off and its vacuum
			// pumped away: what this one wheel holds back, apart from the other three.
			ID: "braked_force", Station: WheelOn, Part: HubPart, PerWheel: true, Minutes: 3,
			Needs:    []string{"lift@end", "stand@wheel"},
			Cautions: []string{"caution.not_under_jack"},
			Meter:    pullBraked(),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				b, err := w.braced()
				return b[wheel] / w.Model.Spec().Body.TyreRadius, err
			},
		},
		{
			ID: "hub_play", Station: WheelOn, Part: HubPart, PerWheel: true, Minutes: 1,
			Needs:    []string{"lift@end", "stand@wheel"},
			Cautions: []string{"caution.not_under_jack"},
			Meter:    dial(3),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				return w.Model.Condition().Wheels[wheel].BearingPlay, nil
			},
		},
	}
}

// pullBraked is the spring gauge where a foot takes part: it keeps its force to
// about 3 %. Assumed.
func pullBraked() Meter {
	m := pull()
	m.Sigma = 12
	return m
}

// braced is the torque [N·m] that each wheel holds against under a foot whose
// booster has been pumped empty.
func (w *World) braced() ([physics.NumWheels]float64, error) {
	return w.cache.braced.get(func() (torque [physics.NumWheels]float64, err error) {
		f := w.foot(false)
		f.s.Vacuum = 0 // pumped until it changes nothing any more
		f.to(bracedForce, 400)
		f.rest(1000, long)
		for i := range torque {
			torque[i] = w.Model.WheelTorque(&f.s, physics.Wheel(i))
		}
		return torque, f.err
	})
}
