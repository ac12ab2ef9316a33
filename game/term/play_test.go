package term_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/term"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// A typist turns acts into the lines that are typed for them: it finds the
// choice in what a terminal offers, by the same rules a learner follows.
type typist struct {
	*play.Session
	lines *bytes.Buffer
}

func (k typist) Do(a play.Act) error {
	line, err := typed(k.View(), a)
	if err != nil {
		return err
	}
	fmt.Fprintln(k.lines, line)
	return k.Session.Do(a)
}

// typed finds what to type for an act: the key of its action, the number of its
// node, or the text itself for a field.
func typed(v *play.View, a play.Act) (string, error) {
	next := 1
	for _, n := range v.Nodes {
		for _, x := range n.Actions {
			if d, err := strconv.Atoi(x.Key); err == nil {
				next = max(next, d+1)
			}
		}
	}
	for _, n := range v.Nodes {
		var free []play.Action
		for _, x := range n.Actions {
			switch {
			case a.Do == play.Write && x.Act.Do == play.Write && x.Act.Text == "":
				return a.Text, nil
			case x.Key == "":
				free = append(free, x)
			case x.Act.Do == play.Counter && a.Do == play.Counter && x.Act.What == a.What && strings.HasSuffix(x.Key, "+"):
				return fmt.Sprintf("%s %g", strings.TrimSuffix(x.Key, "+"), a.N), nil
			case x.Act.Do == play.Tell && a.Do == play.Tell:
				return x.Key + " " + a.Text, nil
			case x.Act.Do == play.Write && a.Do == play.Write && x.Label == a.Text, x.Act == a:
				return x.Key, nil
			}
		}
		for i, x := range free {
			if x.Act == a {
				if len(free) == 1 {
					return strconv.Itoa(next), nil
				}
				return strconv.Itoa(next) + string(rune('a'+i)), nil
			}
		}
		if len(free) > 0 {
			next++
		}
	}
	return "", fmt.Errorf("nothing on the sheet does %+v", a)
}

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

func see(words *assets.Words) func(check, perception string) string {
	return func(check, perception string) string {
		c, _ := inspect.Find(inspect.ID(check))
		for _, w := range c.Meter.Words {
			if words.Say("see."+check+"."+w) == perception {
				return words.Say("word." + w)
			}
		}
		return ""
	}
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
			if _, err := playtest.Play(typist{meant, &lines}, plan, see(words)); err != nil {
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
