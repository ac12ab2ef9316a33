package physics

import (
	"math"
	"testing"
)

// A slope is a function of one number with the derivative its code states.
type slope1 struct {
	name string
	f    func(x float64) (value, derivative float64)
	at   []float64
	h    float64
}

// miss is how far a stated derivative is from central differences, as a share
// of the greatest of the function's slopes; planted scales it.
func (s *slope1) miss(planted float64) float64 {
	worst, most := 0.0, 0.0
	for _, x := range s.at {
		up, _ := s.f(x + s.h)
		down, _ := s.f(x - s.h)
		_, stated := s.f(x)
		want := (up - down) / (2 * s.h)
		worst, most = max(worst, math.Abs(planted*stated-want)), max(most, math.Abs(want))
	}
	return worst / most
}

// TestDerivatives holds every derivative that Newton's steps rest on against
// differences. The tolerance is a tenth of what a derivative 0.1 % off would miss.
func TestDerivatives(t *testing.T) {
	m, s := build(t, pedalled(), Condition{Water: 0.04})
	valve := &m.pipes[RearLeft]
	hose := m.pipes[FrontLeft]
	hose.hold, hose.back = 3e5, 5*hose.inward
	c := &m.corners[FrontLeft]
	var supply flow
	m.begin(&supply, &s, &Input{Foot: 100}, 900, 0.001)
	for i := range supply.chamber {
		supply.chamber[i].port, supply.chamber[i].air = 2e-7, 1e-6
	}
	shut, _ := build(t, pedalled(), Condition{VentShut: 1, Fluid: -10e-6, CupBypass: [2]float64{3e-13, 0}})
	stiff := supply
	stiff.above, stiff.stiff = -2.2e4, 2e10
	vented := func(p, stroke float64) chamber {
		ch := stiff.chamber[0]
		ch.p, ch.s = p, stroke
		shut.supply(0, &ch, &stiff)
		return ch
	}
	chamber := func(p, stroke float64) chamber {
		ch := supply.chamber[0]
		ch.p, ch.s = p, stroke
		m.supply(0, &ch, &supply)
		return ch
	}
	boils := func(p float64) float64 { return boilAt(m.boil, p) - freezing } // two fifths of a kelvin above it all is steam
	for _, d := range []slope1{
		{"air, squeezed", func(p float64) (float64, float64) { v, g, _ := gas(2e-6, 0.3, 2e5, p, 0.02); return v, g }, []float64{-5e4, 1e5, 8e6}, 10},
		{"vapour", func(p float64) (float64, float64) { return m.vapour(60e-6, boils(3e5)+0.2, p) }, []float64{2.995e5, 3e5, 3.005e5}, 1},
		{"vapour below room pressure", func(p float64) (float64, float64) { return m.vapour(60e-6, boils(-6e4)+0.2, p) }, []float64{-6.02e4, -6e4, -5.98e4}, 1},
		{"orifice", func(p float64) (float64, float64) { return orifice(1e-7, p, 1060, 100) }, []float64{-1e6, -50, 70, 1e4, 8e6}, 0.1},
		{"orifice before a stiff reservoir", func(p float64) (float64, float64) { q, d, _ := throttled(1e-7, p, 1060, 100, 3e11); return q, d }, []float64{-1e6, -50, 70, 1e4}, 0.1},
		{"parted half pad", func(u float64) (float64, float64) { n, k, _ := c.halfPad(0.1*c.k1[Inner], u, 0); return n, k }, []float64{-1e-4, 1e-4, 3e-4}, 1e-9},
		{"shut reservoir", func(v float64) (float64, float64) { return shut.above(v) }, []float64{180e-6, 200e-6, 213e-6}, 1e-9},
		{"chamber by pressure, vent shut", func(p float64) (float64, float64) { c := vented(p, 2e-5); return c.residual, c.byP }, []float64{-3e4, -2e4, 5e4}, 1},
		{"chamber by stroke, vent shut", func(x float64) (float64, float64) { c := vented(4e5, x); return c.residual, c.byS }, []float64{1e-5, 3e-5, 2e-3}, 1e-9},
		{"void", hollow, []float64{-2e5, -1.2e5, 0}, 10},
		{"reducing valve", func(p float64) (float64, float64) { return valve.outlet(p, 6e6) }, []float64{1e6, 4e6, 8e6}, 10},
		{"reducing valve, front lost", func(p float64) (float64, float64) { return valve.outlet(p, 0) }, []float64{1e6, 4e6}, 10},
		{"line by chamber", func(p float64) (float64, float64) { q, d, _ := valve.line(p, 6e6, 3e6, 1.3); return q, d }, []float64{2e6, 5e6}, 10},
		{"line by wheel", func(p float64) (float64, float64) { q, _, d := hose.line(2e6, 2e6, p, 0.8); return q, d }, []float64{1e6, 2.2e6, 4e6}, 10},
		{"chamber by pressure", func(p float64) (float64, float64) { c := chamber(p, 2e-5); return c.residual, c.byP }, []float64{-3e4, 5e4, 2e6}, 1},
		{"chamber by stroke", func(x float64) (float64, float64) { c := chamber(4e5, x); return c.residual, c.byS }, []float64{1e-5, 3e-5, 2e-3}, 1e-9},
		{"half pad", func(u float64) (float64, float64) { n, k, _ := c.halfPad(c.k1[Inner], u, 0); return n, k }, []float64{-1e-4, 1e-4, 3e-4}, 1e-9},
		{"half pad that wears", func(u float64) (float64, float64) { n, k, _ := c.halfPad(c.k1[Inner], u, 1e-9); return n, k }, []float64{1e-4, 3e-4}, 1e-8},
		{"half pad's energy", func(u float64) (float64, float64) { n, _, w := c.halfPad(c.k1[Inner], u, 1e-9); return w, n }, []float64{1e-4, 3e-4}, 1e-8},
		{"friction", func(u float64) (float64, float64) { f, k, _ := friction(8e6, 300, u, false); return f, k }, []float64{-1e-4, 1e-5, 2e-5, 1e-4}, 1e-9},
		{"friction's energy", func(u float64) (float64, float64) { f, _, w := friction(8e6, 300, u, false); return w, f }, []float64{-1e-4, 1e-5, 2e-5, 1e-4}, 1e-9},
	} {
		const tolerance = 1e-4
		if miss := d.miss(1); !(miss <= tolerance) {
			t.Errorf("%s: the derivative is off by %.2g of the greatest", d.name, miss)
		}
		if d.miss(1.001) <= tolerance {
			t.Errorf("%s: a derivative 0.1 %% too great would pass", d.name)
		}
	}
}

