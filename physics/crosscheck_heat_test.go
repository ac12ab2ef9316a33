package physics

import (
	"math"
	"testing"

	"evenwear/tests/published"
)

// heatPart is what a front brake goes through in one part of a run: power of
// each pad [W] and speed [m/s] at a time [s].
type heatPart struct {
	until        float64
	millis       float64
	power, speed func(t float64) float64
	pressed      bool
}

func constant(v float64) func(float64) float64 { return func(float64) float64 { return v } }

// heatRuns are those of ../tests/crosscheck/disc.py: a stop from 30 m/s and 600 s
// of cooling at 15 m/s; 300 s of dragging and 300 s standing.
var heatRuns = [][]heatPart{
	{
		{4, 1, func(t float64) float64 { return 40e3 * min(1, t/0.2) * (1 - t/4) }, func(t float64) float64 { return 30 * (1 - t/4) }, true},
		{9, 20, constant(0), constant(15), false}, // as a stop is let go
		{604, 500, constant(0), constant(15), false},
	},
	{{300, 1000, constant(3e3), constant(12), true}, {600, 1000, constant(0), constant(0), false}},
}

// TestHeatAgainstSciPy holds a front brake's temperatures, in the steps a stop
// and a descent take, to the same equations solved as a partial differential
// equation on 400 cells by the method of lines (SciPy BDF, crosscheck/disc.py):
// every temperature within 0.5 % of the greatest rise of its kind.
func TestHeatAgainstSciPy(t *testing.T) {
	const source = "SciPy solve_ivp BDF, 400 cells, tests/crosscheck/disc.py"
	heading, rows := published.Figures(t, "../tests/crosscheck/disc.csv")
	spec := hatchback()
	brake := newBrakeHeat(&spec.Front, &WheelCondition{})
	for run, parts := range heatRuns {
		var s HeatState
		s.CoolTo(roomAir)
		now, part := 0.0, 0
		most := make([]float64, len(heading))
		for _, r := range rows {
			for j := 2; j < len(r) && int(r[0]) == run; j++ {
				most[j] = max(most[j], r[j]-roomAir)
			}
		}
		worst, seen := make([]float64, len(heading)), 0
		for _, r := range rows {
			if int(r[0]) != run {
				continue
			}
			seen++
			for now < r[1]-1e-9 {
				p := &parts[part]
				dt := min(p.millis/1000, r[1]-now)
				mid := now + dt/2
				power := p.power(mid)
				load := heatLoad{power: [2]float64{power, power}, pressed: [2]bool{p.pressed, p.pressed},
					speed: p.speed(mid), turning: p.speed(mid) / spec.Body.TyreRadius, air: roomAir}
				brake.step(&s, &load, dt)
				if now += dt; now > p.until-1e-9 {
					part++
				}
			}
			got := []float64{s.Face(), s.Mean(), s.Hat, s.Pad[Inner], s.Pad[Outer], s.Piston, s.Fluid}
			for j, g := range got {
				d := math.Abs(g-r[j+2]) / most[j+2]
				worst[j+2] = max(worst[j+2], d)
				if !(d <= 0.005) {
					t.Errorf("run %d, %s at %g s: %.3f °C, want %.3f: off by %.2f %% of the greatest rise, want 0.5 %% (%s)",
						run, heading[j+2], r[1], g, r[j+2], 100*d, source)
				}
			}
		}
		if seen < 15 {
			t.Fatalf("run %d has only %d lines", run, seen)
		}
		for j := 2; j < len(heading); j++ {
			t.Logf("run %d, %s: greatest difference %.3f %% of a rise of %.1f K", run, heading[j], 100*worst[j], most[j])
		}
	}
}
