package play_test

import (
	"math"
	"strings"
	"testing"

	"evenwear/game/play"
)

// TestBenchMovementOfThisPress: what a body slid while its linings wore is no
// part of what this press moves.
func TestBenchMovementOfThisPress(t *testing.T) {
	slid := map[string]float64{}
	for _, cause := range []string{"", "pins_seized@front_left"} {
		b := bench(t)
		act(t, b, play.Act{Do: play.Put, What: cause}, play.Act{Do: play.Foot, N: 33})
		if v := b.View(); v.BodyEnds != [2]float64{} {
			t.Errorf("%q: at rest the body is said to have slid %v mm", cause, v.BodyEnds)
		}
		act(t, b, play.Act{Do: play.Press})
		b.Advance(1000)
		b.Advance(1000)
		v := b.View()
		slid[cause] = max(v.BodyEnds[0], v.BodyEnds[1])
		if b.Do(play.Act{Do: play.Press}); cause != "" && v.Now.Pin[0] < 1 {
			t.Errorf("%q: the pins hold %v kN only", cause, v.Now.Pin)
		}
		b.Advance(1000)
		if v := b.View(); max(v.BodyEnds[0], -v.BodyEnds[0]) > 0.005 {
			t.Errorf("%q: let go, the body stays %.3f mm from where it was: what is seized only bends", cause, v.BodyEnds[0])
		}
		if cause != "" && v.Now.Body < 1 {
			t.Errorf("%q: the body stands %.2f mm from where it was new: the case shows nothing", cause, v.Now.Body)
		}
	}
	if free := slid[""]; free < 0.03 || free > 0.1 {
		t.Errorf("a healthy body slid %.3f mm under 33 N, want the outer gap of 0.01 and its squeeze", free)
	}
}

// TestBenchSaysItsKilometres: a new car has none; the one a cause is put in is driven.
func TestBenchSaysItsKilometres(t *testing.T) {
	b := bench(t)
	if km := b.View().Title.Km; km != 0 {
		t.Errorf("a new car says %g km", km)
	}
	worn := func() float64 { return b.View().Now.Lining[0][0] }
	fresh := worn()
	act(t, b, play.Act{Do: play.Put, What: "pins_dry@front_left"})
	if km := b.View().Title.Km; km != 40000 || worn() >= fresh {
		t.Errorf("the driven car says %g km, its lining is %.2f of %.2f mm", km, worn(), fresh)
	}
	act(t, b, play.Act{Do: play.Put})
	if km := b.View().Title.Km; km != 0 || worn() != fresh {
		t.Errorf("healthy again, the car says %g km, lining %.2f mm", km, worn())
	}
}

// TestBenchTurnsToTheCause: the caliper on the bench is one that the cause is at.
func TestBenchTurnsToTheCause(t *testing.T) {
	b := bench(t)
	for _, x := range []struct{ put, wheel, said string }{
		{"pins_dry@rear_right", "rear_right", "rear right"},
		{"pins_dry@rear_right", "rear_right", ""}, // there already
		{"pin_seized@front_right.upper_pin", "front_right", "front right"},
	} {
		act(t, b, play.Act{Do: play.Put, What: x.put})
		v := b.View()
		if v.Wheel != x.wheel || (v.Notice == "") != (x.said == "") || !strings.Contains(v.Notice, x.said) {
			t.Errorf("%s: %s on the bench, notice %q", x.put, v.Wheel, v.Notice)
		}
	}
	if v := b.View(); v.Now.Pins[0] != "stuck" {
		t.Errorf("the seized pin is not on the bench: %v", v.Now.Pins)
	}
	err := b.Do(play.Act{Do: play.Pin, What: "upper", Text: "free"})
	if err == nil || !strings.Contains(err.Error(), "stuck") || b.View().ByHand {
		t.Errorf("a pin that the cause holds was set free: %v", err)
	}
}

