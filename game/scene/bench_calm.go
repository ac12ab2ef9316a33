package scene

import (
	"math"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// With reduced motion asked for, parts jump to where they end and a dashed
// outline stays where they were.

const (
	calmStep = 100   // [ms]
	calmMost = 60    // steps: 6 s, longer than any foot takes
	calmFew  = 5     // steps a foot needs to begin
	calmEnd  = 0.002 // [MPa] in a step: nothing moves that could be seen
)

// jump lets the car settle at once after an act that moves it.
func (b *bench) jump(a play.Act) {
	switch a.Do {
	case play.Press, play.Foot, play.Pin, play.Put, play.Wheel:
	default:
		return
	}
	b.left, b.jumped = b.now, true
	last := b.view.Now.Pressure
	for i := range calmMost {
		b.src.Advance(calmStep)
		b.src.Numbers(b.view)
		p := b.view.Now.Pressure
		if i >= calmFew && math.Abs(p-last) < calmEnd {
			break
		}
		last = p
	}
	b.look()
}

// outline draws where body and plates of section B–B stood.
func (b *bench) outline(c *draw.Canvas, g *pose) {
	line := func(a, z draw.Pt) { c.Line(a, z, draw.Hidden) }
	line(g.body(axisBB, -20, g.radius+18), g.body(axisBB, -20, -g.radius-18))
	pad := g.pad()
	for i := range 2 {
		line(g.back(axisBB, i, pad), g.back(axisBB, i, -pad))
	}
	for _, f := range [2][2]float64{{pad - 17, 25}, {-25, 17 - pad}} {
		line(g.finger(axisBB, fingerW, f[0]), g.finger(axisBB, fingerW, f[1]))
	}
}
