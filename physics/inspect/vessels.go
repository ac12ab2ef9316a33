package inspect

import (
	"math"

	"evenwear/physics"
)

// A vessel is a check of a level [1, 0 at MIN, 1 at MAX] that depends on how the
// car stands. doubt is the spread [unit] that a stand adds because nobody knows
// it to the second or the kelvin.
func vessel(c Check, level func(*physics.Model, physics.Bonnet) float64, doubt func(stand) float64) Check {
	c.Station, c.level, c.doubt = Bonnet, level, doubt
	s := c.standWith(nil)
	c.Measure = func(w *World, _ physics.Wheel) (float64, error) { return level(w.Model, s.bonnet()), nil }
	return c
}

func noDoubt(stand) float64 { return 0 }

// share is a meter of a level in percent of the way from MIN to MAX, 10 % a tick
// as drawn, read to half a tick.
func share(instrument string, sigma, bias, lo, hi float64) Meter {
	return Meter{
		Instrument: instrument, Unit: "percent", PerUnit: 0.01,
		Resolution: 5, Division: 10, Sigma: sigma, Bias: bias, Slip: LookSlip, Lo: lo, Hi: hi,
	}
}

func vesselChecks() []Check {
	return []Check{
		vessel(Check{
			// Wiped, dipped, drawn. Sigma: the film's edge is ragged; Bias: how far the
			// stick seats. Assumed.
			ID: "oil_level", Minutes: 2, Wants: []string{flat, rested}, Spoils: []string{goneCold},
			Cautions: []string{"caution.hot_engine"},
			Meter:    share("dipstick", 3, 3, -50, 150),
		}, (*physics.Model).OilLevel, oilDoubt),
		vessel(Check{
			// Through the wall of the vessel. Sigma: the meniscus; Bias: the wall is
			// curved. Assumed.
			ID: "coolant_level", Minutes: 1, Wants: []string{goneCold},
			Cautions: []string{"caution.hot_cap"},
			Meter:    share("coolant_marks", 2, 2, -100, 250),
		}, (*physics.Model).CoolantLevel, coolantDoubt),
		vessel(Check{
			// A short stick on the cap, with marks for cold fluid. Assumed as for the oil.
			ID: "steering_level", Minutes: 1, Wants: []string{goneCold},
			Cautions: []string{"caution.hot_engine"},
			Meter:    share("cap_stick", 3, 2, -50, 150),
		}, (*physics.Model).SteeringLevel, steeringDoubt),
		vessel(Check{
			// A tube dipped through the filler, a thumb on its end. Assumed.
			ID: "washer_level", Minutes: 1,
			Meter: share("dip_tube", 3, 2, 0, 100),
		}, (*physics.Model).WasherLevel, noDoubt),
	}
}

// oilDoubt is half of what the level moves when the oil has had half or twice the
// time to run down, and a third of what the yard's fall makes; a warm engine's
// 10 K are worth 1 %. For the compact hatchback; assumed for others.
func oilDoubt(s stand) float64 {
	hasty := 0.0
	switch {
	case s.hasty && s.cold:
		hasty = 18
	case s.hasty:
		hasty = 6
	}
	slope := 0.0
	if s.slope {
		slope = 4
	}
	return math.Sqrt(float64(hasty*hasty) + float64(slope*slope) + 1)
}

// coolantDoubt: ten kelvin either way of a hot engine are a tenth of the marks.
func coolantDoubt(s stand) float64 {
	if s.cold {
		return 0
	}
	return 10
}

// steeringDoubt: ten kelvin either way of hot fluid.
func steeringDoubt(s stand) float64 {
	if s.cold {
		return 0
	}
	return 6
}
