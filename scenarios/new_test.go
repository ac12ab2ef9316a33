package scenarios

import (
	"strings"
	"testing"
)

// TestNewJob: what an author begins with loads, is true, and names every cause,
// car and notice.
func TestNewJob(t *testing.T) {
	lib := library(t)
	text, err := lib.NewJob()
	if err != nil {
		t.Fatal(err)
	}
	own, err := Load(with(t, "jobs/x.yaml", text))
	if err != nil {
		t.Fatal(err)
	}
	if err := own.Job("x").Verify(); err != nil {
		t.Error(err)
	}
	for _, c := range lib.Causes {
		if !c.Healthy && !strings.Contains(text, c.ID) {
			t.Errorf("%s is not named", c.ID)
		}
	}
	for _, c := range lib.Cars {
		if !strings.Contains(text, c.ID) {
			t.Errorf("%s is not named", c.ID)
		}
	}
	for _, id := range append(ClaimIDs(), Backgrounds()...) {
		if !strings.Contains(text, id) {
			t.Errorf("%s is not named", id)
		}
	}
	if _, err := (&Library{}).NewJob(); err == nil {
		t.Error("an empty library gives a job")
	}
}
