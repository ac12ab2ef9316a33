package scene

import (
	"strings"
	"testing"

	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
)

// TestCallSaysAllOfASentence: what the call sheet answers stands at its foot whole,
// however long it is: the longest is what a car is left with when two wheels are off.
func TestCallSaysAllOfASentence(t *testing.T) {
	a := testApp(t, false)
	j, _ := openJob(t, a, "to_the_kerb", 7)
	prepare := func(place string, what ...string) {
		t.Helper()
		acts(t, j, play.Act{Do: play.Go, What: place})
		for _, w := range what {
			acts(t, j, play.Act{Do: play.Prepare, What: w})
		}
	}
	prepare("ground", "chock_rear")
	prepare("front_left", "slacken_nuts@front_left")
	prepare("front_right", "slacken_nuts@front_right")
	prepare("ground", "lift_front")
	for _, w := range []string{"front_left", "front_right"} {
		prepare(w, "stand@"+w, "wheel_off@"+w)
	}
	acts(t, j, play.Act{Do: play.OpenCall})
	said := func(when string) {
		t.Helper()
		a.Draw()
		lines, _ := j.sheet.(*call).note(a.sheet)
		if len(lines) < 2 || len(lines) > noteMost || strings.ReplaceAll(strings.Join(lines, " "), "\u00a0", " ") != j.view.Notice {
			t.Errorf("%s the foot has %d lines, want 2 to %d that say all of %q: %q", when, len(lines), noteMost, j.view.Notice, lines)
		}
	}
	said("on the way to the call")
	img, _ := a.Draw()
	drawtest.Golden(t, "call-left", img)
	acts(t, j, play.Act{Do: play.Seal})
	said("sealed")
}
