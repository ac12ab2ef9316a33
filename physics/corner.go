package physics

import (
	"fmt"
	"math"
)

// A Corner is one floating caliper ready to be solved: its design with its
// condition worked in. It is immutable; a [CornerState] moves.
//
// At pressure p the caliper sits where its energy over (x, y, θ, e) is least.
// Written as forces (a hand or tool pushes with H_x on the piston, H_y on the body):
//
//	piston  p·A + H_x − S(x) − N_i − E_i                              = 0
//	body    N_i + E_i + H_y − N_o − E_o − P_u − P_l − c·ẏ − boots     = 0
//	tilt    κb(N_iu − N_il) − b(N_ou − N_ol) − a(P_u − P_l) − k_θ·θ − boots = 0
//	bridge  N_o + E_o − k_bridge·e                                    = 0
//
//	δ_i,± = x − (y ± κbθ) − gap_i − wear_i,± − disc_i(φ)
//	δ_o,± = (y ± bθ) − e − gap_o − wear_o,± − disc_o(φ)
//	N     = ½(k1·δ + k3·δ³) for δ > 0, else 0            each half pad
//	f     = clamp(k·(u − anchor), −F, +F)                seal, pins, ears
//
// For fixed anchors the energy is convex, so the answer is unique up to
// directions in which nothing pushes. Newton with an exact Hessian and Armijo
// backtracking on the energy finds it; the anchors are then moved.
// Errors: force residual below 1e-6 of the greatest force or 1e-4 N.
type Corner struct {
	name                   string
	area                   float64 // [m²]
	k1, k3, bridge         float64 // half-pad k1, k3
	sealRate, seal0, grip  float64
	pinRate                float64
	pin                    [2]float64 // [N]
	a, b, kb               float64    // kb = κ·b
	boot, tiltRate, grease float64
	earRate                float64
	ear                    [2]float64    // [N]
	gap                    [2][2]float64 // [m] pad, half: clearance with wear worked in
	runout, thickness      float64       // [m] amplitude over half a turn
	re                     float64
	mu                     [2][2]float64 // [1] cold
}

// NewCorner works a condition into a design. name is used in errors.
func NewCorner(spec *CornerSpec, cond *WheelCondition, name string) Corner {
	c := Corner{
		name: name,
		area: spec.PistonArea(),
		k1:   spec.K1 / 2, k3: spec.K3 / 2, bridge: spec.Bridge,
		sealRate: spec.SealRate + cond.SealRate,
		seal0:    spec.SealFriction + cond.SealFriction, grip: spec.SealGrip,
		pinRate: spec.PinRate,
		a:       spec.PinOffset, b: spec.PadOffset, kb: spec.TiltShare * spec.PadOffset,
		boot: spec.Boot, tiltRate: spec.TiltRate, grease: spec.Grease,
		earRate: spec.EarRate,
		runout:  (spec.Runout + cond.Runout) / 2, thickness: cond.Thickness / 4,
		re: spec.EffectiveRadius,
	}
	for i := range 2 {
		c.pin[i] = spec.PinFriction + cond.PinFriction[i]
		c.ear[i] = spec.EarFriction + cond.EarFriction[i]
		for j := range 2 {
			c.gap[i][j] = spec.Gap[i] - cond.PlateProud[i] + cond.Wear[i][j] + cond.DiscWear[i]
			c.mu[i][j] = float64(spec.Mu * (1 - cond.MuLoss[i][j]))
		}
	}
	return c
}

// CornerState is what a caliper remembers: where it sits and where its
// friction elements last came to rest.
type CornerState struct {
	X, Y, Tilt, Bridge float64    // [m m rad m]
	SealAnchor         float64    // [m]
	PinAnchor          [2]float64 // [m] upper, lower
	EarAnchor          [2]float64 // [m] inner, outer
}

// CornerLoad is what acts on a caliper during one solve.
type CornerLoad struct {
	Pressure float64 // [Pa] gauge
	Piston   float64 // [N] H_x, a tool on the piston, outwards
	Body     float64 // [N] H_y, a hand on the body, inboard
	// DiscIn and DiscOut move the disc faces away from the pads [m]; see [Corner.Faces].
	DiscIn, DiscOut float64
	// Rate is c_g/Δt [N/m] of the grease for an implicit step; zero is quasi-static.
	// The body moved from FromY [m].
	Rate, FromY float64
	// Yield [m/N] is a series compliance of each half pad: lining that wears off
	// during the solve, k_w·s/A_half. Zero outside history.
	Yield [2][2]float64
	// PadsOut takes both pads out, PinsOut the lower pin (body swung up).
	PadsOut bool
}

// CornerForces is what a solve found.
type CornerForces struct {
	Half [2][2]float64 // [N] pad, half
	Pin  [2]float64    // [N] upper, lower
	Ear  [2]float64    // [N] inner, outer
	Seal float64       // [N]
	DxDp float64       // [m/Pa] piston travel per pressure, everything else following
}