// TestBenchHealthy: nothing is called healthy while a pin is set by hand, and
// taking all out frees the pins.
func TestBenchHealthy(t *testing.T) {
	b := bench(t)
	if v := b.View(); !v.Healthy() || v.ByHand {
		t.Error("a new car is not healthy")
	}
	act(t, b, play.Act{Do: play.Pin, What: "upper", Text: "stuck"})
	if v := b.View(); v.Healthy() || !v.ByHand {
		t.Error("a stuck pin counts as healthy")
	}
	act(t, b, play.Act{Do: play.Put})
	if v := b.View(); !v.Healthy() || v.Now.Pins != [2]string{"free", "free"} {
		t.Errorf("all out, yet pins %v", v.Now.Pins)
	}
}

// TestBenchAsksBeforeThePress: the question names its force, is answered at rest
// only, and compared at that force only.
func TestBenchAsksBeforeThePress(t *testing.T) {
	b := bench(t)
	act(t, b, play.Act{Do: play.Pin, What: "upper", Text: "stuck"}, play.Act{Do: play.Foot, N: 150})
	if v := b.View(); !strings.Contains(v.Predict.Question, "150 N") || !v.Predict.Open {
		t.Errorf("asked: %+v", v.Predict)
	}
	act(t, b, play.Act{Do: play.Say, N: 40}, play.Act{Do: play.Press})
	if err := b.Do(play.Act{Do: play.Say, N: 86}); err == nil || b.View().Predict.Said != 40 || b.View().Predict.Open {
		t.Errorf("answered while pressed: %v", err)
	}
	act(t, b, play.Act{Do: play.Foot, N: 60})
	b.Advance(1000)
	b.Advance(1000)
	if v := b.View(); v.Predict.Computed >= 0 || !strings.Contains(v.Predict.Question, "150 N") || !strings.Contains(v.Predict.Comment, "150 N") {
		t.Errorf("at 60 N a share for 150 N was met: %+v", v.Predict)
	}
	act(t, b, play.Act{Do: play.Foot, N: 150})
	b.Advance(1000)
	b.Advance(1000)
	p := b.View().Predict
	if p.Computed < 80 || p.Computed > 90 || !strings.Contains(p.Comment, "points too low: at 150 N") {
		t.Errorf("at 150 N: %+v", p)
	}
	act(t, b, play.Act{Do: play.Press})
	b.Advance(1000)
	if p := b.View().Predict; !p.Open || p.Computed < 0 {
		t.Errorf("let go: %+v", p)
	}
	act(t, b, play.Act{Do: play.Foot, N: 33})
	if p := b.View().Predict; p.Computed >= 0 || !strings.Contains(p.Question, "33 N") {
		t.Errorf("another force is another question: %+v", p)
	}
}

// TestBenchKeepsTheLastSeconds: the plot holds four seconds, and after the pedal
// has come to rest it stands to be looked at.
func TestBenchKeepsTheLastSeconds(t *testing.T) {
	b := bench(t)
	b.Advance(1000)
	if v := b.View(); v.Time != 0 || len(v.Plot) != 0 {
		t.Errorf("before a press the clock shows %.1f s", v.Time)
	}
	act(t, b, play.Act{Do: play.Press})
	for range 10 {
		b.Advance(1000)
	}
	v := b.View()
	if first := v.Plot[0].Time; math.Abs(v.Time-10) > 1e-9 || first > v.Time-4 || first < v.Time-4.1 {
		t.Errorf("after %.2f s the plot begins at %.2f s", v.Time, first)
	}
	act(t, b, play.Act{Do: play.Press})
	for range 5 {
		b.Advance(1000)
	}
	if v := b.View(); v.Time < 10.9 || v.Time > 11.5 || v.Plot[len(v.Plot)-1].Pressure > 0.1 || v.Plot[0].Pressure < 0.5 {
		t.Errorf("let go for 5 s: clock %.2f s, plot from %.2f to %.2f MPa", v.Time, v.Plot[0].Pressure, v.Plot[len(v.Plot)-1].Pressure)
	}
}
