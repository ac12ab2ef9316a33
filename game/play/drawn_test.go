package play_test

import (
	"reflect"
	"testing"

	"evenwear/game/play"
	"evenwear/scenarios"
)

// TestDrawnSession: a car nobody wrote down is kept by its id alone; resumed, it
// is the same car with the same readings.
func TestDrawnSession(t *testing.T) {
	d := desk(t)
	dir := t.TempDir()
	id := scenarios.DrawnID(48213, scenarios.Hard)
	s, err := d.Open(id, 5)
	if err != nil {
		t.Fatal(err)
	}
	k, err := s.Keep(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range []play.Act{{Do: play.Go, What: "bonnet"}, {Do: play.Check, What: "reservoir_level"}} {
		if err := k.Do(a); err != nil {
			t.Fatal(err)
		}
	}
	was := k.View()
	k.Close()
	again, err := desk(t).Resume(dir, k.Name)
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if now := again.View(); !reflect.DeepEqual(now.Nodes, was.Nodes) {
		t.Errorf("resumed, the view is\n%v\nwant\n%v", now.Nodes, was.Nodes)
	}
	if title := d.Title(id); title == id || title != again.View().Title.Job {
		t.Errorf("title %q, want %q", title, again.View().Title.Job)
	}
}
