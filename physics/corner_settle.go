package physics

import "math"

const (
	cornerIterations = 200
	cornerRelative   = 1e-6 // [1] of the greatest force
	cornerAbsolute   = 1e-4 // [N]
	cornerRegular    = 1.0  // [N/m] ε, far below any stiffness
	cornerRegularT   = 1e-3 // [N·m/rad] ε for the tilt
	cornerArmijo     = 1e-4 // [1]
	cornerHalvings   = 40   // backtracking steps
	cornerReach      = 5e-4 // [m] longest Newton step
)

// Settle finds the equilibrium under load, starting from s, and moves the
// friction anchors. s itself is not changed. It does not allocate.
func (c *Corner) Settle(s CornerState, load *CornerLoad) (CornerState, CornerForces, error) {
	sealF := c.seal0 + float64(c.grip*max(0, load.Pressure))
	var e, trial evaluation
	c.evaluate(&e, &s, load, sealF)
	for range cornerIterations {
		if e.residual <= e.tolerance {
			f := c.finish(&s, &e, load, sealF)
			return s, f, nil
		}
		d := e.newton()
		slope := 0.0
		for i := range 4 {
			slope += float64(e.grad[i] * d[i])
		}
		// A seal that slides across an open gap meets no stiffness but ε: half a
		// millimetre is further than any caliper moves in one solve.
		far := max(math.Abs(d[0]), math.Abs(d[1]), math.Abs(d[2])*c.a, math.Abs(d[3]))
		step, ok := 1.0, false
		if far > cornerReach {
			step = cornerReach / far
		}
		for range cornerHalvings {
			t := s
			t.X += float64(step * d[0])
			t.Y += float64(step * d[1])
			t.Tilt += float64(step * d[2])
			t.Bridge += float64(step * d[3])
			c.evaluate(&trial, &t, load, sealF)
			// Near the bottom the energy no longer resolves the gain; a smaller residual decides there.
			if trial.energy <= e.energy+float64(cornerArmijo*step*slope) || (trial.residual < e.residual && trial.energy <= e.energy+float64(1e-12*math.Abs(e.energy))) {
				s, e, ok = t, trial, true
				break
			}
			step /= 2
		}
		if !ok {
			break
		}
	}
	if e.residual <= e.tolerance {
		f := c.finish(&s, &e, load, sealF)
		return s, f, nil
	}
	return s, CornerForces{}, &CornerError{Corner: c.name, Pressure: load.Pressure, Residual: e.residual, Tolerance: e.tolerance}
}

// finish moves the anchors of what has slid and collects the forces.
func (c *Corner) finish(s *CornerState, e *evaluation, load *CornerLoad, sealF float64) CornerForces {
	// Piston per pressure: (H + ε)·d = ∂(p·A − S)/∂p, where a sliding seal also grips harder.
	r := c.area
	if load.Pressure > 0 {
		r -= float64(e.slides * c.grip)
	}
	d := e.solve([4]float64{r, 0, 0, 0})
	f := CornerForces{Half: e.half, Pin: e.pin, Ear: e.ear, Seal: e.seal, DxDp: d[0]}
	slip(&s.SealAnchor, c.sealRate, sealF, s.X)
	slip(&s.PinAnchor[Upper], c.pinRate, c.pin[Upper], s.Y+float64(c.a*s.Tilt))
	slip(&s.PinAnchor[Lower], c.pinRate, c.pin[Lower], s.Y-float64(c.a*s.Tilt))
	if !load.PadsOut {
		slip(&s.EarAnchor[Inner], c.earRate, c.ear[Inner], s.X-s.Y)
		slip(&s.EarAnchor[Outer], c.earRate, c.ear[Outer], s.Y-s.Bridge)
	}
	return f
}

// slip drags an anchor along so that the element's force is at its limit.
func slip(anchor *float64, k, limit, u float64) {
	if d := u - *anchor; d > limit/k {
		*anchor = u - limit/k
	} else if d < -limit/k {
		*anchor = u + limit/k
	}
}
