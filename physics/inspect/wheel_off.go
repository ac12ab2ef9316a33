package inspect

import "evenwear/physics"

// atWheelOff is what every check at a bare hub needs and warns of.
var (
	atWheelOff = []string{"wheel_off@wheel", "stand@wheel", "cool_disc@wheel", "wipe_dust@wheel"}
	bareHub    = []string{"caution.hot_disc", "caution.dust_damp", "caution.not_under_jack"}
)

// dial is a dial indicator on a magnetic foot: 0.01 mm divisions. Sigma is half
// a division from the foot and the eye; Bias a scale error. Assumed.
func dial(hi float64) Meter {
	return Meter{
		Instrument: "dial_indicator", Unit: "mm", PerUnit: physics.Millimetre,
		Resolution: 0.01, Division: 0.01, Sigma: 0.005, Bias: 0.003, Slip: DefaultSlip, Lo: 0, Hi: hi,
	}
}

// gauge is a screw gauge with pointed anvils, read to 0.01 mm (its vernier
// shows 0.002). Sigma from the feel of the ratchet, Bias from its zero. Assumed.
func gauge(hi float64) Meter {
	return Meter{
		Instrument: "thickness_gauge", Unit: "mm", PerUnit: physics.Millimetre,
		Resolution: 0.01, Division: 0.01, Sigma: 0.005, Bias: 0.005, Slip: DefaultSlip, Lo: 0, Hi: hi,
	}
}

// pull is a spring gauge hooked into the caliper: 10 N divisions. Stick and
// slip make it repeat no better; assumed. Its end says "more than a hand pulls".
func pull() Meter {
	return Meter{
		Instrument: "pull_gauge", Unit: "N", PerUnit: 1,
		Resolution: 10, Division: 10, Sigma: 8, Bias: 5, Slip: DefaultSlip, Lo: 0, Hi: 500,
	}
}

// lining is a stepped feeler beside one half of one lining. The reading is the
// longest step that ends short of the disc face: whole millimetres, rounded
// down; 1 is written when even step 2 stands proud. Sigma from a chamfered edge
// and a feeler held askew; assumed.
func lining(id ID, pad, half int) Check {
	return Check{
		ID: id, Station: WheelOff, PerWheel: true, Minutes: 0.5,
		Needs: atWheelOff, Cautions: bareHub,
		Meter: Meter{
			Instrument: "stepped_feeler", Unit: "mm", PerUnit: physics.Millimetre,
			Resolution: 1, Division: 1, Floor: true, Sigma: 0.2, Bias: 0.1, Slip: DefaultSlip, Lo: 1, Hi: 12,
		},
		Measure: func(w *World, wheel physics.Wheel) (float64, error) { return w.lining(wheel, pad, half), nil },
	}
}

