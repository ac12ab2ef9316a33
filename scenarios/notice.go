package scenarios

import "evenwear/physics"

// What an owner notices. None has a published source: all are assumed, for
// somebody who knows the car well but measures nothing.
const (
	// noticePull [m/s²]: half the side pull of a road's ordinary fall of 2 %; noticed
	// because it comes and goes with the pedal.
	noticePull = 0.10
	// noticeHotter [K]: a hand near two wheels tells tepid from hot.
	noticeHotter = 30.0
	// noticeDrag [N]: two thirds of this car's rolling resistance, so that a slope
	// on which it used to roll no longer moves it.
	noticeDrag = 100.0
	// noticeLong [m] of pedal at 150 N beyond a new car's: a fifth of its way.
	noticeLong = 10e-3
	// noticeHard [1] times the foot of a new car in an ordinary stop.
	noticeHard = 1.5
	// noticeWasher [1] of a full bottle: the pump's inlet lies a little above its bottom.
	noticeWasher = 0.05
	// noticeSoft [m] by which brisk pumping raises the pedal.
	noticeSoft = 8e-3
	// noticeSink [m] in ten seconds at a red light.
	noticeSink = 5e-3
	// noticePulse [m] of pedal movement, peak to peak, under a shoe's sole.
	noticePulse = 0.3e-3
	// noticeWet [m³] in ten seconds of braking: two drops, so that the wheel is wet inside.
	noticeWet = 0.1e-6
	// noticeFilm [1] of a closed rust film on a disc: half of it rasps under the pads.
	noticeFilm = 0.5
	// noticeSteel [m] of lining: steel that is pressed on the disc is heard for sure
	// when so much more than the lining is gone, and never with so much of it left.
	noticeSteel = 0.5e-3
	// noticeLamp [1] of a lamp's light.
	noticeLamp = 0.5
)

// An impression is what a car lets its owner notice, computed. SI.
type impression struct {
	ride
	long   float64                    // [m] pedal at 150 N beyond the new car's
	pumped float64                    // [m] by which three strokes raise it
	sunk   float64                    // [m] from 1 s to 11 s at 200 N
	wet    [physics.NumWheels]float64 // [m³] out of the wheel's brake in ten seconds at 200 N
	level  float64                    // [1] MIN 0, MAX 1
	steel  [physics.NumWheels]float64 // [m] of lining left before steel rubs on the disc
	film   [physics.NumWheels]float64 // [1] rust film on the disc
	washer float64                    // [1] of a full bottle
	lamp   float64                    // [1] light of the warning lamp, foot off or at 200 N
	float  float64                    // [1] level, MIN 0 and MAX 1, at which its switch closes
}

// ride is what driving shows. SI.
type ride struct {
	pull  float64                    // [m/s²] to the right, braking from 50 km/h at 3 m/s²
	pulse float64                    // [m]
	hard  float64                    // [1] foot for 3 m/s², over that of the new car
	hub   [physics.NumWheels]float64 // [°C] after ten kilometres
	drag  float64                    // [N] at the tyres, pedal free, after the same
}

// usual is what an owner is used to: the car when it was new.
type usual struct {
	foot float64 // [N] for 3 m/s²
	long float64 // [m] pedal at 150 N
}

// everyday is a stop as owners make them.
var everyday = physics.StopPlan{Speed: 50 * physics.KmPerHour, Decel: 3, Millis: 20}

// whenNew drives a new car as its owner would.
func whenNew(spec *physics.Spec) (u usual, err error) {
	m, err := physics.New(spec, physics.Condition{})
	if err != nil {
		return u, err
	}
	rest, err := m.Rest()
	if err != nil {
		return u, err
	}
	stop, err := m.Stop(rest, everyday)
	if err != nil {
		return u, err
	}
	u.foot = stop.Foot
	u.long, _, err = press(m, rest)
	return u, err
}

// look drives the car as its owner would.
func look(spec *physics.Spec, cond physics.Condition, duty physics.Duty) (impression, error) {
	m, err := physics.New(spec, cond)
	if err != nil {
		return impression{}, err
	}
	u, err := whenNew(spec)
	if err != nil {
		return impression{}, err
	}
	return u.look(m, duty)
}

// look drives a car that was used like this as its owner would, who knows it from new.
func (u *usual) look(m *physics.Model, duty physics.Duty) (im impression, err error) {
	rest, err := m.Rest()
	if err != nil {
		return im, err
	}
	r, err := u.drive(m, rest, duty)
	if err != nil {
		return im, err
	}
	return u.stand(m, rest, r)
}

