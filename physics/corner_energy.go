package physics

import "math"

// boreBottom is the stiffness with which a piston pushed home meets its bore
// [N/m]; assumed, far above a pad's.
const boreBottom = 1e9

// evaluation is the energy, its gradient and its Hessian at one point.
type evaluation struct {
	energy    float64
	grad      [4]float64
	hess      [4][4]float64 // upper triangle; the rest is never written
	half      [2][2]float64
	pin, ear  [2]float64
	seal      float64
	slides    float64 // sign of the seal's slip, 0 when it holds
	residual  float64
	tolerance float64
}

// friction returns force, stiffness and energy of an elastic-then-sliding
// element pulled u away from its anchor. The stiffness of a sliding element is
// none (its tangent) or, for a cautious step, F/|u| (its secant, which bounds
// the energy from above as in Huber's robust regression).
func friction(k, limit, u float64, cautious bool) (f, kt, w float64) {
	f = k * u
	if math.Abs(f) <= limit {
		return f, k, f * u / 2
	}
	far := math.Abs(u)
	if cautious {
		kt = limit / far
	}
	return math.Copysign(limit, u), kt, float64(limit*far) - limit*limit/(2*k)
}

// halfPad returns force, stiffness and energy of a half pad of linear stiffness
// k1 squeezed by u, with a series compliance yield.
func (c *Corner) halfPad(k1, u, yield float64) (n, kt, w float64) {
	if u <= 0 {
		return 0, 0, 0
	}
	d := u
	if yield > 0 {
		// d + yield·N(d) = u is increasing and convex in d: Newton from the right stays there.
		for range 50 {
			n = float64(k1*d) + float64(c.k3*d*d*d)
			kt = k1 + float64(3*c.k3*d*d)
			step := (d + float64(yield*n) - u) / (1 + float64(yield*kt))
			d -= step
			if math.Abs(step) <= 1e-15*u {
				break
			}
		}
	}
	d2 := d * d
	n = float64(k1*d) + float64(c.k3*d2*d)
	kt = k1 + float64(3*c.k3*d2)
	w = float64(k1*d2/2) + float64(c.k3*d2*d2/4)
	if yield > 0 {
		w += float64(yield * n * n / 2)
		kt /= 1 + float64(yield*kt)
	}
	return n, kt, w
}

func (c *Corner) evaluate(e *evaluation, s *CornerState, load *CornerLoad, sealF float64, cautious bool) {
	x, y, th, br := s.X, s.Y, s.Tilt, s.Bridge
	push := float64(load.Pressure * c.area)

	f, k, w := friction(c.sealRate, sealF, x-s.SealAnchor, cautious)
	e.seal, e.slides = f, 0
	if math.Abs(f) >= sealF {
		e.slides = math.Copysign(1, f)
	}
	energy := w - float64((push+load.Piston)*x) - float64(load.Body*y)
	gx, hxx := f-push-load.Piston, k
	if load.PistonRate > 0 {
		v := x - load.FromX
		gx += float64(load.PistonRate * v)
		hxx += load.PistonRate
		energy += float64(load.PistonRate * v * v / 2)
	}
	if in := x + c.home; in < 0 {
		gx += float64(boreBottom * in)
		hxx += boreBottom
		energy += float64(boreBottom * in * in / 2)
	}
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
		f, k, w := friction(c.pinRate[i], c.pin[i], u-s.PinAnchor[i], cautious)
		e.pin[i] = f
		f += float64(c.boot * u)
		k += c.boot
		energy += w + float64(c.boot*u*u/2)
		if h := load.HandRate[i]; h > 0 {
			far := u - load.HandAt[i]
			f += float64(h * far)
			k += h
			energy += float64(h * far * far / 2)
			greatest = max(greatest, math.Abs(h*far))
		}
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
		f, k, w = friction(c.earRate, c.ear[Inner], x-y-s.EarAnchor[Inner], cautious)
		e.ear[Inner] = f
		energy += w
		gx += f
		gy -= f
		hxx += k
		hyy += k
		hxy -= k
		f, k, w = friction(c.earRate, c.ear[Outer], y-br-s.EarAnchor[Outer], cautious)
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
			n, k, w := c.halfPad(c.k1[Inner], x-y-float64(kb*th)-c.gap[Inner][j]-load.DiscIn, load.Yield[Inner][j])
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

			n, k, w = c.halfPad(c.k1[Outer], y+float64(b*th)-br-c.gap[Outer][j]-load.DiscOut, load.Yield[Outer][j])
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
	h := &e.hess // [0][3] is none
	h[0][0], h[0][1], h[0][2] = hxx, hxy, hxt
	h[1][1], h[1][2], h[1][3] = hyy, hyt, hye
	h[2][2], h[2][3], h[3][3] = htt, hte, hee
	// A moment counts as the force it would need at the pin.
	e.residual = max(math.Abs(gx), math.Abs(gy), math.Abs(gt)/c.a, math.Abs(ge))
	e.tolerance = max(cornerAbsolute, float64(cornerRelative*greatest))
	if load.Tight {
		e.tolerance *= 1e-3
	}
	if e.residual != e.residual { // NaN never compares, so it would never be caught below
		e.residual = math.Inf(1)
	}
}

// newton solves (H + ε·I)·d = −g by Cholesky (LDLᵀ) on 4×4.
func (e *evaluation) newton(eps float64) [4]float64 {
	return e.solve([4]float64{-e.grad[0], -e.grad[1], -e.grad[2], -e.grad[3]}, eps)
}

// solve takes ε for lengths [N/m]; the tilt's is a thousandth of it [N·m/rad],
// as if it acted at about the pins.
func (e *evaluation) solve(r [4]float64, eps float64) [4]float64 {
	h := &e.hess
	d0 := h[0][0] + eps
	l10, l20 := h[0][1]/d0, h[0][2]/d0
	d1 := h[1][1] + eps - float64(l10*h[0][1])
	m21 := h[1][2] - float64(l20*h[0][1])
	l21 := m21 / d1
	l31 := h[1][3] / d1
	d2 := h[2][2] + float64(1e-3*eps) - float64(l20*h[0][2]) - float64(l21*m21)
	m32 := h[2][3] - float64(l31*m21)
	l32 := m32 / d2
	d3 := h[3][3] + eps - float64(l31*h[1][3]) - float64(l32*m32)
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
