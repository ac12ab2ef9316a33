package tests

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/tests/published"
)

// TestStopAgainstSciPy holds whole stops from 100 km/h in the program's steps of
// 1 ms to SciPy's Radau solution of pedal, lines, calipers on turning discs, tyres
// and road as one stiff equation (crosscheck/stop.py): way and time within 0.5 %,
// and the same wheels lock.
func TestStopAgainstSciPy(t *testing.T) {
	const source = "SciPy solve_ivp Radau, crosscheck/stop.py"
	_, rows := published.Figures(t, "crosscheck/stop.csv")
	m, rest := restOf(t, physics.Condition{})
	for _, r := range rows {
		plan := physics.StopPlan{Speed: 100 * physics.KmPerHour, Foot: r[0], Surface: [physics.NumWheels]float64{r[1], r[1], r[1], r[1]}}
		got, err := m.Stop(rest, plan)
		if err != nil {
			t.Fatal(err)
		}
		locked := 0
		for w, l := range got.Locked {
			if l {
				locked |= 1 << w
			}
		}
		if locked != int(r[4]) {
			t.Errorf("%g N, %g missing: wheels %04b lock, want %04b (%s)", r[0], r[1], locked, int(r[4]), source)
		}
		for i, q := range []struct {
			name string
			got  float64
		}{{"way, m", got.Distance}, {"time, s", got.Time}} {
			want := r[2+i]
			d := q.got/want - 1
			t.Logf("%g N, %g missing: %s %.4f, SciPy %.4f, %+.3f %%", r[0], r[1], q.name, q.got, want, 100*d)
			if !(math.Abs(d) <= 0.005) {
				t.Errorf("%g N, %g missing: %s %.4f, want %.4f ± 0.5 %% (%s)", r[0], r[1], q.name, q.got, want, source)
			}
		}
		// It bites: one per cent of the foot is seen where no wheel locks.
		if locked == 0 {
			plan.Foot *= 1.01
			if more, err := m.Stop(rest, plan); err != nil || got.Distance/more.Distance < 1.005 {
				t.Errorf("%g N: one per cent more foot would pass: %.4f m (%v)", r[0], more.Distance, err)
			}
		}
	}
}
