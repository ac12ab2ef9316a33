package play_test

import (
	"math"
	"strings"
	"testing"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

func bench(t testing.TB) *play.Bench {
	t.Helper()
	desk, words := playtest.Desk(t)
	b, err := play.NewBench(desk.Library(), words, "compact_hatchback")
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func act(t testing.TB, b *play.Bench, acts ...play.Act) {
	t.Helper()
	for _, a := range acts {
		if err := b.Do(a); err != nil {
			t.Fatal(err)
		}
	}
}

// TestBenchSeizedPin: under the same foot the outer pad of a caliper with a
// seized upper pin gets far less than the inner, the healthy ghost as much.
func TestBenchSeizedPin(t *testing.T) {
	b := bench(t)
	act(t, b, play.Act{Do: play.Pin, What: "upper", Text: "stuck"}, play.Act{Do: play.Foot, N: 33}, play.Act{Do: play.Say, N: 93}, play.Act{Do: play.Press})
	b.Advance(1000)
	b.Advance(1000)
	v := b.View()
	share := 100 * (v.Now.Half[1][0] + v.Now.Half[1][1]) / (v.Now.Half[0][0] + v.Now.Half[0][1])
	if share < 60 || share > 75 {
		t.Errorf("share of the inner force that reaches the outer pad %.1f %%, want 60 to 75 (physics page: 69 %% at 1.28 MPa)", share)
	}
	if v.Ghost == nil {
		t.Fatal("no healthy ghost")
	}
	if g := (v.Ghost.Half[1][0] + v.Ghost.Half[1][1]) / (v.Ghost.Half[0][0] + v.Ghost.Half[0][1]); g < 0.95 {
		t.Errorf("healthy share %.3f, want above 0.95", g)
	}
	if math.Abs(v.Predict.Computed-share) > 1 || !strings.Contains(v.Predict.Comment, "too high") {
		t.Errorf("predicted 93: computed %.1f, comment %q", v.Predict.Computed, v.Predict.Comment)
	}
	sum := v.Balance[1] + v.Balance[2] + v.Balance[3]
	if math.Abs(v.Balance[0]-sum) > 0.02 {
		t.Errorf("body out of balance: %.3f kN against %.3f", v.Balance[0], sum)
	}
	if len(v.Plot) < 90 {
		t.Errorf("%d samples of two seconds", len(v.Plot))
	}
}

// TestBenchSteady: a frame's worth of stepping and its numbers allocate nothing.
func TestBenchSteady(t *testing.T) {
	b := bench(t)
	act(t, b, play.Act{Do: play.Pin, What: "upper", Text: "stuck"}, play.Act{Do: play.Foot, N: 60}, play.Act{Do: play.Press}, play.Act{Do: play.Turn, N: 1})
	b.Advance(500)
	v := b.View()
	v.Plot = make([]play.BenchSample, 0, 400)
	v.Pencil = make([]float64, 0, 1)
	if n := testing.AllocsPerRun(20, func() { b.Advance(16); b.Numbers(v) }); n != 0 {
		t.Errorf("%g allocations a frame, want 0", n)
	}
}

// TestBenchRefuses: what cannot be set is a sentence and changes nothing.
func TestBenchRefuses(t *testing.T) {
	b := bench(t)
	for _, a := range []play.Act{{Do: play.Foot, N: math.NaN()}, {Do: play.Foot, N: -1}, {Do: play.Foot, N: 1e9}, {Do: play.Foot, N: math.Inf(1)},
		{Do: play.Pin, What: "middle", Text: "stuck"}, {Do: play.Pin, What: "upper", Text: "glued"}, {Do: play.Put, What: "gremlin@car"},
		{Do: play.Wheel, What: "spare"}, {Do: play.Say, N: math.NaN()}, {Do: play.Slow, N: 0}, {Do: play.Seal}} {
		if err := b.Do(a); err == nil || strings.Contains(err.Error(), "‹") || b.View().Notice != err.Error() {
			t.Errorf("%+v: %v", a, err)
		}
	}
	if v := b.View(); v.Wanted != 33 || v.Wheel != "front_left" || v.Cause != "" {
		t.Errorf("changed to %+v", v.Title)
	}
}

// TestBenchCauses: every cause of the catalogue can be put in at every place.
func TestBenchCauses(t *testing.T) {
	b := bench(t)
	for _, g := range b.View().Groups {
		for _, c := range g.Causes {
			for _, a := range c.Places {
				act(t, b, a.Act, play.Act{Do: play.Press})
				b.Advance(300)
				if v := b.View(); v.Notice != "" {
					t.Errorf("%s %s: %s", c.ID, a.Label, v.Notice)
				}
			}
		}
	}
}

func BenchmarkBenchAdvance(b *testing.B) {
	x := bench(b)
	act(b, x, play.Act{Do: play.Press}, play.Act{Do: play.Turn, N: 1})
	b.ReportAllocs()
	for b.Loop() {
		x.Advance(1)
	}
}
