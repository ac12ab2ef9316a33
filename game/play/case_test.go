package play

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"evenwear/physics/inspect"
	"evenwear/scoring"
)

func laidOut(t *testing.T, job string) (*Desk, *Case) {
	t.Helper()
	lib, words := shelf(t)
	d := NewDesk(lib, words)
	c, err := d.Case(lib.Job(job))
	if err != nil {
		t.Fatal(err)
	}
	return d, c
}

// TestCaseShows: a case shows what a session of the same seed shows.
func TestCaseShows(t *testing.T) {
	d, c := laidOut(t, "warm_wheel")
	for _, seed := range []uint64{1, 7, 99} {
		s, err := d.Open("warm_wheel", seed)
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range []Act{{Do: Go, What: "seat"}, {Do: Check, What: "pedal_travel"}} {
			if err := s.Do(a); err != nil {
				t.Fatal(err)
			}
		}
		shown, err := c.Show(seed, inspect.Instance{Check: "pedal_travel"})
		if err != nil {
			t.Fatal(err)
		}
		if shown != s.reading.display {
			t.Errorf("seed %d: the case shows %d, the session %d", seed, shown, s.reading.display)
		}
	}
	if _, err := c.Show(1, inspect.Instance{Check: "no_such"}); err == nil {
		t.Error("a check that is not there shows something")
	}
}

// TestCures: what somebody does who believes a row.
func TestCures(t *testing.T) {
	_, c := laidOut(t, "warm_wheel")
	for id, want := range map[string][]string{
		"pins_dry@front_left#heavy":    {"clean_pins_silicone@front_left"},
		"honestly_worn@car#sound":      nil,
		"joint_weeping@rear_left#damp": {"renew_joint@rear_left"},
	} {
		row, severity, _ := strings.Cut(id, "#")
		got, err := c.Cure(t.Context(), row, severity)
		if err != nil || !slices.Equal(got.Remedies, want) || got.Release != scoring.ReleaseUse {
			t.Errorf("%s: %v, %v; want %v and given back for use", id, got, err, want)
		}
	}
	if _, err := c.Cure(t.Context(), "bad_luck@car", "heavy"); err == nil {
		t.Error("a cause that is not there has a cure")
	}
	if _, err := c.Cure(t.Context(), "pins_dry@front_left", "no_such"); err == nil {
		t.Error("a severity that is not there has a cure")
	}
}

// TestCaseDecides: the cure of the truth loses nothing, leaving it loses, and the
// case weighs as the session does.
func TestCaseDecides(t *testing.T) {
	if testing.Short() {
		t.Skip("drives a car on after every set of remedies")
	}
	d, c := laidOut(t, "warm_wheel")
	if err := c.Weigh(t.Context()); err != nil {
		t.Fatal(err)
	}
	cure, err := c.Cure(t.Context(), c.Truth()[0], c.s.job.Faults[0].Severity.ID)
	if err != nil {
		t.Fatal(err)
	}
	var cured, left, weighed scoring.Play
	if err := c.Decide(&cured, cure.Remedies, cure.Release, true); err != nil {
		t.Fatal(err)
	}
	if err := c.Decide(&left, nil, scoring.ReleaseUse, false); err != nil {
		t.Fatal(err)
	}
	t.Logf("cured loses %.1f, left %.1f, best %.1f (%s)", cured.Loss, left.Loss, cured.BestLoss, cured.BestChoice)
	if cured.Loss > cured.BestLoss+1 || left.Loss < cured.Loss+20 {
		t.Errorf("cured loses %.1f, left %.1f, best %.1f", cured.Loss, left.Loss, cured.BestLoss)
	}
	s, err := d.Open("warm_wheel", 1)
	if err != nil {
		t.Fatal(err)
	}
	s.release = scoring.ReleaseUse
	if err := s.weigh(t.Context(), &weighed, &outcome{}); err != nil {
		t.Fatal(err)
	}
	if weighed.Loss != left.Loss || weighed.BestLoss != left.BestLoss || weighed.BestChoice != left.BestChoice {
		t.Errorf("the session weighs %.2f of %.2f, the case %.2f of %.2f", weighed.Loss, weighed.BestLoss, left.Loss, left.BestLoss)
	}
}

// TestFresh: cars made up come by the catalogue's weights, share the table's question
// but for the complaint, and their owners tell what is so.
func TestFresh(t *testing.T) {
	d, c := laidOut(t, "warm_wheel")
	job := d.lib.Job("warm_wheel")
	luck := rand.New(rand.NewPCG(1, 1))
	const n = 120
	sound, prior := 0, 0.0
	for _, b := range c.Table().PriorRows() {
		if b.ID == "honestly_worn@car" {
			prior = b.P
		}
	}
	for range n {
		f, err := d.Fresh(job, "x", nil, luck)
		if err != nil {
			continue // no such car
		}
		if p, q := f.Table().Problem(), c.Table().Problem(); &p.Hypotheses[0] != &q.Hypotheses[0] || &p.Checks[0] != &q.Checks[0] {
			t.Fatal("a car told of alike asks another question")
		}
		if err := f.s.job.Verify(); err != nil || len(f.s.job.Claims) == 0 {
			t.Errorf("%s tells %v: %v", f.ID(), f.s.job.Claims, err)
		}
		if f.Truth()[0] == "honestly_worn@car" {
			sound++
		}
		if pads := f.s.job.Driven.PadsKm; math.Abs(pads/job.Driven.PadsKm-1) > 0.12 {
			t.Errorf("pads were told to be %.0f km old and are %.0f", job.Driven.PadsKm, pads)
		}
	}
	if dev := 4 * math.Sqrt(n*prior*(1-prior)); math.Abs(float64(sound)-n*prior) > dev {
		t.Errorf("%d of %d are sound, want %.0f ± %.0f", sound, n, n*prior, dev)
	}
	for range 20 {
		f, err := d.Fresh(job, "x", []string{"hub_loose", "fluid_old"}, luck)
		if err == nil && !strings.Contains(f.ID(), "hub_loose") && !strings.Contains(f.ID(), "fluid_old") {
			t.Errorf("%s has none of the causes asked for", f.ID())
		}
	}
	if _, err := d.Fresh(job, "x", []string{"wings"}, luck); err == nil || !strings.Contains(err.Error(), "wings") {
		t.Errorf("a cause that is not there: %v", err)
	}
	a, _ := d.Fresh(job, "x", nil, rand.New(rand.NewPCG(5, 5)))
	b, _ := d.Fresh(job, "x", nil, rand.New(rand.NewPCG(5, 5)))
	if a == nil || b == nil || a.ID() != b.ID() || a.s.job.Driven != b.s.job.Driven {
		t.Error("the same luck makes other cars")
	}
}
