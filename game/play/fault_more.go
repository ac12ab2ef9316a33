package play

import (
	"math"

	"evenwear/physics"
)

// A figureOf is a number of the condition that is told where a fault has moved
// it: a part, a sentence, the number as it is shown and the least of it.
type figureOf struct {
	part, id   string
	now, least float64
	digits     int
}

// wheelFigures are what a wheel's condition has beyond a new car's, apart from
// what its linings, forces, disc and joint tell.
func wheelFigures(c *physics.WheelCondition) []figureOf {
	greater := func(v [2]float64) float64 { return max(v[0], v[1]) }
	lost := max(greater(c.MuLoss[0]), greater(c.MuLoss[1]))
	soaked, rusting, pinch := greater(c.PinSoaked), greater(c.PinRusting), greater(c.PinPinch)
	return []figureOf{
		{"upper_pin", "fault.swollen", soaked, 20, 0},
		{"upper_pin", "fault.rusting", rusting, 5, 0},
		{"upper_pin", "fault.pinch", pinch / physics.Millimetre, 0.05, 2},
		{"piston", "fault.piston_rusting", c.SealRusting, 5, 0},
		{"piston", "fault.seal_leak", c.SealLeak * 1e12, 1, 0},
		{"piston", "fault.seal_hard", c.SealRate / 1e6, 0.5, 1},
		{"piston", "fault.screw_leak", c.ScrewLeak * 1e12, 1, 0},
		{"inner_lining", "fault.ears", greater(c.EarFriction), 20, 0},
		{"inner_lining", "fault.bond", 100 * greater(c.BondLost), 1, 0},
		{"outer_lining", "fault.proud", greater(c.PlateProud) / physics.Millimetre, 0.1, 1},
		{"outer_lining", "fault.friction", 100 * lost, 2, 0},
		{"disc", "fault.groove", c.Groove[0] / physics.Millimetre, 0.1, 1},
		{"disc", "fault.rim", c.RimRust / physics.Millimetre, 0.2, 1},
		{"disc", "fault.crack", c.DiscCrack / physics.Millimetre, 1, 0},
		{"disc", "fault.bearing", c.BearingPlay / physics.Millimetre, 0.05, 2},
		{"joint", "fault.hose_swell", c.HoseSwell * 1e12, 0.005, 2},
		{"joint", "fault.valve", 100 * math.Abs(c.ValveStuck), 1, 0},
	}
}

// carFigures are what the whole car's condition has beyond a new car's.
func carFigures(c *physics.Condition) []figureOf {
	return []figureOf{
		{"level", "fault.water", 100 * c.Water, 0.3, 1},
		{"level", "fault.low_grade", 100 * c.LowGrade, 1, 0},
		{"level", "fault.mineral", 100 * c.MineralOil, 0.1, 0},
		{"level", "fault.swollen_seals", 100 * c.RubberSwollen, 1, 0},
		{"level", "fault.vent", 100 * c.VentShut, 1, 0},
		{"level", "fault.lamp", 100 * c.LampLost, 1, 0},
		{"pedal", "fault.vacuum", 100 * c.VacuumLeak, 0.5, 0},
		{"pedal", "fault.diaphragm", 100 * c.DiaphragmLeak, 0.5, 0},
		{"pedal", "fault.play_lost", max(c.PortCover[0], c.PortCover[1]) / physics.Millimetre, 0.1, 1},
		{"pedal", "fault.chamber_air", max(c.ChamberAir[0], c.ChamberAir[1]) * 1e6, 0.1, 1},
	}
}

// moreLabels say what of these there is.
func (s *Session) moreLabels(list []figureOf) (all []FaultLabel) {
	for _, f := range list {
		if f.now >= f.least {
			all = append(all, FaultLabel{Part: f.part, Text: s.words.Say(f.id, "now", fixed(f.now, f.digits))})
		}
	}
	return all
}
