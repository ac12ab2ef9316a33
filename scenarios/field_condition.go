package scenarios

import "evenwear/physics"

// The condition's numbers: all are deviations from the new car and add to it.

var conditionRows = []row[physics.Condition]{
	{"fluid_added", cm3, -1000, 500, func(c *physics.Condition) *float64 { return &c.Fluid }},
	{"water_uptake", perMonth, 0, 0.1, func(c *physics.Condition) *float64 { return &c.WaterUptake }},
	{"low_grade", share, 0, 1, func(c *physics.Condition) *float64 { return &c.LowGrade }},
	{"mineral_oil", share, 0, 0.5, func(c *physics.Condition) *float64 { return &c.MineralOil }},
	{"rubber_swollen", share, 0, 1, func(c *physics.Condition) *float64 { return &c.RubberSwollen }},
	{"vent_shut", share, 0, 1, func(c *physics.Condition) *float64 { return &c.VentShut }},
	{"lamp_lost", share, 0, 1, func(c *physics.Condition) *float64 { return &c.LampLost }},
	{"float_high", cm3, 0, 500, func(c *physics.Condition) *float64 { return &c.FloatHigh }},
	{"water", share, 0, 0.2, func(c *physics.Condition) *float64 { return &c.Water }},
	{"oil_added", cm3, -10000, 5000, func(c *physics.Condition) *float64 { return &c.Vessels.Oil }},
	{"coolant_added", cm3, -10000, 5000, func(c *physics.Condition) *float64 { return &c.Vessels.Coolant }},
	{"coolant_seep", cm3PerMonth, 0, 1000, func(c *physics.Condition) *float64 { return &c.Vessels.Seep }},
	{"steering_added", cm3, -3000, 1000, func(c *physics.Condition) *float64 { return &c.Vessels.Steering }},
	{"washer_added", cm3, -10000, 0, func(c *physics.Condition) *float64 { return &c.Vessels.Washer }},
	{"booster.loss", share, 0, 1, func(c *physics.Condition) *float64 { return &c.BoosterLoss }},
	{"booster.leak", perS, 0, 100, func(c *physics.Condition) *float64 { return &c.VacuumLeak }},
	{"booster.diaphragm_leak", perS, 0, 100, func(c *physics.Condition) *float64 { return &c.DiaphragmLeak }},
	{"master.primary_air", cm3, 0, 20, func(c *physics.Condition) *float64 { return &c.ChamberAir[0] }},
	{"master.secondary_air", cm3, 0, 20, func(c *physics.Condition) *float64 { return &c.ChamberAir[1] }},
	{"master.primary_bypass", bypass, 0, 100, func(c *physics.Condition) *float64 { return &c.CupBypass[0] }},
	{"master.secondary_bypass", bypass, 0, 100, func(c *physics.Condition) *float64 { return &c.CupBypass[1] }},
	{"master.primary_play_lost", mm, 0, 10, func(c *physics.Condition) *float64 { return &c.PortCover[0] }},
	{"master.secondary_play_lost", mm, 0, 10, func(c *physics.Condition) *float64 { return &c.PortCover[1] }},
}

