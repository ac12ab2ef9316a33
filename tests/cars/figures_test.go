package cars

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/tests/published"
)

// corners are a car's two designs of brake with their names and one wheel of each.
func corners(spec *physics.Spec) []corner {
	return []corner{{"front", physics.FrontLeft, &spec.Front}, {"rear", physics.RearLeft, &spec.Rear}}
}

// memory is the source of every bound that nobody looked up.
const memory = "from memory: unverified bound"

type corner struct {
	name  string
	wheel physics.Wheel
	*physics.CornerSpec
}

// letter is the friction code's letter of a coefficient: each band is open below
// and closed above (SAE J866).
func letter(mu float64) string {
	for i, top := range []float64{0.15, 0.25, 0.35, 0.45, 0.55} {
		if mu <= top {
			return string(rune('C' + i))
		}
	}
	return "H"
}

// TestOutsideLinings: OC-24, every lining's letter, cold and at 340 °C (that the
// hot test ends near there is from memory); the ends of the bands are exact.
func TestOutsideLinings(t *testing.T) {
	const source = "SAE J866:2019 (test SAE J661)"
	for mu, want := range map[float64]string{0.15: "C", 0.1501: "D", 0.25: "D", 0.2501: "E", 0.35: "E", 0.3501: "F", 0.45: "F", 0.4501: "G", 0.55: "G", 0.5501: "H"} {
		if got := letter(mu); got != want {
			t.Errorf("OC-24: %g has letter %s, want %s (%s)", mu, got, want, source)
		}
	}
	every(t, func(t *testing.T, spec *physics.Spec) {
		for _, c := range corners(spec) {
			hot := c.Mu * c.Fade(340)
			if code := letter(c.Mu) + letter(hot); code != "FF" {
				t.Errorf("OC-24: %s lining of %.3g cold and %.3g hot has code %s, want FF as its car's file says (%s)", c.name, c.Mu, hot, code, source)
			}
			published.Bracket{ID: of(t, "OC-24 "+c.name+" lining, letter F"), Source: source, Got: c.Mu, Lo: 0.35 + 1e-12, Hi: 0.45, Wrong: 0.35}.Check(t)
		}
	})
}

// TestOutsideIron: OC-41 and OC-42 for every disc.
func TestOutsideIron(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		for _, c := range corners(spec) {
			carries := func(k float64) float64 { return k / (c.DiscDensity * c.DiscHeat) * 1e4 }
			published.Bracket{ID: of(t, "OC-41 "+c.name+", cm²/s"), Source: "Hecht, Dinwiddie & Wang, J. Mater. Sci. 34 (1999) 4775", Got: carries(c.DiscConduction), Lo: 0.156, Hi: 0.200, Wrong: carries(80)}.Check(t)
			published.Row{ID: of(t, "OC-42 "+c.name+", J/kgK"), Source: "CP2e ch. 14 (m42224) table, iron 452", Got: c.DiscHeat, Want: 452, Tol: 0.15, Wrong: 900}.Check(t)
			published.Row{ID: of(t, "OC-M12 "+c.name+", W/mK"), Source: memory, Got: c.DiscConduction, Want: 50, Tol: 0.1, Wrong: 80}.Check(t)
		}
	})
}

// TestOutsideFluids: every car's fluid is of a grade of 49 CFR 571.116: DOT 5.1
// where it boils above 260 °C, DOT 4 above 230, and thin enough in the cold.
func TestOutsideFluids(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		const boil, visc = "49 CFR 571.116 S5.1.1, S5.1.2", "49 CFR 571.116 S5.1.3"
		f := &spec.Fluid
		dry, wet, inf := 230.0, 155.0, math.Inf(1)
		if f.DryBoil >= 260 {
			dry, wet = 260, 180
			published.Bracket{ID: of(t, "OC-M8 DOT 5.1 at −40 °C, mm²/s"), Source: memory, Got: 1e6 * f.ViscosityAt(-40), Lo: 10, Hi: 900, Wrong: 1e6 * f.ViscosityAt(-45)}.Check(t)
		}
		published.Bracket{ID: of(t, "OC-70 dry, °C"), Source: boil, Got: f.BoilingPoint(0, 0), Lo: dry, Hi: inf, Wrong: f.BoilingPoint(0.01, 0)}.Check(t)
		published.Bracket{ID: of(t, "OC-70 wet, °C"), Source: boil, Got: f.BoilingPoint(0.037, 0), Lo: wet, Hi: inf, Wrong: f.BoilingPoint(0.06, 0)}.Check(t)
		published.Bracket{ID: of(t, "OC-72 at −40 °C, mm²/s"), Source: visc, Got: 1e6 * f.ViscosityAt(-40), Lo: 10, Hi: 1800, Wrong: 1e7 * f.ViscosityAt(-40)}.Check(t)
		published.Bracket{ID: of(t, "OC-72 at 100 °C, mm²/s"), Source: visc, Got: 1e6 * f.ViscosityAt(100), Lo: 1.5, Hi: 5, Wrong: 1e5 * f.ViscosityAt(100)}.Check(t)
		published.Bracket{ID: of(t, "OC-09 bulk modulus, GPa"), Source: "OpenStax College Physics 2e ch. 5 (m42081)", Got: f.BulkModulus / 1e9, Lo: 0.7, Hi: 4.5, Wrong: 1.6e-4}.Check(t)
		published.Bracket{ID: of(t, "OC-M10 density, kg/m³"), Source: memory, Got: f.Density, Lo: 1050, Hi: 1100, Wrong: 1000}.Check(t)
		published.Bracket{ID: of(t, "OC-M10 bulk modulus, GPa"), Source: memory, Got: f.BulkModulus / 1e9, Lo: 1.5, Hi: 2.2, Wrong: 1}.Check(t)
		published.Bracket{ID: of(t, "OC-M10 expansion, 1e-3/K"), Source: memory, Got: f.Expansion * 1e3, Lo: 0.7, Hi: 0.9, Wrong: 0.21}.Check(t)
		published.Bracket{ID: of(t, "OC-M10 heat, J/kgK"), Source: memory, Got: f.Heat, Lo: 2000, Hi: 2400, Wrong: 4186}.Check(t)
	})
}

