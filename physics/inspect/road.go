package inspect

import (
	"math"

	"evenwear/physics"
)

const (
	stopSpeed  = 50 * physics.KmPerHour // [m/s]
	slowSpeed  = 20 * physics.KmPerHour // [m/s]
	stopFoot   = 100                    // [N] a firm stop, no wheel locks in the dry
	slowFoot   = 40                     // [N] a slow stop
	tourLength = 12                     // [km]
)

// noDrive is what every check on the road warns of.
var noDrive = []string{"caution.road_clear"}

func roadChecks() []Check {
	inStop := []string{"stop_50"}
	return []Check{
		{
			ID: "slow_stop", Station: Road, Minutes: 2, Needs: []string{"clear_road"}, Cautions: noDrive, Harmful: HarmRoad,
			Meter: Meter{
				// A steering wheel let go for a moment; what hands tell apart is assumed.
				Instrument: "hands", Unit: "word", PerUnit: 1, Resolution: 0.1, Division: 0.1,
				Sigma: 0.05, Bias: 0.03, Slip: DefaultSlip, Lo: -3, Hi: 3,
				Words: []string{"pulls_left", "straight", "pulls_right"}, Cuts: []float64{-0.2, 0.2},
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				r, err := w.slowStop()
				return r.Pull, err
			},
		},
		{
			ID: "pull", Station: Road, Minutes: 0.5, Needs: inStop, Cautions: noDrive, Harmful: HarmRoad,
			Meter: Meter{
				// A pendulum against a scale in the car, right positive: 0.1 m/s² is
				// 0.6° of lean. Sigma from the road's crown and wind; assumed.
				Instrument: "side_pendulum", Unit: "mps2", PerUnit: 1, Resolution: 0.1, Division: 0.1,
				Sigma: 0.1, Bias: 0.05, Slip: DefaultSlip, Lo: -5, Hi: 5,
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				r, err := w.fastStop()
				return r.Pull, err
			},
		},
		{
			ID: "stop_distance", Station: Road, Minutes: 1, Needs: inStop, Cautions: noDrive, Harmful: HarmRoad,
			Meter: Meter{
				// Paced with a tape from a mark on the road. Sigma: 1 km/h of speed is
				// 4 % of the distance, and the foot starts within 0.05 s of the mark.
				Instrument: "tape", Unit: "m", PerUnit: 1, Resolution: 0.5, Division: 0.5,
				Sigma: 1, Bias: 0.5, Slip: DefaultSlip, Lo: 0, Hi: 100,
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				r, err := w.fastStop()
				return r.Distance, err
			},
		},
		{
			ID: "pulsation", Station: Road, Minutes: 0.5, Needs: inStop, Cautions: noDrive, Harmful: HarmRoad,
			Meter: Meter{
				// What a foot feels of the pedal's movement, peak to peak; assumed.
				Instrument: "foot_pulse", Unit: "word", PerUnit: physics.Millimetre, Resolution: 0.1, Division: 0.1,
				Sigma: 0.08, Bias: 0.04, Slip: DefaultSlip, Lo: 0, Hi: 10,
				Words: []string{"smooth", "quivers", "pulses"}, Cuts: []float64{0.3, 1},
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				r, err := w.slowStop()
				return r.PedalPulse, err
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
