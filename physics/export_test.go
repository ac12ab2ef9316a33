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
