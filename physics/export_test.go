package physics

// StepFine is Step with a length in seconds, for tests that halve the shortest one.
func (m *Model) StepFine(s State, in Input, dt float64) (State, error) {
	var f flow
	if err := m.hydraulics(&f, &s, &in, dt); err != nil {
		return s, err
	}
	m.move(&s, &in, dt)
	return s, nil
}

// WholeTour is Tour with every step made.
func (m *Model) WholeTour(s State, duty Duty, km float64) (State, error) {
	return m.tour(s, duty, km, 0)
}
