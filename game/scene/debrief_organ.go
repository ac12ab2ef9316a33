package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

// drawOrgan draws what is wrong between the foot and the pipes among its
// neighbours, which are dashed: the booster, the master cylinder, or the lamp.
func (s *debrief) drawOrgan(c *draw.Canvas, f *play.FaultView) {
	th := c.Theme
	if f.Organ == "lamp" {
		m := mount{c: c, w: s.words, k: 1, o: draw.Pt{X: 55, Y: 320}}
		m.seeLamp()
		return
	}
	pen := func(organ string) draw.Pen {
		if organ == f.Organ {
			return draw.Visible
		}
		return draw.Hidden
	}
	name := func(x, y float64, id string) {
		c.Text(draw.Pt{X: x, Y: y}, draw.SmallText.To(draw.Middle), th.Ink, s.word(id))
	}
	// Pedal and rod; the rod ends in the booster.
	c.Polyline([]draw.Pt{{X: 58, Y: 392}, {X: 66, Y: 470}, {X: 48, Y: 556}}, draw.Hidden)
	c.Line(draw.Pt{X: 64, Y: 470}, draw.Pt{X: 112, Y: 470}, draw.Hidden)
	drum := []draw.Pt{{X: 122, Y: 402}, {X: 152, Y: 402}, {X: 164, Y: 440}, {X: 164, Y: 500}, {X: 152, Y: 538}, {X: 122, Y: 538}, {X: 112, Y: 500}, {X: 112, Y: 440}}
	if f.Organ == "booster" {
		c.Polygon(drum, th.Body)
		c.Polyline([]draw.Pt{{X: 132, Y: 406}, {X: 138, Y: 446}, {X: 138, Y: 494}, {X: 132, Y: 534}}, draw.Thin) // its diaphragm
	}
	c.Outline(drum, pen("booster"))
	c.Line(draw.Pt{X: 148, Y: 402}, draw.Pt{X: 148, Y: 384}, pen("booster")) // the hose to the engine
	c.Line(draw.Pt{X: 148, Y: 384}, draw.Pt{X: 196, Y: 384}, pen("booster"))
	name(138, 558, "bench_sheet.booster")
	// The bore with its two pistons, a chamber before each, a cup on each.
	bore := draw.Rect{X: 164, Y: 452, W: 190, H: 36}
	if f.Organ == "master_cylinder" {
		c.Box(bore, &th.Panel, draw.Visible)
		for _, x := range [2]float64{186, 268} {
			o := draw.Rect{X: x, Y: 452, W: 20, H: 36}.Corners()
			c.Part(o[:], draw.HatchPiston, o[0])
			c.Line(draw.Pt{X: x + 23, Y: 453}, draw.Pt{X: x + 23, Y: 487}, draw.Pen{Width: 4})
		}
	} else {
		c.Box(bore, nil, draw.Hidden)
	}
	for _, x := range [2]float64{232, 318} { // to the pipes
		c.Line(draw.Pt{X: x, Y: 488}, draw.Pt{X: x, Y: 516}, pen("master_cylinder"))
	}
	name(266, 558, "bench_sheet.master")
	c.Polyline([]draw.Pt{{X: 200, Y: 452}, {X: 200, Y: 434}, {X: 186, Y: 428}, {X: 186, Y: 396}, {X: 332, Y: 396}, {X: 332, Y: 428}, {X: 318, Y: 434}, {X: 318, Y: 452}}, draw.Hidden)
	name(259, 420, "bench_sheet.reservoir")
}
