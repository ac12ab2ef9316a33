package term_test

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/term"
)

type closed struct{}

func (closed) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

// TestClosedPipe: when nobody reads any more the terminal ends with that error.
func TestClosedPipe(t *testing.T) {
	d, words := playtest.Desk(t)
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
	d, words := playtest.Desk(t)
	b, err := play.NewBench(d.Library(), words, "compact_hatchback")
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := term.Bench(b, words, strings.NewReader("U3\nN 33\nS 93\nP\nnonsense\n?\nP\n"), &out, term.Options{Width: func() int { return 40 }}); err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(out.String()), " ")
	if !strings.Contains(said, "26 points too high: at 33 N") || !strings.Contains(said, "kN of the inner force") || !strings.Contains(said, "none of the choices") {
		t.Errorf("the bench says:\n%s", out.String())
	}
}

// TestBadFigureIsTold: what is typed for a number and is none is refused with a
// sentence, and nothing is made of it.
func TestBadFigureIsTold(t *testing.T) {
	d, words := playtest.Desk(t)
	for _, bad := range []string{"7,5,3-2", "1.2.3", "1e2", "0x10", "inf", "5-5", "--5", "1_0"} {
		b, err := play.NewBench(d.Library(), words, "compact_hatchback")
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := term.Bench(b, words, strings.NewReader("S "+bad+"\nN "+bad+"\n"), &out, term.Options{}); err != nil {
			t.Fatal(err)
		}
		want := words.Say("no.figure", "text", bad)
		if n := strings.Count(strings.Join(strings.Fields(out.String()), " "), want); n != 2 || b.View().Predict.Said >= 0 {
			t.Errorf("%q is answered %d times with %q and taken as %g:\n%s", bad, n, want, b.View().Predict.Said, out.String())
		}
	}
	for good, want := range map[string]float64{"62,5": 62.5, "62.5": 62.5, "+7": 7} {
		b, err := play.NewBench(d.Library(), words, "compact_hatchback")
		if err != nil {
			t.Fatal(err)
		}
		if err := term.Bench(b, words, strings.NewReader("S "+good+"\n"), io.Discard, term.Options{}); err != nil || b.View().Predict.Said != want {
			t.Errorf("%q is taken as %g, want %g; %v", good, b.View().Predict.Said, want, err)
		}
	}
}

// TestOpenCountersAreAskedAbout: a belief with open counters is sealed when it is
// asked for a second time, after the question; another line between asks anew.
func TestOpenCountersAreAskedAbout(t *testing.T) {
	d, words := playtest.Desk(t)
	for _, x := range []struct {
		typed string
		asked int
		stage play.Stage
	}{
		{"Enter\n", 1, play.Calling},
		{"Enter\nenter\n", 1, play.Deciding},
		{"Enter\nA 19\nEnter\n", 2, play.Calling},
		{"Enter\nA 20\nEnter\n", 1, play.Deciding},
	} {
		s, err := d.Open("warm_wheel", 1)
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range []play.Act{{Do: play.OpenCall}, {Do: play.Row, What: "pins_seized@front_right"}} {
			if err := s.Do(a); err != nil {
				t.Fatal(err)
			}
		}
		var out bytes.Buffer
		if err := term.Run(t.Context(), s, words, strings.NewReader(x.typed), &out, term.Options{}); !errors.Is(err, term.ErrEnded) {
			t.Fatal(err)
		}
		said := strings.Join(strings.Fields(out.String()), " ")
		asked := 0
		for open := 1; open <= play.Counters; open++ {
			asked += strings.Count(said, words.Say("play.ask_seal", "open", open, "of", play.Counters))
		}
		if asked != x.asked || s.Stage() != x.stage {
			t.Errorf("%q: asked %d times and came to %s, want %d and %s", x.typed, asked, s.Stage(), x.asked, x.stage)
		}
	}
}
