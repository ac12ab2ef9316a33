package program

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestHintIsACommand: what is told at the end, given to a shell as it stands,
// goes on with the session, also from folders with a blank and a quote.
func TestHintIsACommand(t *testing.T) {
	sh, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("there is no shell here")
	}
	base := t.TempDir()
	dir, folder := filepath.Join(base, "Ann's sessions"), filepath.Join(base, "my jobs")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	lines, acts := typedJob(t)
	e := typedIn(t, lines[0], "--folder", folder, "term", "warm_wheel", "--seed", "7", "--sessions", dir)
	_, hint, _ := strings.Cut(e.errs, "Go on with: ")
	hint, ok := strings.CutPrefix(strings.TrimSpace(hint), "game ")
	if !ok {
		t.Fatalf("said %q", e.errs)
	}
	cmd := command(t)
	cmd.Path, cmd.Args = sh, []string{"sh", "-c", built + " " + hint}
	failed(t, ended(t, cmd, strings.NewReader(lines[1])), "The session is kept as ")
	if _, kept := onDisk(t, dir); !slices.Equal(kept, acts[:2]) {
		t.Errorf("on disk %v, want %v", kept, acts[:2])
	}
}

// playing starts the program with one line typed and waits until it is kept.
func playing(t *testing.T, dir, line string) (cmd *exec.Cmd, in io.WriteCloser, errs *bytes.Buffer) {
	t.Helper()
	cmd, errs = command(t, "term", "warm_wheel", "--seed", "7", "--sessions", dir), &bytes.Buffer{}
	cmd.Stderr = errs
	pipe, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { cmd.Process.Kill() })
	if _, err := pipe.Write([]byte(line)); err != nil {
		t.Fatal(err)
	}
	for deadline := time.Now().Add(30 * time.Second); ; time.Sleep(10 * time.Millisecond) {
		if _, kept := onDisk(t, dir); len(kept) == 1 {
			return cmd, pipe, errs
		}
		if time.Now().After(deadline) {
			t.Fatal("the act did not reach the disk in 30 s")
		}
	}
}

// TestInterrupted: Ctrl-C tells that the session is kept and how to go on.
func TestInterrupted(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("a program cannot be interrupted alone there")
	}
	dir := t.TempDir()
	lines, acts := typedJob(t)
	cmd, _, errs := playing(t, dir, lines[0])
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	cmd.Wait()
	name, kept := onDisk(t, dir)
	failed(t, end{code: cmd.ProcessState.ExitCode(), errs: errs.String()}, "The session is kept as "+name, "term --resume "+name+" --sessions "+dir)
	if !slices.Equal(kept, acts[:1]) {
		t.Errorf("on disk %v, want %v", kept, acts[:1])
	}
}

// TestInUse: a second program on the same session is told so at once, changes
// nothing, and may go on when the first has ended.
func TestInUse(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("not every system has locks; see scoring/record")
	}
	dir := t.TempDir()
	lines, acts := typedJob(t)
	cmd, in, _ := playing(t, dir, lines[0])
	name, _ := onDisk(t, dir)
	failed(t, typedIn(t, lines[1], "term", "--resume", name, "--sessions", dir), "another program is playing this session")
	failed(t, typedIn(t, "", "forget", name, "--sessions", dir), "another program is playing this session")
	if _, kept := onDisk(t, dir); !slices.Equal(kept, acts[:1]) {
		t.Errorf("on disk %v, want %v", kept, acts[:1])
	}
	in.Close()
	cmd.Wait()
	failed(t, typedIn(t, lines[1], "term", "--resume", name, "--sessions", dir), "The session is kept as "+name)
	if _, kept := onDisk(t, dir); !slices.Equal(kept, acts[:2]) {
		t.Errorf("on disk %v, want %v", kept, acts[:2])
	}
}

// TestWrittenPast: where somebody writes past the lock, the next act is refused
// with how to go on, and what they wrote stays.
func TestWrittenPast(t *testing.T) {
	dir := t.TempDir()
	lines, acts := typedJob(t)
	cmd, in, errs := playing(t, dir, lines[0])
	name, _ := onDisk(t, dir)
	f, err := os.OpenFile(filepath.Join(dir, name+".session"), os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.WriteString("{\"do\":\"go\",\"what\":\"road\"}\n"); err != nil {
		t.Fatal(err)
	}
	f.Close()
	if _, err := in.Write([]byte("3\n")); err != nil {
		t.Fatal(err)
	}
	in.Close()
	cmd.Wait()
	failed(t, end{code: cmd.ProcessState.ExitCode(), errs: errs.String()},
		"the act was not kept and so not done: another program is playing this session", "game term --resume "+name)
	if _, kept := onDisk(t, dir); len(kept) != 2 || kept[0] != acts[0] || kept[1].What != "road" {
		t.Errorf("on disk %v", kept)
	}
}
