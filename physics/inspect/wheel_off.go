package inspect

import "evenwear/physics"

// atWheelOff is what every check at a bare hub needs and warns of.
var (
	atWheelOff = []string{"wheel_off@wheel", "stand@wheel", "cool_disc@wheel", "wipe_dust@wheel"}
	bareHub    = []string{"caution.hot_disc", "caution.dust_damp", "caution.not_under_jack"}
)

// pull is a spring gauge hooked into the caliper: 10 N divisions. Stick and
// slip make it repeat no better; assumed. Its end says "more than a hand pulls".
func pull() Meter {
	return Meter{
		Instrument: "pull_gauge", Unit: "N", PerUnit: 1,
		Resolution: 10, Division: 10, Sigma: 8, Bias: 5, Slip: DefaultSlip, Lo: 0, Hi: 500,
	}
}

// pullPins is a larger one: two dry pins ask for up to 800 N, which the end of the
// smaller would not tell from pins that are seized and ask for thousands. A
// hanging balance to 100 kg with 20 N divisions; sigma and bias assumed, more than
// the smaller one's as its divisions are.
func pullPins() Meter {
	m := pull()
	m.Instrument = "hanging_balance"
	m.Resolution, m.Division, m.Sigma, m.Bias, m.Hi = 20, 20, 12, 8, 1000
	return m
}

// lining is a stepped feeler beside one half of one lining. The reading is the
// longest step that ends short of the disc face: whole millimetres, rounded
// down; 1 is written when even step 2 stands proud. Sigma from a chamfered edge
// and a feeler held askew; assumed.
func lining(id ID, part Part, pad, half int) Check {
	return Check{
		ID: id, Station: WheelOff, Part: part, PerWheel: true, Minutes: 0.5,
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
		lining("lining_inner_upper", InnerPadPart, physics.Inner, physics.Upper),
		lining("lining_inner_lower", InnerPadPart, physics.Inner, physics.Lower),
		lining("lining_outer_upper", OuterPadPart, physics.Outer, physics.Upper),
		lining("lining_outer_lower", OuterPadPart, physics.Outer, physics.Lower),
		{
			ID: "slide_body", Station: WheelOff, Part: PinsPart, PerWheel: true, Minutes: 4,
			Needs: atWheelOff, Cautions: bareHub, Meter: pullPins(),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) { return w.slide(wheel, true, true) },
		},
		{
			ID: "pin_upper", Station: WheelOff, Part: PinsPart, PerWheel: true, Minutes: 2,
			Needs: atWheelOff, Cautions: bareHub, Meter: pullPins(),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				return w.slide(wheel, true, false)
			},
		},
		{
			ID: "pin_lower", Station: WheelOff, Part: PinsPart, PerWheel: true, Minutes: 2,
			Needs: atWheelOff, Cautions: bareHub, Meter: pullPins(),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				return w.slide(wheel, false, true)
			},
		},
		{
			// Both pins' boots, the worse of them: what oil has swollen looks fat and
			// soft, what is torn lets water in.
			ID: "pin_boots", Station: WheelOff, Part: PinsPart, PerWheel: true, Minutes: 1,
			Needs: atWheelOff, Cautions: bareHub,
			Meter: Meter{
				// 0 to 100: how far swollen; 200: torn, swollen or not. Assumed.
				Instrument: "eye_boot", Unit: "word", PerUnit: 0.01, Resolution: 1, Division: 1,
				Sigma: 10, Bias: 5, Slip: LookSlip, Lo: 0, Hi: 200,
				Words: []string{"boot_sound", "swollen", "torn"}, Cuts: []float64{25, 150},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				worse := 0.0
				for pin := range 2 {
					worse = max(worse, w.Model.PinBootSwollen(wheel, pin))
					if w.Model.PinBootTorn(wheel, pin) {
						worse = 2
					}
				}
				return worse, nil
			},
		},
		{
			ID: "piston_boot", Station: WheelOff, Part: PistonPart, PerWheel: true, Minutes: 1,
			Needs: atWheelOff, Cautions: bareHub,
			Meter: Meter{
				// 0 whole, 100 torn; a fold looks like a tear now and then. Assumed.
				Instrument: "eye_dust_boot", Unit: "word", PerUnit: 0.01, Resolution: 1, Division: 1,
				Sigma: 15, Bias: 10, Slip: LookSlip, Lo: 0, Hi: 100,
				Words: []string{"whole", "torn"}, Cuts: []float64{50},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				if w.Model.PistonBootTorn(wheel) {
					return 1, nil
				}
				return 0, nil
			},
		},
		// The dust boot's lip lifted with care: behind it stands what passes the seal.
		wet("wet_piston", WheelOff, PistonPart, 2, atWheelOff, []string{"caution.fluid_skin_paint", "caution.hot_disc", "caution.not_under_jack"},
			func(c *physics.WheelCondition) float64 { return c.SealLeak }),
		{
			// The piston pushed back, pedal free, bleed screw closed: what pressure
			// stands in the caliper, and what a collapsed hose keeps back, push too.
			ID: "push_piston", Station: WheelOff, Part: PistonPart, PerWheel: true, Minutes: 3,
			Needs:    atWheelOff,
			Cautions: []string{"caution.piston_not_forced", "caution.reservoir_overflow", "caution.hot_disc", "caution.pump_first"},
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
	}
}

// slide is the force [N] of hands that move the body; see [handForce].
func (w *World) slide(wheel physics.Wheel, upper, lower bool) (float64, error) {
	return handForce(w.Model.Corner(wheel), w.Model.Spec().Corner(wheel), w.Rest.Corners[wheel], upper, lower)
}
