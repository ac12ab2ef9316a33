package physics

const (
	applySteps   = 25 // of 20 ms, to press and to let go
	tourFoot     = 500.0
	tourPatience = 300 // [s] a stop of a tour may last
)

// Tour drives a fixed loop (km of duty with its stops and drag) and returns the
// state at its end, standing: what an inspector feels at four hubs. Pressing
// and letting go take steps of 20 ms, all else 1 s. Each class of stops is
// spread evenly over the way and its pedal is solved once, with the car warm
// from the way before. Between stops the car runs at the duty's speed; the way
// its engine needs back to it is not modelled.
func (m *Model) Tour(s State, duty Duty, km float64) (State, error) {
	if err := duty.check(km); err != nil {
		return s, err
	}
	var foot, due [4]float64
	in := Input{Engine: true, Hold: true, Ambient: duty.Ambient}
	left := km * Kilometre
	for i, d := range duty.Stops {
		if d.PerThousandKm > 0 {
			due[i] = 0.5e6 / d.PerThousandKm
		}
	}
	var err error
	for done := 0.0; done < left; {
		s.Speed = duty.Speed
		if s, err = m.Step(s, in, 1000); err != nil {
			return s, err
		}
		done += duty.Speed
		for i := range duty.Stops {
			d := &duty.Stops[i]
			if d.PerThousandKm == 0 || done < due[i] {
				continue
			}
			due[i] += 1e6 / d.PerThousandKm
			if foot[i] == 0 {
				if foot[i], err = m.PedalFor(s, d.Decel, (d.From+d.To)/2, tourFoot); err != nil {
					return s, err
				}
			}
			from := s.Distance
			if s, err = m.brake(s, d, foot[i], duty.Ambient); err != nil {
				return s, err
			}
			done += s.Distance - from
		}
	}
	s.Speed, s.Decel, s.Locked = 0, 0, [NumWheels]bool{}
	return m.Step(s, Input{Engine: true, Ambient: duty.Ambient}, 20)
}

// brake makes one stop of a class and lets go again.
func (m *Model) brake(s State, d *DutyStop, foot, ambient float64) (State, error) {
	in := Input{Engine: true, Ambient: ambient}
	s.Speed = d.From
	var err error
	for i := 0; i < applySteps+tourPatience && s.Speed > d.To; i++ {
		in.Foot = foot * min(1, float64(i+1)/10)
		ms := int64(20)
		if i >= applySteps && s.Speed-float64(s.Decel) > d.To {
			ms = 1000
		}
		if s, err = m.Step(s, in, ms); err != nil {
			return s, err
		}
	}
	s.Locked = [NumWheels]bool{}
	s.Speed = max(d.To, 3) // rolling on, so that the disc turns the pads free
	in.Hold = true
	for i := range applySteps {
		in.Foot = foot * max(0, 1-float64(i+1)/10)
		if s, err = m.Step(s, in, 20); err != nil {
			return s, err
		}
	}
	s.Decel = 0
	return s, nil
}