// hoseClass is the line of 49 CFR 571.106 Table I that a bore [m] falls in: the
// middle one takes every bore strictly between 3 and 6 mm (NHTSA interpretation
// 04-009678drn-2).
func hoseClass(bore float64) int {
	switch {
	case bore <= 3*mm:
		return 0
	case bore < 6*mm:
		return 1
	}
	return 2
}

// TestOutsideHoses: OC-17. A car's file has no bore, but its lines have one that can be
// measured: what flows out of an open bleed screw under a steady foot, and the pressure
// lost on the way to it, give 128·μ·L·q/(π·Δp) = d⁴ (Hagen–Poiseuille). With 2 m of pipe
// and hose to a front wheel and 4 m to a rear one (assumed) it is of the middle class.
// OC-16 holds its hoses to the limit of the smallest class, which is the strictest.
func TestOutsideHoses(t *testing.T) {
	for bore, want := range map[float64]int{2 * mm: 0, 3 * mm: 0, 3.0001 * mm: 1, 4.8 * mm: 1, 5.9999 * mm: 1, 6 * mm: 2, 8 * mm: 2} {
		if got := hoseClass(bore); got != want {
			t.Errorf("OC-17: a bore of %.4f mm is of class %d, want %d", bore/mm, got, want)
		}
	}
	every(t, func(t *testing.T, spec *physics.Spec) {
		for i, c := range corners(spec) {
			bore := func(tight float64) float64 {
				narrow := *spec
				narrow.Front.LineResistance *= tight
				narrow.Rear.LineResistance *= tight
				m, s := model(t, &narrow, physics.Condition{})
				in := physics.Input{Foot: 40, Engine: true}
				in.Bleed[c.wheel] = 0.2e-6
				s = run(t, m, s, in, 0.3, 1)
				end := run(t, m, s, in, 0.05, 1)
				flow := (end.Lost - s.Lost) / 0.05
				lost := end.Master.Pressure[spec.Circuit[c.wheel]] - end.Pressure[c.wheel]
				mu := spec.Fluid.ViscosityAt(20) * spec.Fluid.Density
				return math.Sqrt(math.Sqrt(128 * mu * 2 * float64(1+i) * flow / (math.Pi * lost)))
			}
			got := bore(1)
			published.Bracket{ID: of(t, "OC-17 "+c.name+" line's bore, mm"), Source: "49 CFR 571.106 Table I, NHTSA interpretation 04-009678drn-2", Got: got / mm, Lo: 3 + 1e-9, Hi: 6 - 1e-9, Wrong: bore(10) / mm}.Check(t)
			if hoseClass(got) != 1 {
				t.Errorf("OC-17: a bore of %.2f mm is of class %d", got/mm, hoseClass(got))
			}
			for j, p := range []float64{6.89e6, 10.34e6, 19.99e6} {
				published.Bracket{ID: of(t, "OC-16 "+c.name+" hose, cm³/m"), Source: "49 CFR 571.106 Table I", Got: c.HoseSwell * p / 0.4 / cm3, Lo: 0.1, Hi: []float64{1.08, 1.38, 2.00}[j], Wrong: (c.HoseSwell + 0.06e-12) * p / 0.4 / cm3}.Check(t)
			}
		}
	})
}

