package scene

import (
	"testing"

	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// demoHandover brings a job to its hand-over with three looks taken.
func demoHandover(t testing.TB, slate bool) (*App, *Job) {
	t.Helper()
	a, j := demoCall(t, slate)
	acts(t, j, play.Act{Do: play.Seal}, play.Act{Do: play.Remedy, What: "renew_pins@front_right"}, play.Act{Do: play.Remedy, What: "renew_pads@front_axle"}, play.Act{Do: play.Work})
	for _, c := range []string{"pump_running", "reservoir_level", "wetness@front_right", "opening_outer@front_left"} {
		look(t, j, a.words, c)
	}
	acts(t, j, play.Act{Do: play.Release, What: "release.use"})
	return a, j
}

func TestHandoverPicture(t *testing.T) {
	a, j := demoHandover(t, false)
	keys(a, "Z")
	for _, r := range "zBoth guide pins had rusted fast. New pins, boots and front pads. First stops gentle." {
		a.Handle(widget.Event{Kind: widget.TextIn, Rune: r})
	}
	keys(a, "Esc")
	if got := j.view.Work.Told; got != "Both guide pins had rusted fast. New pins, boots and front pads. First stops gentle." {
		t.Errorf("the owner is told %q", got)
	}
	img, _ := a.Draw()
	drawtest.Golden(t, "handover", img)
}
