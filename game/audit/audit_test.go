package audit

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"testing"

	"evenwear/assets"
	"evenwear/game/play/playtest"
	"evenwear/scenarios"
	"evenwear/scoring/learner"
)

// fewCauses is the library with these causes only, and the jobs that have none other.
func fewCauses(t testing.TB, jobs []string, causes ...string) (*scenarios.Library, *assets.Words) {
	t.Helper()
	desk, words := playtest.Desk(t)
	lib := desk.Library()
	few := *lib
	few.Causes = slices.DeleteFunc(slices.Clone(lib.Causes), func(c *scenarios.Cause) bool { return !slices.Contains(causes, c.ID) })
	// Of so few causes nothing wrong would be nearly sure before any look: it is as
	// likely as the likeliest fault.
	most := 0.0
	for _, c := range few.Causes {
		if !c.Healthy {
			most = max(most, c.Prior)
		}
	}
	for i, c := range few.Causes {
		if c.Healthy {
			as := *c
			as.Prior = most
			few.Causes[i] = &as
		}
	}
	few.Jobs = slices.DeleteFunc(slices.Clone(lib.Jobs), func(j *scenarios.Job) bool { return !slices.Contains(jobs, j.ID) })
	few.Pairs, few.PairShare = nil, 0
	if a, b := few.Cause("pins_dry"), few.Cause("fluid_low_wear"); a != nil && b != nil {
		few.Pairs, few.PairShare = []scenarios.Pair{{Causes: [2]*scenarios.Cause{a, b}, Weight: 1}}, lib.PairShare
	}
	return &few, words
}

// sampleBank is a job that can be solved and the same with no time for it. Of two of
// its causes an owner tells the same.
func sampleBank(t *testing.T) (*scenarios.Library, *assets.Words) {
	lib, words := fewCauses(t, []string{"warm_wheel"}, "honestly_worn", "pins_dry", "piston_corroded", "joint_weeping", "fluid_low_wear")
	hurried := *lib.Jobs[0]
	hurried.ID, hurried.Minutes = "in_a_hurry", 0.1
	lib.Jobs = []*scenarios.Job{&hurried, lib.Jobs[0]}
	return lib, words
}

// TestSample plays a small seeded audit on the real physics: the job that can be
// solved passes, the one that leaves no time for it fails; what was kept is not
// worked out again; and with CI=true the table is the same for any number of
// workers.
func TestSample(t *testing.T) {
	if testing.Short() {
		t.Skip("fills an evidence table")
	}
	opt := Options{Seed: 1, Shown: []string{"pins_dry", "fluid_low_wear"}, Workers: 1, Learners: 14, Crude: 2, Holders: 1, Unseen: 2, Fresh: 6, Draws: 4, Sessions: 3, Small: 4}
	ci := os.Getenv("CI") != ""
	if ci {
		opt.Workers, opt.Learners, opt.Unseen, opt.Fresh = runtime.GOMAXPROCS(0), 60, 8, 20
	}
	lib, words := sampleBank(t)
	file := filepath.Join(t.TempDir(), "kept")
	begin := func(opt Options, kept string) *Audit {
		t.Helper()
		a, err := New(lib, words, nil, opt)
		if err != nil {
			t.Fatal(err)
		}
		if kept != "" {
			if told, err := a.Resume(kept); err != nil || told != "" {
				t.Fatalf("told %q, %v", told, err)
			}
		}
		return a
	}
	run := func(a *Audit, progress func(Progress)) *Report {
		t.Helper()
		r, err := a.Run(t.Context(), progress)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	steps := 0
	r := run(begin(opt, file), func(Progress) { steps++ })
	t.Logf("\n%s", r)
	if r.Failing() != 1 || r.Jobs[0].Verdict != Missed || r.Jobs[1].Verdict != Reached {
		t.Errorf("%d jobs fail, want the hurried one", r.Failing())
	}
	reached := []string{"honesty", "does_nothing", "always_refers", "clicks_everything", "pairs of causes told apart"}
	if ci { // with more learners
		reached = append(reached, "misconceptions named wrongly")
	}
	for _, l := range r.Lines {
		if slices.Contains(reached, l.What) && l.Verdict != Reached {
			t.Errorf("%s: %s, %s", l.What, l.Measured, l.Aim)
		}
	}
	if steps == 0 {
		t.Error("no progress was told")
	}
	again := run(begin(opt, file), func(p Progress) { t.Errorf("%s of %s was worked out again", p.Step, p.Job) })
	if again.String() != r.String() {
		t.Errorf("what was kept gives another table:\n%s", again)
	}
	if ci {
		opt.Workers = 3
		if other := run(begin(opt, ""), nil); other.String() != r.String() {
			t.Errorf("with 3 workers the table is another:\n%s", other)
		}
	}
}

// TestStopped: an audit that is stopped ends with that, and has kept nothing half done.
func TestStopped(t *testing.T) {
	lib, words := sampleBank(t)
	a, err := New(lib, words, nil, Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "kept")
	if _, err := a.Resume(file); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	if _, err := a.Run(ctx, func(Progress) { stop() }); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want that it was stopped", err)
	}
	if b, err := os.ReadFile(file); err != nil || bytes.Count(b, []byte("\n")) != 1 {
		t.Errorf("kept %d lines, want the heading: %v", bytes.Count(b, []byte("\n")), err)
	}
}

// TestCrowd: everybody has a place, the same for the same seed.
func TestCrowd(t *testing.T) {
	o := Options{Seed: 3}.full()
	a, b := o.crowd(), o.crowd()
	if !reflect.DeepEqual(a, b) {
		t.Error("the same seed gives another crowd")
	}
	if want := 200 + 6*200 + 9 + 14*len(learner.Misconceptions); len(a.all) != want {
		t.Errorf("%d learners, want %d", len(a.all), want)
	}
	o.Seed = 4
	if reflect.DeepEqual(a.all[:5], o.crowd().all[:5]) {
		t.Error("another seed gives the same crowd")
	}
}
