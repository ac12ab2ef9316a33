package physics

import "math"

const (
	tourFoot     = 500.0
	tourCoast    = 9     // [s] rolled on with the forces as they are, before they are looked at again
	calmPressure = 100.0 // [Pa] change that moves no pad: 0.2 N on a piston
	calmForce    = 0.1   // [N] the same of a half pad
)

// Tour drives a fixed loop (km of duty with its stops and drag) and returns the
// state at its end, standing: what an inspector feels at four hubs. Each class
// of stops is spread evenly over the way and its pedal is solved once, with the
// car warm from the way before. Between stops the car runs at the duty's speed;
// the way its engine needs back to it is not modelled. Bends before each stop and
// at the end push the pads of a loose hub back; see [Model.Bends].
//
// Where rolling no longer moves fluid or pads, only heat is followed for the
// next nine seconds; a stop that begins as the one before it of its class did
// goes through the same pressures. Error: below a third of a degree at every
// hub, against every step made (see the test).
func (m *Model) Tour(s State, duty Duty, km float64) (State, error) {
	return m.tour(s, duty, km, tourCoast)
}

// tour is Tour with at most coast seconds of heat alone after each step; with
// none every step of every stop is made.
func (m *Model) tour(s State, duty Duty, km float64, coast int) (State, error) {
	if err := duty.check(km); err != nil {
		return s, err
	}
	var due [4]float64
	var stops [4]tourStop
	in := Input{Engine: true, Hold: true, Ambient: duty.Ambient}
	left := km * Kilometre
	for i := range duty.Stops {
		d := &duty.Stops[i]
		if d.PerThousandKm > 0 {
			due[i] = 0.5e6 / d.PerThousandKm
		}
		stops[i] = tourStop{model: m, duty: d, ambient: duty.Ambient, anew: coast == 0}
	}
	var err error
	heat := 0 // seconds for which the forces stay as they are
	for done := 0.0; done < left; {
		s.Speed = duty.Speed
		if heat > 0 {
			was := s
			if err = m.roll(&s, &in, 1000); err != nil {
				return was, was.lost(err)
			}
			heat--
		} else {
			was := s
			if s, err = m.Step(s, in, 1000); err != nil {
				return s, err
			}
			if calm(&was, &s) {
				heat = coast
			}
		}
		done += duty.Speed
		for i := range stops {
			if duty.Stops[i].PerThousandKm == 0 || done < due[i] {
				continue
			}
			due[i] += 1e6 / duty.Stops[i].PerThousandKm
			from := s.Distance
			if s, err = m.Bends(s, duty.Speed, duty.Ambient); err != nil {
				return s, err
			}
			if s, err = stops[i].make(s); err != nil {
				return s, err
			}
			done += s.Distance - from
			heat = 0
		}
	}
	if s, err = m.Bends(s, duty.Speed, duty.Ambient); err != nil {
		return s, err
	}
	s.Speed, s.Decel, s.Locked = 0, 0, [NumWheels]bool{}
	return m.Step(s, Input{Engine: true, Ambient: duty.Ambient}, 20)
}

// calm tells that neither fluid nor pads have moved from a to b.
func calm(a, b *State) bool {
	far := a.Air != b.Air || a.Master.Air != b.Master.Air
	for w := range a.Pressure {
		far = far || math.Abs(a.Pressure[w]-b.Pressure[w]) > calmPressure
		for i := range 2 {
			for j := range 2 {
				far = far || math.Abs(a.Forces[w].Half[i][j]-b.Forces[w].Half[i][j]) > calmForce
			}
		}
	}
	return !far
}