// TestOutsideReservoirSize: OC-76. New linings with the pistons home to linings
// of 2 mm, pressed: what stands in the reservoir then still covers both ports.
func TestOutsideReservoirSize(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		var worn physics.Condition
		for w := range physics.Wheel(physics.NumWheels) {
			loss := spec.Corner(w).LiningNew - 2*mm
			worn.Wheels[w].Wear = [2][2]float64{{loss, loss}, {loss, loss}}
		}
		m, s := model(t, spec, worn)
		left, sum := s.Standing, 0.0 // sum: from the bottom of every bore to applied
		for w := range physics.Wheel(physics.NumWheels) {
			c := m.Corner(w)
			applied, _, err := c.Settle(s.Corners[w], &physics.CornerLoad{Pressure: 8 * physics.Megapascal})
			if err != nil {
				t.Fatal(err)
			}
			left -= c.Area() * (applied.X - s.Corners[w].X)
			sum += c.Area() * (applied.X + spec.Corner(w).Home)
		}
		r := &spec.Reservoir
		const rule = "FMVSS 105 S5.4.2, interpretation aiam3741"
		published.Bracket{ID: of(t, "OC-76 left when worn out, cm³"), Source: rule, Got: left / cm3, Lo: max(r.Port[0], r.Port[1]) / cm3, Hi: math.Inf(1), Wrong: (left - r.MinToMax) / cm3}.Check(t)
		usable := r.AtMin + r.MinToMax - max(r.Port[0], r.Port[1])
		published.Bracket{ID: of(t, "OC-76 usable over needed"), Source: rule, Got: usable / sum, Lo: 1, Hi: math.Inf(1), Wrong: (usable - r.MinToMax) / sum}.Check(t)
	})
}

// TestOutsideLife: what mixed driving takes from a new car's linings and discs.
func TestOutsideLife(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		cond, err := physics.Drive(spec, physics.Condition{}, physics.MixedDuty(), 10000)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range corners(spec) {
			w := &cond.Wheels[c.wheel]
			per := (w.Wear[0][0] + w.Wear[0][1]) / 2 / 10 // [m/1000 km]
			life := (c.LiningNew - 2*mm) / per * 1000
			t.Logf("%s: lining %.3f mm per 1000 km, down to 2 mm after %.0f km; disc %.4f mm", c.name, per/mm, life, (w.DiscWear[0]+w.DiscWear[1])/10/mm)
			// The brakes of a wheel share the work, so a rear pad may last twice as long.
			most := 60000.0
			if c.name == "rear" {
				most *= 2
			}
			published.Bracket{ID: of(t, "OC-110 "+c.name+" pad down to 2 mm, km"), Source: "Materials 15 (2022) 1991", Got: life, Lo: 15000, Hi: most, Wrong: life / 10}.Check(t)
			if c.name == "front" && math.Abs(per/mm-0.18) > 0.02 {
				t.Errorf("front lining wears %.3f mm per 1000 km, want about 0.18 (plausible, no source)", per/mm)
			}
			published.Bracket{ID: of(t, "OC-M17 "+c.name+", 1e-14 m²/N"), Source: memory, Got: c.WearRate * 1e14, Lo: 0.8, Hi: 10, Wrong: 0.1}.Check(t)
			if c.name == "front" {
				published.Row{ID: of(t, "OC-M18 disc's allowance, mm"), Source: memory, Got: (c.DiscThickness - c.DiscMinimum) / mm, Want: 2.5, Tol: 0.5 + 1e-9, Absolute: true, Wrong: 1}.Check(t)
			}
		}
	})
}

// TestOutsideBalance: up to three quarters of the weight no car's rear wheels lock
// before its front ones: of the braking force the fronts give more than their share
// of the load.
func TestOutsideBalance(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		for _, z := range []float64{0.3, 0.6, 0.75} {
			m, s := model(t, spec, physics.Condition{})
			foot, err := m.PedalFor(s, z*physics.Gravity, 10, 500)
			if err != nil {
				t.Fatal(err)
			}
			s = press(t, m, s, physics.Input{Foot: foot, Engine: true}, 2)
			front := m.WheelTorque(&s, physics.FrontLeft) + m.WheelTorque(&s, physics.FrontRight)
			rear := m.WheelTorque(&s, physics.RearLeft) + m.WheelTorque(&s, physics.RearRight)
			share, load := front/(front+rear), spec.Body.FrontLoad(z)
			published.Bracket{ID: of(t, "OC-63 fronts' force over their load"), Source: "statics", Got: share / load, Lo: 1, Hi: 1 / load, Wrong: 1 / load * 1.01}.Check(t)
		}
		// Coolant's vessel.
		published.Bracket{ID: of(t, "OC-86 coolant's vessel, /K"), Source: "CP2e ch. 13 (m42215) table", Got: spec.Vessels.Coolant.Metal, Lo: 35e-6, Hi: 75e-6, Wrong: 950e-6}.Check(t)
	})
}