// bent is a caliper with every part strained and one pin sliding.
func bent(t *testing.T) (Corner, CornerState, CornerLoad) {
	t.Helper()
	c := NewCorner(demoFront(), &WheelCondition{PinFriction: [2]float64{4000, 0}, EarFriction: [2]float64{600, 0}, Wear: [2][2]float64{{1e-4, 0}, {0, 2e-4}}}, "bent")
	s, _ := ramp(t, &c, CornerState{}, 0, 4*Megapascal, 0.5*Megapascal)
	load := CornerLoad{Pressure: 4 * Megapascal, Piston: 30, Body: -50, DiscIn: 2e-5, DiscOut: -3e-5, Rate: 3e4, FromY: s.Y - 1e-5,
		PistonRate: 2e4, FromX: s.X + 2e-5, HandRate: [2]float64{1e6, 0}, HandAt: [2]float64{s.Y, 0}, Yield: [2][2]float64{{1e-10, 0}, {0, 2e-10}}}
	s.X, s.Y, s.Tilt, s.Bridge = s.X+3e-6, s.Y-2e-6, s.Tilt+2e-5, s.Bridge+1e-6 // off its balance
	return c, s, load
}

// TestCornerDerivatives: the caliper's forces are its energy's gradient and its
// stiffness is theirs, in all four directions.
func TestCornerDerivatives(t *testing.T) {
	c, s, load := bent(t)
	sealF := c.seal0 + c.grip*load.Pressure
	at := func(i int, x float64) *evaluation {
		e, q := &evaluation{}, s
		*[]*float64{&q.X, &q.Y, &q.Tilt, &q.Bridge}[i] += x
		c.evaluate(e, &q, &load, sealF, false)
		return e
	}
	h := [4]float64{1e-9, 1e-9, 1e-8, 1e-9}
	scale := [4]float64{1, 1, c.a, 1} // a tilt counts as what it moves at a pin
	base := at(0, 0)
	var forces, stiffness float64
	for i := range 4 {
		forces = max(forces, math.Abs(base.grad[i])/scale[i])
		stiffness = max(stiffness, base.hess[i][i]/(scale[i]*scale[i]))
	}
	if forces < 100 {
		t.Fatalf("the caliper is in balance (%g N): nothing is tested", forces)
	}
	seen := 0.0
	for i := range 4 {
		up, down := at(i, h[i]), at(i, -h[i])
		wide, wideDown := at(i, 100*h[i]), at(i, -100*h[i]) // an energy of 5 J resolves no nanometre
		if d := math.Abs((wide.energy-wideDown.energy)/(200*h[i])-base.grad[i]) / scale[i]; !(d <= 1e-3*forces) {
			t.Errorf("direction %d: the energy falls off by %.4g N from the stated force", i, d)
		}
		for j := range 4 {
			want := (up.grad[j] - down.grad[j]) / (2 * h[i])
			got := base.hess[min(i, j)][max(i, j)]
			unit := scale[i] * scale[j] * stiffness
			seen = max(seen, math.Abs(got)/unit)
			if !(math.Abs(got-want) <= 1e-5*unit) {
				t.Errorf("stiffness %d %d: %.8g, differences give %.8g", i, j, got, want)
			}
		}
	}
	if 1e-3*seen <= 1e-5 {
		t.Errorf("a stiffness 0.1 %% off would pass everywhere")
	}
}

