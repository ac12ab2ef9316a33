package inspect

import (
	"math"

	"evenwear/physics"
)

const (
	creepSpeed  = 10 * physics.KmPerHour // [m/s] against the engine
	creepFoot   = 60                     // [N] a light, steady foot
	creepMillis = 700                    // [ms] a little more than one turn of a wheel
	rollSpeed   = 15 * physics.KmPerHour // [m/s] from which the car rolls out
	rollParts   = 16                     // pieces of the roll-out's v²
	straightMs  = 10000                  // [ms] of straight road before a press
)

func rollingChecks() []Check {
	return []Check{
		{
			// Hard braking hides what holds one pad back by a fixed force; a light foot
			// shows it, and a wheel that drags by itself pulls to its own side.
			ID: "pull_light", Station: Road, Minutes: 1, Needs: []string{"clear_road"}, Cautions: noDrive, Harmful: HarmRoad,
			Meter: pendulum(),
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				c, err := w.creep()
				return c.pull, err
			},
		},
		{
			// Out of gear on level ground, from a mark to where the car stands.
			ID: "roll_out", Station: Road, Minutes: 3, Needs: []string{"clear_road"}, Cautions: noDrive, Harmful: HarmRoad,
			Meter: Meter{
				// The tape of the stopping distance. Sigma: half a km/h is 7 % of the way,
				// the mean of both ways takes out the ground's fall. Assumed.
				Instrument: "tape", Unit: "m", PerUnit: 1, Resolution: 0.5, Division: 1,
				Sigma: 2.5, Bias: 0.5, Slip: DefaultSlip, Lo: 0, Hi: 100,
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) { return w.rollOut() },
		},
		{
			// A press after a bend each way, less a press after as long a straight road:
			// a loose hub has pushed its pads back, gas lengthens both alike.
			ID: "knock_back", Station: Road, Minutes: 2, Needs: []string{"clear_road"}, Cautions: noDrive, Harmful: HarmRoad,
			Meter:   rule(-10, 100),
			Measure: func(w *World, _ physics.Wheel) (float64, error) { return w.cache.bent.get(w.knockBack) },
		},
	}
}

// creep is one turn of the wheels at a held speed under a light, steady foot,
// after a turn that lets the pads settle.
type creep struct {
	pulse float64 // [m] movement of the pedal, peak to peak; its drift from the turn's beginning to its end is no pulse
	pull  float64 // [m/s²] mean sideways acceleration to be steered against, right positive; see [physics.StopResult]
}

func (w *World) creep() (creep, error) {
	return w.cache.creep.get(func() (c creep, err error) {
		body := &w.Model.Spec().Body
		f := w.foot(true)
		f.to(creepFoot, 400)
		f.rest(1000, long)
		f.s.Speed, f.hold = creepSpeed, true
		f.rest(creepMillis, short)
		begin := f.travel()
		lo, hi := begin, begin
		torque, seconds := 0.0, 0.0 // right less left
		f.each = func(s *physics.State, dt float64) {
			t := f.travel()
			lo, hi = min(lo, t), max(hi, t)
			right := w.Model.WheelTorque(s, physics.FrontRight) + w.Model.WheelTorque(s, physics.RearRight)
			left := w.Model.WheelTorque(s, physics.FrontLeft) + w.Model.WheelTorque(s, physics.RearLeft)
			torque += float64((right - left) * dt)
			seconds += dt
		}
		f.rest(creepMillis, short)
		c.pulse = max(0, hi-lo-math.Abs(f.travel()-begin))
		if seconds > 0 {
			c.pull = float64(body.Track/2*torque/seconds) / float64(body.TyreRadius*body.Mass*body.Wheelbase)
		}
		return c, f.err
	})
}

// rollOut is how far the car rolls [m] until air, tyres and what drags have
// stopped it:
//
//	d = ½·∫ m/(R(v) + Σ T/r) d(v²)      by Simpson's rule over v²
func (w *World) rollOut() (float64, error) {
	body := &w.Model.Spec().Body
	drag := 0.0
	for i := range physics.Wheel(physics.NumWheels) {
		t, err := w.turned(i)
		if err != nil {
			return 0, err
		}
		drag += max(0, t.torque) / body.TyreRadius
	}
	sum := 0.0
	for i := range rollParts + 1 {
		v := rollSpeed * math.Sqrt(float64(i)/rollParts)
		weight := 2.0
		switch {
		case i == 0 || i == rollParts:
			weight = 1
		case i%2 == 1:
			weight = 4
		}
		sum += weight * body.Mass / (body.Resistance(v, 1) + drag)
	}
	return float64(sum * rollSpeed * rollSpeed / (6 * rollParts)), nil
}

// knockBack is how much further the pedal goes [m] after bends than after a
// straight road; see the check. A hub without play does not feel a bend.
func (w *World) knockBack() (float64, error) {
	loose := false
	cond := w.Model.Condition()
	for i := range cond.Wheels {
		loose = loose || cond.Wheels[i].BearingPlay > 0
	}
	if !loose {
		return 0, nil
	}
	f := w.foot(true)
	f.stroke(pressForce)
	f.rest(straightMs, long)
	straight := f.stroke(pressForce)
	f.rest(straightMs, long)
	if f.err == nil {
		f.s, f.err = w.Model.Bends(f.s, stopSpeed, 0)
		f.s.Speed = 0
	}
	return f.stroke(pressForce) - straight, f.err
}
