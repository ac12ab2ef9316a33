package play_test

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/scenarios"
	"evenwear/scoring/record"
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

// TestDrawnOfAnotherLibrary: where pairs or the owners' sentences differ, the same
// number draws another car, so a kept session says that it cannot be gone on with.
func TestDrawnOfAnotherLibrary(t *testing.T) {
	d := desk(t)
	s, err := d.Open(scenarios.DrawnID(48213, scenarios.Fair), 5)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	k, err := s.Keep(dir)
	if err != nil {
		t.Fatal(err)
	}
	k.Close()
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"pairs.yaml", "owners.yaml"} {
		text, err := os.ReadFile(filepath.Join("../../scenarios", name))
		if err != nil {
			t.Fatal(err)
		}
		other := map[string]string{"pairs.yaml": "cars_share: 0.09", "owners.yaml": ""}[name]
		was := map[string]string{"pairs.yaml": "cars_share: 0.08", "owners.yaml": "  - It may be nothing.\n"}[name]
		if !strings.Contains(string(text), was) {
			t.Fatalf("%s does not say %q", name, was)
		}
		folder := t.TempDir()
		if err := os.WriteFile(filepath.Join(folder, name), []byte(strings.Replace(string(text), was, other, 1)), 0o600); err != nil {
			t.Fatal(err)
		}
		lib, err := scenarios.Overlay(folder)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := play.NewDesk(lib, words).Resume(dir, k.Name); err == nil || !strings.Contains(err.Error(), "readings would come out differently") {
			t.Errorf("with another %s: %v", name, err)
		}
	}
	if again, err := desk(t).Resume(dir, k.Name); err != nil {
		t.Error(err)
	} else {
		again.Close()
	}
}

// TestOtherMeaning: a session kept by a version of the program in which the same acts
// come to something else says that it cannot be gone on with, and is left as it is.
func TestOtherMeaning(t *testing.T) {
	d := desk(t)
	dir := t.TempDir()
	log, name, err := record.Create(dir, record.Header{Job: "warm_wheel", Seed: 1, Library: d.HashWith("of an older version")})
	if err != nil {
		t.Fatal(err)
	}
	log.Close()
	if _, err := d.Resume(dir, name); err == nil || !strings.Contains(err.Error(), "another version of the program") {
		t.Errorf("resumed: %v", err)
	}
	if list, err := record.List(dir); err != nil || len(list) != 1 || list[0].Name != name {
		t.Errorf("listed %+v, %v", list, err)
	}
}
