package term_test

import (
	"context"
	"strings"
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/term"
)

// over is a job that is over and whose debrief nobody works out yet.
type over struct{}

func (over) View() *play.View  { return &play.View{Stage: play.Debriefed} }
func (over) Do(play.Act) error { return nil }
func (over) Settle(_ context.Context, progress func(float64)) error {
	progress(0.9)
	return nil
}

// TestWaiting: while a terminal works a debrief out it says so, not that it was stopped.
func TestWaiting(t *testing.T) {
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	if err := term.Run(t.Context(), over{}, words, strings.NewReader(""), &out, term.Options{}); err != nil {
		t.Fatal(err)
	}
	if want := words.Say("debrief.waiting") + ": 90 %"; !strings.Contains(out.String(), want) {
		t.Errorf("printed %q, want %q in it", out.String(), want)
	}
}
