package program

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

// typedJob is what an inspector types in warm_wheel with seed 7 up to the
// hand-over, which is left out, with the acts that come of it.
func typedJob(t testing.TB) (lines []string, acts []play.Act) {
	t.Helper()
	d, words := playtest.Desk(t)
	s, err := d.Open("warm_wheel", 7)
	if err != nil {
		t.Fatal(err)
	}
	plan := playtest.PlanOf("warm_wheel")
	var typed bytes.Buffer
	acts, err = playtest.Play(playtest.Typist{Player: s, Lines: &typed}, plan, playtest.See(words))
	if err != nil {
		t.Fatal(err)
	}
	lines = strings.SplitAfter(typed.String(), "\n")
	return lines[:len(lines)-2], acts[:len(acts)-1]
}

// onDisk is the acts in the only session of a folder, and its name.
func onDisk(t testing.TB, dir string) (name string, acts []play.Act) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.session"))
	if err != nil || len(files) > 1 {
		t.Fatalf("sessions %v, %v", files, err)
	}
	if len(files) == 0 {
		return "", nil
	}
	data, err := os.ReadFile(files[0])
	if err != nil {
		t.Fatal(err)
	}
	whole := bytes.Split(data[:bytes.LastIndexByte(data, '\n')+1], []byte("\n"))
	for _, l := range whole[min(1, len(whole)):] { // the first is the header
		var a play.Act
		if len(l) > 0 && json.Unmarshal(l, &a) == nil {
			acts = append(acts, a)
		}
	}
	return strings.TrimSuffix(filepath.Base(files[0]), ".session"), acts
}

// begun is a folder with a session in which these lines were typed, its name and
// what its file holds.
func begun(t testing.TB, lines []string) (dir, name string, data []byte) {
	t.Helper()
	dir = t.TempDir()
	typedIn(t, strings.Join(lines, ""), "term", "warm_wheel", "--seed", "7", "--sessions", dir)
	name, _ = onDisk(t, dir)
	data, err := os.ReadFile(filepath.Join(dir, name+".session"))
	if err != nil {
		t.Fatal(err)
	}
	return dir, name, data
}

// TestFortyColumns plays a job up to its hand-over on a pipe in 40 columns.
// The end of the input in the middle of a job keeps it, says how to go on, and
// going on finds everything done.
func TestFortyColumns(t *testing.T) {
	dir := t.TempDir()
	lines, acts := typedJob(t)
	half := len(lines) / 2
	e := typedIn(t, strings.Join(lines[:half], ""), "term", "warm_wheel", "--seed", "7", "--width", "40", "--sessions", dir)
	name, kept := onDisk(t, dir)
	failed(t, e, "The session is kept as "+name, "game term --resume "+name+" --sessions "+dir)
	narrow(t, e.out, 40)
	if !slices.Equal(kept, acts[:half]) {
		t.Errorf("%d acts are on disk, %d were typed", len(kept), half)
	}
	e = typedIn(t, strings.Join(lines[half:], ""), "term", "--resume", name, "--width", "40", "--sessions", dir)
	failed(t, e, "The session is kept as "+name)
	narrow(t, e.out, 40)
	if _, kept = onDisk(t, dir); !slices.Equal(kept, acts) {
		t.Errorf("%d acts are on disk, %d were typed", len(kept), len(acts))
	}
}

// TestKilled: a program killed at any moment has kept every act it answered, and
// goes on with the last of them.
func TestKilled(t *testing.T) {
	dir := t.TempDir()
	lines, acts := typedJob(t)
	// Killed in front of an instrument: the check is made, nothing is written yet.
	at := slices.IndexFunc(acts, func(a play.Act) bool { return a.Do == play.Check && strings.HasPrefix(a.What, "opening_outer") }) + 1
	cmd := command(t, "term", "warm_wheel", "--seed", "7", "--sessions", dir)
	in, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	if _, err := io.WriteString(in, strings.Join(lines[:at], "")); err != nil {
		t.Fatal(err)
	}
	for deadline := time.Now().Add(30 * time.Second); ; time.Sleep(10 * time.Millisecond) {
		if _, kept := onDisk(t, dir); len(kept) == at {
			break
		}
		if time.Now().After(deadline) {
			t.Fatal("the acts did not reach the disk in 30 s")
		}
	}
	if err := cmd.Process.Kill(); err != nil { // SIGKILL: nothing can be tidied up
		t.Fatal(err)
	}
	cmd.Wait()
	name, kept := onDisk(t, dir)
	if !slices.Equal(kept, acts[:at]) {
		t.Fatalf("%d acts are on disk, %d were answered", len(kept), at)
	}
	d, _ := playtest.Desk(t)
	same, err := d.Replay("warm_wheel", 7, acts[:at])
	if err != nil {
		t.Fatal(err)
	}
	e := typedIn(t, lines[at], "term", "--resume", name, "--width", "400", "--sessions", dir)
	failed(t, e, "The session is kept as "+name)
	if marks := same.View().Instrument.Marks; !strings.Contains(e.out, marks) {
		t.Errorf("going on does not stand before the instrument with %q but before\n%s", marks, e.out)
	}
	if _, kept = onDisk(t, dir); !slices.Equal(kept, acts[:at+1]) {
		t.Errorf("after one more line %d acts are on disk, want %d", len(kept), at+1)
	}
}

// TestTorn: a last act that was half written is left out, which is said.
func TestTorn(t *testing.T) {
	lines, acts := typedJob(t)
	dir, name, data := begun(t, lines[:6])
	file := filepath.Join(dir, name+".session")
	if err := os.WriteFile(file, data[:len(data)-5], 0o600); err != nil {
		t.Fatal(err)
	}
	_, words := playtest.Desk(t)
	e := typedIn(t, lines[5], "term", "--resume", name, "--sessions", dir)
	failed(t, e, words.Say("term.torn"), "The session is kept as "+name)
	if _, kept := onDisk(t, dir); !slices.Equal(kept, acts[:6]) {
		t.Errorf("on disk %v, want %v", kept, acts[:6])
	}
}

// TestDamaged: a session that cannot be read is set aside under a name that is
// told, whole, and the others still play.
func TestDamaged(t *testing.T) {
	lines, _ := typedJob(t)
	dir, name, data := begun(t, lines[:6])
	file := filepath.Join(dir, name+".session")
	rust := bytes.Replace(data, []byte(`{"do"`), []byte(`<"do"`), 1)
	if err := os.WriteFile(file, rust, 0o600); err != nil {
		t.Fatal(err)
	}
	if e := typedIn(t, "", "list", "--sessions", dir); e.code != 0 || !strings.Contains(e.out, "this line is not an act") {
		t.Errorf("listed with exit %d:\n%s%s", e.code, e.out, e.errs)
	}
	aside := file + ".damaged-1"
	failed(t, typedIn(t, "", "term", "--resume", name, "--sessions", dir), ":2: this line is not an act", "the file is kept as "+aside)
	if now, err := os.ReadFile(aside); err != nil || !bytes.Equal(now, rust) {
		t.Errorf("set aside: %v, %d bytes of %d", err, len(now), len(rust))
	}
	e := typedIn(t, lines[0], "term", "warm_wheel", "--seed", "7", "--sessions", dir)
	failed(t, e, "The session is kept as "+name)
}
