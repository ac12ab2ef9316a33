package tests

import (
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"evenwear/physics"
	"evenwear/tests/published"
)

// BenchmarkAgainstSciPy times the same equations here and by SciPy's general-purpose
// solvers in one run: the first tenth of a second of a press, where clearances close
// and the booster cuts in, and one equilibrium of a caliper. SciPy's time is that of
// its fastest tolerance that errs no more than we do, or where none comes so near, of
// the one that errs least (crosscheck/speed.py). Needs python3 with SciPy, and a
// minute or two:
//
//	go test ./tests -run xxx -bench AgainstSciPy -benchtime 20x
//
// It fails below 50 times. Ours is timed by the clock, SciPy by its processor time:
// a busy machine makes the ratio smaller than it is.
func BenchmarkAgainstSciPy(b *testing.B) {
	const python, least = "/usr/bin/python3", 50
	if exec.Command(python, "-c", "import scipy").Run() != nil {
		b.Skip("no python3 with SciPy")
	}
	pressError, cornerError := pressed(b, kept(b)), equilibria(b)
	var press, corner float64 // [s]
	b.Run("press", func(b *testing.B) {
		rows := kept(b)
		for b.Loop() {
			pressed(b, rows)
		}
		press = b.Elapsed().Seconds() / float64(b.N)
	})
	b.Run("corner", func(b *testing.B) {
		_, rows := published.Figures(b, "crosscheck/corner.csv")
		for b.Loop() {
			settled(b, rows)
		}
		corner = b.Elapsed().Seconds() / float64(b.N*len(rows))
	})
	if press == 0 || corner == 0 {
		b.Skip("one of the two was not timed")
	}
	cmd := exec.Command(python, "speed.py", strconv.FormatFloat(pressError, 'g', 4, 64), strconv.FormatFloat(cornerError, 'g', 4, 64))
	cmd.Dir = "crosscheck"
	out, err := cmd.CombinedOutput()
	if err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	last := map[string][]string{}
	for line := range strings.Lines(string(out)) {
		cells := strings.Split(strings.TrimSpace(line), ",")
		last[cells[0]] = cells
	}
	for _, r := range []struct {
		what        string
		ours, error float64
	}{{"press", press, pressError}, {"corner", corner, cornerError}} {
		cells := last[r.what]
		if len(cells) != 5 {
			b.Fatalf("no line of %s in\n%s", r.what, out)
		}
		theirs, err := strconv.ParseFloat(cells[4], 64)
		if err != nil {
			b.Fatal(err)
		}
		b.Logf("%s: ours %.3g s at an error of %.2g; SciPy's %s at %s %.3g s at %s: %.0f times", r.what, r.ours, r.error, cells[1], cells[2], theirs, cells[3], theirs/r.ours)
		b.ReportMetric(theirs/r.ours, r.what+"-times")
		if theirs < least*r.ours {
			b.Errorf("%s: SciPy takes only %.1f times as long, want %d", r.what, theirs/r.ours, least)
		}
	}
}

// kept is hydraulics.csv's first car up to a tenth of a second.
func kept(b *testing.B) (rows [][]float64) {
	_, all := published.Figures(b, "crosscheck/hydraulics.csv")
	for _, r := range all {
		if r[0] == 0 && r[1] <= 0.1 {
			rows = append(rows, r)
		}
	}
	if len(rows) < 10 {
		b.Fatalf("only %d moments", len(rows))
	}
	return rows
}

// pressed steps through the press in steps of 1 ms and returns the error at the kept
// moments as speed.py defines it.
func pressed(b *testing.B, rows [][]float64) float64 {
	m, s := restOf(b, physics.Condition{})
	kinds := [][2]int{{2, 4}, {4, 6}, {6, 7}, {7, 11}, {11, 15}}
	var square, most [5]float64
	ms := 0
	for _, r := range rows {
		for ; ms < int(math.Round(1000*r[1])); ms++ {
			var err error
			if s, err = m.Step(s, physics.Input{Engine: true, Foot: 150 * float64(ms+1) / 200}, 1); err != nil {
				b.Fatal(err)
			}
		}
		got := []float64{0, 0, s.Master.Pressure[0], s.Master.Pressure[1], s.Master.Stroke[0], s.Master.Stroke[1], m.PedalTravel(&s)}
		got = append(got, s.Pressure[:]...)
		for w := range s.Corners {
			got = append(got, s.Corners[w].X)
		}
		for k, kind := range kinds {
			for j := kind[0]; j < kind[1]; j++ {
				d := got[j] - r[j]
				square[k] += d * d / float64(len(rows)*(kind[1]-kind[0]))
				most[k] = max(most[k], math.Abs(r[j]))
			}
		}
	}
	worst := 0.0
	for k := range kinds {
		worst = max(worst, math.Sqrt(square[k])/most[k])
	}
	return worst
}

// equilibria is the mean difference from corner.csv as speed.py defines it.
func equilibria(b *testing.B) float64 {
	_, rows := published.Figures(b, "crosscheck/corner.csv")
	var most [8]float64
	for _, r := range rows {
		for j := range most {
			most[j] = max(most[j], math.Abs(r[12+j]))
		}
	}
	force := max(most[0], most[1], most[2], most[3])
	sum := 0.0
	for i, got := range settled(b, rows) {
		for j, g := range got {
			unit := most[j]
			if j < 4 {
				unit = force
			}
			sum += math.Abs(g-rows[i][12+j]) / unit / float64(8*len(rows))
		}
	}
	return sum
}

// settled goes through corner.csv's paths of pressure.
func settled(b *testing.B, rows [][]float64) [][8]float64 {
	out := make([][8]float64, len(rows))
	var s physics.CornerState
	var c physics.Corner
	last := -1.0
	for i, r := range rows {
		if r[0] != last {
			s, last = physics.CornerState{}, r[0]
			spec, cond := csvCorner(r)
			c = physics.NewCorner(spec, cond, "front_left")
		}
		next, f, err := c.Settle(s, &physics.CornerLoad{Pressure: r[11]})
		if err != nil {
			b.Fatal(err)
		}
		s = next
		out[i] = [8]float64{f.Half[0][0], f.Half[0][1], f.Half[1][0], f.Half[1][1], s.X, s.Y, s.Tilt, s.Bridge}
	}
	return out
}
