package scenarios

import (
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
)

var draws = flag.Uint64("draws", 60, "how many cars are drawn; ten thousand take ten minutes")

// TestDraw: cars nobody wrote down can be built and driven, tell only what is
// so, name no cause, and come out the same when they are drawn again. What was
// thrown away, and why, is printed.
func TestDraw(t *testing.T) {
	if testing.Short() {
		t.Skip("every car is driven")
	}
	lib := library(t)
	thrown, causes, told := map[string]int{}, map[string]int{}, map[string]int{}
	stories := map[string]bool{}
	for seed := range *draws {
		ease := Eases[seed%3]
		j, why := lib.DrawTelling(seed, Wish{Ease: ease})
		for _, w := range why {
			thrown[w]++
		}
		if j == nil {
			t.Errorf("seed %d: no car: %v", seed, why)
			continue
		}
		truth := "nothing"
		for i, f := range j.Faults {
			if i == 0 {
				truth = f.Cause.ID
				continue
			}
			truth += " and " + f.Cause.ID
		}
		causes[truth]++
		for _, c := range j.Claims {
			told[c.ID]++
		}
		stories[j.Complaint] = true
		checkDrawn(t, lib, j)
		if seed%20 == 0 {
			again, _ := lib.DrawTelling(seed, Wish{Ease: ease})
			if a, b := said(j), said(again); a != b {
				t.Errorf("seed %d drawn again differs:\n%s\n%s", seed, a, b)
			}
		}
	}
	for _, m := range []map[string]int{causes, told, thrown} {
		for _, k := range slices.Sorted(maps.Keys(m)) {
			t.Logf("%5d of %d: %s", m[k], *draws, k)
		}
	}
	if int(*draws)-len(stories) > int(*draws)/5 {
		t.Errorf("only %d different stories in %d cars", len(stories), *draws)
	}
}

// said is all of a job that a session hangs on.
func said(j *Job) string {
	s := fmt.Sprintln(j.ID, j.Car.ID, j.Title, j.Complaint, j.Driven, j.Facts)
	for _, f := range j.Faults {
		s += fmt.Sprintln(f.Cause.ID, f.Place, f.Severity.ID, f.SinceKm)
	}
	return s
}

func checkDrawn(t *testing.T, lib *Library, j *Job) {
	t.Helper()
	if err := j.verify(); err != nil { // computes every claim afresh
		t.Errorf("%s: %v", j.ID, err)
	}
	if bad := undeclared(j.Complaint, j.Claims); len(bad) > 0 {
		t.Errorf("%s: %q speaks of %v, claims %v", j.ID, j.Complaint, bad, j.Claims)
	}
	if strings.ContainsAny(j.Complaint, "{}") {
		t.Errorf("%s: a blank is left in %q", j.ID, j.Complaint)
	}
	for _, c := range lib.Causes {
		if strings.Contains(strings.ToLower(j.Title+" "+j.Complaint), strings.ToLower(c.Name)) {
			t.Errorf("%s: the story names %q", j.ID, c.Name)
		}
	}
	p := Problems{}
	r := &reader{file: j.ID, probs: &p}
	if unlikely(r, &yaml.Node{}, j); len(p) > 0 {
		t.Errorf("%s: %v", j.ID, p)
	}
	for _, f := range j.Facts {
		if !strings.HasSuffix(f.Text, ".") || f.ID != "harshness_ratio" && !strings.Contains(f.Text, j.Driven.figure(f.ID)) {
			t.Errorf("%s: fact %+v", j.ID, f)
		}
	}
}

// TestDrawFollowsTheCatalogue: fair cars come as the catalogue weighs them.
func TestDrawFollowsTheCatalogue(t *testing.T) {
	lib := library(t)
	total, n := 0.0, 40000
	count := map[string]int{}
	for _, c := range lib.Causes {
		total += c.Prior
	}
	for seed := range n {
		rng := rand.New(rand.NewPCG(uint64(seed), 7))
		count[lib.drawCause(&Wish{}, rng).ID]++
	}
	for _, c := range lib.Causes {
		p := c.Prior / total
		got, want := float64(count[c.ID]), p*float64(n)
		if sd := max(1, want*(1-p)); (got-want)*(got-want) > 25*sd {
			t.Errorf("%s: drawn %.0f of %d, want %.0f", c.ID, got, n, want)
		}
	}
}

