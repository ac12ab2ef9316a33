package inspect

import (
	"math"

	"evenwear/physics"
)

const (
	stopSpeed  = 50 * physics.KmPerHour // [m/s]
	slowSpeed  = 20 * physics.KmPerHour // [m/s] the first stop, before anything is trusted
	stopFoot   = 150                    // [N] a hard stop: 7.8 m/s² when new, no wheel locks in the dry
	slowFoot   = 100                    // [N]
	tourLength = 6                      // [km]
)

// noDrive is what every check on the road warns of.
var noDrive = []string{"caution.road_clear"}

// pendulum hangs against a scale in the car, right positive: 0.02 m/s² is 0.12°
// of lean. The mean of a stop each way takes out the road's fall; Sigma is what
// wind and hands leave of it. Assumed.
func pendulum() Meter {
	return Meter{
		Instrument: "side_pendulum", Unit: "mps2", PerUnit: 1, Resolution: 0.02, Division: 0.02,
		Sigma: 0.02, Bias: 0.01, Slip: DefaultSlip, Lo: -2, Hi: 2,
	}
}

func roadChecks() []Check {
	inStop := []string{"stop_50"}
	return []Check{
		{
			ID: "slow_stop", Station: Road, Minutes: 2, Needs: []string{"clear_road"}, Cautions: noDrive, Harmful: HarmRoad,
			Meter: Meter{
				// A steering wheel let go for a moment; what hands tell apart is assumed.
				Instrument: "hands", Unit: "word", PerUnit: 1, Resolution: 0.01, Division: 0.01,
				Sigma: 0.015, Bias: 0.01, Slip: DefaultSlip, Lo: -3, Hi: 3,
				Words: []string{"pulls_left", "straight", "pulls_right"}, Cuts: []float64{-0.05, 0.05},
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				r, err := w.slowStop()
				return r.Pull, err
			},
		},
		{
			ID: "pull", Station: Road, Minutes: 0.5, Needs: inStop, Cautions: noDrive, Harmful: HarmRoad,
			Meter: pendulum(),
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				r, err := w.fastStop()
				return r.Pull, err
			},
		},
		{
			ID: "stop_distance", Station: Road, Minutes: 1, Needs: inStop, Cautions: noDrive, Harmful: HarmRoad,
			Meter: Meter{
				// A tape from a mark on the road, metres drawn, read to half of one. Sigma:
				// 1 km/h of speed is 4 % of the distance, and the foot starts within
				// 0.05 s of the mark.
				Instrument: "tape", Unit: "m", PerUnit: 1, Resolution: 0.5, Division: 1,
				Sigma: 1, Bias: 0.5, Slip: DefaultSlip, Lo: 0, Hi: 100,
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				r, err := w.fastStop()
				return r.Distance, err
			},
		},
		{
			// At walking pace against the engine, with a light foot: the pedal's own
			// movement over a turn.
			ID: "pulsation", Station: Road, Minutes: 1, Needs: []string{"clear_road"}, Cautions: noDrive, Harmful: HarmRoad,
			Meter: Meter{
				// What a foot feels, peak to peak; the cuts are assumed, so that 15 µm of
				// thickness variation, from where drivers complain, are felt.
				Instrument: "foot_pulse", Unit: "word", PerUnit: physics.Millimetre, Resolution: 0.1, Division: 0.1,
				Sigma: 0.04, Bias: 0.02, Slip: DefaultSlip, Lo: 0, Hi: 10,
				Words: []string{"smooth", "quivers", "pulses"}, Cuts: []float64{0.15, 0.4},
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				c, err := w.creep()
				return c.pulse, err
			},
		},
		{
			ID: "temperature", Station: Road, PerWheel: true, Minutes: 0.3, Needs: []string{"drive"},
			Cautions: []string{"caution.hot_disc"}, Harmful: HarmRoad,
			Meter: Meter{
				// The matt spot of the hub. Sigma from aim and spot, Bias from the
				// thermometer's own 2 K class; assumed.
				Instrument: "infrared_thermometer", Unit: "degC", PerUnit: 1, Resolution: 1, Division: 1,
				Sigma: 2, Bias: 2, Slip: DefaultSlip, Lo: -20, Hi: 500,
			},
			Measure: func(w *World, wheel physics.Wheel) (float64, error) {
				s, err := w.tour()
				return infrared(s.Heat[wheel].Hat, mattSpot, room), err
			},
		},
	}
}

const (
	mattSpot = 0.9  // [1] emissivity of the hub's matt spot (physics page, heat)
	room     = 20.0 // [°C] what the spot mirrors
)

// infrared is what an infrared thermometer shows [°C] before a surface: it
// takes in what the surface sends and what it mirrors of the room,
//
//	T_seen⁴ = ε·T⁴ + (1 − ε)·T_room⁴      in kelvin
func infrared(temp, emissivity, room float64) float64 {
	const zero = 273.15
	fourth := func(t float64) float64 { t += zero; return t * t * t * t }
	seen := float64(emissivity*fourth(temp)) + float64((1-emissivity)*fourth(room))
	return math.Sqrt(math.Sqrt(seen)) - zero
}

func (w *World) fastStop() (physics.StopResult, error) {
	return w.cache.stop.get(func() (physics.StopResult, error) {
		return w.Model.Stop(w.Rest, physics.StopPlan{Speed: stopSpeed, Foot: stopFoot, Millis: w.stopStep()})
	})
}

func (w *World) slowStop() (physics.StopResult, error) {
	return w.cache.slow.get(func() (physics.StopResult, error) {
		return w.Model.Stop(w.Rest, physics.StopPlan{Speed: slowSpeed, Foot: slowFoot, Millis: w.stopStep()})
	})
}

func (w *World) stopStep() int64 {
	if w.fine {
		return 1
	}
	return short
}

func (w *World) tour() (physics.State, error) {
	return w.cache.tour.get(func() (physics.State, error) {
		return w.Model.Tour(w.Rest, physics.MixedDuty(), tourLength)
	})
}
