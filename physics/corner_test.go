package physics

import (
	"math"
	"testing"
)

// demoFront is the demo front corner of the reference points; demoWheel the
// condition of a wheel with frictionless ears, no run-out.
func demoFront() *CornerSpec {
	return &CornerSpec{
		PistonDiameter: 54 * Millimetre, K1: 60e6, K3: 2.5e15, Bridge: 120e6,
		SealRate: 0.9e6, SealFriction: 120, SealGrip: 55e-6,
		PinRate: 8e6, PinFriction: 15, PinOffset: 65 * Millimetre, PadOffset: 28 * Millimetre,
		TiltShare: 0.30, Boot: 300, TiltRate: 50, Gap: [2]float64{0.12 * Millimetre, 0.12 * Millimetre},
		EarRate: 20e6, EffectiveRadius: 104 * Millimetre, Mu: 0.38,
	}
}

// ramp takes a caliper through pressures from, to in equal steps.
func ramp(t *testing.T, c *Corner, s CornerState, from, to, step float64) (CornerState, CornerForces) {
	t.Helper()
	n := int(math.Round(math.Abs(to-from) / step))
	var f CornerForces
	for i := 1; i <= n; i++ {
		var err error
		p := from + (to-from)*float64(i)/float64(n)
		if s, f, err = c.Settle(s, &CornerLoad{Pressure: p}); err != nil {
			t.Fatal(err)
		}
	}
	return s, f
}

// TestCornerReference holds the reference points of the physics page §1, which
// an independent program computed: 0.1 %, or 0.5 N, or 1 µm.
func TestCornerReference(t *testing.T) {
	const source = "independent program, pressure in 0.5 MPa steps from rest to 8 MPa and back"
	both := func(f float64) WheelCondition { return WheelCondition{PinFriction: [2]float64{f - 15, f - 15}} }
	rows := []struct {
		name           string
		cond           WheelCondition
		at             float64 // MPa
		back           bool
		inner, outer   float64 // N
		x, y           float64 // mm, 0 when not stated
		tiltMilliradan float64
		halves         [4]float64
	}{
		{name: "healthy, rising", at: 1, inner: 2115.2, outer: 2085.1, x: 0.324, y: 0.171},
		{name: "healthy, rising", at: 8, inner: 17831.8, outer: 17801.5, x: 0.692, y: 0.420},
		{name: "healthy, released", back: true, inner: 0, outer: 29.9, x: 0.148, y: 0.121},
		{name: "both pins 200 N, released", cond: both(200), back: true, inner: 0, outer: 399.9, x: 0.155, y: 0.130},
		{name: "upper pin 20 kN", cond: WheelCondition{PinFriction: [2]float64{20000 - 15, 0}}, at: 8,
			inner: 17841.0, outer: 15253.9, x: 0.655, y: 0.383, tiltMilliradan: -0.954, halves: [4]float64{9851, 7990, 4939, 10315}},
		{name: "both pins 20 kN", cond: both(20000), at: 8, inner: 17845.5, outer: 12294.1, x: 0.619, y: 0.347},
		{name: "seal 2500 N, 20 MN/m, released", cond: WheelCondition{SealFriction: 2500 - 120, SealRate: 20e6 - 0.9e6},
			back: true, inner: 2500, outer: 2529.9, x: 0.340, y: 0.181},
	}
	near := func(row, what string, got, want, abs float64) {
		t.Helper()
		tol := max(abs, 1e-3*math.Abs(want))
		if abs < 1e-3 { // lengths: 1 µm, never the relative bound
			tol = abs
		}
		if math.Abs(got-want) > tol {
			t.Errorf("%s: %s = %.6g, want %.6g ± %.2g (%s)", row, what, got, want, tol, source)
		}
	}
	for _, r := range rows {
		c := NewCorner(demoFront(), &r.cond, "front_left")
		peak := r.at
		if r.back {
			peak = 8
		}
		s, f := ramp(t, &c, CornerState{}, 0, peak*Megapascal, 0.5*Megapascal)
		if r.back {
			s, f = ramp(t, &c, s, 8*Megapascal, 0, 0.5*Megapascal)
		}
		near(r.name, "inner N", f.Inner(), r.inner, 0.5)
		near(r.name, "outer N", f.Outer(), r.outer, 0.5)
		near(r.name, "x mm", s.X/Millimetre*1e-3, r.x*1e-3, 1e-6)
		near(r.name, "y mm", s.Y/Millimetre*1e-3, r.y*1e-3, 1e-6)
		if r.tiltMilliradan != 0 {
			near(r.name, "tilt rad", s.Tilt, r.tiltMilliradan*1e-3, 1e-6)
			for i, want := range r.halves {
				near(r.name, "half N", f.Half[i/2][i%2], want, 0.5)
			}
		}
	}
}

// TestCornerTorque: 4 MPa makes 697 N·m at a front wheel (physics page §8).
func TestCornerTorque(t *testing.T) {
	c := NewCorner(demoFront(), &WheelCondition{}, "front_left")
	_, f := ramp(t, &c, CornerState{}, 0, 4*Megapascal, 0.5*Megapascal)
	if got := c.Torque(&f); math.Abs(got-697) > 1 {
		t.Errorf("torque at 4 MPa = %.1f N·m, want 697 ± 1 (independent program)", got)
	}
}

// TestCornerDxDp checks the condensed derivative against differences.
func TestCornerDxDp(t *testing.T) {
	for _, cond := range []WheelCondition{{}, {PinFriction: [2]float64{20000, 0}}, {SealFriction: 2000, SealRate: 1e7}} {
		c := NewCorner(demoFront(), &cond, "front_left")
		s, _ := ramp(t, &c, CornerState{}, 0, 3*Megapascal, 0.25*Megapascal)
		const h = 200.0
		s1, f1, err := c.Settle(s, &CornerLoad{Pressure: 3*Megapascal + h})
		if err != nil {
			t.Fatal(err)
		}
		s2, _, err := c.Settle(s1, &CornerLoad{Pressure: 3*Megapascal + 2*h})
		if err != nil {
			t.Fatal(err)
		}
		if got, want := f1.DxDp, (s2.X-s1.X)/h; math.Abs(got-want) > 0.01*want {
			t.Errorf("dx/dp = %.4g m/Pa, differences give %.4g", got, want)
		}
	}
}

func BenchmarkCornerWarm(b *testing.B) {
	c := NewCorner(demoFront(), &WheelCondition{}, "front_left")
	var s CornerState
	var err error
	load := CornerLoad{}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		load.Pressure = 3*Megapascal + float64(i%100)*5e3
		if s, _, err = c.Settle(s, &load); err != nil {
			b.Fatal(err)
		}
	}
}
