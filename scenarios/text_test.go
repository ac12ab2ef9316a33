package scenarios

import (
	"reflect"
	"strings"
	"testing"
)

// TestText: a job written as a file and read back is the same job, for every job of
// the library and for drawn ones.
func TestText(t *testing.T) {
	lib := library(t)
	jobs := lib.Jobs
	for seed := range uint64(12) {
		j, err := lib.Draw(seed, Wish{Ease: Eases[seed%3]})
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs[:len(jobs):len(jobs)], j)
	}
	for _, j := range jobs {
		text, err := j.Text()
		if err != nil {
			t.Fatal(err)
		}
		again, err := lib.ReadJob(j.ID, text)
		if err != nil {
			t.Errorf("%s: %v\n%s", j.ID, err, text)
			continue
		}
		if a, b := said(j), said(again); a != b || again.Minutes != j.Minutes {
			t.Errorf("%s reads back as another:\n%s\n%s", j.ID, a, b)
		}
		if len(again.Claims) != len(j.Claims) || !reflect.DeepEqual(again.Driven, j.Driven) {
			t.Errorf("%s reads back with %v and %v, want %v and %v", j.ID, again.Claims, again.Driven, j.Claims, j.Driven)
		}
	}
	if _, err := lib.ReadJob("odd", "title: [\n"); err == nil || !strings.Contains(err.Error(), "odd.yaml:") {
		t.Errorf("a broken text: %v", err)
	}
	if n := len(lib.Jobs); lib.Job("odd") != nil || n == 0 {
		t.Error("reading one job changed the library")
	}
}
