package physics

const (
	bedPressure = 8 * Megapascal // of the press that every run starts from
	bedStep     = 0.5 * Megapascal
)

// Rest is the released car at 20 °C, standing, engine idling, vacuum full: every
// wheel has been taken 0 → 8 → 0 MPa once from zero displacements and anchors.
// The road that brought it had bends, so a loose hub has pushed its pads back.
// A pin that has seized keeps the anchor it had when it was still free, or the
// one its condition names.
func (m *Model) Rest() (State, error) {
	var s State
	for w := range Wheel(NumWheels) {
		at, err := Released(m.spec.Corner(w), &m.cond.Wheels[w], w.String())
		if err != nil {
			return s, err
		}
		var load CornerLoad
		load.DiscIn, load.DiscOut = m.faces(&s, int(w))
		if s.Corners[w], s.Forces[w], err = m.corners[w].Settle(at, &load); err != nil {
			return s, err
		}
		if err := m.shake(&s, int(w)); err != nil {
			return s, err
		}
		s.Heat[w].CoolTo(roomAir)
		s.Air[w] = m.cond.Wheels[w].Air
		s.Film[w] = m.cond.Wheels[w].DiscFilm
		s.Cavity[w] = float64(m.corners[w].area*s.Corners[w].X) - s.Air[w]
	}
	s.Vacuum = m.engineVacuum()
	if k := m.spec.Master.FrictionRate; k > 0 {
		s.Master.Anchor = m.spec.Master.Friction / k // it came home: friction points forwards
	}
	s.Standing = m.filling
	for w := range s.Cavity { // air in a caliper came in as fluid went out: it raises no level
		s.Standing -= s.Cavity[w] + s.Air[w]
	}
	if over := s.Standing - m.spec.Reservoir.brim(); over > 0 {
		s.Standing, s.Lost = m.spec.Reservoir.brim(), over
	}
	if s.Standing < 0 { // nothing left to stand: the chambers have drawn air
		for i := range s.Master.Air {
			s.Master.Air[i] = -s.Standing / 2
			s.Master.Fluid[i] = s.Standing / 2
		}
		s.Standing = 0
	}
	for i, air := range m.cond.ChamberAir { // it came in as fluid went out, too
		s.Master.Air[i] += air
		s.Master.Fluid[i] -= air
	}
	return s, m.stand(&s)
}

const (
	standStep  = 1.0  // [s]
	standMost  = 600  // steps
	standClose = 10.0 // [Pa] a step, below which nothing moves any more
)

// stand lets the air shut in over the fluid draw on ports and pistons or press on
// them until nothing moves any more.
func (m *Model) stand(s *State) error {
	if m.cond.VentShut <= 0 {
		return nil
	}
	var f flow
	in := Input{Engine: true}
	for range standMost {
		was := s.Pressure
		if err := m.hydraulics(&f, s, &in, standStep); err != nil {
			return err
		}
		moved := 0.0
		for w, p := range s.Pressure {
			moved = max(moved, p-was[w], was[w]-p)
		}
		if moved <= standClose {
			break
		}
	}
	return nil
}

// press takes a caliper to the peak and back, quasi-static, disc at its mean.
func (c *Corner) press(s CornerState) (CornerState, CornerForces, error) {
	var f CornerForces
	var err error
	const steps = bedPressure / bedStep
	for n := 1; n <= 2*steps; n++ {
		p := float64(bedStep * float64(min(n, 2*steps-n)))
		if s, f, err = c.Settle(s, &CornerLoad{Pressure: p}); err != nil {
			return s, f, err
		}
	}
	return s, f, nil
}
