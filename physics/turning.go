package physics

import "evenwear/physics/exact"

// longestTurn is the share of a wheel's turn above which a step no longer
// follows the disc's faces but meets the whole of them.
const longestTurn = 0.125

// turns is how far the wheels turn in dt [1].
func (m *Model) turns(s *State, dt float64) float64 {
	return s.Speed * dt / float64(2*pi*m.spec.Body.TyreRadius)
}

// sweep lets every turning disc push its pads back to where its highest and its
// lowest place leave them: what a step too long to follow the faces must know
// of them. The pulse itself is not followed.
func (m *Model) sweep(s *State, side float64) error {
	for w := range s.Corners {
		if s.Locked[w] {
			continue
		}
		c := &m.corners[w]
		load := CornerLoad{Pressure: s.Pressure[w]}
		for _, cos := range [...]float64{1, -1, 0} {
			load.DiscIn, load.DiscOut = c.Faces(cos)
			m.tip(&load, w, side)
			var err error
			if s.Corners[w], s.Forces[w], err = c.Settle(s.Corners[w], &load); err != nil {
				return err
			}
		}
	}
	return nil
}

// faces is where the disc's faces stand at wheel w.
func (m *Model) faces(s *State, w int) (in, out float64) {
	return m.corners[w].Faces(exact.CosTurn(s.Turn[w]))
}

// TurnTorque is the mean brake torque of a wheel turned slowly by hand or
// rolling on [N·m], its pressure as it is: one turn lets run-out push the pads
// back from where a release left them, the next is averaged. s is not changed.
func (m *Model) TurnTorque(s *State, w Wheel) (float64, error) {
	const spokes = 24
	c, at, sum := &m.corners[w], s.Corners[w], 0.0
	for i := range 2 * spokes {
		load := CornerLoad{Pressure: s.Pressure[w]}
		load.DiscIn, load.DiscOut = c.Faces(exact.CosTurn(s.Turn[w] + float64(i)/spokes))
		var f CornerForces
		var err error
		if at, f, err = c.Settle(at, &load); err != nil {
			return 0, err
		}
		if i >= spokes {
			sum += c.Torque(&f)
		}
	}
	return sum / spokes * m.grip(s, w), nil
}
