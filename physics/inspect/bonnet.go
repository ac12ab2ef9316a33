package inspect

import "evenwear/physics"

func bonnetChecks() []Check {
	return append([]Check{
		{
			ID: "reservoir_level", Station: Bonnet, Minutes: 1,
			Cautions: []string{"caution.cap_stays_on"},
			Meter: Meter{
				// 10 % a tick as drawn, read to half a tick. Sigma: the meniscus seen
				// through the wall; Bias: the car a degree off level. Both assumed.
				Instrument: "reservoir_marks", Unit: "percent", PerUnit: 0.01,
				Resolution: 5, Division: 10, Sigma: 2, Bias: 2, Slip: LookSlip, Lo: -30, Hi: 120,
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) { return w.Model.Level(&w.Rest), nil },
		},
		capVent(),
		{
			ID: "fluid_water", Station: Bonnet, Minutes: 3,
			Cautions: []string{"caution.fluid_skin_paint"},
			Meter: Meter{
				// Sigma and Bias: a conductive tester against a titration; assumed.
				Instrument: "water_tester", Unit: "percent", PerUnit: 0.01,
				Resolution: 0.1, Division: 0.1, Sigma: 0.15, Bias: 0.2, Slip: LookSlip, Lo: 0, Hi: 5,
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) { return w.Model.Condition().Water, nil },
		},
		{
			// A drop under a small heater until it bubbles. Sigma: where the bubbles
			// count as boiling; Bias: its thermometer. Assumed.
			ID: "fluid_boil", Station: Bonnet, Minutes: 4,
			Cautions: underCap,
			Meter: Meter{
				Instrument: "boil_tester", Unit: "degC", PerUnit: 1,
				Resolution: 1, Division: 1, Sigma: 3, Bias: 3, Slip: DefaultSlip, Lo: 80, Hi: 320,
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) { return w.Model.BoilingPoint(), nil },
		},
		fluidLayers(),
		capRubber(),
	}, vesselChecks()...)
}
