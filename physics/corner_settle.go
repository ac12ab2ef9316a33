package physics

import "math"

const (
	cornerIterations = 200
	cornerRelative   = 1e-6 // [1] of the greatest force
	cornerAbsolute   = 1e-4 // [N]
	cornerRegular    = 1.0  // [N/m] ε, far below any stiffness
	cornerArmijo     = 1e-4 // [1]
	cornerHalvings   = 40   // backtracking steps
	cornerReach      = 1e-3 // [m] longest first step
	cornerStiffest   = 1e8  // [N/m] ε is not raised further
	cornerPoor       = 0.2  // [1] a step shorter than this share was cut by a kink
)

// Settle finds the equilibrium under load, starting from s, and moves the
// friction anchors. s itself is not changed. It does not allocate.
func (c *Corner) Settle(s CornerState, load *CornerLoad) (CornerState, CornerForces, error) {
	at, f, _, err := c.settle(s, load)
	return at, f, err
}

// settle is Settle with what everything moves per pressure [m/Pa, rad/Pa].
func (c *Corner) settle(s CornerState, load *CornerLoad) (CornerState, CornerForces, [4]float64, error) {
	var byP [4]float64
	f, err := c.find(&s, load, &byP)
	return s, f, byP, err
}

// find is settle from s and to it; nobody asks what moves per pressure where byP is nil.
func (c *Corner) find(s *CornerState, load *CornerLoad, byP *[4]float64) (f CornerForces, err error) {
	sealF := c.seal0 + float64(c.grip*max(0, load.Pressure))
	var both [2]evaluation
	e, trial := &both[0], &both[1]
	c.evaluate(e, s, load, sealF, false)
	cautious, far := false, cornerReach
	for range cornerIterations {
		if e.residual <= e.tolerance {
			if cautious { // the derivative below needs the tangent
				c.evaluate(e, s, load, sealF, false)
			}
			if byP != nil {
				*byP = c.rates(e, load)
			}
			c.slide(s, load, sealF)
			f = CornerForces{Half: e.half, Pin: e.pin, Ear: e.ear, Seal: e.seal}
			if byP != nil {
				f.DxDp = byP[0]
			}
			return f, nil
		}
		step := c.descend(s, e, trial, load, sealF, far)
		if step > 0 {
			e, trial = trial, e
		} else if cautious {
			break
		}
		if step == 1 { // nothing was in the way: a worn lining may be millimetres further
			far *= 2
		}
		// Newton's tangent sees nothing of a friction element that is about to
		// turn round; where it gets nowhere the secant takes the next step.
		if was := cautious; was || step < cornerPoor {
			cautious = !was
			c.evaluate(e, s, load, sealF, cautious)
		}
	}
	return f, &CornerError{Corner: c.name, Pressure: load.Pressure, Residual: e.residual, Tolerance: e.tolerance}
}

// descend makes one Newton step from e to trial with backtracking on the energy. It
// returns the share of the step taken, 0 when no share of it lowers the energy.
func (c *Corner) descend(s *CornerState, e, trial *evaluation, load *CornerLoad, sealF, far float64) float64 {
	// A direction in which nothing pushes back meets no stiffness but ε. Raising ε
	// there, as Levenberg does, holds that direction to a caliper's own scale and
	// leaves the stiff ones alone.
	eps := cornerRegular
	d := e.newton(eps)
	for eps < cornerStiffest && reach(c, &d) > far {
		eps *= 32
		d = e.newton(eps)
	}
	slope := 0.0
	for i := range 4 {
		slope += float64(e.grad[i] * d[i])
	}
	step := 1.0
	x, y, tilt, bridge := s.X, s.Y, s.Tilt, s.Bridge
	for range cornerHalvings {
		s.X = x + float64(step*d[0])
		s.Y = y + float64(step*d[1])
		s.Tilt = tilt + float64(step*d[2])
		s.Bridge = bridge + float64(step*d[3])
		c.evaluate(trial, s, load, sealF, false)
		// Near the bottom the energy no longer resolves the gain; a smaller residual decides there.
		if trial.energy <= e.energy+float64(cornerArmijo*step*slope) ||
			trial.residual < e.residual && trial.energy <= e.energy+float64(1e-12*math.Abs(e.energy)) {
			return step
		}
		step /= 2
	}
	s.X, s.Y, s.Tilt, s.Bridge = x, y, tilt, bridge
	return 0
}

// reach is how far a step moves anything [m], a tilt counted at the pin.
func reach(c *Corner, d *[4]float64) float64 {
	return max(math.Abs(d[0]), math.Abs(d[1]), math.Abs(d[2])*c.a, math.Abs(d[3]))
}

// rates is what everything moves per pressure: (H + ε)·d = ∂(p·A − S)/∂p, where a
// sliding seal also grips harder.
func (c *Corner) rates(e *evaluation, load *CornerLoad) [4]float64 {
	r := c.area
	if load.Pressure > 0 {
		r -= float64(e.slides * c.grip)
	}
	return e.solve([4]float64{r, 0, 0, 0}, cornerRegular)
}

// slide moves the anchors of what has slid.
func (c *Corner) slide(s *CornerState, load *CornerLoad, sealF float64) {
	slip(&s.SealAnchor, c.sealRate, sealF, s.X)
	slip(&s.PinAnchor[Upper], c.pinRate[Upper], c.pin[Upper], s.Y+float64(c.a*s.Tilt))
	slip(&s.PinAnchor[Lower], c.pinRate[Lower], c.pin[Lower], s.Y-float64(c.a*s.Tilt))
	if !load.PadsOut {
		slip(&s.EarAnchor[Inner], c.earRate, c.ear[Inner], s.X-s.Y)
		slip(&s.EarAnchor[Outer], c.earRate, c.ear[Outer], s.Y-s.Bridge)
	}
}

// slip drags an anchor along so that the element's force is at its limit.
func slip(anchor *float64, k, limit, u float64) {
	if d := u - *anchor; d > limit/k {
		*anchor = u - limit/k
	} else if d < -limit/k {
		*anchor = u + limit/k
	}
}
