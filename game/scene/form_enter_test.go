package scene

import (
	"slices"
	"testing"

	"evenwear/game/play"
)

// enterShown fails where a key shows Enter while something else has the ring.
func enterShown(t *testing.T, a *App, at string) {
	t.Helper()
	var ringed, shows []string
	for _, p := range a.Pressables() {
		if p.Ringed {
			ringed = append(ringed, p.Stop)
		}
		if p.Letter == "Enter" {
			shows = append(shows, p.Stop)
		}
	}
	if len(shows) > 1 || len(shows) == 1 && len(ringed) > 0 && !slices.Contains(ringed, shows[0]) {
		t.Errorf("%s: Enter stands on %v while the ring is on %v", at, shows, ringed)
	}
}

// TestEnterIsWhatIsRinged: wherever Tab puts the ring, no other key shows Enter.
func TestEnterIsWhatIsRinged(t *testing.T) {
	for _, st := range formStates {
		a, j := demoCall(t, false, false, st.rows)
		acts(t, j, st.acts...)
		a.Pressables()
		keys(a, st.keys...)
		for range 20 {
			enterShown(t, a, st.name)
			keys(a, "Tab")
		}
	}
}

// TestReleaseThenEnterHandsOver: whichever way a release is chosen, the ring goes on
// to the key that hands over, and Enter is it, not a check that was ringed before.
func TestReleaseThenEnterHandsOver(t *testing.T) {
	hands(t, true, func(h *hand) {
		n := len(h.session.Acts())
		if h.use == "keys" {
			h.letter("2")
		} else {
			h.choose("releases", func(i int, _ *menuItem) bool { return i == 1 })
		}
		enterShown(t, h.app, "a release chosen")
		h.app.Handle(key("Enter"))
		h.job.game.Cancel()
		h.want(n, play.Act{Do: play.Release, What: "release.trip"}, play.Act{Do: play.HandOver})
	})
}

// TestLastCounterThenEnterSeals: the last counter lets the ring go on to the seal,
// and an arrow back to the rods.
func TestLastCounterThenEnterSeals(t *testing.T) {
	hands(t, false, func(h *hand) {
		const row = "pins_seized@front_right"
		acts(h.t, h.job, play.Act{Do: play.Row, What: row}, play.Act{Do: play.Counter, What: row, N: play.Counters - 1})
		h.app.Pressables()
		n := len(h.session.Acts())
		if h.use == "keys" {
			h.app.Handle(key("Right"))
		} else {
			h.pressKey("more0")
		}
		full := play.Act{Do: play.Counter, What: row, N: play.Counters}
		h.want(n, full)
		enterShown(h.t, h.app, "all threaded")
		h.app.Handle(key("Left"))
		h.app.Handle(key("Left"))
		h.app.Handle(key("Right"))
		less := full
		less.N--
		h.app.Handle(key("Enter"))
		h.want(n, full, less, full, play.Act{Do: play.Seal})
	})
}

// TestOpenCountersAreAskedAbout: while counters are open a press on the seal asks
// and seals nothing; the second does, unless something was done between.
func TestOpenCountersAreAskedAbout(t *testing.T) {
	hands(t, false, func(h *hand) {
		n := len(h.session.Acts())
		asks := func(open int) {
			h.t.Helper()
			h.pressKey(idSeal)
			if got, want := h.job.view.Notice, h.app.words.Say("play.ask_seal", "open", open, "of", play.Counters); got != want {
				h.t.Errorf("by %s with %d counters open the seal says %q, want %q", h.use, open, got, want)
			}
			if lines, _ := h.job.sheet.(*call).note(h.app.sheet); len(lines) > noteMost {
				h.t.Errorf("the question takes %d lines, there is room for %d", len(lines), noteMost)
			}
			sameAsWhole(h.t, h.app, "the question")
		}
		asks(20)
		const row = "pins_seized@front_right"
		open := []play.Act{{Do: play.Row, What: row}, {Do: play.Counter, What: row, N: 19}}
		acts(h.t, h.job, open...)
		h.app.Pressables()
		asks(1)
		h.want(n, open...)
		h.pressKey(idSeal)
		h.want(n, append(open, play.Act{Do: play.Seal})...)
	})
}

// TestPlaceByItsFigure: the figure on a place opens its row; on a dashed one it says
// why not, as a press there does.
func TestPlaceByItsFigure(t *testing.T) {
	a, j := demoCall(t, false, false, false)
	h := &hand{t, a, j, j.game.(*play.Session), "keys"}
	n := len(h.session.Acts())
	for range 2 {
		h.pressKey("pick")
		h.choose("groups", labelled("Guide pins"))
		h.choose("causes", labelled("Both guide pins seized"))
		a.Draw()
		keys(a, "2")
		sameAsWhole(t, a, "2")
	}
	h.want(n, play.Act{Do: play.Row, What: "pins_seized@front_right"})
	if want := a.words.Say("no.row_is_open"); j.view.Notice != want {
		t.Errorf("the figure of an open row says %q, want %q", j.view.Notice, want)
	}
}

// TestEnterOnTheBench: the fields of the bench let Enter through to the key lettered
// so, which presses; another key in the ring takes both from it.
func TestEnterOnTheBench(t *testing.T) {
	a, b, h := heard(t)
	a.Draw()
	seen := 0
	for range 30 {
		keys(a, "Tab")
		i := slices.IndexFunc(b.keys, func(k benchKey) bool { return k.id == "again" })
		if i < 0 {
			t.Fatal("the bench has no key to press again")
		}
		through := b.targets.Focus == idShare || b.targets.Focus == idSlider || b.targets.Focus == "again"
		if shown := b.keys[i].Letter == "Enter"; shown != through {
			t.Errorf("with the ring on %s the key to press again shows Enter: %t", b.targets.Focus, shown)
		}
		if b.targets.Focus != idShare {
			continue
		}
		seen++
		n := len(h.acts)
		keys(a, "Enter")
		if len(h.acts) == n {
			t.Error("Enter does nothing in the field of the share")
		}
	}
	if seen == 0 {
		t.Error("Tab never came to the share")
	}
}
