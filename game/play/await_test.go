package play_test

import (
	"testing"
	"time"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

// TestAwaitTells: a view says whether the debrief is being worked out or has
// been stopped, and stopping keeps what was done.
func TestAwaitTells(t *testing.T) {
	s, err := desk(t).Open("warm_wheel", 7)
	if err != nil {
		t.Fatal(err)
	}
	plan := playtest.Plans[0]
	for _, p := range playtest.Plans {
		if p.Job == s.Job() {
			plan = p
		}
	}
	if _, err := playtest.Play(s, plan, see(t)); err != nil {
		t.Fatal(err)
	}
	going := func(want bool, when string) *play.WaitView {
		t.Helper()
		w := s.View().Waiting
		if w == nil {
			t.Fatalf("%s: the debrief is there already", when)
		}
		if w.Going != want || w.Error != "" && want {
			t.Errorf("%s: %+v, want going %t", when, *w, want)
		}
		return w
	}
	before := going(false, "before it began")
	s.Await()
	going(true, "begun")
	for going(true, "going on").Share <= before.Share {
		time.Sleep(5 * time.Millisecond)
	}
	s.Cancel()
	stopped := going(false, "stopped")
	if stopped.Share <= before.Share {
		t.Errorf("stopping forgot what was done: %.3f of it, %.3f before it began", stopped.Share, before.Share)
	}
	s.Await()
	if w := going(true, "begun again"); w.Share < 0 {
		t.Errorf("share %g", w.Share)
	}
	s.Cancel()
}
