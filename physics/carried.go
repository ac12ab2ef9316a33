package physics

// Driven is what [Drive] reads or changes of c; what it only carries along is
// zero. Two cars that are driven alike wear alike, to the bit.
//
// A test moves every number of a condition in turn and holds this against what
// Drive makes of it; a number that is new must be put on its list.
func (c *Condition) Driven() Condition {
	d := *c
	d.carry(&Condition{})
	return d
}

// carry sets to from's what Drive only carries along.
func (c *Condition) carry(from *Condition) {
	if c.WaterUptake == 0 {
		c.Water = from.Water
	}
	if c.MineralOil == 0 { // which covers the ports
		c.PortCover = from.PortCover
	}
	c.LowGrade, c.VentShut = from.LowGrade, from.VentShut
	c.BoosterLoss, c.VacuumLeak, c.DiaphragmLeak = from.BoosterLoss, from.VacuumLeak, from.DiaphragmLeak
	c.CupBypass, c.ChamberAir = from.CupBypass, from.ChamberAir
	c.LampLost, c.FloatHigh = from.LampLost, from.FloatHigh
	if c.Vessels.Seep == 0 {
		c.Vessels.Coolant = from.Vessels.Coolant
	}
	c.Vessels.Oil, c.Vessels.Steering, c.Vessels.Washer = from.Vessels.Oil, from.Vessels.Steering, from.Vessels.Washer
	for w := range c.Wheels {
		v, other := &c.Wheels[w], &from.Wheels[w]
		v.RimRust, v.DiscCrack, v.BearingPlay = other.RimRust, other.DiscCrack, other.BearingPlay
		v.Air, v.HoseSwell, v.HoseReturn = other.Air, other.HoseSwell, other.HoseReturn
	}
}
