package physics

// A pipe is one wheel's line and cavity with the condition worked in.
type pipe struct {
	circuit int
	inward  float64 // [Pa·s/m³] chamber to wheel at 20 °C
	back    float64 // [Pa·s/m³] wheel to chamber
	hold    float64 // [Pa] a collapsed hose keeps back
	swell   float64 // [m³/Pa]
	fluid   float64 // [m³]
	leak    float64 // [m²] at the joint and past the seal
	screw   float64 // [m²] at the shut bleed screw
	knee    float64 // [Pa] of the reducing valve, 0 for none
	slope   float64
	reduces bool // there is a valve
	stuck   bool // which does not feel the front's pressure
	mate    int  // chamber whose pressure holds the valve down: the front wheels'
}

func newPipe(spec *Spec, cond *WheelCondition, w Wheel) pipe {
	c := spec.Corner(w)
	p := pipe{
		circuit: spec.Circuit[w],
		inward:  c.LineResistance, back: float64(c.LineResistance * (1 + cond.HoseReturn)),
		hold: cond.HoseHold, swell: c.HoseSwell + cond.HoseSwell, fluid: c.FluidVolume, leak: cond.Leak + cond.SealLeak, screw: cond.ScrewLeak,
		mate: spec.Circuit[w],
	}
	if !w.Front() && spec.Valve.Knee > 0 {
		p.reduces, p.stuck = true, cond.ValveStuck != 0
		p.knee, p.slope = spec.Valve.at(cond.ValveStuck)
		if spec.Circuit[FrontLeft] == spec.Circuit[FrontRight] {
			p.mate = spec.Circuit[FrontLeft]
		}
	}
	return p
}

// at is the knee [Pa] and slope [1] of a valve stuck open (share > 0: what it holds
// back above the knee is less by the share) or shut (< 0: knee and slope are lower
// by it; at −1 nothing passes).
func (v *ValveSpec) at(stuck float64) (knee, slope float64) {
	if stuck >= 0 {
		return v.Knee, v.Slope + float64(stuck*(1-v.Slope))
	}
	return float64(v.Knee * (1 + stuck)), float64(v.Slope * (1 + stuck))
}

// outlet is the pressure the valve lets through from chamber pressure p, and its
// derivative. Above the knee a share of the rise passes. What holds the valve
// down is the front wheels' pressure: where that is lost it opens.
func (l *pipe) outlet(p, front float64) (out, slope float64) {
	if !l.reduces || p <= l.knee {
		return p, 1
	}
	cut := float64((1 - l.slope) * (p - l.knee))
	if front < cut && !l.stuck {
		return p - max(0, front), 1
	}
	return p - cut, l.slope
}

// line returns the flow into the wheel [m³/s] at chamber pressure p and wheel
// pressure w, and its derivatives. thick is the fluid's viscosity over that at
// 20 °C; the flow is laminar (Hagen–Poiseuille).
//
//	q = (p − w)/R inward;  q = −max(0, w − p − p_hold)/R_return back
func (l *pipe) line(p, front, w, thick float64) (q, byP, byW float64) {
	out, slope := l.outlet(p, front)
	d := out - w
	g := 1 / (l.inward * thick)
	if d < 0 {
		if d += l.hold; d >= 0 {
			return 0, 0, 0
		}
		g = 1 / (l.back * thick)
	}
	return d * g, slope * g, -g
}

// cavity is what one wheel's fluid did in the iterate at hand.
type cavity struct {
	p, from  float64 // [Pa] now, at the start of the step
	start    CornerState
	corner   CornerState
	load     CornerLoad
	forces   CornerForces
	solved   float64    // [Pa] where corner was solved last in this step
	tangent  [4]float64 // of corner there, per pressure; none before the first solve
	celsius  float64
	had, air float64 // [m³] Cavity and Air at the start
	warm     float64
	bleed    float64 // [m²]
	gas      float64 // [m³] now
	warmed   float64
	in, out  float64 // [m³/s] through the line; through joint and screw
	screw    float64 // [m³/s] through the screw alone
	residual float64 // [m³]
	a, b     float64 // ∂residual/∂p, −∂residual/∂p_chamber
	byP, byW float64 // of in
}

// fill works out a wheel's balance at its pressure c.p and chamber pressure pc.
//
//	A·x + hose·p + V_f·(p/K(T) − β·(T − 20)) − V_gas − V_vapour = Cavity + dt·(q_line − q_leak)
func (m *Model) fill(w int, c *cavity, pc, front, thick, dt float64) error {
	l, corner := &m.pipes[w], &m.corners[w]
	c.load.Pressure = c.p
	s := c.start
	dp := c.p - c.solved // from where the last solve ended, along its tangent
	s.X, s.Y = c.corner.X+float64(dp*c.tangent[0]), c.corner.Y+float64(dp*c.tangent[1])
	s.Tilt, s.Bridge = c.corner.Tilt+float64(dp*c.tangent[2]), c.corner.Bridge+float64(dp*c.tangent[3])
	at, forces, tangent, err := corner.settle(s, &c.load)
	if err != nil { // too far, or too tight for the energy to tell: afresh, to the usual residual
		loose := c.load
		loose.Tight = false
		if at, forces, tangent, err = corner.settle(c.start, &loose); err != nil {
			return err
		}
	}
	c.corner, c.forces, c.solved, c.tangent = at, forces, c.p, tangent
	fl := &m.spec.Fluid
	warm := c.celsius - roomAir
	squeeze := (1 + float64(softening*warm)) / fl.BulkModulus
	gasV, gasS, warmed := gas(c.air, c.warm, c.from, c.p, dt)
	vapV, vapS := m.vapour(l.fluid, c.celsius, c.p)
	hole, holeS := hollow(c.p)
	vapV += hole
	vapS += holeS
	c.gas, c.warmed = gasV, warmed
	volume := float64(corner.area*c.corner.X) + float64(l.swell*c.p) + float64(l.fluid*(float64(squeeze*c.p)-float64(fl.Expansion*warm))) - gasV - vapV
	c.a = float64(corner.area*c.forces.DxDp) + l.swell + float64(l.fluid*squeeze) - gasS - vapS
	leak, leakS := orifice(l.leak, c.p, fl.Density, leakSmooth)
	screw, screwS := orifice(c.bleed+l.screw, c.p, fl.Density, leakSmooth)
	c.in, c.byP, c.byW = l.line(pc, front, c.p, thick)
	c.out, c.screw = leak+screw, screw
	c.a += float64(dt * (leakS + screwS - c.byW))
	c.b = dt * c.byP
	c.residual = volume - (c.had + float64(dt*(c.in-c.out)))
	return nil
}
