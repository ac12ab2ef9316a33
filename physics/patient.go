package physics

import "math"

const (
	rootSteps = 200   // of one unknown
	rootTight = 1e-14 // [1] a bracket this narrow holds a kink, not a slope
	gripTight = 1e-10 // [1] of the rod's friction
)

// patient finds the balance where Newton's tangents lead in circles: at kinks
// (a valve that opens, a seal that lets go, fluid that boils) far from where the
// step began. It rests on monotony, not on slopes: a wheel's missing volume
// only grows with its pressure, a chamber's surplus only falls with its own, the
// strokes only fall with the rod's friction, so each is a root between two ends,
// wheels inside chambers inside the friction. Slow, and rare.
func (m *Model) patient(f *flow) (float64, error) {
	f.given = true
	err := m.rodFriction(f)
	f.given = false
	if err != nil {
		return 0, err
	}
	return m.residuals(f)
}

// rodFriction finds the friction f = clamp(k·(s1 + s2 − anchor), −f_r, +f_r).
func (m *Model) rodFriction(f *flow) error {
	k := m.spec.Master.FrictionRate
	if k <= 0 || f.grip <= 0 {
		f.friction = f.grip
		return m.circuits(f)
	}
	miss := func(x float64) (float64, error) {
		f.friction = x
		err := m.circuits(f)
		return x - float64(k*(f.chamber[0].s+f.chamber[1].s-f.anchor)), err
	}
	lo, hi := -f.grip, f.grip
	gl, err := miss(lo)
	if err != nil || gl >= 0 {
		return err
	}
	gh, err := miss(hi)
	if err != nil || gh <= 0 {
		return err
	}
	for n := 0; hi-lo > gripTight*f.grip && n < rootSteps; n++ {
		x := lo - float64(gl*((hi-lo)/(gh-gl))) // secant; every third time the middle
		if n%3 == 2 || !(x > lo && x < hi) {
			x = float64(0.5*lo) + float64(0.5*hi)
		}
		g, err := miss(x)
		if err != nil {
			return err
		}
		if math.Abs(g) <= gripTight*f.grip {
			return nil
		}
		if g > 0 {
			hi, gh = x, g
		} else {
			lo, gl = x, g
		}
	}
	return nil
}

// circuits balances both chambers, the one of the front wheels first: it may
// hold down the other's reducing valves.
func (m *Model) circuits(f *flow) error {
	first := m.spec.Circuit[FrontLeft]
	if err := m.circuit(f, first); err != nil {
		return err
	}
	return m.circuit(f, 1-first)
}

// circuit balances one chamber and its wheels under the rod's friction as given.
func (m *Model) circuit(f *flow, i int) error {
	c := &f.chamber[i]
	b := newBracket(c.p)
	for range rootSteps {
		m.strokes(f)
		m.supply(i, c, f)
		slope := c.byP - float64(c.byS*m.master.area*c.move)
		for w := range f.wheel {
			if m.pipes[w].circuit != i {
				continue
			}
			v := &f.wheel[w]
			if err := m.fillTo(f, w); err != nil {
				return err
			}
			c.residual -= float64(f.dt * v.in)
			slope -= float64(f.dt * (v.byP + float64(v.byW*v.b/v.a)))
		}
		if math.Abs(c.residual) <= volumeTolerance/4 || b.closed() {
			return nil
		}
		if c.residual-c.residual != 0 {
			return &DivergedError{Quantity: "fluid of the " + chamberNames[i] + " chamber", Residual: c.residual, Unit: "m³"}
		}
		c.p = b.next(c.p, -c.residual, -slope)
	}
	return nil
}

// fillTo balances one wheel at its chamber's pressure.
func (m *Model) fillTo(f *flow, w int) error {
	c, l := &f.wheel[w], &m.pipes[w]
	b := newBracket(c.p)
	for range rootSteps {
		if err := m.fill(w, c, f.chamber[l.circuit].p, f.chamber[l.mate].p, f.thick, f.dt); err != nil {
			return err
		}
		if math.Abs(c.residual) <= volumeTolerance/16 || b.closed() {
			return nil
		}
		if c.residual-c.residual != 0 { // no number: there is no root to close in on
			return &DivergedError{Quantity: "fluid " + Wheel(w).String(), Residual: c.residual, Unit: "m³"}
		}
		c.p = b.next(c.p, c.residual, c.a)
	}
	return nil
}

// A bracket closes in on the root of a growing function.
type bracket struct {
	lo, hi float64
	width  float64 // when last halved
	stride float64 // of the search for an end
}

func newBracket(at float64) bracket {
	return bracket{lo: math.Inf(-1), hi: math.Inf(1), width: math.Inf(1), stride: 1e3 + float64(math.Abs(at)/8)}
}

// closed reports that nothing is left between the ends.
func (b *bracket) closed() bool {
	return b.hi-b.lo <= rootTight*(Atmosphere+min(math.Abs(b.lo), math.MaxFloat64))
}

// next takes the value g at x and returns where to look next: Newton's point
// while it stays inside and the bracket keeps halving, else its middle.
func (b *bracket) next(x, g, slope float64) float64 {
	if g > 0 {
		b.hi = x
	} else {
		b.lo = x
	}
	n := x - g/slope
	width := b.hi - b.lo
	if math.IsInf(width, 1) { // one end is still open: not further than the stride
		n = min(max(n, x-b.stride), x+b.stride)
		if !(n > b.lo && n < b.hi) {
			n = x - math.Copysign(b.stride, g)
		}
		b.stride *= 4
		return n
	}
	if !(n > b.lo && n < b.hi) || width > 0.6*b.width {
		n = float64(0.5*b.lo) + float64(0.5*b.hi)
	}
	b.width = width
	return n
}
