package record

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

func aResult(session string) Result {
	return Result{When: time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC), Session: session, Job: "unseen_fair_48213", Seed: 7, Library: "ab",
		Truth: []string{"pins_dry"}, Said: []Figure{{"pin_seized", 0.6}, {"pins_dry", 0.4}}, Total: 61.5, Marks: []Figure{{"diagnosis", 20}, {"safety", 100}}}
}

// TestDamagedResults: a line that cannot be read is moved aside with a sentence
// that says where, once; the lines before and after it stay, and more can be added.
func TestDamagedResults(t *testing.T) {
	for name, bad := range map[string]string{
		"no JSON":         "{\"version\":1,\"when\"\n",
		"bytes":           "\x00\x00\x00\n",
		"no truth":        `{"version":1,"when":"2026-03-01T09:00:00Z","session":"s","job":"j"}` + "\n",
		"over-sure":       `{"version":1,"when":"2026-03-01T09:00:00Z","session":"s","job":"j","truth":["a"],"said":[{"id":"a","n":7}]}` + "\n",
		"sums to two":     `{"version":1,"when":"2026-03-01T09:00:00Z","session":"s","job":"j","truth":["a"],"said":[{"id":"a","n":1},{"id":"b","n":1}]}` + "\n",
		"mark of 1000":    `{"version":1,"when":"2026-03-01T09:00:00Z","session":"s","job":"j","truth":["a"],"marks":[{"id":"safety","n":1000}]}` + "\n",
		"half at its end": `{"version":1,"when":"2026-03`,
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			keepResults(t, dir, "one", "two")
			path := ResultsFile(dir)
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			first := strings.IndexByte(string(data), '\n') + 1
			broken := string(data[:first]) + bad + string(data[first:])
			line, want := ":2:", 2
			if !strings.HasSuffix(bad, "\n") {
				broken, line = string(data)+bad, ":3:"
			}
			if err := os.WriteFile(path, []byte(broken), 0o600); err != nil {
				t.Fatal(err)
			}
			list, damaged, err := Results(dir)
			if err != nil || len(list) != want || len(damaged) != 1 {
				t.Fatalf("%d results, damaged %v, %v", len(list), damaged, err)
			}
			var d *DamagedError
			if !errors.As(damaged[0], &d) || d.Aside == "" || !strings.Contains(d.Error(), resultsName+line) {
				t.Errorf("the sentence is %q", damaged[0])
			}
			if kept, err := os.ReadFile(d.Aside); err != nil || string(kept) != broken {
				t.Errorf("set aside as %q, %v", kept, err)
			}
			keepResults(t, dir, "three")
			if list, damaged, err = Results(dir); err != nil || len(list) != want+1 || damaged != nil {
				t.Errorf("afterwards %d results, damaged %v, %v", len(list), damaged, err)
			}
		})
	}
}

func keepResults(t *testing.T, dir string, sessions ...string) {
	t.Helper()
	for _, s := range sessions {
		if err := KeepResult(dir, aResult(s)); err != nil {
			t.Fatal(err)
		}
	}
}

// TestUnkeepable: what cannot be is refused before it is written.
func TestUnkeepable(t *testing.T) {
	dir := t.TempDir()
	for name, spoil := range map[string]func(*Result){
		"no session": func(r *Result) { r.Session = "" }, "no time": func(r *Result) { r.When = time.Time{} },
		"NaN": func(r *Result) { r.Total = math.NaN() }, "belief": func(r *Result) { r.Said[0].N = -0.1 },
	} {
		r := aResult("s")
		spoil(&r)
		if KeepResult(dir, r) == nil {
			t.Errorf("%s: kept", name)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "file"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if KeepResult(filepath.Join(dir, "file"), aResult("s")) == nil {
		t.Error("kept in a folder that is a file")
	}
}

// TestSameDebrief: opened again later it is not counted twice; another session of
// the same car is.
func TestSameDebrief(t *testing.T) {
	dir := t.TempDir()
	keepResults(t, dir, "one")
	later := aResult("one")
	later.When = later.When.Add(time.Hour)
	if err := KeepResult(dir, later); err != nil {
		t.Fatal(err)
	}
	keepResults(t, dir, "two")
	list, _, err := Results(dir)
	if err != nil || len(list) != 2 || !list[0].When.Equal(aResult("").When) {
		t.Fatalf("%v, %v", list, err)
	}
	if err := ForgetResults(dir); err != nil {
		t.Fatal(err)
	}
	if list, _, err := Results(dir); len(list) > 0 || err != nil || ForgetResults(dir) != nil {
		t.Errorf("forgotten, there are %d, %v", len(list), err)
	}
}

// TestResultsTogether: several at once lose none.
func TestResultsTogether(t *testing.T) {
	dir := t.TempDir()
	var wait sync.WaitGroup
	for i := range 20 {
		wait.Add(1)
		go func() {
			defer wait.Done()
			if err := KeepResult(dir, aResult(string(rune('a'+i)))); err != nil {
				t.Error(err)
			}
		}()
	}
	wait.Wait()
	if list, damaged, err := Results(dir); len(list) != 20 || damaged != nil || err != nil {
		t.Errorf("%d results, %v, %v", len(list), damaged, err)
	}
}

// TestNewerResults: a line of another version is left where it is.
func TestNewerResults(t *testing.T) {
	dir := t.TempDir()
	keepResults(t, dir, "one")
	f, err := os.OpenFile(ResultsFile(dir), os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	f.WriteString("{\"version\":9}\n")
	f.Close()
	keepResults(t, dir, "two")
	data, _ := os.ReadFile(ResultsFile(dir))
	if list, damaged, err := Results(dir); len(list) != 2 || damaged != nil || err != nil || !strings.Contains(string(data), `"version":9`) {
		t.Errorf("%d results, %v, %v", len(list), damaged, err)
	}
}