func wheelOffChecks() []Check {
	return []Check{
		lining("lining_inner_upper", physics.Inner, physics.Upper),
		lining("lining_inner_lower", physics.Inner, physics.Lower),
		lining("lining_outer_upper", physics.Outer, physics.Upper),
		lining("lining_outer_lower", physics.Outer, physics.Lower),
		{
			ID: "disc_thickness", Station: WheelOff, PerWheel: true, Minutes: 1,
			Needs: atWheelOff, Cautions: bareHub, Meter: gauge(25),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				worn := w.Model.Condition().Wheels[wheel].DiscWear
				return w.Model.Spec().Corner(wheel).DiscThickness - worn[0] - worn[1], nil
			},
		},
		{
			// Greatest less least of the thickness at the spokes of a turn.
			ID: "thickness_variation", Station: WheelOff, PerWheel: true, Minutes: 3,
			Needs: atWheelOff, Cautions: bareHub, Meter: gauge(1),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				inner, outer := swing(w.Model.Corner(wheel))
				var thick [spokes]float64
				for i := range thick {
					thick[i] = inner[i] + outer[i]
				}
				return spread(thick[:]), nil
			},
		},
		{
			// Total run-out, face to face: the dial on the outer face over a turn,
			// thickness variation taken out by the face behind it.
			ID: "runout", Station: WheelOff, PerWheel: true, Minutes: 3,
			Needs: atWheelOff, Cautions: bareHub, Meter: dial(1),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				inner, outer := swing(w.Model.Corner(wheel))
				var middle [spokes]float64
				for i := range middle {
					middle[i] = (outer[i] - inner[i]) / 2
				}
				return spread(middle[:]), nil
			},
		},
		{
			ID: "slide_body", Station: WheelOff, PerWheel: true, Minutes: 4,
			Needs: atWheelOff, Cautions: bareHub, Meter: pull(),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) { return w.slide(wheel, true, true) },
		},
		{
			ID: "pin_upper", Station: WheelOff, PerWheel: true, Minutes: 2,
			Needs: atWheelOff, Cautions: bareHub, Meter: pull(),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				return w.slide(wheel, true, false)
			},
		},
		{
			ID: "pin_lower", Station: WheelOff, PerWheel: true, Minutes: 2,
			Needs: atWheelOff, Cautions: bareHub, Meter: pull(),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				return w.slide(wheel, false, true)
			},
		},
		{
			// The piston pushed back, pedal free, bleed screw closed: what pressure
			// stands in the caliper, and what a collapsed hose keeps back, push too.
			ID: "push_piston", Station: WheelOff, PerWheel: true, Minutes: 3,
			Needs:    atWheelOff,
			Cautions: []string{"caution.piston_not_forced", "caution.reservoir_overflow", "caution.hot_disc"},
			Meter: Meter{
				// A screw tool with a spring gauge: 50 N divisions. Sigma and Bias assumed.
				Instrument: "push_gauge", Unit: "N", PerUnit: 1,
				Resolution: 50, Division: 50, Sigma: 40, Bias: 25, Slip: DefaultSlip, Lo: 0, Hi: 3000,
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				s, err := w.release()
				if err != nil {
					return 0, err
				}
				p := max(s.Pressure[wheel], w.Model.Condition().Wheels[wheel].HoseHold)
				return pushForce(w.Model.Corner(wheel), s.Corners[wheel], p)
			},
		},
		{
			// What the bleed screw lets out when it is opened after a press and a release.
			ID: "trapped_pressure", Station: WheelOff, PerWheel: true, Minutes: 3,
			Needs:    atWheelOff,
			Cautions: []string{"caution.fluid_skin_paint", "caution.bleed_trained"},
			Meter: Meter{
				// A full reservoir stands 0.005 MPa above the screw: fluid seeps. Cuts
				// and Sigma assumed.
				Instrument: "eye_bleed", Unit: "word", PerUnit: physics.Megapascal, Resolution: 0.01, Division: 0.01,
				Sigma: 0.01, Bias: 0, Slip: DefaultSlip, Lo: -0.1, Hi: 3,
				Words: []string{"seeps", "spurts"}, Cuts: []float64{0.05},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				s, err := w.release()
				return s.Pressure[wheel], err
			},
		},
	}
}

// slide is the force [N] of hands that move the body; see [handForce].
func (w *World) slide(wheel physics.Wheel, upper, lower bool) (float64, error) {
	return handForce(w.Model.Corner(wheel), w.Model.Spec().Corner(wheel), w.Rest.Corners[wheel], upper, lower)
}

// RunoutCurve is where the needle of a dial indicator on the outer face stands
// [mm] while the disc turns once, from the angle at which it was set to zero:
// an arbitrary one, so the run-out is the swing, not the greatest figure.
func RunoutCurve(w *World, wheel physics.Wheel) []float64 {
	_, outer := swing(w.Model.Corner(wheel))
	const zeroed = 5 // spoke
	list := make([]float64, spokes+1)
	for i := range list {
		list[i] = (outer[(zeroed+i)%spokes] - outer[zeroed]) / physics.Millimetre
	}
	return list
}
