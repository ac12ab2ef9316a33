package physics

import "math"

// cylinder is the tandem master cylinder with the condition worked in.
type cylinder struct {
	area   float64    // [m²]
	free   float64    // [m] rod travel before the pistons move
	open   [2]float64 // [1] share of the free travel for which a port is open
	bypass [2]float64 // [m³/(s·Pa)]
}

const (
	// masterDamping is the drag of seals and rod on each piston [N·s/m]; assumed,
	// so that springs push the pistons home at about 0.2 m/s.
	masterDamping = 500
	portLap       = 0.05 * Millimetre // over which a passing cup closes its port; assumed
)

func newCylinder(spec *Spec, cond *Condition) cylinder {
	c := cylinder{area: 0.25 * pi * spec.Master.Bore * spec.Master.Bore, bypass: cond.CupBypass}
	c.free = max(0, spec.Pedal.Free-max(0, cond.PortCover[0], cond.PortCover[1]))
	for i := range 2 {
		c.open[i] = 1
		if cond.PortCover[i] > 0 {
			c.open[i] = 0
			if spec.Pedal.Free > 0 {
				c.open[i] = max(0, 1-cond.PortCover[i]/spec.Pedal.Free)
			}
		}
	}
	return c
}

// taken is the share of the rod's free travel taken up [1]: the rod goes through
// it as the force grows to what the return springs hold.
func (m *Model) taken(rod float64, stroke *[2]float64) float64 {
	hold := min(m.spec.Master.SpringPreload[0], m.spec.Master.SpringPreload[1])
	push := m.spec.Master.Efficiency * rod
	off := min(1, (stroke[0]+stroke[1])/portLap)
	switch {
	case push <= 0:
		return off
	case push >= hold:
		return 1
	}
	return max(off, push/hold)
}

// PedalTravel is the pedal's travel from rest [m]: r·(free + s1 + s2), the free travel
// as far as it is taken up.
func (m *Model) PedalTravel(s *State) float64 {
	t := &s.Master
	return m.spec.Pedal.Ratio * (float64(m.master.free*m.taken(t.Rod, &t.Stroke)) + t.Stroke[0] + t.Stroke[1])
}

// chamber is what one chamber did in the iterate at hand.
type chamber struct {
	p, s     float64
	had, air float64 // [m³] Fluid and Air at the start
	port     float64 // [m²] open at the piston's home, foot as it is
	gas      float64 // [m³] now
	in       float64 // [m³/s] from the reservoir
	residual float64
	byP, byS float64 // ∂residual, lines left out
	move     float64 // ds/d(force) [m/N], 0 at a stop
}

// strokes puts both pistons where their forces balance at the chamber pressures.
//
//	p·A = η·F + f_r − f − (preload + k·s) − c·ṡ    or s at a stop
//	f   = clamp(k_f·(s1 + s2 − anchor), −f_r, +f_r)
//
// f_r = 15 N + 3 % of F; a rising foot slides, so that f = f_r and η alone
// counts. The sum of strokes falls as f grows, so one f balances.
func (m *Model) strokes(f *flow) {
	spec := &m.spec.Master
	var rest, give [2]float64
	for i := range 2 {
		damp := masterDamping / f.dt
		give[i] = 1 / (spec.SpringRate[i] + damp)
		rest[i] = f.push + f.grip - spec.SpringPreload[i] + float64(damp*f.home[i]) - float64(f.chamber[i].p*m.master.area)
	}
	sum := func(friction float64) float64 {
		total := 0.0
		for i := range 2 {
			c := &f.chamber[i]
			s := float64((rest[i] - friction) * give[i])
			c.s, c.move = min(max(0, s), spec.Stroke[i]), give[i]
			if s <= 0 || s >= spec.Stroke[i] {
				c.move = 0
			}
			total += c.s
		}
		return total
	}
	k := spec.FrictionRate
	f.stick = 0
	if f.given {
		sum(f.friction)
		return
	}
	if k <= 0 || f.grip <= 0 {
		f.friction = f.grip
		sum(f.grip)
		return
	}
	lo, hi := -f.grip, f.grip
	if float64(k*(sum(hi)-f.anchor)) >= hi {
		f.friction = hi
		return
	}
	if float64(k*(sum(lo)-f.anchor)) <= lo {
		f.friction = lo
		return
	}
	// Piecewise straight with few pieces: Newton, kept inside the bracket.
	x := f.friction
	if !(x > lo && x < hi) {
		x = (lo + hi) / 2
	}
	for range 60 {
		miss := x - float64(k*(sum(x)-f.anchor))
		if miss > 0 {
			hi = x
		} else {
			lo = x
		}
		next := x - miss/(1+float64(k*(f.chamber[0].move+f.chamber[1].move)))
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		done := math.Abs(next-x) <= 1e-9*f.grip
		x = next
		if done {
			break
		}
	}
	sum(x)
	f.friction, f.stick = x, k
}

// supply works out a chamber's own balance: what its piston drives out, what
// comes through the port, past the cup and, worn, back past it.
//
//	A·s + V_gas + Fluid + dt·q_reservoir − dt·Σ q_line = 0
func (m *Model) supply(i int, c *chamber, f *flow) {
	dt := f.dt
	fl := &m.spec.Fluid
	lap := m.spec.Master.Port[i] + portLap
	share := 1 - c.s/lap
	var q, byP, byS float64
	pull := f.above - c.p
	if share > 0 && c.port > 0 {
		var own float64
		q, byP, own = throttled(c.port*share, pull, fl.Density, portSmooth, f.stiff)
		byP = -byP
		byS = -q * own / (share * lap)
	}
	if pull > 0 {
		g := 1 / (m.spec.Master.CupResistance + f.stiff)
		q += float64(pull * g)
		byP -= g
	} else if g := m.master.bypass[i]; g > 0 {
		g = 1 / (1/g + f.stiff)
		q += float64(pull * g)
		byP -= g
	}
	gasV, gasS := 0.0, 0.0
	if c.air > 0 { // drawn in as a layer over the fluid: isothermal
		abs := absolute(c.p)
		gasV = c.air * Atmosphere / abs
		gasS = -gasV / abs
	}
	c.gas, c.in = gasV, q
	hole, holeS := hollow(c.p)
	gasV += hole
	gasS += holeS
	c.residual = float64(m.master.area*c.s) + gasV + c.had + float64(dt*q)
	c.byP, c.byS = gasS+float64(dt*byP), m.master.area+float64(dt*byS)
}
