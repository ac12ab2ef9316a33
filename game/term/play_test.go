package term_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"unicode/utf8"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/term"
	"evenwear/scenarios"
)

func world(t *testing.T) (*play.Desk, *assets.Words) {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	return play.NewDesk(lib, words), words
}

// TestJobsOnAPipe plays the eight jobs by typed lines alone, in 40 columns; the
// session they make is the one that was meant.
func TestJobsOnAPipe(t *testing.T) {
	d, words := world(t)
	for _, plan := range playtest.Plans {
		t.Run(plan.Job, func(t *testing.T) {
			meant, err := d.Open(plan.Job, 7)
			if err != nil {
				t.Fatal(err)
			}
			var lines bytes.Buffer
			if _, err := playtest.Play(playtest.Typist{Player: meant, Lines: &lines}, plan, playtest.See(words)); err != nil {
				t.Fatal(err)
			}
			s, err := d.Open(plan.Job, 7)
			if err != nil {
				t.Fatal(err)
			}
			// One debrief is enough here: what it says is tested where it is worked out.
			whole := !testing.Short() && plan.Job == "warm_wheel"
			if !whole {
				lines.Truncate(bytes.LastIndexByte(lines.Bytes()[:lines.Len()-1], '\n') + 1) // all but the hand-over
			}
			var out bytes.Buffer
			err = term.Run(t.Context(), s, words, &lines, &out, term.Options{Width: 40})
			if !whole {
				if !errors.Is(err, term.ErrLeft) || s.Stage() != play.Handing {
					t.Fatalf("ended at %s with %v", s.Stage(), err)
				}
			} else if err != nil {
				t.Fatal(err)
			}
			for i, l := range strings.Split(out.String(), "\n") {
				if n := utf8.RuneCountInString(l); n > 40 {
					t.Fatalf("line %d has %d characters: %q", i+1, n, l)
				}
			}
			if len(s.Acts()) < len(meant.Acts())-1 || fmt.Sprint(s.View().Notebook) != fmt.Sprint(meant.View().Notebook) {
				t.Errorf("%d acts came through of %d", len(s.Acts()), len(meant.Acts()))
			}
			if whole && !strings.Contains(out.String(), words.Say("debrief.total")) {
				t.Error("no debrief was printed")
			}
		})
	}
}

type closed struct{}

func (closed) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

// TestClosedPipe: when nobody reads any more the terminal ends with that error.
func TestClosedPipe(t *testing.T) {
	d, words := world(t)
	s, err := d.Open("warm_wheel", 1)
	if err != nil {
		t.Fatal(err)
	}
	if err := term.Run(t.Context(), s, words, strings.NewReader("1\n"), closed{}, term.Options{}); !errors.Is(err, io.ErrClosedPipe) {
		t.Fatalf("got %v", err)
	}
}

// TestBenchOnAPipe: a seized upper pin starves the outer pad, in words.
func TestBenchOnAPipe(t *testing.T) {
	d, words := world(t)
	b, err := play.NewBench(d.Library(), words, "compact_hatchback")
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := term.Bench(b, words, strings.NewReader("U3\nN 33\nS 93\nP\nnonsense\n?\nP\n"), &out, term.Options{Width: 40}); err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(out.String()), " ")
	if !strings.Contains(said, "too high") || !strings.Contains(said, "never reaches the outer pad") || !strings.Contains(said, "none of the choices") {
		t.Errorf("the bench says:\n%s", out.String())
	}
}
