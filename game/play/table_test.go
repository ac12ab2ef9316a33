package play

import (
	"fmt"
	"math"
	"reflect"
	"runtime"
	"slices"
	"sync/atomic"
	"testing"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring/evidence"
)

// jobProblem is the question a session of this job asks, its worlds counted.
func jobProblem(t testing.TB, job string, built *atomic.Int64) *evidence.Problem {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	return libraryProblem(t, lib, job, built)
}

func libraryProblem(t testing.TB, lib *scenarios.Library, job string, built *atomic.Int64) *evidence.Problem {
	t.Helper()
	j := lib.Job(job)
	if j == nil {
		t.Fatalf("no job %s", job)
	}
	p := newProblem(lib, j.Car, j.Driven)
	p.Told = newEars(j.Car, j.Driven, p).told(j.Claims)
	inner := p.Build
	p.Build = func(h int, b []float64) (*inspect.World, error) {
		built.Add(1)
		return inner(h, b)
	}
	return p
}

// grown is a library with at least n hypotheses: its own causes, and copies of them
// whose numbers are some per cent smaller, in the order of the library.
func grown(lib *scenarios.Library, n int) *scenarios.Library {
	big, have := *lib, 0
	count := func(c *scenarios.Cause) int { return len(c.Places) * len(c.Severities) }
	for _, c := range lib.Causes {
		have += count(c)
	}
	big.Causes = slices.Clone(lib.Causes)
	for copies := 1; have < n; copies++ {
		for _, c := range lib.Causes {
			if c.Healthy || have >= n {
				continue
			}
			other := *c
			other.ID = fmt.Sprint(c.ID, "_", copies)
			other.Severities = slices.Clone(c.Severities)
			for i := range other.Severities {
				s := &other.Severities[i]
				for _, list := range []*[]scenarios.Change{&s.Start, &s.End} {
					*list = slices.Clone(*list)
					for k := range *list {
						(*list)[k].Value *= 1 - 0.06*float64(copies)
					}
				}
			}
			big.Causes = append(big.Causes, &other)
			have += count(c)
		}
	}
	return &big
}

// BenchmarkTable fills the table of one job, all single causes and all checks,
// on every core: the wait for a debrief. Besides the library as it is, one of 330
// hypotheses.
func BenchmarkTable(b *testing.B) {
	lib, err := scenarios.Embedded()
	if err != nil {
		b.Fatal(err)
	}
	b.Run("library", func(b *testing.B) { benchmarkTable(b, lib) })
	b.Run("grown", func(b *testing.B) { benchmarkTable(b, grown(lib, 330)) })
}

func benchmarkTable(b *testing.B, lib *scenarios.Library) {
	for b.Loop() {
		var built atomic.Int64
		p := libraryProblem(b, lib, "warm_wheel", &built)
		t, err := evidence.NewTable(p)
		if err != nil {
			b.Fatal(err)
		}
		if err := t.Fill(b.Context(), runtime.GOMAXPROCS(0), nil); err != nil {
			b.Fatal(err)
		}
		if err := t.Failed(); err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(p.Hypotheses)), "hypotheses")
		b.ReportMetric(float64(len(p.Checks)), "checks")
		b.ReportMetric(float64(built.Load()), "worlds")
	}
}

// only keeps these hypotheses of a problem, by what stands in their ids.
func only(p *evidence.Problem, ids ...string) *evidence.Problem {
	few := *p
	few.Hypotheses = nil
	var old []int
	for i, h := range p.Hypotheses {
		if slices.Contains(ids, h.ID) {
			h.Prior = 1 / float64(len(ids))
			few.Hypotheses = append(few.Hypotheses, h)
			old = append(old, i)
		}
	}
	few.Build = func(h int, b []float64) (*inspect.World, error) { return p.Build(old[h], b) }
	few.Told = func(h int, centre *inspect.World) (float64, error) { return p.Told(old[h], centre) }
	few.Mirror = func(h, elder int, check inspect.Instance) (inspect.Instance, bool) {
		return p.Mirror(old[h], old[elder], check)
	}
	return &few
}

func filled(t *testing.T, p *evidence.Problem, workers int) *evidence.Table {
	t.Helper()
	table, err := evidence.NewTable(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := table.Fill(t.Context(), workers, nil); err != nil {
		t.Fatal(err)
	}
	if err := table.Failed(); err != nil {
		t.Fatal(err)
	}
	return table
}

// TestShortWay: what a table tells from few cars it tells as from all of them:
// mean, slopes and what the line leaves over agree within a third of a
// division, for words within what moves no probability by more than 0.05. The
// causes are those whose checks move most with use: a reservoir that runs
// empty, pins that let go only after years, a drag that grows; three of them with
// mirror images, which are told from them. The table is the same for any number
// of workers.
func TestShortWay(t *testing.T) {
	if testing.Short() {
		t.Skip("some hundred cars with every check")
	}
	var short, long atomic.Int64
	ids := []string{"joint_weeping@front_right#damp", "pins_seized@rear_right#stiff", "pin_seized@front_left.upper_pin#stiff", "pins_dry@front_left#heavy",
		"joint_weeping@front_left#damp", "pins_seized@rear_left#stiff", "pin_seized@front_right.lower_pin#stiff"}
	quick := filled(t, only(jobProblem(t, "warm_wheel", &short), ids...), 1)
	again := filled(t, only(jobProblem(t, "warm_wheel", &short), ids...), 3)
	all := only(jobProblem(t, "warm_wheel", &long), ids...)
	all.Thorough = true
	thorough := filled(t, all, 2)
	fewer := 0
	for h, id := range ids {
		for _, inst := range all.Checks {
			a, _ := quick.Fit(h, inst)
			b, _ := thorough.Fit(h, inst)
			if c, _ := again.Fit(h, inst); !reflect.DeepEqual(a, c) {
				t.Errorf("%s at %s: one worker has %v, three have %v", id, inst, a, c)
			}
			if !reflect.DeepEqual(a, b) {
				fewer++
			}
			c, _ := inspect.Find(inst.Check)
			tolerance := c.Meter.Division / 3
			if len(c.Meter.Words) > 0 {
				tolerance = c.Meter.Sigma / 8
			}
			differ := func(what string, x, y float64) {
				if !(math.Abs(x-y) <= tolerance) {
					t.Errorf("%s at %s: %s is %.4g of few cars, %.4g of all; want within %.3g", id, inst, what, x, y, tolerance)
				}
			}
			differ("mean", a.Mean, b.Mean)
			differ("error", math.Sqrt(a.Residual), math.Sqrt(b.Residual))
			for i := range a.Slope {
				differ("slope", a.Slope[i], b.Slope[i])
			}
		}
	}
	if fewer < 50 {
		t.Errorf("only %d fits came from fewer cars: the test shows nothing", fewer)
	}
}
