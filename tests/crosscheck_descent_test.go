package tests

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/tests/published"
)

// TestDescentAgainstSciPy holds the four brakes at the foot of 1, 2 and 3 km of
// 8 % at 30 km/h, in the steps of a second that a descent takes, to SciPy: the
// wheels' shares by its root finders, the heat as a partial differential equation
// on 400 cells (crosscheck/descent.py). Every temperature within 0.5 % of the
// greatest rise of its kind. The pad, the piston and the fluid behind it follow
// each other half a step late, which is most of what the fluid differs.
func TestDescentAgainstSciPy(t *testing.T) {
	const source = "SciPy brentq, root and solve_ivp BDF, crosscheck/descent.py"
	heading, rows := published.Figures(t, "crosscheck/descent.csv")
	if len(rows) != 12 {
		t.Fatalf("%d rows, want 12", len(rows))
	}
	m, rest := restOf(t, physics.Condition{})
	worst := make([]float64, len(heading))
	for _, r := range rows {
		down, err := m.Descend(rest, 0.08, 1000*r[0], 30*physics.KmPerHour)
		if err != nil {
			t.Fatal(err)
		}
		h := &down.End.Heat[int(r[1])]
		got := []float64{h.Face(), h.Mean(), h.Hat, h.Pad[physics.Inner], h.Pad[physics.Outer], h.Piston, h.Fluid}
		for j, g := range got {
			most := 0.0
			for _, other := range rows {
				most = max(most, other[j+2]-20)
			}
			d := math.Abs(g-r[j+2]) / most
			worst[j+2] = max(worst[j+2], d)
			if !(d <= 0.005) {
				t.Errorf("%g km, wheel %v, %s: %.3f °C, want %.3f: off by %.2f %% of the greatest rise, want 0.5 %% (%s)",
					r[0], physics.Wheel(r[1]), heading[j+2], g, r[j+2], 100*d, source)
			}
		}
	}
	for j := 2; j < len(heading); j++ {
		t.Logf("%s: greatest difference %.3f %% of the greatest rise", heading[j], 100*worst[j])
	}
}
