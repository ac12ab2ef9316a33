package scene

import (
	"testing"

	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
)

func TestCallPictures(t *testing.T) {
	t.Run("open list", func(t *testing.T) {
		a, _ := demoCall(t, false)
		keys(a, "P", "Down", "Enter", "Enter")
		img, _ := a.Draw()
		drawtest.Golden(t, "call-list", img)
	})
	t.Run("sealed", func(t *testing.T) {
		for _, slate := range []bool{false, true} {
			a, j := demoCall(t, slate)
			acts(t, j, play.Act{Do: play.Seal}, play.Act{Do: play.Remedy, What: "renew_pins@front_right"}, play.Act{Do: play.Remedy, What: "renew_pads@front_axle"})
			keys(a, "Enter") // a place is to be picked
			s := j.sheet.(*call)
			s.targets.Focus = s.parts.id
			s.layout()
			keys(a, "Enter", "Enter")
			img, _ := a.Draw()
			drawtest.Golden(t, "call-sealed-"+a.theme.Name, img)
		}
	})
}
