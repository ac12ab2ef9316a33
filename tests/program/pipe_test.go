package program

import (
	"bufio"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// cut runs the program into a reader that goes away after the first line, or
// before it where lines is 0.
func cut(t *testing.T, cmd *exec.Cmd, in string, lines int) end {
	t.Helper()
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	if lines == 0 {
		r.Close()
	}
	var errs strings.Builder
	cmd.Stdin, cmd.Stdout, cmd.Stderr = strings.NewReader(in), w, &errs
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	w.Close()
	if lines > 0 {
		if _, err := bufio.NewReaderSize(r, 16).ReadString('\n'); err != nil {
			t.Error(err)
		}
		r.Close()
	}
	cmd.Wait()
	return end{code: cmd.ProcessState.ExitCode(), errs: errs.String()}
}

// TestClosedPipe: a reader that goes away ends the program with a sentence and
// a failure, and a session that was played into it is kept.
func TestClosedPipe(t *testing.T) {
	for _, args := range []string{"check " + t.TempDir(), "list", "version", "trace -paths", "trace -help", "trace -pressure 0,8", "term --bench"} {
		t.Run(args, func(t *testing.T) {
			failed(t, cut(t, command(t, strings.Fields(args)...), "P\n", 0), "cannot be written")
		})
	}
	t.Run("term", func(t *testing.T) {
		dir := t.TempDir()
		lines, acts := typedJob(t)
		// Enough is read aloud again and again to fill any pipe.
		e := cut(t, command(t, "term", "warm_wheel", "--seed", "7", "--sessions", dir), strings.Join(lines[:4], "")+strings.Repeat(".\n", 20000), 1)
		name, kept := onDisk(t, dir)
		failed(t, e, "cannot be written", "The session is kept as "+name)
		if len(kept) > 4 || !slices.Equal(kept, acts[:len(kept)]) {
			t.Errorf("on disk %v, want the beginning of %v", kept, acts[:4])
		}
	})
}

// TestNoDisplay: without a screen the program says so and the job goes on in the
// terminal; with one that does not answer it says so and ends.
func TestNoDisplay(t *testing.T) {
	e := typedIn(t, "2\n")
	failed(t, e, "no window can be opened here", "going on in the terminal", "The session is kept as ")
	if !strings.Contains(e.out, "The owner says: ") || !strings.Contains(e.out, "you are at: seat") {
		t.Errorf("the terminal shows\n%s", e.out)
	}
	for _, d := range []string{":987", "nonsense"} {
		cmd := command(t)
		cmd.Env = append(cmd.Env, "DISPLAY="+d)
		failed(t, ended(t, cmd, nil), "the window failed", d, "game term")
	}
}
