package physics

import "evenwear/physics/exact"

const (
	monthlyWay = 1000.0 // [km/month] where the duty names none; assumed
	swellTime  = 0.5    // [month] in which oil has soaked 63 % of the way into a pin's rubber; assumed
	pinMost    = 1e6    // [N] sliding force added to a pin
	sealMost   = 1e5    // [N] the same of a piston
	sealTime   = 1.0    // [month] as swellTime, of a piston's seal or a cup, which are thicker; assumed
	sealGrips  = 1e4    // [1/m] a piston held by rust or swollen rubber lets go after a tenth of a millimetre; assumed
	oilFull    = 0.1    // [1] mineral oil in the fluid with which rubber swells all it can; assumed
	oilSeal    = 1500.0 // [N] by which that grips each piston
	oilCup     = 2.5e-3 // [m] play by which it covers each compensating port: more than a pedal's free travel
	waterMost  = 0.2    // [1] water in the fluid by mass
	seepMost   = 1e-3   // [m³] of coolant that runs out; the leak lies no lower, assumed
)

// monthly is how far the car goes in a month [km].
func (d *Duty) monthly() float64 {
	if d.Monthly > 0 {
		return d.Monthly
	}
	return monthlyWay
}

// Age is the condition some months later, wear left out.
//
//	swelling   dF = S·(1 − e^(−t/τ)), S ← S − dF      mineral oil in a pin's rubber, τ two weeks; in a seal, τ a month
//	rust       F ← F + r·t                            water under a torn boot
//	water      w ← w + u·t                            through hoses and the cap, at most 20 %
//	coolant    dV = s·t                               through a leak, at most a litre
//	oil        dR = (min(1, m/10 %) − R)·(1 − e^(−t/τ))   mineral oil, a share m of the fluid, in all rubber
//
// F is the sliding force of a pin or a piston. What holds a piston so also stiffens
// it, k ← k + dF/0.1 mm: it no longer rolls back with its seal. Oil in the fluid
// grips every piston by 1500 N·dR more and swells the cups over the compensating
// ports by 2.5 mm·dR. Rubber never shrinks again. Grease made for rubber has S = 0. Two spans after one
// another are their sum. Source of the forms: diffusion into a thin wall, its first
// term; the others straight lines. The numbers are a condition's own.
func (c *Condition) Age(months float64) {
	left := exact.Exp(-months / swellTime)
	leftSeal := exact.Exp(-months / sealTime)
	swollen := float64(c.oilToCome() * (1 - leftSeal))
	c.RubberSwollen += swollen
	for i := range c.PortCover {
		c.PortCover[i] += float64(oilCup * swollen)
	}
	for w := range c.Wheels {
		v := &c.Wheels[w]
		seal := float64(v.SealSwelling * (1 - leftSeal))
		v.SealSwelling -= seal
		v.hold(seal + float64(oilSeal*swollen) + float64(v.SealRusting*months))
		for i := range 2 {
			soaked := float64(v.PinSwelling[i] * (1 - left))
			v.PinSwelling[i] -= soaked
			v.PinSoaked[i] += soaked
			v.PinFriction[i] = min(pinMost, v.PinFriction[i]+soaked+float64(v.PinRusting[i]*months))
		}
	}
	c.Water = min(waterMost, c.Water+float64(c.WaterUptake*months))
	if v := &c.Vessels; v.Seep > 0 {
		v.Coolant = max(min(v.Coolant, -seepMost), v.Coolant-float64(v.Seep*months))
	}
}

// oilToCome is how much further the fluid's oil will swell the rubber [1].
func (c *Condition) oilToCome() float64 {
	return max(0, min(1, c.MineralOil/oilFull)-c.RubberSwollen)
}

// hold lets rust or rubber hold the piston by so much more [N].
func (v *WheelCondition) hold(by float64) {
	v.SealFriction = min(sealMost, v.SealFriction+by)
	v.SealRate = min(sealMost*sealGrips, v.SealRate+float64(by*sealGrips))
}
