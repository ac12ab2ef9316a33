package physics

import (
	"fmt"
	"math"
)

// A StopPlan is one stop on a straight road.
type StopPlan struct {
	Speed     float64            // [m/s] at first movement of the pedal
	Decel     float64            // [m/s²] wanted; the foot is solved for it, at most FootLimit; 0 = use Foot
	Foot      float64            // [N] reached in Rise
	FootLimit float64            // [N] 0 means 500
	Rise      float64            // [s] of the foot's ramp; 0 means 0.15
	Surface   [NumWheels]float64 // [1] as Input.Surface
	EngineOff bool               // no vacuum is restored
	Grade     float64            // [1] tangent of the slope, downhill positive
	Millis    int64              // [ms] step; 0 means 1
}

// A StopResult is what the road and the instruments saw. SI. From the mean forces at
// the tyres between 0.8 v and 0.1 v:
//
//	imbalance  1 − smaller/larger of an axle              [1]
//	yaw        ½·track·Σ (F_right − F_left)               [N·m]
//	pull       yaw/(m·L): the steered axle's side force over the car's mass
//
// Error of the pull: the wheels' steering by their own brake force (scrub radius) is
// left out, which differs from car to car.
type StopResult struct {
	Distance   float64            // [m] from first movement of the pedal
	Time       float64            // [s] likewise
	MFDD       float64            // [m/s²] mean fully developed deceleration, UN R13-H: between 0.8 v and 0.1 v
	Foot       float64            // [N] greatest
	Travel     float64            // [m] greatest pedal travel
	Pressure   [NumWheels]float64 // [Pa] at the time of full braking (mean while 0.8 v to 0.1 v)
	Force      [NumWheels]float64 // [N] brake force at the tyre, mean over the same
	Locked     [NumWheels]bool
	DiscPeak   [NumWheels]float64 // [°C] face
	FluidPeak  [NumWheels]float64 // [°C]
	Imbalance  [2]float64         // [1] front and rear axle, 1 − smaller/larger force
	Yaw        float64            // [N·m] mean yaw moment, positive turns the car right
	Pull       float64            // [m/s²] sideways acceleration the driver must steer against, right positive
	Pulsation  [NumWheels]float64 // [1] half of (greatest − least torque over a turn) / mean
	PedalPulse float64            // [m] pedal movement at wheel frequency, peak to peak
	End        State
}

const (
	footLimit   = 500.0   // [N] 49 CFR 571.135 S7.5
	stopPatient = 120_000 // [ms] after which a car counts as not stopping
)

// check refuses a plan that means nothing and fills in its defaults.
func (p *StopPlan) check() error {
	if p.FootLimit == 0 {
		p.FootLimit = footLimit
	}
	if p.Rise == 0 {
		p.Rise = 0.15
	}
	if p.Millis == 0 {
		p.Millis = 1
	}
	within := func(what string, x, low, top float64, unit string) error {
		if !(x >= low && x <= top) { // written so that NaN fails too
			return fmt.Errorf("stop: %s %g: want %g to %g %s", what, x, low, top, unit)
		}
		return nil
	}
	for _, err := range []error{
		within("speed", p.Speed, 0.1, 100, "m/s"),
		within("deceleration", p.Decel, 0, 15, "m/s²"),
		within("foot", p.Foot, 0, 3000, "N"),
		within("foot limit", p.FootLimit, 1, 3000, "N"),
		within("rise", p.Rise, 0.001, 10, "s"),
		within("grade", p.Grade, -0.5, 0.5, ""),
	} {
		if err != nil {
			return err
		}
	}
	for w, x := range p.Surface {
		if err := within("surface of "+Wheel(w).String(), x, 0, 1, ""); err != nil {
			return err
		}
	}
	if p.Millis != 1 && p.Millis != 20 && p.Millis != 1000 {
		return fmt.Errorf("stop: step %d ms: want 1, 20 or 1000 ms", p.Millis)
	}
	if p.Decel == 0 && p.Foot == 0 {
		return fmt.Errorf("stop: neither a deceleration nor a foot force is given")
	}
	return nil
}

// A NotStoppedError is a car that had not come to rest in two minutes.
type NotStoppedError struct {
	Speed float64 // [m/s] it still had
	Way   float64 // [m] it had gone
	Foot  float64 // [N] on the pedal
}

func (e *NotStoppedError) Error() string {
	return fmt.Sprintf("stop: the car still goes %.1f m/s after %d s and %.0f m with %.0f N on the pedal", e.Speed, stopPatient/1000, e.Way, e.Foot)
}

