package physics

// A line carries fluid from a chamber to a wheel. It is worked out once a step.
type line struct {
	rate    float64 // [m³/(s·Pa)] 1/R with fluid at its present temperature
	back    float64 // [m³/(s·Pa)] the same on the way back
	hold    float64 // [Pa] kept back by a collapsed hose
	knee    float64 // [Pa] of the pressure-reducing valve; 0 is no valve
	slope   float64
	leak    float64 // [m²]
	bleed   float64 // [m²]
	density float64
}

// flow is the flow [m³/s] from the chamber at p into the wheel at w [Pa], and
// its slopes. The reducing valve gives the wheel knee + slope·(p − knee); on the
// way back it opens when the chamber falls below the wheel.
func (l *line) flow(p, w float64) (q, dp, dw float64) {
	out, grow := p, 1.0
	if l.knee > 0 && p > l.knee {
		out, grow = l.knee+float64(l.slope*(p-l.knee)), l.slope
	}
	switch {
	case out > w:
		return (out - w) * l.rate, grow * l.rate, -l.rate
	case p+l.hold < w:
		return (p + l.hold - w) * l.back, l.back, -l.back
	}
	return 0, 0, 0
}

// loss is what leaves the wheel's cavity for good [m³/s] at w [Pa].
func (l *line) loss(w float64) (q, dw float64) {
	if w > 0 {
		q, dw = jet(l.leak, w, l.density)
	}
	a, b := jet(l.bleed, w, l.density)
	return q + a, dw + b
}

// lines works out the four lines for one step.
func (m *Model) lines(s *State, in *Input) [NumWheels]line {
	var ls [NumWheels]line
	f := &m.spec.Fluid
	thin := f.kinematic(20)
	for w := range Wheel(NumWheels) {
		c, cond := m.spec.Corner(w), &m.cond.Wheels[w]
		l := &ls[w]
		r := c.LineResistance
		if thin > 0 && s.Heat[w].Fluid != 20 {
			r *= f.kinematic(s.Heat[w].Fluid) / thin
		}
		l.rate = 1 / r
		l.back = l.rate / (1 + cond.HoseReturn)
		l.hold, l.leak, l.bleed, l.density = cond.HoseHold, cond.Leak, in.Bleed[w], f.Density
		if !w.Front() {
			l.knee, l.slope = m.spec.Valve.Knee, m.spec.Valve.Slope
		}
	}
	return ls
}

// stored is the fluid a wheel's cavity holds beyond its volume when empty of
// pressure [m³] with the piston at x [m], and its slope with pressure beyond
// the piston's share:
//
//	A·x + hose·p + V_f·p/K − V_f·β·(T − T_0) + gas given up
func (m *Model) stored(s *State, w Wheel, x, p float64) (v, slope float64) {
	c, f := m.spec.Corner(w), &m.spec.Fluid
	soft := c.HoseSwell + m.cond.Wheels[w].HoseSwell + c.FluidVolume/f.BulkModulus
	g, gs := gas(s.Air[w], p)
	warm := float64(c.FluidVolume * f.Expansion * (s.Heat[w].Fluid - 20))
	return float64(m.corners[w].area*x) + float64(soft*p) + g - warm, soft + gs
}
