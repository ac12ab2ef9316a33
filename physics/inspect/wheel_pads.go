package inspect

import "evenwear/physics"

// What is found of the pads when the wheel is off and the body is swung up.

// blade is a set of blade feelers laid together: the thickest pack that goes
// in, in steps of 0.02 mm; 0 is written when not even the thinnest does. Sigma
// from the feel of a blade that just drags, Bias from worn blades. Assumed.
func blade() Meter {
	return Meter{
		Instrument: "blade_feeler", Unit: "mm", PerUnit: physics.Millimetre,
		Resolution: 0.02, Division: 0.02, Floor: true, Sigma: 0.008, Bias: 0.004, Slip: DefaultSlip, Lo: 0, Hi: 1,
	}
}

// padsOut is what every check with a pad lifted out warns of: the piston has been
// pushed home for it, and the first press finds nothing.
var padsOut = []string{"caution.hot_disc", "caution.dust_damp", "caution.not_under_jack", "caution.pump_first"}

func padChecks() []Check {
	list := []Check{{
		// Between lining and disc, pedal free, the body slid to the end of its play: the
		// room both pads have between them, each at its nearer half. A body held by
		// neither pin only shares it out otherwise; pads that something presses have none.
		ID: "clearance", Station: WheelOff, Part: HubPart, PerWheel: true, Minutes: 2,
		Needs: atWheelOff, Cautions: bareHub, Meter: blade(),
		Measure: func(w *World, wheel physics.Wheel) (float64, error) {
			t, err := w.turned(wheel)
			if err != nil {
				return 0, err
			}
			gap := w.Model.Corner(wheel).Clearance(&t.corner, 0, 0)
			return max(0, min(gap[0][0], gap[0][1])+min(gap[1][0], gap[1][1])), nil
		},
	}}
	for pad, part := range [...]Part{physics.Inner: InnerPadPart, physics.Outer: OuterPadPart} {
		name := [...]ID{physics.Inner: "inner", physics.Outer: "outer"}[pad]
		list = append(list,
			Check{
				// The pad pulled along in its carrier, body swung up: what its ears hold.
				ID: "ear_" + name, Station: WheelOff, Part: part, PerWheel: true, Minutes: 2,
				Needs: atWheelOff, Cautions: padsOut, Meter: pull(),
				Measure: func(w *World, wheel physics.Wheel) (float64, error) {
					spec := w.Model.Spec().Corner(wheel)
					return min(spec.EarFriction+w.Model.Condition().Wheels[wheel].EarFriction[pad], float64(spec.EarRate*moved)), nil
				},
			},
			Check{
				// A straight edge along the plate and blades under it: a plate that does not
				// lie flat, on rust or on a shim too many, takes its pad's clearance.
				ID: "plate_" + name, Station: WheelOff, Part: part, PerWheel: true, Minutes: 2,
				Needs: atWheelOff, Cautions: padsOut, Meter: blade(),
				Measure: func(w *World, wheel physics.Wheel) (float64, error) {
					return max(0, w.Model.Condition().Wheels[wheel].PlateProud[pad]), nil
				},
			},
			Check{
				// The lining's edge all along its plate.
				ID: "bond_" + name, Station: WheelOff, Part: part, PerWheel: true, Minutes: 1,
				Needs: atWheelOff, Cautions: bareHub,
				Meter: Meter{
					// Share of the edge that has let go of the plate. Sigma: rust at the edge
					// looks like a crack; assumed.
					Instrument: "eye_bond", Unit: "word", PerUnit: 0.01, Resolution: 1, Division: 1,
					Sigma: 4, Bias: 2, Slip: LookSlip, Lo: 0, Hi: 100,
					Words: []string{"bonded", "cracked", "parted"}, Cuts: []float64{10, 45},
				},
				Measure: func(w *World, wheel physics.Wheel) (float64, error) {
					return w.Model.Condition().Wheels[wheel].BondLost[pad], nil
				},
			},
			Check{
				ID: "face_" + name, Station: WheelOff, Part: part, PerWheel: true, Minutes: 2,
				Needs: atWheelOff, Cautions: padsOut,
				Meter: Meter{
					// Share of friction lost, mean of the halves: a lining of a weaker grade
					// looks like its own, one that has lost more is glazed, one that has lost
					// half is soaked. Where the one passes into the other is assumed.
					Instrument: "eye_lining", Unit: "word", PerUnit: 0.01, Resolution: 1, Division: 1,
					Sigma: 3, Bias: 1.5, Slip: LookSlip, Lo: -100, Hi: 100,
					Words: []string{"dull", "glassy", "soaked"}, Cuts: []float64{28, 45},
				},
				Measure: func(w *World, wheel physics.Wheel) (float64, error) {
					lost := w.Model.Condition().Wheels[wheel].MuLoss[pad]
					return (lost[physics.Upper] + lost[physics.Lower]) / 2, nil
				},
			})
	}
	return list
}
