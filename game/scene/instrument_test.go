package scene

import (
	"testing"

	"evenwear/game/draw"
	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
)

// swingOf is the needle over a turn with a run-out [mm].
func swingOf(mid, runout float64) (list []float64) {
	turn := arc{a: 0, b: 6.283185307179586, lo: 0, hi: 24}
	for i := range 25 {
		list = append(list, mid-runout/2*turn.dir(float64(i)).Y)
	}
	return list
}

// shown are instruments as a job shows them.
var shown = []play.InstrumentView{
	{Check: "lining_outer_upper@front_left", Kind: "stepped_feeler", Unit: "mm", Division: 1, Long: 1, Lo: 2, Hi: 12, Pad: "outer", Half: "upper", Needle: []float64{8.5}},
	{Check: "lining_inner_upper@front_left", Kind: "stepped_feeler", Unit: "mm", Division: 1, Long: 1, Lo: 2, Hi: 12, Pad: "inner", Half: "upper", Needle: []float64{6.5}},
	{Check: "runout@front_left", Kind: "dial_indicator", Unit: "mm", Division: 0.01, Long: 0.1, Lo: 0, Hi: 1, Needle: swingOf(0.22, 0.12)},
	{Check: "hub_play@front_left", Kind: "dial_indicator", Unit: "mm", Division: 0.01, Long: 0.1, Lo: 0, Hi: 1, Needle: []float64{0.12, 0.18}},
	{Check: "pedal_travel", Kind: "rule", Unit: "mm", Division: 1, Long: 10, Lo: 0, Hi: 200, Needle: []float64{168, 106}},
	{Check: "unknown", Kind: "unknown", Unit: "bar", Division: 0.1, Long: 1, Lo: 0, Hi: 10, Needle: []float64{4.3}},
}

// TestInstrumentPictures draws every kind in a ruled cell, small as on a list.
func TestInstrumentPictures(t *testing.T) {
	for _, slate := range []bool{false, true} {
		a := testApp(t, slate)
		name := "instruments"
		if slate {
			name += "-slate"
		}
		const cols, w, h = 3, 346.0, 266.0
		rows := (len(shown) + cols - 1) / cols
		size := draw.Pt{X: cols*w + 16, Y: float64(rows)*h + 16}
		c := draw.NewSheet(int(size.X), int(size.Y), size, a.theme, a.fonts)
		c.Clear(draw.Rect{W: size.X, H: size.Y})
		for i := range shown {
			r := draw.Rect{X: 8 + w*float64(i%cols), Y: 8 + h*float64(i/cols), W: w, H: h}
			c.Box(r, nil, draw.Thin)
			drawInstrument(c, a.words, &shown[i], r.Inset(8), 0.4)
		}
		drawtest.Golden(t, name, c.Image())
	}
}