// drive is what the owner notices on the road.
func (u *usual) drive(m *physics.Model, rest physics.State, duty physics.Duty) (r ride, err error) {
	stop, err := m.Stop(rest, everyday)
	if err != nil {
		return r, err
	}
	r.pull, r.pulse, r.hard = stop.Pull, stop.PedalPulse, stop.Foot/u.foot
	tour, err := m.Tour(rest, duty, 10)
	if err != nil {
		return r, err
	}
	for w := range physics.NumWheels {
		r.hub[w] = tour.Heat[w].Hat
		torque, err := m.TurnTorque(&tour, physics.Wheel(w))
		if err != nil {
			return r, err
		}
		r.drag += torque / m.Spec().Body.TyreRadius
	}
	return r, nil
}

// stand adds to a ride what the owner notices of the standing car.
func (u *usual) stand(m *physics.Model, rest physics.State, r ride) (im impression, err error) {
	spec, cond := m.Spec(), m.Condition()
	im.ride = r
	im.level = m.Level(&rest)
	im.float = -cond.FloatHigh / spec.Reservoir.MinToMax
	im.washer = m.WasherLevel(physics.Cold)
	im.film = rest.Film
	for w := range im.steel {
		im.steel[w] = m.SteelGap(physics.Wheel(w))
	}
	first, pumped, err := press(m, rest)
	if err != nil {
		return im, err
	}
	im.pumped, im.long = first-pumped, first-u.long
	held, sunk, _, err := hold(m, rest)
	if err != nil {
		return im, err
	}
	im.lamp, im.sunk = max(m.Lamp(&rest), m.Lamp(&held)), sunk
	for w := range physics.NumWheels {
		if cond.Wheels[w].Holes() == 0 {
			continue
		}
		alone := cond // the other wheels dry, so that what is lost came from here
		for v := range alone.Wheels {
			if v != w {
				alone.Wheels[v].Leak, alone.Wheels[v].SealLeak, alone.Wheels[v].ScrewLeak = 0, 0, 0
			}
		}
		am, err := physics.New(spec, alone)
		if err != nil {
			return im, err
		}
		as, err := am.Rest()
		if err != nil {
			return im, err
		}
		if _, _, im.wet[w], err = hold(am, as); err != nil {
			return im, err
		}
	}
	return im, nil
}

// foot keeps a force [N] on the pedal for ms milliseconds, engine running.
func foot(m *physics.Model, s physics.State, force float64, ms int64) (physics.State, error) {
	var err error
	for t := int64(0); t < ms && err == nil; t += 20 {
		s, err = m.Step(s, physics.Input{Foot: force, Engine: true}, 20)
	}
	return s, err
}

// press is the pedal's travel [m] at 150 N on the first and on the third brisk stroke.
func press(m *physics.Model, s physics.State) (first, third float64, err error) {
	for range 3 {
		if s, err = foot(m, s, 150, 500); err != nil {
			return 0, 0, err
		}
		third = m.PedalTravel(&s)
		if first == 0 {
			first = third
		}
		if s, err = foot(m, s, 0, 200); err != nil {
			return 0, 0, err
		}
	}
	return first, third, nil
}

// hold is the car after a second at 200 N, and how far the pedal sinks [m] and what
// it loses [m³] in the ten seconds after it: in steps of a second, by which a pedal
// that is held loses nothing; see physics/inspect/foot.go.
func hold(m *physics.Model, s physics.State) (held physics.State, sunk, lost float64, err error) {
	if held, err = foot(m, s, 200, 1000); err != nil {
		return held, 0, 0, err
	}
	s = held
	for range 10 {
		if s, err = m.Step(s, physics.Input{Foot: 200, Engine: true}, 1000); err != nil {
			return held, 0, 0, err
		}
	}
	return held, m.PedalTravel(&s) - m.PedalTravel(&held), s.Lost - held.Lost, nil
}

// Verify builds the job's car and computes every claim of its owner. A false
// one is an error of type [Problems] that says where it stands and what the
// physics give instead. The work is done once for a loaded job.
func (j *Job) Verify() error {
	if j.verified == nil { // a job that was not loaded from a file
		return j.verify()
	}
	return j.verified()
}

func (j *Job) verify() error {
	where := Problem{File: j.file, Line: 1, Col: 1}
	cond, err := Build(&j.Car.Spec, j.Driven, j.Faults)
	if err != nil {
		where.What, where.Allowed = "the car cannot be built: "+err.Error(), "milder faults or fewer kilometres"
		return Problems{where}
	}
	im, err := look(&j.Car.Spec, cond, j.Driven.Duty())
	if err != nil {
		where.What, where.Allowed = "the car cannot be driven: "+err.Error(), "milder faults or fewer kilometres"
		return Problems{where}
	}
	var probs Problems
	for _, c := range j.Claims {
		if yes, why := im.judge(c.ID, c.Value); !yes {
			p := c.at
			p.What, p.Allowed = "not so: "+why, im.allowed()
			probs = append(probs, p)
		}
	}
	if len(probs) > 0 {
		return probs
	}
	return nil
}
