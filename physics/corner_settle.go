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
	sealF := c.seal0 + float64(c.grip*max(0, load.Pressure))
	var e evaluation
	c.evaluate(&e, &s, load, sealF, false)
	cautious, far := false, cornerReach
	for range cornerIterations {
		if e.residual <= e.tolerance {
			if cautious { // the derivative below needs the tangent
				c.evaluate(&e, &s, load, sealF, false)
			}
			f, byP := c.finish(&s, &e, load, sealF)
			return s, f, byP, nil
		}
		step, ok := c.descend(&s, &e, load, sealF, far)
		if !ok && cautious {
			break
		}
		if step == 1 { // nothing was in the way: a worn lining may be millimetres further
			far *= 2
		}
		// Newton's tangent sees nothing of a friction element that is about to
		// turn round; where it gets nowhere the secant takes the next step.
		if was := cautious; was || step < cornerPoor {
			cautious = !was
			c.evaluate(&e, &s, load, sealF, cautious)
		}
	}
	return s, CornerForces{}, [4]float64{}, &CornerError{Corner: c.name, Pressure: load.Pressure, Residual: e.residual, Tolerance: e.tolerance}
}

// descend makes one Newton step with backtracking on the energy. It returns the
// share of the step taken, and false when no share of it lowers the energy.
func (c *Corner) descend(s *CornerState, e *evaluation, load *CornerLoad, sealF, far float64) (float64, bool) {
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
	var trial evaluation
	for range cornerHalvings {
		t := *s
		t.X += float64(step * d[0])
		t.Y += float64(step * d[1])
		t.Tilt += float64(step * d[2])
		t.Bridge += float64(step * d[3])
		c.evaluate(&trial, &t, load, sealF, false)
		// Near the bottom the energy no longer resolves the gain; a smaller residual decides there.
		if trial.energy <= e.energy+float64(cornerArmijo*step*slope) ||
			trial.residual < e.residual && trial.energy <= e.energy+float64(1e-12*math.Abs(e.energy)) {
			*s, *e = t, trial
			return step, true
		}
		step /= 2
	}
	return 0, false
}

// reach is how far a step moves anything [m], a tilt counted at the pin.
func reach(c *Corner, d *[4]float64) float64 {
	return max(math.Abs(d[0]), math.Abs(d[1]), math.Abs(d[2])*c.a, math.Abs(d[3]))
}

// finish moves the anchors of what has slid and collects the forces.
func (c *Corner) finish(s *CornerState, e *evaluation, load *CornerLoad, sealF float64) (CornerForces, [4]float64) {
	// Piston per pressure: (H + ε)·d = ∂(p·A − S)/∂p, where a sliding seal also grips harder.
	r := c.area
	if load.Pressure > 0 {
		r -= float64(e.slides * c.grip)
	}
	d := e.solve([4]float64{r, 0, 0, 0}, cornerRegular)
	f := CornerForces{Half: e.half, Pin: e.pin, Ear: e.ear, Seal: e.seal, DxDp: d[0]}
	slip(&s.SealAnchor, c.sealRate, sealF, s.X)
	slip(&s.PinAnchor[Upper], c.pinRate[Upper], c.pin[Upper], s.Y+float64(c.a*s.Tilt))
	slip(&s.PinAnchor[Lower], c.pinRate[Lower], c.pin[Lower], s.Y-float64(c.a*s.Tilt))
	if !load.PadsOut {
		slip(&s.EarAnchor[Inner], c.earRate, c.ear[Inner], s.X-s.Y)
		slip(&s.EarAnchor[Outer], c.earRate, c.ear[Outer], s.Y-s.Bridge)
	}
	return f, d
}

// slip drags an anchor along so that the element's force is at its limit.
func slip(anchor *float64, k, limit, u float64) {
	if d := u - *anchor; d > limit/k {
		*anchor = u - limit/k
	} else if d < -limit/k {
		*anchor = u + limit/k
	}
}
