package physics

// releaseStep is the pressure step of the press that every run starts from [Pa].
const releaseStep = 0.5 * Megapascal

// releasePeak is the pressure of that press [Pa].
const releasePeak = 8 * Megapascal

// Rest is the released car at 20 °C, standing, engine idling, vacuum full: every
// wheel has been taken 0 → 8 → 0 MPa once from zero displacements and anchors.
func (m *Model) Rest() (State, error) {
	var s State
	r := &m.spec.Reservoir
	s.Vacuum = float64(m.spec.Booster.Vacuum * (1 - m.cond.BoosterLoss))
	s.Standing = r.AtMin + r.MinToMax + m.cond.Fluid
	for w := range Wheel(NumWheels) {
		h := &s.Heat[w]
		for i := range h.Disc {
			h.Disc[i] = 20
		}
		h.Hat, h.Pad, h.Piston, h.Fluid = 20, [2]float64{20, 20}, 20, 20
		s.Air[w] = m.cond.Wheels[w].Air
		c, err := Released(m.spec.Corner(w), &m.cond.Wheels[w], w.String())
		if err != nil {
			return s, err
		}
		if s.Corners[w], s.Forces[w], err = m.corners[w].Settle(c, &CornerLoad{}); err != nil {
			return s, err
		}
		fresh := s.Corners[w].X
		if m.cond.Wheels[w] != (WheelCondition{}) {
			c, err := Released(m.spec.Corner(w), &WheelCondition{}, w.String())
			if err != nil {
				return s, err
			}
			fresh = c.X
		}
		s.Cavity[w], _ = m.stored(&s, w, s.Corners[w].X, 0)
		// The fluid that followed worn linings stands in the caliper now.
		s.Standing -= float64(m.corners[w].area * (s.Corners[w].X - fresh))
	}
	if b := r.brim(); s.Standing > b {
		s.Lost, s.Standing = s.Standing-b, b
	}
	for i := range 2 { // what is missing below an uncovered port is air in that circuit
		if short := r.Port[i] - s.Standing; short > 0 {
			s.Master.Air[i] = short / 2
		}
	}
	s.Standing = max(0, s.Standing)
	return s, nil
}

// press takes a caliper to the peak and back, quasi-static, disc at its mean.
func (c *Corner) press(s CornerState) (CornerState, CornerForces, error) {
	var f CornerForces
	var err error
	n := int(releasePeak / releaseStep)
	for i := 1; i <= 2*n; i++ {
		p := releaseStep * float64(min(i, 2*n-i))
		if s, f, err = c.Settle(s, &CornerLoad{Pressure: p}); err != nil {
			return s, f, err
		}
	}
	return s, f, nil
}
