package physics

import (
	"math"

	"evenwear/physics/exact"
)

const (
	monthlyWay = 1000.0 // [km/month] where the duty names none; assumed
	swellTime  = 0.5    // [month] in which oil has soaked 63 % of the way into a pin's rubber; assumed
	swellOver  = 0.1    // [N] to come, below which rubber counts as swollen
	ageStep    = 0.125  // [month] longest step while rubber swells, a quarter of swellTime
	ageMost    = 1.0    // [month] longest step of slow rust
	agePieces  = 400    // steps of a trip at most
	pinMost    = 1e6    // [N] sliding force added to a pin
	waterMost  = 0.2    // [1] water in the fluid by mass
)

// monthly is how far the car goes in a month [km].
func (d *Duty) monthly() float64 {
	if d.Monthly > 0 {
		return d.Monthly
	}
	return monthlyWay
}

// ages tells that months alone change the car.
func (c *Condition) ages() bool {
	return c.WaterUptake > 0 || c.pinsAge() < math.Inf(1)
}

// pinsAge is the longest step [month] in which the pins may be taken as they are
// in its middle; infinite where they do not age.
func (c *Condition) pinsAge() float64 {
	step := math.Inf(1)
	for w := range c.Wheels {
		for i := range 2 {
			if c.Wheels[w].PinRusting[i] > 0 {
				step = min(step, ageMost)
			}
			if c.Wheels[w].PinSwelling[i] > swellOver {
				step = min(step, ageStep)
			}
		}
	}
	return step
}

// Age is the condition some months later, wear left out.
//
//	swelling   dF = S·(1 − e^(−t/τ)), S ← S − dF      mineral oil in a pin's rubber, τ two weeks
//	rust       F ← F + r·t                            water under a torn boot
//	water      w ← w + u·t                            through hoses and the cap, at most 20 %
//
// F is a pin's sliding force. Grease made for rubber has S = 0. Two spans after one
// another are their sum. Source of the forms: diffusion into a thin wall, its first
// term; the others straight lines. The numbers are a condition's own.
func (c *Condition) Age(months float64) {
	left := exact.Exp(-months / swellTime)
	for w := range c.Wheels {
		v := &c.Wheels[w]
		for i := range 2 {
			soaked := float64(v.PinSwelling[i] * (1 - left))
			v.PinSwelling[i] -= soaked
			v.PinFriction[i] = min(pinMost, v.PinFriction[i]+soaked+float64(v.PinRusting[i]*months))
		}
	}
	c.Water = min(waterMost, c.Water+float64(c.WaterUptake*months))
}

// ageing drives a car that ages: half a step's months, its wear with the pins as
// they are in its middle, the other half. That errs by the square of the step.
func ageing(spec *Spec, cond Condition, duty Duty, km float64, fine accuracy) (Condition, error) {
	monthly := duty.monthly()
	for done := 0.0; done < km; {
		way := max(float64(monthly*(cond.pinsAge()/float64(fine.rounds))), km/agePieces)
		if done+float64(1.5*way) > km {
			way = km - done
		}
		half := way / monthly / 2
		cond.Age(half)
		var err error
		if cond, err = steady(spec, cond, duty, way, fine); err != nil {
			return cond, err
		}
		cond.Age(half)
		done += way
	}
	return cond, nil
}
