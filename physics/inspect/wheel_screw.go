package inspect

import "evenwear/physics"

// Checks at the bleed screw; the wheel is off, so that hand and bottle get at it.

// atScrew is what every check with an open bleed screw warns of.
var atScrew = []string{"caution.fluid_skin_paint", "caution.bleed_trained"}

func screwChecks() []Check {
	return []Check{
		// Its cap off, the screw wiped.
		wet("wet_screw", WheelOff, ScrewPart, 1.5, atWheelOff, []string{"caution.fluid_skin_paint", "caution.not_under_jack"},
			func(c *physics.WheelCondition) float64 { return c.ScrewLeak }),
		{
			// What the bleed screw lets out when it is opened after a press and a release.
			ID: "trapped_pressure", Station: WheelOff, Part: ScrewPart, PerWheel: true, Minutes: 3,
			Needs:    atWheelOff,
			Cautions: atScrew,
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
		{
			// The hub turned by two nuts put back on its studs before and after the screw
			// was opened for a moment: what the pressure behind the piston was worth. A
			// hose that holds it back lets go; a corroded piston and dry pins drag on.
			ID: "hose_release", Station: WheelOff, Part: ScrewPart, PerWheel: true, Minutes: 4,
			Needs: atWheelOff, Cautions: atScrew,
			Meter: Meter{
				// What a hand tells apart, as in turning the wheel; the cuts are those
				// between a wheel that is free, rubs and drags. Assumed.
				Instrument: "hand_turn", Unit: "word", PerUnit: 1, Resolution: 1, Division: 1,
				Sigma: 0.8, Bias: 0.4, Slip: DefaultSlip, Lo: -300, Hi: 300,
				Words: []string{"as_before", "easier", "much_easier"}, Cuts: []float64{3, 15},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				t, err := w.turned(wheel)
				if err != nil || t.pressure <= seepage {
					return 0, err
				}
				after, _, err := dragTorque(w.Model.Corner(wheel), t.corner, 0)
				return t.torque - after, err
			},
		},
		{
			// A little fluid let out through a hose whose end stands under fluid in a
			// bottle, and topped up again. The gas is the caliper's, as its volume at one
			// atmosphere.
			ID: "bleed_bubbles", Station: WheelOff, Part: ScrewPart, PerWheel: true, Minutes: 6,
			Needs: atWheelOff, Cautions: atScrew,
			Meter: Meter{
				// A bubble as wide as the hose is about 0.05 cm³. Sigma: air that the
				// screw's thread lets in. Assumed.
				Instrument: "eye_bottle", Unit: "word", PerUnit: physics.CubicCentimetre, Resolution: 0.01, Division: 0.01,
				Sigma: 0.04, Bias: 0.02, Slip: LookSlip, Lo: -1, Hi: 200,
				Words: []string{"no_bubbles", "a_few", "stream"}, Cuts: []float64{0.15, 1},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) { return w.Rest.Air[wheel], nil },
		},
	}
}

// seepage [Pa] is a pressure that moves no pad: the reservoir's own height.
const seepage = 5e3
