package scene

import (
	"testing"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// TestRodByPointer: a press on a rod threads it up to there, no further than there
// are counters left; pressed where it ends already it says why there are no more.
func TestRodByPointer(t *testing.T) {
	hands(t, false, func(h *hand) {
		if h.use == "keys" {
			return
		}
		const one, other = "pins_seized@front_right", "pins_dry@front_right"
		acts(h.t, h.job, play.Act{Do: play.Row, What: one}, play.Act{Do: play.Row, What: other})
		h.app.Pressables()
		n := len(h.session.Acts())
		press := func(row int, nut float64) {
			r := h.job.sheet.(*call).rows.Row(row)
			rod := rodOf(&h.job.view.Call.Rows[row], r)
			point(h.app, draw.Pt{X: rod.Rect.X + nut*rod.Rect.W/widget.Counters, Y: r.Centre().Y}, h.use == "touch")
			sameAsWhole(h.t, h.app, "a rod")
		}
		counter := func(row string, n float64) play.Act { return play.Act{Do: play.Counter, What: row, N: n} }
		press(0, 12.6) // within the thirteenth nut
		press(0, 4.7)
		press(0, 0.2)
		press(0, 15.7)
		press(1, 19.9) // four are left
		press(1, 10)
		want := []play.Act{counter(one, 13), counter(one, 5), counter(one, 0), counter(one, 16), counter(other, 4)}
		h.want(n, want...)
		if got := h.job.view.Notice; got == "" || got != h.job.view.Call.Rows[1].More.Why {
			h.t.Errorf("pressed beyond the last counter the sheet says %q", got)
		}
		acts(h.t, h.job, play.Act{Do: play.Seal})
		h.app.Pressables()
		press(0, 2)
		h.want(n, append(want, play.Act{Do: play.Seal})...)
		if h.job.view.Notice == "" {
			h.t.Error("a sealed rod says nothing when it is pressed")
		}
	})
}