func TestDrawOnlyWished(t *testing.T) {
	lib := library(t)
	wish := Wish{Ease: Gentle, Car: lib.Cars[0].ID, Causes: []string{"pins_seized", "pins_dry"}}
	for seed := range uint64(6) {
		j, err := lib.Draw(seed, wish)
		if err != nil {
			t.Fatal(err)
		}
		if len(j.Faults) != 1 || !slices.Contains(wish.Causes, j.Faults[0].Cause.ID) {
			t.Errorf("seed %d: %v, want one of %v", seed, j.Faults, wish.Causes)
		}
		if s := j.Faults[0].Cause.Severities; j.Faults[0].Severity.ID != s[len(s)-1].ID {
			t.Errorf("seed %d: severity %s in a gentle car", seed, j.Faults[0].Severity.ID)
		}
	}
}

func TestBadWishes(t *testing.T) {
	lib := library(t)
	for _, row := range []struct {
		wish Wish
		want string
	}{
		{Wish{Ease: "hrad"}, `unknown ease "hrad"; known are gentle, fair, hard`},
		{Wish{Car: "compact_hatch"}, `unknown car "compact_hatch"; `},
		{Wish{Causes: []string{"pins_dri"}}, `unknown cause "pins_dri"; the nearest known are pins_dry`},
	} {
		_, err := lib.Draw(1, row.wish)
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%+v: %v, want %q", row.wish, err, row.want)
		}
	}
	if _, err := (&Library{}).Draw(1, Wish{}); err == nil {
		t.Error("an empty library drew a car")
	}
}

func TestDrawnID(t *testing.T) {
	for _, id := range []string{"unseen_fair_0", "unseen_hard_48213", "unseen_gentle_18446744073709551615"} {
		seed, ease, ok := ParseDrawn(id)
		if !ok || DrawnID(seed, ease) != id {
			t.Errorf("%s: %d %s %v", id, seed, ease, ok)
		}
	}
	for _, id := range []string{"", "warm_wheel", "unseen", "unseen_fair", "unseen_fair_", "unseen_fair_-1", "unseen_fair_01", "unseen_easy_4", "unseen_fair_18446744073709551616", "unseen_fair_4_5"} {
		if _, _, ok := ParseDrawn(id); ok {
			t.Errorf("%q was taken for a drawn job", id)
		}
	}
}

// TestMinutesTellNothing: two cars of whose owners the same is told are allowed the
// same minutes, one fault, two or none.
func TestMinutesTellNothing(t *testing.T) {
	lib := library(t)
	seen := [2]int{}
	for seed := range uint64(30) {
		j, err := lib.Draw(seed, Wish{})
		if err != nil {
			continue
		}
		none := j.Claims[0].ID == "none"
		if j.Minutes != DrawnMinutes || j.Driven.Stood != none {
			t.Errorf("seed %d: %g min, stood %t, of a car with %d faults whose owner tells %v", seed, j.Minutes, j.Driven.Stood, len(j.Faults), j.Claims)
		}
		seen[map[bool]int{true: 1}[none]]++
	}
	if seen[0] < 5 || seen[1] < 5 {
		t.Errorf("%d owners noticed something and %d nothing: too few to prove it", seen[0], seen[1])
	}
}

// TestSketch: what is told of a car before it is built is so unless the car is
// thrown away; a wish that cannot be has no sketch.
func TestSketch(t *testing.T) {
	lib := library(t)
	agree := 0
	for seed := range uint64(24) {
		w := Wish{Ease: Eases[seed%3]}
		j, thrown := lib.DrawTelling(seed, w)
		if j == nil || len(thrown) > 0 {
			continue
		}
		agree++
		driven := j.Driven
		driven.Stood = false // hangs on what the owner tells, of a car that is built
		if got := lib.Sketch(seed, w); got.Car != j.Car || got.Driven != driven || !reflect.DeepEqual(got.Faults, j.Faults) {
			t.Errorf("seed %d: %+v is told, %+v is drawn", seed, got, j)
		}
	}
	if agree < 12 {
		t.Errorf("only %d of 24 cars stand at once", agree)
	}
	if got := lib.Sketch(1, Wish{Causes: []string{"no_such_cause"}}); got != nil {
		t.Errorf("an unknown cause gives %v", got)
	}
}

// BenchmarkSketch is what a seed costs whose car is not built.
func BenchmarkSketch(b *testing.B) {
	lib := library(b)
	for i := range b.N {
		lib.Sketch(uint64(i), Wish{})
	}
}
