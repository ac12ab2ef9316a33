package physics

// thermal heats and cools the four brakes for dt [s] while the car moves at
// mean speed [m/s]. A locked wheel's heat goes into the road, not the disc.
func (m *Model) thermal(s *State, mean float64, in *Input, dt float64) {
	air := roomAir + in.Ambient
	for w := range Wheel(NumWheels) {
		load := heatLoad{speed: mean, air: air}
		if !s.Locked[w] {
			load.turning = mean / m.spec.Body.TyreRadius
		}
		spec := m.spec.Corner(w)
		slip := float64(load.turning * spec.EffectiveRadius)
		fade := m.grip(s, w)
		for i := range 2 {
			load.power[i] = float64(m.corners[w].padFriction(&s.Forces[w], i) * fade * slip)
			load.pressed[i] = s.Forces[w].Half[i][Upper]+s.Forces[w].Half[i][Lower] > 0
		}
		if s.Film[w] > 0 {
			s.Film[w] = m.heat[w].scrub(s.Film[w], (load.power[0]+load.power[1])*dt)
		}
		m.heat[w].step(&s.Heat[w], &load, dt)
	}
}

// padFriction is Σ μ·N over one pad's halves [N], cold.
func (c *Corner) padFriction(f *CornerForces, pad int) float64 {
	return float64(c.mu[pad][Upper]*f.Half[pad][Upper]) + float64(c.mu[pad][Lower]*f.Half[pad][Lower])
}

// WheelTorque is the brake torque of a turning wheel [N·m]: T = r_e·Σ μ·N over its
// half pads, linings at their present temperature.
func (m *Model) WheelTorque(s *State, w Wheel) float64 {
	return m.corners[w].Torque(&s.Forces[w]) * m.grip(s, w)
}

// grip is the share of cold friction [1] that linings have now.
func (m *Model) grip(s *State, w Wheel) float64 {
	return m.spec.Corner(w).Fade(s.Heat[w].Face()) * (1 + float64(filmGrip*s.Film[w]))
}

// workInHeat makes the heat paths of the four wheels; [New] calls it once.
func (m *Model) workInHeat() {
	for w := range Wheel(NumWheels) {
		m.heat[w] = newBrakeHeat(m.spec.Corner(w), &m.cond.Wheels[w])
	}
}

// move is the last stage of a step: brakes make torque, the road takes it, the
// discs warm. It reads what hydraulics left in s.Forces.
func (m *Model) move(s *State, in *Input, dt float64) {
	var torque [NumWheels]float64
	for w := range Wheel(NumWheels) {
		torque[w] = m.WheelTorque(s, w)
	}
	mean := m.road(s, &torque, in, dt)
	m.thermal(s, mean, in, dt)
}
