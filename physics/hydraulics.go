package physics

import "math"

// flow is what one step works out and forgets.
type flow struct {
	dt       float64
	home     [2]float64 // [m] strokes at the start
	anchor   float64    // [m] of the sliding friction
	push     float64    // [N] η × rod and booster force
	grip     float64    // [N] greatest sliding friction of seals and booster
	friction float64    // [N] now
	stick    float64    // [N/m] its stiffness, 0 while it slides
	given    bool       // the friction is not to be worked out from the strokes
	thick    float64    // [1] viscosity over that at 20 °C
	above    float64    // [Pa] of the air over the fluid in the reservoir
	stiff    float64    // [Pa·s/m³] with which that answers what leaves it in this step
	coarse   bool       // wheels turn too far in this step to follow the discs' faces
	wheel    [NumWheels]cavity
	chamber  [2]chamber
}

const (
	volumeTolerance = 1e-11 // [m³] 1e-5 cm³, a pedal's 0.1 µm
	stepIterations  = 20
	stepHalvings    = 6
	sealDrag        = 400.0 // [N·s/m] of the seal's rubber on a moving piston; assumed, as the pins' grease
	pressureStep    = 0.5e6 // [Pa] greatest change of chamber pressure followed in one solve
	pressRise       = 0.005 // [s] in which a foot that jumps comes down in a longer step
	calmFlow        = 2e-8  // [m³] that may pass a line in one solve; more is followed in shorter ones
	calmLeast       = 0.004 // [s] shortest of these
	sealLeast       = 1e4   // [N/m] the same in long steps: 10 N a millimetre
	mostSubsteps    = 64
)

// hydraulics advances pedal, pressures, fluid and calipers by dt. A jump of the
// foot is followed in equal parts, because seals and pins remember the way.
func (m *Model) hydraulics(f *flow, s *State, in *Input, dt float64) error {
	ratio := m.spec.Pedal.Ratio
	s.Vacuum = m.vacuum(s, in, dt)
	rod := float64(ratio * in.Foot)
	force := rod + m.BoosterForce(rod, s.Vacuum)
	was := s.Master.Rod
	if f.coarse = m.turns(s, dt) > longestTurn; f.coarse {
		if err := m.sweep(s, in.Side); err != nil {
			return err
		}
	}
	parts := 1.0
	if jump := math.Abs(force-was) / m.master.area; jump > pressureStep {
		parts = min(mostSubsteps, math.Ceil(jump/pressureStep))
	}
	left, h := dt, dt
	if parts > 1 { // the foot is not slower than pressRise, nor the step
		rise := min(pressRise, dt)
		for n := 1.0; n <= parts; n++ {
			if err := m.balance(f, s, in, was+float64((force-was)*(n/parts)), rise/parts); err != nil {
				return err
			}
		}
		left -= rise
		h = calmLeast / 2
	}
	for left > 0 {
		h = min(left, max(calmLeast, calmFlow/m.stir(s)), 2*h)
		if left-h < calmLeast/2 {
			h = left
		}
		if err := m.balance(f, s, in, force, h); err != nil {
			return err
		}
		left -= h
	}
	s.Master.Foot = in.Foot
	return nil
}

// stir is the greatest flow through a line at the pressures of s [m³/s].
func (m *Model) stir(s *State) float64 {
	greatest := 1e-12
	for w := range m.pipes {
		l := &m.pipes[w]
		q, _, _ := l.line(s.Master.Pressure[l.circuit], s.Master.Pressure[l.mate], s.Pressure[w], 1)
		greatest = max(greatest, math.Abs(q))
	}
	return greatest
}

// balance finds the end of one implicit step and writes it into s.
//
// Unknown are the pressures of two chambers and four wheels; pistons and
// calipers follow from them. Newton: each wheel is condensed by its own
// derivative, the chambers, joined by the rod's friction, are a 2×2 system.
func (m *Model) balance(f *flow, s *State, in *Input, force, dt float64) error {
	m.begin(f, s, in, force, dt)
	worst, err := m.residuals(f)
	if err != nil {
		return err
	}
	for n := 0; worst > volumeTolerance; n++ {
		dc, dw := m.newton(f)
		if n == stepIterations || (dc[0]-dc[0])+(dc[1]-dc[1]) != 0 { // round in circles, or no slope at all
			if worst, err = m.patient(f); err != nil {
				return err
			}
			if worst > volumeTolerance {
				return &DivergedError{Millis: s.Millis, Quantity: "fluid", Residual: worst, Unit: "m³"}
			}
			break
		}
		pc := [2]float64{f.chamber[0].p, f.chamber[1].p}
		var pw [NumWheels]float64
		for w := range pw {
			pw[w] = f.wheel[w].p
		}
		step := 1.0
		for half := 0; ; half++ {
			for i := range dc {
				f.chamber[i].p = pc[i] + float64(step*dc[i])
			}
			for w := range dw {
				f.wheel[w].p = pw[w] + float64(step*dw[w])
			}
			var trial float64
			if trial, err = m.residuals(f); err != nil {
				return err
			}
			if trial < worst || half == stepHalvings {
				worst = trial
				break
			}
			step /= 2
		}
	}
	m.accept(f, s, force)
	return nil
}

