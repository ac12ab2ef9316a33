package play_test

import (
	"strings"
	"testing"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

// TestCountersRefused: what is wrong with a number of counters is said of it.
func TestCountersRefused(t *testing.T) {
	const row = "pins_seized@front_right"
	s := acted(t, append([]play.Act{{Do: play.OpenCall}}, call(row, 0)...)...)
	for n, want := range map[float64]string{
		-1:  "no counter that could be taken off",
		-2:  "-2 is no number of counters",
		1.5: "1.5 is no number of counters",
		21:  "20 at most",
	} {
		err := s.Refuses(play.Act{Do: play.Counter, What: row, N: n})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%g counters are answered %v, want %q in it", n, err, want)
		}
	}
	if less := s.View().Call.Rows[0].Less; less.Enabled || !strings.Contains(less.Why, "no counter") {
		t.Errorf("one fewer than none is %+v", less)
	}
}

// TestAskedOnlyForOpenCounters: the question names how many are open, and there is
// none once all are threaded or the belief is sealed.
func TestAskedOnlyForOpenCounters(t *testing.T) {
	const row = "pins_seized@front_right"
	s := acted(t, play.Act{Do: play.OpenCall}, play.Act{Do: play.Row, What: row})
	_, words := playtest.Desk(t)
	for _, n := range []int{0, 19, 20} {
		if err := s.Do(play.Act{Do: play.Counter, What: row, N: float64(n)}); err != nil {
			t.Fatal(err)
		}
		want := ""
		if n < play.Counters {
			want = words.Say("play.ask_seal", "open", play.Counters-n, "of", play.Counters)
		}
		if ask := s.View().Call.Ask; ask != want {
			t.Errorf("with %d threaded the question is %q, want %q", n, ask, want)
		}
	}
	for _, a := range []play.Act{{Do: play.Counter, What: row, N: 3}, {Do: play.Seal}} {
		if err := s.Do(a); err != nil {
			t.Fatal(err)
		}
	}
	if ask := s.View().Call.Ask; ask != "" {
		t.Errorf("a sealed belief asks %q", ask)
	}
}
