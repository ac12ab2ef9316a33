package scoring

import (
	"math"

	"evenwear/physics"
)

// A trace is a faulty number that is left, and the most of it that a part may
// keep and be called mended.
type trace struct{ left, most float64 }

// traces are the numbers that no pad's force and no pedal's height tell. How
// much of each may stay is assumed: less than any check of an inspector tells.
func traces(spec *physics.Spec, now, good *physics.Condition) []trace {
	list := []trace{
		{now.Water - good.Water, 0.005},
		{now.BoosterLoss - good.BoosterLoss, 0.05},
		{now.VacuumLeak - good.VacuumLeak, 0.002},
		{now.DiaphragmLeak - good.DiaphragmLeak, 0.05},
		{now.LowGrade - good.LowGrade, 0.05},
		{now.MineralOil - good.MineralOil, 0.001},
		{now.RubberSwollen - good.RubberSwollen, 0.02},
		{now.VentShut - good.VentShut, 0.1},
		{now.LampLost - good.LampLost, 0.1},
		{now.FloatHigh - good.FloatHigh, 5e-6},
	}
	for i := range 2 {
		list = append(list,
			trace{now.ChamberAir[i] - good.ChamberAir[i], 0.1e-6},
			trace{now.CupBypass[i] - good.CupBypass[i], 5e-16},
			trace{now.PortCover[i] - good.PortCover[i], 0.1e-3})
	}
	for w := range now.Wheels {
		a, b := &now.Wheels[w], &good.Wheels[w]
		list = append(list,
			trace{a.Holes() - b.Holes(), 0},
			trace{a.DiscCrack - b.DiscCrack, 0},
			trace{a.RimRust - b.RimRust, 0.2e-3},
			trace{math.Abs(a.ValveStuck) - math.Abs(b.ValveStuck), 0.05},
			trace{a.Runout - b.Runout, 30e-6},
			trace{a.Thickness - b.Thickness, 6e-6},
			trace{a.HoseSwell - b.HoseSwell, 5e-15},
			trace{a.HoseHold - b.HoseHold, 0.02e6},
			trace{a.HoseReturn - b.HoseReturn, 2},
			trace{a.BearingPlay - b.BearingPlay, 0.05e-3})
		for i := range 2 {
			list = append(list,
				trace{a.DiscWear[i] - b.DiscWear[i], 0.02e-3},
				trace{a.Groove[i] - b.Groove[i], 0.1e-3},
				trace{a.PlateProud[i] - b.PlateProud[i], 0.1e-3},
				trace{a.BondLost[i] - b.BondLost[i], 0},
				trace{a.PinSoaked[i] - b.PinSoaked[i], 30},
				trace{a.PinBend[i] - b.PinBend[i], 2e-7},
				trace{a.PinPinch[i] - b.PinPinch[i], 0.02e-3})
			for half := range 2 {
				list = append(list, trace{a.MuLoss[i][half] - b.MuLoss[i][half], 0.05}, trace{a.Wear[i][half] - b.Wear[i][half], 0.05e-3})
			}
		}
	}
	v, s := &spec.Vessels, &now.Vessels
	return append(list,
		outside(s.Oil, good.Vessels.Oil, v.Oil.MinToMax),
		outside(s.Coolant, good.Vessels.Coolant, v.Coolant.MinToMax),
		outside(s.Steering, good.Vessels.Steering, v.Steering.MinToMax),
		outside(s.Washer, good.Vessels.Washer, 0.9*v.Washer.MinToMax))
}

// outside is how far [m³] a vessel that was filled wrongly stands outside its
// marks; a mark itself is within. good is what was found where the vessel is not
// at fault.
func outside(now, good, minToMax float64) trace {
	if now == good {
		return trace{}
	}
	return trace{max(now, -float64(minToMax)-now), float64(0.05 * minToMax)}
}