// Stop brakes the car from plan.Speed to rest: a foot that rises in a straight line
// and then stays, the equations of the package document stepped until the car
// stands. Error in steps of 1 ms: way and time below 0.5 % (held against SciPy). A
// plan that means nothing is an error, a car that does not stop a *[NotStoppedError].
func (m *Model) Stop(s State, plan StopPlan) (StopResult, error) {
	var r StopResult
	if err := plan.check(); err != nil {
		return r, err
	}
	foot := plan.Foot
	if plan.Decel > 0 {
		var err error
		if foot, err = m.PedalFor(s, plan.Decel, plan.Speed/2, plan.FootLimit); err != nil {
			return r, err
		}
	}
	s.Speed, s.Decel, s.Locked = plan.Speed, 0, [NumWheels]bool{}
	in := Input{Engine: !plan.EngineOff, Surface: plan.Surface, Grade: plan.Grade}
	seen := recorder{model: m, v0: plan.Speed, start: s}
	began := s.Millis
	for s.Speed > 0 {
		if s.Millis-began >= stopPatient {
			return r, &NotStoppedError{Speed: s.Speed, Way: s.Distance - seen.start.Distance, Foot: foot}
		}
		in.Foot = foot * min(1, float64(s.Millis-began+plan.Millis)/(1000*plan.Rise))
		next, err := m.Step(s, in, plan.Millis)
		if err != nil {
			return r, err
		}
		seen.see(&s, &next, &in)
		s = next
	}
	seen.result(&r)
	r.End = s
	return r, nil
}

// PedalFor solves the foot force [N] that gives a steady deceleration [m/s²]
// from speed on a dry level road, at most limit; it returns limit when the car
// cannot. The pedal is held still for 0.6 s each try, so a leak or a soft
// circuit counts as it does for a driver. Error: 0.2 % of the deceleration.
func (m *Model) PedalFor(s State, decel, speed, limit float64) (float64, error) {
	if !(decel >= 0 && decel <= 15 && speed >= 0 && speed <= 100 && limit > 0 && limit <= 3000) {
		return 0, fmt.Errorf("pedal: deceleration %g m/s², speed %g m/s, limit %g N: want 0 to 15, 0 to 100, above 0 to 3000", decel, speed, limit)
	}
	want := float64(m.spec.Body.Mass*decel) - m.spec.Body.Resistance(speed, 1)
	if want <= 0 {
		return 0, nil
	}
	return m.footFor(&s, want, limit, func(s *State) float64 { return m.roadForce(s, max(speed, 1)) })
}

// roadForce is what tyres on a dry road make of the brakes' torques [N] up to
// peak adhesion; without the fall of a locked wheel, so that more foot never
// gives less and the least foot is found.
func (m *Model) roadForce(s *State, speed float64) float64 {
	body := m.spec.Body
	body.AntiLock = true
	var torque [NumWheels]float64
	for w := range Wheel(NumWheels) {
		torque[w] = m.WheelTorque(s, w)
	}
	force, _, _ := body.tyres(&torque, [NumWheels]bool{}, speed, &Input{})
	return force[0] + force[1] + force[2] + force[3]
}

// footFor finds the foot for a braking force [N] by regula falsi (Illinois).
func (m *Model) footFor(s *State, want, limit float64, measure func(*State) float64) (float64, error) {
	try := func(foot float64) (float64, error) {
		t := *s
		t.Speed = 0
		var err error
		for i := range 11 { // 0.2 s to press, 0.4 s at rest
			ms := int64(20)
			if i == 10 {
				ms = 400
			}
			if t, err = m.Step(t, Input{Engine: true, Foot: foot * min(1, float64(i+1)/10)}, ms); err != nil {
				return 0, err
			}
		}
		t.Heat = s.Heat
		return measure(&t) - want, nil
	}
	low, high := 0.0, limit
	below := -want
	above, err := try(high)
	if err != nil || above <= 0 {
		return limit, err
	}
	side := 0
	for range 30 {
		foot := (float64(low*above) - float64(high*below)) / (above - below)
		miss, err := try(foot)
		if err != nil {
			return 0, err
		}
		if math.Abs(miss) <= 2e-3*want || high-low < 0.05 {
			return foot, nil
		}
		if miss < 0 {
			low, below = foot, miss
			if side < 0 {
				above /= 2
			}
			side = -1
		} else {
			high, above = foot, miss
			if side > 0 {
				below /= 2
			}
			side = 1
		}
	}
	return (low + high) / 2, nil
}
