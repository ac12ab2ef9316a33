package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenwear/assets"
	"evenwear/game/play"
)

// author writes a new job into a folder of its own.
func author(t *testing.T) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "own", "jobs", "mine.yaml")
	if err := (&newJobCmd{File: file}).Run(&cli{}); err != nil {
		t.Fatal(err)
	}
	return file
}

func TestNewJobFile(t *testing.T) {
	file := author(t)
	if err := (&checkCmd{Dir: filepath.Dir(filepath.Dir(file))}).Run(); err != nil {
		t.Error(err)
	}
	if err := (&newJobCmd{File: file}).Run(&cli{}); err == nil || !strings.Contains(err.Error(), "is there already and was left alone") {
		t.Errorf("written over: %v", err)
	}
	if err := (&newJobCmd{File: "own/jobs/Bad Name.yaml"}).Run(&cli{}); err == nil || !strings.Contains(err.Error(), `"Bad Name" cannot be an id`) {
		t.Error(err)
	}
	for _, bad := range []string{"mine.yaml", "own/mine.yaml", "own/jobs/mine.yml", "own/jobs"} {
		if err := (&newJobCmd{File: bad}).Run(&cli{}); err == nil || !strings.Contains(err.Error(), "FOLDER/jobs/NAME.yaml") {
			t.Errorf("%s: %v", bad, err)
		}
		if _, err := os.Stat(bad); err == nil {
			t.Errorf("%s was written", bad)
		}
	}
}

// TestRehearsal: a saved file is read again and the acts done again; one with a
// mistake changes nothing and the mistake is told.
func TestRehearsal(t *testing.T) {
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	file := author(t)
	r, err := rehearse(file, 3, words)
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	at := time.Now()
	save := func(old, new string) {
		t.Helper()
		changed := strings.Replace(string(text), old, new, 1)
		if changed == string(text) && old != new {
			t.Fatalf("%q does not occur", old)
		}
		if err := os.WriteFile(file, []byte(changed), 0o644); err != nil {
			t.Fatal(err)
		}
		at = at.Add(time.Second) // as a hand does: not within the clock's grain
		if err := os.Chtimes(file, at, at); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.Do(play.Act{Do: play.Go, What: "bonnet"}); err != nil {
		t.Fatal(err)
	}
	if v := r.View(); v.Notice != "" && strings.Contains(v.Notice, "read again") {
		t.Errorf("nothing was saved, but %q", v.Notice)
	}
	save("title: A wheel that runs warm", "title: One apart")
	if v := r.View(); v.Title.Job != "One apart" || !strings.Contains(v.Notice, "read again") || v.Title.Place != words.Say("place.bonnet") {
		t.Errorf("after saving: %q at %q, notice %q", v.Title.Job, v.Title.Place, v.Notice)
	}
	save("minutes_min: 75", "minutes_min: soon")
	if v := r.View(); v.Title.Job != "One apart" || !strings.Contains(v.Notice, `mine.yaml:`) || !strings.Contains(v.Notice, `"soon" is not a number`) {
		t.Errorf("after a mistake: %q, notice %q", v.Title.Job, v.Notice)
	}
	if v := r.View(); strings.Contains(v.Notice, "soon") {
		t.Error("the mistake is told twice")
	}
	save("- hotter: front_left", "- hotter: rear_left")
	if v := r.View(); !strings.Contains(v.Notice, "not so: ") {
		t.Errorf("a false claim: notice %q", v.Notice)
	}
	if err := os.Remove(file); err != nil {
		t.Fatal(err)
	}
	if v := r.View(); !strings.Contains(v.Notice, "there is no such job") {
		t.Errorf("the file is gone: notice %q", v.Notice)
	}
	save("", "")
	if v := r.View(); v.Title.Job == "One apart" || !strings.Contains(v.Notice, "read again") {
		t.Errorf("the file is back: %q, notice %q", v.Title.Job, v.Notice)
	}
	if _, err := rehearse(filepath.Join(filepath.Dir(file), "other.yaml"), 3, words); err == nil {
		t.Error("a file that is not there is played")
	}
}