// Inner is the force of the inner pad on the disc [N].
func (f *CornerForces) Inner() float64 { return f.Half[Inner][Upper] + f.Half[Inner][Lower] }

// Outer is the force of the outer pad on the disc [N].
func (f *CornerForces) Outer() float64 { return f.Half[Outer][Upper] + f.Half[Outer][Lower] }

// A CornerError says that a caliper found no equilibrium.
type CornerError struct {
	Corner    string
	Pressure  float64 // [Pa]
	Residual  float64 // [N]
	Tolerance float64 // [N]
}

func (e *CornerError) Error() string {
	return fmt.Sprintf("caliper %s at %.4g MPa: force residual %.3g N, wanted below %.3g N",
		e.Corner, e.Pressure/Megapascal, e.Residual, e.Tolerance)
}

// Area is the piston's area [m²].
func (c *Corner) Area() float64 { return c.area }

// Faces returns how far the disc's faces have moved away from the inner and
// outer pad [m] at disc angle cosine cosPhi. Run-out moves the disc as a whole,
// so one face comes as the other goes; thickness variation moves both alike.
func (c *Corner) Faces(cosPhi float64) (in, out float64) {
	r, t := float64(c.runout*cosPhi), float64(c.thickness*cosPhi)
	return r + t, t - r
}

// Torque is r_e·Σ μ·N [N·m] of cold linings.
func (c *Corner) Torque(f *CornerForces) float64 {
	sum := 0.0
	for i := range 2 {
		for j := range 2 {
			sum += float64(c.mu[i][j] * f.Half[i][j])
		}
	}
	return c.re * sum
}

