package audit

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestBadAudit(t *testing.T) {
	lib, words := fewCauses(t, []string{"warm_wheel"}, "honestly_worn", "pins_dry")
	none, _ := fewCauses(t, nil, "honestly_worn")
	for want, make := range map[string]func() (*Audit, error){
		"there are no jobs to be proven":  func() (*Audit, error) { return New(none, words, nil, Options{}) },
		`there is no job "nowhere"`:       func() (*Audit, error) { return New(lib, words, []string{"nowhere"}, Options{}) },
		"workers is -1; wanted 0 or more": func() (*Audit, error) { return New(lib, words, nil, Options{Workers: -1}) },
		"sample is -3; wanted 0 or more":  func() (*Audit, error) { return New(lib, words, nil, Options{Sample: -3}) },
	} {
		if _, err := make(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want it to say %q", err, want)
		}
	}
}

func TestBeliefAddsUp(t *testing.T) {
	for want, b := range map[string][]float64{
		"the rows are believed 0.9 in all; wanted 1": {0.5, 0.4},
		"row 2 is believed -0.1":                     {1.1, -0.1},
		"row 1 is believed NaN":                      {math.NaN(), 1},
	} {
		if err := addsUp(b); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v: got %v, want it to say %q", b, err, want)
		}
	}
	if err := addsUp([]float64{0.25, 0.75}); err != nil {
		t.Error(err)
	}
}

// TestHopelessJob: a job that the model inspector does not solve fails, and so does
// one that cannot be worked out; a job that is just solved does not.
func TestHopelessJob(t *testing.T) {
	r := &Report{}
	for _, u := range []*Unit{
		{Job: "hopeless", Solved: Solved{Belief: []float64{0.1, 0.79, 0.9}, RunnerUp: "pins_dry@front_left", Check: "spin@front_left"}},
		{Job: "broken", Failed: "a car that cannot stand"},
		{Job: "just", Solved: Solved{Belief: []float64{0.1, 0.80, 0.9}}},
	} {
		r.Jobs = append(r.Jobs, judgeJob(u))
	}
	if r.Failing() != 2 || r.Jobs[2].Verdict != Reached {
		t.Errorf("%d jobs fail, want 2: %+v", r.Failing(), r.Jobs)
	}
	for _, want := range []string{"MISSED      hopeless: 0.790", "spin@front_left", "MISSED      broken: a car that cannot stand", "Jobs that fail: 2 of 3"} {
		if !strings.Contains(r.String(), want) {
			t.Errorf("the table does not say %q:\n%s", want, r)
		}
	}
}

var someAudit = heading{Library: "abc", Jobs: []string{"a", "b"}, Options: Options{Seed: 4}}

// kept is a file with two jobs.
func kept(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "audit.kept")
	k, err := OpenKeep(path, someAudit)
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range someAudit.Jobs {
		if err := k.Put(&Unit{Job: id, Bank: Played{Totals: []float64{1, 2.5}}}); err != nil {
			t.Fatal(err)
		}
	}
	if err := k.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

func reopen(t *testing.T, path string) *Keep {
	t.Helper()
	k, err := OpenKeep(path, someAudit)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { k.Close() })
	return k
}

func TestKeep(t *testing.T) {
	k := reopen(t, kept(t))
	u, ok := k.Has("b")
	if !ok || u.Bank.Totals[1] != 2.5 || k.Told != "" {
		t.Errorf("b: %v %+v, told %q", ok, u, k.Told)
	}
	if _, ok := k.Has("c"); ok {
		t.Error("a job that was not worked out is there")
	}
}

// TestKeepAfterKill: wherever a kill has cut the file, whole lines are kept, and
// what is appended then can be read again.
func TestKeepAfterKill(t *testing.T) {
	path := kept(t)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	head := bytes.IndexByte(whole, '\n') + 1
	for cut := head; cut < len(whole); cut += 5 {
		if err := os.WriteFile(path, whole[:cut], 0o600); err != nil {
			t.Fatal(err)
		}
		k := reopen(t, path)
		if lines := bytes.Count(whole[:cut], []byte("\n")) - 1; len(k.units) != lines {
			t.Fatalf("cut at %d: %d jobs are kept, want %d", cut, len(k.units), lines)
		}
		if torn := whole[cut-1] != '\n'; torn != (k.Told != "") {
			t.Fatalf("cut at %d: told %q", cut, k.Told)
		}
		if err := k.Put(&Unit{Job: "b"}); err != nil {
			t.Fatal(err)
		}
		if _, ok := reopen(t, path).Has("b"); !ok {
			t.Fatalf("cut at %d: what was appended is not there", cut)
		}
	}
}

// TestDamagedKeep: a file that is not what was written is set aside under a name
// that is told, and nothing of it is believed.
func TestDamagedKeep(t *testing.T) {
	for _, spoil := range []func([]byte) []byte{
		func(b []byte) []byte { b[len(b)/2] ^= 1; return b },
		func(b []byte) []byte { b[3] = 'x'; return b },
		func([]byte) []byte { return []byte("shopping list\nmilk\n") },
		func([]byte) []byte { return []byte("no line") },
		func(b []byte) []byte { return append([]byte("00000000 {}\n"), b...) },
	} {
		path := kept(t)
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		b = spoil(b)
		if err := os.WriteFile(path, b, 0o600); err != nil {
			t.Fatal(err)
		}
		k := reopen(t, path)
		if !strings.Contains(k.Told, path+".damaged") || len(k.units) != 0 {
			t.Errorf("told %q with %d jobs", k.Told, len(k.units))
		}
		if old, err := os.ReadFile(path + ".damaged"); err != nil || !bytes.Equal(old, b) {
			t.Errorf("what was there is not kept: %v", err)
		}
		// Damaged again: the first is not written over.
		if err := os.WriteFile(path, []byte("rubbish\n"), 0o600); err != nil {
			t.Fatal(err)
		}
		if k := reopen(t, path); !strings.Contains(k.Told, path+".damaged2") {
			t.Errorf("told %q", k.Told)
		}
	}
}

// TestKeepOfAnother: a file of another audit is refused and left as it is.
func TestKeepOfAnother(t *testing.T) {
	path := kept(t)
	was, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for want, other := range map[string]heading{
		"cars, causes, remedies or jobs have changed": {Library: "abd", Jobs: someAudit.Jobs, Options: someAudit.Options},
		"it is about the jobs a, b":                   {Library: "abc", Jobs: []string{"a"}, Options: someAudit.Options},
		"its seed or sizes are others":                {Library: "abc", Jobs: someAudit.Jobs, Options: Options{Seed: 5}},
		"the program has changed":                     {Revision: "z", Library: "abc", Jobs: someAudit.Jobs, Options: someAudit.Options},
	} {
		if _, err := OpenKeep(path, other); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want it to say %q", err, want)
		}
	}
	now, err := os.ReadFile(path)
	if err != nil || !bytes.Equal(now, was) {
		t.Errorf("the file was changed: %v", err)
	}
	if _, err := OpenKeep(filepath.Join(path, "below"), someAudit); err == nil {
		t.Error("a file below a file was opened")
	}
	more := someAudit
	more.Options.Workers = 7
	if k, err := OpenKeep(path, more); err != nil {
		t.Errorf("other workers: %v", err)
	} else {
		k.Close()
	}
}
