package tests

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/tests/published"
)

// TestCornerAgainstSciPy replays paths of pressure that SciPy's root finder
// solved from the same equations (crosscheck/corner.py): forces within 0.1 % or
// 0.2 N, places within 0.1 % or 0.05 µm.
func TestCornerAgainstSciPy(t *testing.T) {
	const source = "SciPy scipy.optimize.root, crosscheck/corner.py"
	_, rows := published.Figures(t, "crosscheck/corner.csv")
	if len(rows) < 200 {
		t.Fatalf("only %d rows", len(rows))
	}
	var s physics.CornerState
	var worst float64
	last := -1.0
	for i, r := range rows {
		if r[0] != last {
			s, last = physics.CornerState{}, r[0]
		}
		spec, cond := csvCorner(r)
		c := physics.NewCorner(spec, cond, "front_left")
		next, f, err := c.Settle(s, &physics.CornerLoad{Pressure: r[11]})
		if err != nil {
			t.Fatalf("row %d: %v", i+2, err)
		}
		s = next
		got := []float64{f.Half[0][0], f.Half[0][1], f.Half[1][0], f.Half[1][1], s.X, s.Y, s.Tilt, s.Bridge}
		for j, name := range []string{"inner upper N", "inner lower N", "outer upper N", "outer lower N", "piston m", "body m", "tilt rad", "bridge m"} {
			want, floor := r[12+j], 0.2
			if j >= 4 {
				floor = 5e-8
			}
			if j == 6 {
				floor = 1e-6
			}
			d := math.Abs(got[j] - want)
			worst = max(worst, d/max(math.Abs(want), floor/1e-3))
			if d > max(floor, 1e-3*math.Abs(want)) {
				t.Errorf("row %d, case %g at %g MPa: %s = %.6g, want %.6g (%s)", i+2, r[0], r[11]/1e6, name, got[j], want, source)
			}
		}
	}
	t.Logf("%d rows, greatest difference %.2g of the value", len(rows), worst)
}

// csvCorner is the caliper of a line of corner.csv.
func csvCorner(r []float64) (*physics.CornerSpec, *physics.WheelCondition) {
	spec := &physics.CornerSpec{
		PistonDiameter: 0.054, K1: 60e6, K3: 2.5e15, Bridge: 120e6, SealRate: r[4], SealFriction: r[3], SealGrip: 55e-6,
		PinRate: 8e6, PinOffset: 0.065, PadOffset: 0.028, TiltShare: 0.30, Boot: 300, TiltRate: 50,
		Gap: [2]float64{0.12e-3, 0.12e-3}, EarRate: 20e6,
	}
	cond := &physics.WheelCondition{PinFriction: [2]float64{r[1], r[2]}, EarFriction: [2]float64{r[5], r[6]},
		Wear: [2][2]float64{{r[7], r[8]}, {r[9], r[10]}}}
	return spec, cond
}