const (
	cornerIterations = 60
	cornerRelative   = 1e-6 // [1] of the greatest force
	cornerAbsolute   = 1e-4 // [N]
	cornerRegular    = 1.0  // [N/m] ε, far below any stiffness
	cornerRegularT   = 1e-3 // [N·m/rad] ε for the tilt
	cornerArmijo     = 1e-4 // [1]
	cornerHalvings   = 40   // backtracking steps
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
		step, ok := 1.0, false
		for range cornerHalvings {
			t := s
			t.X += float64(step * d[0])
			t.Y += float64(step * d[1])
			t.Tilt += float64(step * d[2])
			t.Bridge += float64(step * d[3])
			c.evaluate(&trial, &t, load, sealF)
			// Near the bottom the energy no longer resolves the gain; a smaller residual decides there.
			if trial.energy <= e.energy+float64(cornerArmijo*step*slope) || (trial.residual < e.residual && trial.energy <= e.energy+1e-12*math.Abs(e.energy)) {
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

// evaluation is the energy, its gradient and its Hessian at one point.
type evaluation struct {
	energy    float64
	grad      [4]float64
	hess      [4][4]float64 // upper triangle
	half      [2][2]float64
	pin, ear  [2]float64
	seal      float64
	slides    float64 // sign of the seal's slip, 0 when it holds
	residual  float64
	tolerance float64
}

// friction returns force, stiffness and energy of an elastic-then-sliding
// element pulled u away from its anchor.
func friction(k, limit, u float64) (f, kt, w float64) {
	f = k * u
	switch {
	case f > limit:
		return limit, 0, float64(limit*u) - limit*limit/(2*k)
	case f < -limit:
		return -limit, 0, float64(-limit*u) - limit*limit/(2*k)
	}
	return f, k, f * u / 2
}

// halfPad returns force, stiffness and energy of a half pad squeezed by u,
// with a series compliance yield.
func (c *Corner) halfPad(u, yield float64) (n, kt, w float64) {
	if u <= 0 {
		return 0, 0, 0
	}
	d := u
	if yield > 0 {
		// d + yield·N(d) = u is increasing and convex in d: Newton from the right stays there.
		for range 50 {
			n = float64(c.k1*d) + float64(c.k3*d*d*d)
			kt = c.k1 + float64(3*c.k3*d*d)
			step := (d + float64(yield*n) - u) / (1 + float64(yield*kt))
			d -= step
			if math.Abs(step) <= 1e-15*u {
				break
			}
		}
	}
	d2 := d * d
	n = float64(c.k1*d) + float64(c.k3*d2*d)
	kt = c.k1 + float64(3*c.k3*d2)
	w = float64(c.k1*d2/2) + float64(c.k3*d2*d2/4)
	if yield > 0 {
		w += float64(yield * n * n / 2)
		kt /= 1 + float64(yield*kt)
	}
	return n, kt, w
}

func (c *Corner) evaluate(e *evaluation, s *CornerState, load *CornerLoad, sealF float64) {
	x, y, th, br := s.X, s.Y, s.Tilt, s.Bridge
	push := float64(load.Pressure * c.area)
	e.hess = [4][4]float64{}

	f, k, w := friction(c.sealRate, sealF, x-s.SealAnchor)
	e.seal, e.slides = f, 0
	if k == 0 {
		e.slides = math.Copysign(1, f)
	}
	energy := w - float64((push+load.Piston)*x) - float64(load.Body*y)
	gx, hxx := f-push-load.Piston, k
	gy, hyy := -load.Body, 0.0
	gt, htt := float64(c.tiltRate*th), c.tiltRate
	energy += float64(c.tiltRate * th * th / 2)
	ge, hee := float64(c.bridge*br), c.bridge
	energy += float64(c.bridge * br * br / 2)
	var hxy, hxt, hyt, hye, hte float64
	greatest := math.Abs(push+load.Piston) + math.Abs(load.Body)

	for i := range 2 { // pins with their boots
		a := c.a
		if i == Lower {
			a = -a
		}
		u := y + float64(a*th)
		f, k, w := friction(c.pinRate, c.pin[i], u-s.PinAnchor[i])
		e.pin[i] = f
		f += float64(c.boot * u)
		k += c.boot
		energy += w + float64(c.boot*u*u/2)
		gy += f
		hyy += k
		gt += float64(a * f)
		htt += float64(a * a * k)
		hyt += float64(a * k)
	}
	if load.Rate > 0 {
		v := y - load.FromY
		energy += float64(load.Rate * v * v / 2)
		gy += float64(load.Rate * v)
		hyy += load.Rate
	}
	if load.PadsOut {
		e.half, e.ear = [2][2]float64{}, [2]float64{}
	} else {
		f, k, w = friction(c.earRate, c.ear[Inner], x-y-s.EarAnchor[Inner])
		e.ear[Inner] = f
		energy += w
		gx += f
		gy -= f
		hxx += k
		hyy += k
		hxy -= k
		f, k, w = friction(c.earRate, c.ear[Outer], y-br-s.EarAnchor[Outer])
		e.ear[Outer] = f
		energy += w
		gy += f
		ge -= f
		hyy += k
		hee += k
		hye -= k
		for j := range 2 {
			kb, b := c.kb, c.b
			if j == Lower {
				kb, b = -kb, -b
			}
			n, k, w := c.halfPad(x-y-float64(kb*th)-c.gap[Inner][j]-load.DiscIn, load.Yield[Inner][j])
			e.half[Inner][j] = n
			energy += w
			gx += n
			gy -= n
			gt -= float64(kb * n)
			hxx += k
			hyy += k
			hxy -= k
			hxt -= float64(kb * k)
			hyt += float64(kb * k)
			htt += float64(kb * kb * k)

			n, k, w = c.halfPad(y+float64(b*th)-br-c.gap[Outer][j]-load.DiscOut, load.Yield[Outer][j])
			e.half[Outer][j] = n
			energy += w
			gy += n
			gt += float64(b * n)
			ge -= n
			hyy += k
			htt += float64(b * b * k)
			hee += k
			hyt += float64(b * k)
			hye -= k
			hte -= float64(b * k)
			greatest = max(greatest, e.half[Inner][j], n)
		}
	}
	e.energy = energy
	e.grad = [4]float64{gx, gy, gt, ge}
	e.hess[0] = [4]float64{hxx, hxy, hxt, 0}
	e.hess[1] = [4]float64{0, hyy, hyt, hye}
	e.hess[2] = [4]float64{0, 0, htt, hte}
	e.hess[3][3] = hee
	// A moment counts as the force it would need at the pin.
	e.residual = max(math.Abs(gx), math.Abs(gy), math.Abs(gt)/c.a, math.Abs(ge))
	e.tolerance = max(cornerAbsolute, float64(cornerRelative*greatest))
	if e.residual != e.residual { // NaN never compares, so it would never be caught below
		e.residual = math.Inf(1)
	}
}

// newton solves (H + ε·I)·d = −g by Cholesky (LDLᵀ) on 4×4.
func (e *evaluation) newton() [4]float64 {
	return e.solve([4]float64{-e.grad[0], -e.grad[1], -e.grad[2], -e.grad[3]})
}

func (e *evaluation) solve(r [4]float64) [4]float64 {
	h := &e.hess
	d0 := h[0][0] + cornerRegular
	l10, l20 := h[0][1]/d0, h[0][2]/d0
	d1 := h[1][1] + cornerRegular - float64(l10*h[0][1])
	m21 := h[1][2] - float64(l20*h[0][1])
	l21 := m21 / d1
	l31 := h[1][3] / d1
	d2 := h[2][2] + cornerRegularT - float64(l20*h[0][2]) - float64(l21*m21)
	m32 := h[2][3] - float64(l31*m21)
	l32 := m32 / d2
	d3 := h[3][3] + cornerRegular - float64(l31*h[1][3]) - float64(l32*m32)
	z0 := r[0]
	z1 := r[1] - float64(l10*z0)
	z2 := r[2] - float64(l20*z0) - float64(l21*z1)
	z3 := r[3] - float64(l31*z1) - float64(l32*z2)
	x3 := z3 / d3
	x2 := z2/d2 - float64(l32*x3)
	x1 := z1/d1 - float64(l21*x2) - float64(l31*x3)
	x0 := z0/d0 - float64(l10*x1) - float64(l20*x2)
	return [4]float64{x0, x1, x2, x3}
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