// begin lays out a step: what was, what acts.
func (m *Model) begin(f *flow, s *State, in *Input, force, dt float64) {
	spec := &m.spec.Master
	f.dt, f.home, f.anchor = dt, s.Master.Stroke, s.Master.Anchor
	f.push = spec.Efficiency * force
	f.grip = spec.Friction + float64(spec.FrictionShare*force)
	f.thick = 1
	if in.Ambient != 0 {
		f.thick = m.spec.Fluid.ViscosityAt(roomAir+in.Ambient) / m.spec.Fluid.Viscosity
	}
	f.above, f.stiff = 0, 0
	if m.cond.VentShut > 0 {
		var rate float64
		f.above, rate = m.above(s.Standing)
		f.stiff = 4 * dt * rate // two ports and two cups draw on one reservoir
	}
	taken := m.taken(force, &[2]float64{})
	for i := range f.chamber {
		f.chamber[i] = chamber{p: s.Master.Pressure[i], had: s.Master.Fluid[i], air: s.Master.Air[i],
			port: spec.PortArea[i] * max(0, m.master.open[i]-taken)}
	}
	for w := range f.wheel {
		c := &f.wheel[w]
		load := CornerLoad{Piston: in.Piston[w], Body: in.Body[w],
			Rate: m.corners[w].grease / dt, FromY: s.Corners[w].Y, PistonRate: max(sealDrag/dt, sealLeast), FromX: s.Corners[w].X, Tight: true}
		if !f.coarse {
			load.DiscIn, load.DiscOut = m.faces(s, w)
		}
		m.tip(&load, w, in.Side)
		*c = cavity{p: s.Pressure[w], from: s.Pressure[w], start: s.Corners[w], corner: s.Corners[w], load: load,
			celsius: s.Heat[w].Fluid, had: s.Cavity[w], air: s.Air[w], warm: s.AirWarm[w], bleed: in.Bleed[w]}
	}
}

// residuals works out every balance at the pressures at hand and returns the
// greatest volume that is missing [m³].
func (m *Model) residuals(f *flow) (float64, error) {
	m.strokes(f)
	worst := 0.0
	for i := range f.chamber {
		m.supply(i, &f.chamber[i], f)
	}
	for w := range f.wheel {
		c, l := &f.wheel[w], &m.pipes[w]
		ch := &f.chamber[l.circuit]
		if err := m.fill(w, c, ch.p, f.chamber[l.mate].p, f.thick, f.dt); err != nil {
			return 0, err
		}
		ch.residual -= float64(f.dt * c.in)
		worst = max(worst, math.Abs(c.residual))
	}
	for i := range f.chamber {
		worst = max(worst, math.Abs(f.chamber[i].residual))
	}
	if worst != worst {
		worst = math.Inf(1)
	}
	return worst, nil
}

// newton returns the step of chamber and wheel pressures that would close every
// balance if all were straight.
func (m *Model) newton(f *flow) (dc [2]float64, dw [NumWheels]float64) {
	var j [2][2]float64
	var r [2]float64
	give := f.chamber[0].move + f.chamber[1].move
	for i := range 2 {
		c := &f.chamber[i]
		r[i] = -c.residual
		j[i][i] = c.byP
		for k := range 2 { // ds_i/dp_k
			ds := 0.0
			if i == k {
				ds = -float64(m.master.area * c.move)
			}
			if f.stick > 0 {
				ds += m.master.area * c.move * f.stick * f.chamber[k].move / (1 + float64(f.stick*give))
			}
			j[i][k] += float64(c.byS * ds)
		}
	}
	for w := range f.wheel {
		c := &f.wheel[w]
		i := m.pipes[w].circuit
		// dw = (−residual + b·dp)/a
		j[i][i] -= float64(f.dt * (c.byP + float64(c.byW*c.b/c.a)))
		r[i] -= float64(f.dt * c.byW * c.residual / c.a)
	}
	det := float64(j[0][0]*j[1][1]) - float64(j[0][1]*j[1][0])
	dc[0] = (float64(r[0]*j[1][1]) - float64(r[1]*j[0][1])) / det
	dc[1] = (float64(r[1]*j[0][0]) - float64(r[0]*j[1][0])) / det
	for w := range f.wheel {
		c := &f.wheel[w]
		dw[w] = (float64(c.b*dc[m.pipes[w].circuit]) - c.residual) / c.a
	}
	return dc, dw
}

// accept writes the balanced step into s. Volumes advance by the flows, so
// fluid is conserved to rounding and what Newton left open is not lost.
func (m *Model) accept(f *flow, s *State, force float64) {
	dt := f.dt
	for i := range f.chamber {
		c := &f.chamber[i]
		s.Master.Stroke[i], s.Master.Pressure[i] = c.s, c.p
		s.Master.Fluid[i] += float64(dt * c.in)
	}
	for w := range f.wheel {
		c := &f.wheel[w]
		s.Corners[w], s.Forces[w], s.Pressure[w] = c.corner, c.forces, c.p
		s.Cavity[w] += float64(dt * (c.in - c.out))
		s.Master.Fluid[m.pipes[w].circuit] -= float64(dt * c.in)
		s.AirWarm[w] = c.warmed
	}
	if k := m.spec.Master.FrictionRate; k > 0 {
		slip(&s.Master.Anchor, k, f.grip, s.Master.Stroke[0]+s.Master.Stroke[1])
	}
	s.Master.Rod = force
	m.settleAir(f, s)
}
