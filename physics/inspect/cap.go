package inspect

import "evenwear/physics"

// What is found when the cap of the brake reservoir is opened.

var underCap = []string{"caution.cap_wiped", "caution.fluid_skin_paint"}

// capVent is the air let in or out as the cap is turned, and how its diaphragm hung.
func capVent() Check {
	return Check{
		ID: "cap_vent", Station: Bonnet, Minutes: 1, Cautions: underCap,
		Meter: Meter{
			// A kilopascal, a tenth of a metre of water, is heard; a diaphragm hangs
			// visibly at a third of it. Assumed.
			Instrument: "ear_cap", Unit: "word", PerUnit: 1e3, Resolution: 1, Division: 1,
			Sigma: 0.3, Bias: 0.2, Slip: DefaultSlip, Lo: -40, Hi: 40,
			Words: []string{"draws", "quiet", "blows"}, Cuts: []float64{-1, 1},
		},
		Measure: func(w *World, _ physics.Wheel) (float64, error) { return w.Model.Above(&w.Rest), nil },
	}
}

// fluidLayers is a sample that has stood in a glass.
func fluidLayers() Check {
	return Check{
		ID: "fluid_layers", Station: Bonnet, Minutes: 3, Cautions: underCap,
		Meter: Meter{
			// In a glass filled 60 mm high 3 % of oil are a layer of 2 mm; half a
			// per cent clouds it. What an eye tells apart is assumed.
			Instrument: "sample_glass", Unit: "word", PerUnit: 0.01, Resolution: 1, Division: 1,
			Sigma: 0.15, Bias: 0, Slip: LookSlip, Lo: -5, Hi: 100,
			Words: []string{"clear", "cloudy", "layered"}, Cuts: []float64{0.5, 3},
		},
		Measure: func(w *World, _ physics.Wheel) (float64, error) { return w.Model.OilLayer(), nil },
	}
}

// capRubber is the cap's diaphragm between two fingers.
func capRubber() Check {
	return Check{
		ID: "cap_rubber", Station: Bonnet, Minutes: 0.5, Cautions: underCap,
		Meter: Meter{
			// A quarter of the way to swollen through no longer folds into its cap.
			// Assumed.
			Instrument: "eye_rubber", Unit: "word", PerUnit: 1, Resolution: 1, Division: 1,
			Sigma: 0.06, Bias: 0.03, Slip: DefaultSlip, Lo: -1, Hi: 2,
			Words: []string{"folds", "puffed"}, Cuts: []float64{0.25},
		},
		Measure: func(w *World, _ physics.Wheel) (float64, error) { return w.Model.Condition().RubberSwollen, nil },
	}
}

// capOpeners are the checks that open the reservoir's cap.
var capOpeners = []ID{"cap_vent", "fluid_water", "fluid_boil", "fluid_layers", "cap_rubber"}

// OpensCap tells that a check opens the reservoir's cap: what pressure stood
// under it is gone then.
func (i Instance) OpensCap() bool { return contains(capOpeners, i.Check) }