var wheelRows = []row[physics.WheelCondition]{
	{"pin_upper_friction", newton, 0, 50000, func(c *physics.WheelCondition) *float64 { return &c.PinFriction[physics.Upper] }},
	{"pin_lower_friction", newton, 0, 50000, func(c *physics.WheelCondition) *float64 { return &c.PinFriction[physics.Lower] }},
	{"pin_upper_bend", perKN, 0, 20, func(c *physics.WheelCondition) *float64 { return &c.PinBend[physics.Upper] }},
	{"pin_lower_bend", perKN, 0, 20, func(c *physics.WheelCondition) *float64 { return &c.PinBend[physics.Lower] }},
	{"pin_upper_pinch", mm, 0, 1, func(c *physics.WheelCondition) *float64 { return &c.PinPinch[physics.Upper] }},
	{"pin_lower_pinch", mm, 0, 1, func(c *physics.WheelCondition) *float64 { return &c.PinPinch[physics.Lower] }},
	{"pin_upper_soaked", newton, 0, 50000, func(c *physics.WheelCondition) *float64 { return &c.PinSoaked[physics.Upper] }},
	{"pin_lower_soaked", newton, 0, 50000, func(c *physics.WheelCondition) *float64 { return &c.PinSoaked[physics.Lower] }},
	{"pin_upper_swelling", newton, 0, 50000, func(c *physics.WheelCondition) *float64 { return &c.PinSwelling[physics.Upper] }},
	{"pin_lower_swelling", newton, 0, 50000, func(c *physics.WheelCondition) *float64 { return &c.PinSwelling[physics.Lower] }},
	{"pin_upper_rusting", rusting, 0, 50000, func(c *physics.WheelCondition) *float64 { return &c.PinRusting[physics.Upper] }},
	{"pin_lower_rusting", rusting, 0, 50000, func(c *physics.WheelCondition) *float64 { return &c.PinRusting[physics.Lower] }},
	{"pin_upper_seized_at", mm, -5, 30, func(c *physics.WheelCondition) *float64 { return &c.PinAnchor[physics.Upper] }},
	{"pin_lower_seized_at", mm, -5, 30, func(c *physics.WheelCondition) *float64 { return &c.PinAnchor[physics.Lower] }},
	{"seal_friction", newton, 0, 20000, func(c *physics.WheelCondition) *float64 { return &c.SealFriction }},
	{"seal_rate", perMM, 0, 100, func(c *physics.WheelCondition) *float64 { return &c.SealRate }},
	{"seal_swelling", newton, 0, 20000, func(c *physics.WheelCondition) *float64 { return &c.SealSwelling }},
	{"seal_rusting", rusting, 0, 20000, func(c *physics.WheelCondition) *float64 { return &c.SealRusting }},
	{"ear_inner_friction", newton, 0, 20000, func(c *physics.WheelCondition) *float64 { return &c.EarFriction[physics.Inner] }},
	{"ear_outer_friction", newton, 0, 20000, func(c *physics.WheelCondition) *float64 { return &c.EarFriction[physics.Outer] }},
	{"lining_inner_upper_loss", mm, 0, 25, func(c *physics.WheelCondition) *float64 { return &c.Wear[physics.Inner][physics.Upper] }},
	{"lining_inner_lower_loss", mm, 0, 25, func(c *physics.WheelCondition) *float64 { return &c.Wear[physics.Inner][physics.Lower] }},
	{"lining_outer_upper_loss", mm, 0, 25, func(c *physics.WheelCondition) *float64 { return &c.Wear[physics.Outer][physics.Upper] }},
	{"lining_outer_lower_loss", mm, 0, 25, func(c *physics.WheelCondition) *float64 { return &c.Wear[physics.Outer][physics.Lower] }},
	{"bond_inner_lost", share, 0, 0.9, func(c *physics.WheelCondition) *float64 { return &c.BondLost[physics.Inner] }},
	{"bond_outer_lost", share, 0, 0.9, func(c *physics.WheelCondition) *float64 { return &c.BondLost[physics.Outer] }},
	{"plate_inner_proud", mm, 0, 2, func(c *physics.WheelCondition) *float64 { return &c.PlateProud[physics.Inner] }},
	{"plate_outer_proud", mm, 0, 2, func(c *physics.WheelCondition) *float64 { return &c.PlateProud[physics.Outer] }},
	{"disc_inner_loss", mm, 0, 10, func(c *physics.WheelCondition) *float64 { return &c.DiscWear[physics.Inner] }},
	{"disc_outer_loss", mm, 0, 10, func(c *physics.WheelCondition) *float64 { return &c.DiscWear[physics.Outer] }},
	{"disc_inner_groove", mm, 0, 3, func(c *physics.WheelCondition) *float64 { return &c.Groove[physics.Inner] }},
	{"disc_outer_groove", mm, 0, 3, func(c *physics.WheelCondition) *float64 { return &c.Groove[physics.Outer] }},
	{"disc_rim_rust", mm, 0, 3, func(c *physics.WheelCondition) *float64 { return &c.RimRust }},
	{"disc_crack", mm, 0, 150, func(c *physics.WheelCondition) *float64 { return &c.DiscCrack }},
	{"disc_film", share, 0, 1, func(c *physics.WheelCondition) *float64 { return &c.DiscFilm }},
	{"runout", micron, 0, 2000, func(c *physics.WheelCondition) *float64 { return &c.Runout }},
	{"disc_variation", micron, 0, 1000, func(c *physics.WheelCondition) *float64 { return &c.Thickness }},
	{"lining_inner_upper_friction_lost", share, 0, 0.95, func(c *physics.WheelCondition) *float64 { return &c.MuLoss[physics.Inner][physics.Upper] }},
	{"lining_inner_lower_friction_lost", share, 0, 0.95, func(c *physics.WheelCondition) *float64 { return &c.MuLoss[physics.Inner][physics.Lower] }},
	{"lining_outer_upper_friction_lost", share, 0, 0.95, func(c *physics.WheelCondition) *float64 { return &c.MuLoss[physics.Outer][physics.Upper] }},
	{"lining_outer_lower_friction_lost", share, 0, 0.95, func(c *physics.WheelCondition) *float64 { return &c.MuLoss[physics.Outer][physics.Lower] }},
	{"leak", micron2, 0, 1e6, func(c *physics.WheelCondition) *float64 { return &c.Leak }},
	{"seal_leak", micron2, 0, 1e6, func(c *physics.WheelCondition) *float64 { return &c.SealLeak }},
	{"screw_leak", micron2, 0, 1e6, func(c *physics.WheelCondition) *float64 { return &c.ScrewLeak }},
	{"air", cm3, 0, 50, func(c *physics.WheelCondition) *float64 { return &c.Air }},
	{"hose_swell", swell, 0, 2, func(c *physics.WheelCondition) *float64 { return &c.HoseSwell }},
	{"hose_hold", mpa, 0, 10, func(c *physics.WheelCondition) *float64 { return &c.HoseHold }},
	{"hose_return", ratio, 0, 1e6, func(c *physics.WheelCondition) *float64 { return &c.HoseReturn }},
	{"valve_stuck", share, -1, 1, func(c *physics.WheelCondition) *float64 { return &c.ValveStuck }},
	{"bearing_play", mm, 0, 3, func(c *physics.WheelCondition) *float64 { return &c.BearingPlay }},
}

