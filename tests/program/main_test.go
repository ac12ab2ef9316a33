// Package program tests the built program from outside: what it is given on its
// command line, its input, its folder of sessions and its screen, and what it
// says, writes and ends with.
package program

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"
)

// built is the program's file.
var built string

func TestMain(m *testing.M) { os.Exit(run(m)) }

func run(m *testing.M) int {
	dir, err := os.MkdirTemp("", "evenwear")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(dir)
	built = filepath.Join(dir, "game")
	cmd := exec.Command("go", "build", "-o", built, "evenwear/game")
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := cmd.CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "the program does not build: %v\n%s", err, out)
		return 1
	}
	return m.Run()
}

// command is the program with a home of its own and no display.
func command(t testing.TB, args ...string) *exec.Cmd {
	t.Helper()
	cmd := exec.Command(built, args...)
	home := t.TempDir()
	for _, v := range os.Environ() {
		switch name, _, _ := strings.Cut(v, "="); name {
		case "DISPLAY", "WAYLAND_DISPLAY", "HOME", "XDG_CONFIG_HOME":
		default:
			cmd.Env = append(cmd.Env, v)
		}
	}
	cmd.Env = append(cmd.Env, "HOME="+home)
	return cmd
}

// An end is how a run of the program ended.
type end struct {
	code      int
	out, errs string
}

// ended runs a command with this input to its end.
func ended(t testing.TB, cmd *exec.Cmd, in io.Reader) end {
	t.Helper()
	var out, errs bytes.Buffer
	cmd.Stdin, cmd.Stdout, cmd.Stderr = in, &out, &errs
	cmd.WaitDelay = 10 * time.Second
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	late := time.AfterFunc(time.Minute, func() { cmd.Process.Kill() })
	defer late.Stop()
	err := cmd.Wait()
	var bad *exec.ExitError
	if err != nil && !errors.As(err, &bad) {
		t.Fatal(err)
	}
	return end{cmd.ProcessState.ExitCode(), out.String(), errs.String()}
}

// typedIn runs the program with these lines typed.
func typedIn(t testing.TB, lines string, args ...string) end {
	t.Helper()
	return ended(t, command(t, args...), strings.NewReader(lines))
}

// crash is what a learner must never see.
var crash = regexp.MustCompile(`(?i)\bgoroutine\b|\bpanic\b|\.go:\d+|runtime error|0x[0-9a-f]{6,}`)

// failed checks that a run ended as a failure, told in at most three lines that
// hold all that is wanted, without a stack trace.
func failed(t testing.TB, e end, want ...string) {
	t.Helper()
	if e.code <= 0 {
		t.Errorf("exit %d, want a failure", e.code)
	}
	if m := crash.FindString(e.out + e.errs); m != "" {
		t.Errorf("a learner sees %q", m)
	}
	said := strings.TrimSpace(e.errs)
	if n := len(strings.Split(said, "\n")); said == "" || n > 3 {
		t.Errorf("%d lines are said", n)
	}
	for _, w := range want {
		if !strings.Contains(said, w) {
			t.Errorf("said %q, want %q in it", said, w)
		}
	}
}

// narrow checks that no line is longer than so many characters.
func narrow(t testing.TB, text string, width int) {
	t.Helper()
	for i, l := range strings.Split(text, "\n") {
		if n := utf8.RuneCountInString(l); n > width {
			t.Errorf("line %d has %d characters, at most %d: %q", i+1, n, width, l)
			return
		}
	}
}