// TestNewtonClosesAtOnce: where all is smooth, the step of the whole car's
// Newton takes the balances' miss to its square: all derivatives together, with
// the condensed calipers. With a slope planted 3 % off it closes only to 3 %.
func TestNewtonClosesAtOnce(t *testing.T) {
	m, s := build(t, pedalled(), frontLeft(WheelCondition{Air: 1e-6, Leak: 1e-9}))
	for i := range 60 {
		s = stepped(t, m, s, Input{Foot: 6 * float64(i)}, 1, 5)
	}
	left := func(planted float64) float64 {
		var f flow
		m.begin(&f, &s, &Input{Foot: 360}, s.Master.Rod+30, 0.001)
		before, err := m.residuals(&f)
		if err != nil {
			t.Fatal(err)
		}
		for w := range f.wheel {
			f.wheel[w].a *= planted
		}
		dc, dw := m.newton(&f)
		for i := range dc {
			f.chamber[i].p += dc[i]
		}
		for w := range dw {
			f.wheel[w].p += dw[w]
		}
		after, err := m.residuals(&f)
		if err != nil {
			t.Fatal(err)
		}
		if before < 1e3*volumeTolerance {
			t.Fatalf("the step misses only %g m³ at its start: nothing is tested", before)
		}
		return after / before
	}
	if got := left(1); !(got <= 0.01) {
		t.Errorf("one step leaves %.3g of the miss", got)
	}
	if got := left(1.03); got <= 0.01 {
		t.Errorf("with a slope 3 %% off one step still leaves only %.3g", got)
	}
}
