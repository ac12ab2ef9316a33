package physics

import (
	"math"
	"testing"
)

// idealCorner is a caliper without friction, springs or clearance to speak of:
// what a textbook means by one.
func idealCorner(diameter, mu, radius float64) Corner {
	c := CornerSpec{PistonDiameter: diameter, K1: 60e6, K3: 2.5e15, Bridge: 120e6, SealRate: 1, PinRate: 1,
		PinOffset: 0.065, PadOffset: 0.028, TiltShare: 0.3, TiltRate: 50, EarRate: 1, EffectiveRadius: radius, Mu: mu}
	return NewCorner(&c, &WheelCondition{}, "ideal")
}

func TestOutsideIdealCaliper(t *testing.T) {
	// OC-18: 12.0 cm² and 7.5 N on 3.0 cm² make 30 N on each side.
	c := idealCorner(math.Sqrt(12e-4*4/math.Pi), 0.80, 0.12)
	_, f, err := c.Settle(CornerState{}, &CornerLoad{Pressure: 7.5 / 3.0e-4, Tight: true})
	if err != nil {
		t.Fatal(err)
	}
	src := "Giambattista, College Physics 4e, problem 9.11"
	outside{id: "OC-18 force", source: src, got: f.Inner(), want: 30, tol: 1e-6, wrong: 60}.check(t)
	outside{id: "OC-18 torque", source: src, got: c.Torque(&f), want: 5.76, tol: 1e-6, wrong: 2.88}.check(t)

	// OC-22 with the forces of OC-14.
	c = idealCorner(0.054, 0.38, 0.104)
	_, f, err = c.Settle(CornerState{}, &CornerLoad{Pressure: 8e6, Tight: true})
	if err != nil {
		t.Fatal(err)
	}
	outside{id: "OC-14 outer pad", source: "statics", got: f.Outer(), want: 8e6 * math.Pi / 4 * 0.054 * 0.054, tol: 1e-6, wrong: 36643.6}.check(t)
	outside{id: "OC-22", source: "statics: 2 μ N r_e", got: c.Torque(&f), want: 1448.2, tol: 1e-4, wrong: 724.1}.check(t)
	weak := idealCorner(0.054, 0.38*0.70, 0.104)
	outside{id: "OC-23", source: "statics", got: weak.Torque(&f) / c.Torque(&f), want: 0.70, tol: 1e-9, wrong: 0.70 * 0.70}.check(t)
}

// TestOutsideOiled: oil takes nine tenths or more of the friction of steel on steel.
// A wheel both of whose linings lose that brakes by a tenth; with one of them oiled
// it would by more than half. An order of magnitude: steel is no lining.
func TestOutsideOiled(t *testing.T) {
	const src = "CP2e ch. 5 (m42139) table: steel on steel 0.6 / 0.3 dry, 0.05 / 0.03 oiled"
	torque := func(inner, outer float64) float64 {
		spec := hatchback().Front
		c := NewCorner(&spec, &WheelCondition{MuLoss: [2][2]float64{{inner, inner}, {outer, outer}}}, "oiled")
		_, f, err := c.Settle(CornerState{}, &CornerLoad{Pressure: 4e6, Tight: true})
		if err != nil {
			t.Fatal(err)
		}
		return c.Torque(&f)
	}
	for _, r := range []struct{ dry, oiled float64 }{{0.6, 0.05}, {0.3, 0.03}} {
		loss := 1 - r.oiled/r.dry
		bracketed{"OC-66 torque left, share", src, torque(loss, loss) / torque(0, 0), 0.05, 0.2, torque(loss, 0) / torque(0, 0)}.check(t)
	}
}

func TestOutsideAnnularPad(t *testing.T) {
	pad := AnnularPad{Angle: 108 * math.Pi / 180, Inner: 3.875, Outer: 5.50}
	src := "annular-pad mathematics"
	worn, fresh := pad.WornRadius(), pad.NewRadius()
	force := 6500 / (0.37 * worn)
	bore := math.Pi / 4 * 1.5 * 1.5
	outside{id: "OC-19 r_e", source: src, got: worn, want: 4.6875, tol: 1e-3, wrong: fresh}.check(t)
	outside{id: "OC-19 F", source: src, got: force, want: 3748, tol: 1e-3, wrong: 6500 / (0.37 * fresh)}.check(t)
	outside{id: "OC-19 p_a", source: src, got: force / pad.WornForce(1), want: 315.8, tol: 1e-3, wrong: force / pad.NewForce(1)}.check(t)
	outside{id: "OC-19 force at", source: src, got: pad.PistonRadius(worn), want: 4.024, tol: 1e-3, wrong: worn}.check(t)
	outside{id: "OC-19 cylinder", source: src, got: force / bore, want: 2121, tol: 1e-3, wrong: 2100}.check(t)
	force = 6500 / (0.37 * fresh)
	outside{id: "OC-20 r_e", source: src, got: fresh, want: 4.734, tol: 1e-3, wrong: worn}.check(t)
	outside{id: "OC-20 F", source: src, got: force, want: 3711, tol: 1e-3, wrong: 3748}.check(t)
	outside{id: "OC-20 p", source: src, got: force / pad.NewForce(1), want: 258.4, tol: 1e-3, wrong: 315.8}.check(t)
	outside{id: "OC-20 force at", source: src, got: pad.PistonRadius(fresh), want: 4.064, tol: 1e-3, wrong: 4.024}.check(t)
	outside{id: "OC-20 cylinder", source: src, got: force / bore, want: 2100, tol: 1e-3, wrong: 2121}.check(t)

	pad = AnnularPad{Angle: math.Pi / 3, Inner: 2.5, Outer: 5}
	f := pad.WornForce(200)
	outside{id: "OC-21 F", source: src, got: f, want: 1309.0, tol: 1e-3, wrong: pad.NewForce(200)}.check(t)
	outside{id: "OC-21 one face", source: src, got: 0.2 * f * pad.WornRadius(), want: 981.7, tol: 1e-3, wrong: 1963.5}.check(t)
	if x := math.Abs(sinc(1) - math.Sin(1)); x > 1e-15 {
		t.Errorf("sinc(1) is off by %g", x)
	}
}
