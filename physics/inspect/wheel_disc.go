package inspect

import "evenwear/physics"

// What is found of the disc when the wheel is off.

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

// groove is a fingernail drawn across one face from the hub to the rim.
func groove(id ID, face int) Check {
	return Check{
		ID: id, Station: WheelOff, Part: DiscPart, PerWheel: true, Minutes: 0.5,
		Needs: atWheelOff, Cautions: bareHub,
		Meter: Meter{
			// Depth of the deepest score. A nail feels 0.05 mm and catches in 0.3; assumed.
			Instrument: "fingernail", Unit: "word", PerUnit: physics.Millimetre, Resolution: 0.01, Division: 0.01,
			Sigma: 0.02, Bias: 0.01, Slip: DefaultSlip, Lo: 0, Hi: 5,
			Words: []string{"smooth", "lined", "scored"}, Cuts: []float64{0.06, 0.3},
		},
		Measure: func(w *World, wheel physics.Wheel) (float64, error) {
			return w.Model.Condition().Wheels[wheel].Groove[face], nil
		},
	}
}

func discChecks() []Check {
	return []Check{
		{
			ID: "disc_thickness", Station: WheelOff, Part: DiscPart, PerWheel: true, Minutes: 1,
			Needs: atWheelOff, Cautions: bareHub, Meter: gauge(25),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) { return w.Model.DiscThickness(wheel), nil },
		},
		{
			// A gauge with flat jaws set across the disc at its rim, where no pad rubs: it
			// stands on the unworn, rusty edge and shows a new disc however far the faces have
			// worn. It is here because it is what a hurried hand does.
			ID: "disc_rim", Station: WheelOff, Part: DiscPart, PerWheel: true, Minutes: 0.5,
			Needs: atWheelOff, Cautions: bareHub, Meter: gauge(30),
			Measure: func(w *World, wheel physics.Wheel) (float64, error) { return w.Model.RimThickness(wheel), nil },
		},
		{
			// Greatest less least of the thickness at the spokes of a turn.
			ID: "thickness_variation", Station: WheelOff, Part: DiscPart, PerWheel: true, Minutes: 3,
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
			ID: "runout", Station: WheelOff, Part: DiscPart, PerWheel: true, Minutes: 3,
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
		groove("groove_outer", physics.Outer),
		groove("groove_inner", physics.Inner),
		{
			ID: "disc_crack", Station: WheelOff, Part: DiscPart, PerWheel: true, Minutes: 1,
			Needs: atWheelOff, Cautions: bareHub,
			Meter: Meter{
				// Length of the longest crack from the rim. Sigma: where a hairline ends is
				// a guess. Cuts assumed; any crack that reaches the rim ends a disc (common
				// practice, no source).
				Instrument: "eye_crack", Unit: "word", PerUnit: physics.Millimetre, Resolution: 1, Division: 1,
				Sigma: 0.8, Bias: 0.4, Slip: LookSlip, Lo: 0, Hi: 100,
				Words: []string{"no_crack", "hairline", "crack"}, Cuts: []float64{3, 12},
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				return w.Model.Condition().Wheels[wheel].DiscCrack, nil
			},
		},
	}
}
