package physics

import "evenwear/physics/exact"

const (
	// pistonFilm is the drag of the film between seal and piston [N·s/m]; assumed, as the pins' grease.
	pistonFilm = 400
	// pistonLeast holds the piston to a function of pressure in long steps [N/m]:
	// 2 N over the widest clearance.
	pistonLeast = 1e4
)

// fluidStage moves booster, master cylinder, lines, calipers and reservoir.
func (m *Model) fluidStage(next, s *State, in *Input, dt float64) error {
	rod := float64(m.spec.Pedal.Ratio * in.Foot)
	added := m.BoosterForce(rod, s.Vacuum)
	total := rod + added
	next.Vacuum = m.breathe(s.Vacuum, s.Master.Boost, added, in.Engine, dt)

	h := hydraulics{m: m, start: s, in: in, dt: dt, push: m.push(s, total, rod), lines: m.lines(s, in),
		v: s.Master.Lean, w: s.Pressure, corner: s.Corners, forces: s.Forces}
	for w := range Wheel(NumWheels) {
		c := &m.corners[w]
		turn := s.Turn[w] + float64(s.Speed*dt)/float64(2*pi*m.spec.Body.TyreRadius)
		if s.Locked[w] {
			turn = s.Turn[w]
		}
		l := &h.load[w]
		l.DiscIn, l.DiscOut = c.Faces(exact.CosTurn(turn))
		l.Piston, l.Body = in.Piston[w], in.Body[w]
		l.PistonRate, l.FromX = max(pistonFilm/dt, pistonLeast), s.Corners[w].X
		l.Rate, l.FromY, l.Tight = c.grease/dt, s.Corners[w].Y, true
	}
	if err := h.solve(); err != nil {
		return err
	}
	ms := &next.Master
	ms.Lean = h.v
	ms.Pressure = h.chamber
	ms.Lever, ms.Boost, ms.Rod = rod, added, total
	for i := range 2 {
		ms.Stroke[i] = m.stroke(i, h.v[i])
	}
	slip(&ms.Anchor, h.push.rate, h.push.slide, ms.Stroke[0]+ms.Stroke[1])
	next.Pressure, next.Corners, next.Forces = h.w, h.corner, h.forces
	m.balance(next, s, &h)
	return nil
}

// balance books the fluid: what every chamber drew from the reservoir follows
// from what moved, so nothing is gained or lost but by rounding.
func (m *Model) balance(next, s *State, h *hydraulics) {
	drawn := [2]float64{}
	for w := range Wheel(NumWheels) {
		// Cavity is what the balance says has arrived, so the solver's residual does not pile up.
		next.Cavity[w] = h.volume[w]
		gone := float64(h.dt * h.lost[w])
		if gone < 0 { // an open bleed screw under suction draws air
			next.Air[w] -= gone
			gone = 0
		} else {
			next.Lost += gone
		}
		drawn[m.spec.Circuit[w]] += next.Cavity[w] - s.Cavity[w] + gone
	}
	area := h.push.area
	for i := range 2 {
		g, _ := gas(s.Master.Air[i], next.Master.Pressure[i])
		g0, _ := gas(s.Master.Air[i], s.Master.Pressure[i])
		soft := area * chamberDepth / m.spec.Fluid.BulkModulus
		take := drawn[i] - float64(area*(next.Master.Stroke[i]-s.Master.Stroke[i])) + (g - g0) +
			float64(soft*(next.Master.Pressure[i]-s.Master.Pressure[i]))
		next.Master.Fluid[i] += take
		if take > 0 && next.Standing-take < m.spec.Reservoir.Port[i] {
			next.Master.Air[i] += take // the port is uncovered: the circuit draws air
			continue
		}
		next.Standing -= take
	}
	if brim := m.spec.Reservoir.brim(); next.Standing > brim {
		next.Lost += next.Standing - brim
		next.Standing = brim
	}
}