// spreads are short keys that mean several at once: both pins, four half pads.
var spreads = []struct {
	name string
	to   []string
}{
	{"pin_friction_n", []string{"pin_upper_friction_n", "pin_lower_friction_n"}},
	{"pin_bend_mm_per_kn", []string{"pin_upper_bend_mm_per_kn", "pin_lower_bend_mm_per_kn"}},
	{"pin_pinch_mm", []string{"pin_upper_pinch_mm", "pin_lower_pinch_mm"}},
	{"pin_soaked_n", []string{"pin_upper_soaked_n", "pin_lower_soaked_n"}},
	{"pin_swelling_n", []string{"pin_upper_swelling_n", "pin_lower_swelling_n"}},
	{"pin_rusting_n_per_month", []string{"pin_upper_rusting_n_per_month", "pin_lower_rusting_n_per_month"}},
	{"pin_seized_at_mm", []string{"pin_upper_seized_at_mm", "pin_lower_seized_at_mm"}},
	{"ear_friction_n", []string{"ear_inner_friction_n", "ear_outer_friction_n"}},
	{"lining_loss_mm", []string{"lining_inner_upper_loss_mm", "lining_inner_lower_loss_mm", "lining_outer_upper_loss_mm", "lining_outer_lower_loss_mm"}},
	{"lining_friction_lost_share", []string{"lining_inner_upper_friction_lost_share", "lining_inner_lower_friction_lost_share",
		"lining_outer_upper_friction_lost_share", "lining_outer_lower_friction_lost_share"}},
	{"bond_lost_share", []string{"bond_inner_lost_share", "bond_outer_lost_share"}},
	{"disc_groove_mm", []string{"disc_inner_groove_mm", "disc_outer_groove_mm"}},
	{"plate_proud_mm", []string{"plate_inner_proud_mm", "plate_outer_proud_mm"}},
	{"disc_loss_mm", []string{"disc_inner_loss_mm", "disc_outer_loss_mm"}},
}

var spreadIndex = func() map[string][]string {
	m := map[string][]string{}
	for _, s := range spreads {
		m[s.name] = s.to
	}
	return m
}()

// conditionFields is the table of a condition: the whole car's, then each wheel's.
func conditionFields() []Field {
	var out []Field
	for _, r := range conditionRows {
		f := r.field("")
		f.cond = r.at
		out = append(out, f)
	}
	for w := physics.Wheel(0); w < physics.NumWheels; w++ {
		for _, r := range wheelRows {
			f := r.field("wheel." + w.String() + ".")
			f.cond = func(c *physics.Condition) *float64 { return r.at(&c.Wheels[w]) }
			switch r.name {
			case "pin_upper_friction":
				f.kept = func(c *physics.Condition) *float64 { return &c.Wheels[w].PinSoaked[physics.Upper] }
			case "pin_lower_friction":
				f.kept = func(c *physics.Condition) *float64 { return &c.Wheels[w].PinSoaked[physics.Lower] }
			case "pin_upper_seized_at":
				f.mark = func(c *physics.Condition) *bool { return &c.Wheels[w].PinAnchorSet[physics.Upper] }
			case "pin_lower_seized_at":
				f.mark = func(c *physics.Condition) *bool { return &c.Wheels[w].PinAnchorSet[physics.Lower] }
			}
			out = append(out, f)
		}
	}
	return out
}
