package physics

import "math"

const (
	applySteps  = 12  // of 20 ms, to press: ten with the foot on its way
	letGoSteps  = 10  // of 20 ms
	letGoRest   = 300 // [ms] after them
	stopMost    = 300 // steps that a stop of a tour may last
	gentleShare = 4   // of the greatest foot, tried first
)

// A tourStop is one class of a tour's stops: what its foot is, and what the
// last one that was stepped through went through.
type tourStop struct {
	model   *Model
	duty    *DutyStop
	ambient float64
	anew    bool // step through every one
	foot    float64

	known      bool
	begin, end State
	pressed    [][NumWheels]CornerForces // after each step until the stop was made
	released   [][NumWheels]CornerForces // after each step of letting go
}

// make drives one stop of the class and lets go again.
func (t *tourStop) make(s State) (State, error) {
	var err error
	if t.foot == 0 {
		speed := (t.duty.From + t.duty.To) / 2
		if t.foot, err = t.model.PedalFor(s, t.duty.Decel, speed, tourFoot/gentleShare); err == nil && t.foot >= tourFoot/gentleShare {
			t.foot, err = t.model.PedalFor(s, t.duty.Decel, speed, tourFoot)
		}
		if err != nil {
			return s, err
		}
	}
	again := t.known && !t.anew && calm(&t.begin, &s)
	if !again {
		t.begin, t.pressed, t.released = s, t.pressed[:0], t.released[:0]
	}
	begin := s
	step := func(in *Input, ms int64, frames *[][NumWheels]CornerForces, n int) error {
		if !again {
			if s, err = t.model.Step(s, *in, ms); err == nil {
				*frames = append(*frames, s.Forces)
			}
			return err
		}
		s.Forces = (*frames)[min(n, len(*frames)-1)]
		was := s
		if err = t.model.roll(&s, in, ms); err != nil {
			s, err = was, was.lost(err)
		}
		return err
	}
	in := Input{Engine: true, Ambient: t.ambient}
	s.Speed = t.duty.From
	for i := 0; i < stopMost && s.Speed > t.duty.To; i++ {
		in.Foot = t.foot * min(1, float64(i+1)/10)
		ms := 20.0
		if i >= applySteps {
			ms = 1000
			if s.Decel > 0 { // to the end of the stop, if that is nearer
				ms = min(ms, math.Ceil(1000*(s.Speed-t.duty.To)/s.Decel))
			}
		}
		if err := step(&in, int64(ms), &t.pressed, i); err != nil {
			return s, err
		}
	}
	s.Locked = [NumWheels]bool{}
	s.Speed = max(t.duty.To, 3) // rolling on, so that the disc turns the pads free
	in.Hold = true
	for i := range letGoSteps + 1 {
		in.Foot = t.foot * max(0, 1-float64(i+1)/letGoSteps)
		ms := int64(20)
		if i == letGoSteps {
			ms = letGoRest
		}
		if err := step(&in, ms, &t.released, i); err != nil {
			return s, err
		}
	}
	if again {
		s.followed(&begin, &t.begin, &t.end)
	} else {
		t.end, t.known = s, true
	}
	s.Decel = 0
	return s, nil
}

// followed puts fluid and calipers where a stop from from to to left them; s
// began as was. Volumes move by what they moved then, so that no fluid is lost.
func (s *State) followed(was, from, to *State) {
	s.Corners, s.Forces, s.Pressure, s.Air, s.AirWarm, s.Vacuum = to.Corners, to.Forces, to.Pressure, to.Air, to.AirWarm, to.Vacuum
	s.Master = to.Master
	for i := range s.Master.Fluid {
		s.Master.Fluid[i] = was.Master.Fluid[i] + (to.Master.Fluid[i] - from.Master.Fluid[i])
	}
	for w := range s.Cavity {
		s.Cavity[w] = was.Cavity[w] + (to.Cavity[w] - from.Cavity[w])
	}
	s.Standing = was.Standing + (to.Standing - from.Standing)
	s.Lost = was.Lost + (to.Lost - from.Lost)
}
