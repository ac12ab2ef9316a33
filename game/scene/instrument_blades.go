package scene

import (
	"math"

	"evenwear/assets"
	"evenwear/game/draw"
)

// The packs of blade feelers on their mount [unit]: the mouth of the gap, how far
// in a pack goes, the first pack and from one to the next.
const (
	bladeMouth = 128.0
	bladeIn    = 56.0
	bladeTop   = 28.0
	bladePitch = 19.0
	bladeRows  = 11
	bladeDisc  = 236.0 // where the disc ends, at its rim
)

// blades draws a gap seen from above its mouth and packs of blades laid to it,
// thinner ones first: those that go in reach under the edge, the others stop at
// it. Eleven of them are in sight, the ten of one row of the box and the next.
func (m *mount) blades() {
	gap, ok := m.onScale()
	step := m.v.Division
	if !ok || m.v.Hi/step > 1000 {
		return
	}
	c, th := m.c, m.c.Theme
	last := int(math.Round(m.v.Hi / step))
	clears := int(clamp(math.Floor(gap/step+1e-9), 0, float64(last)))
	first := min(clears/10*10, max(0, last-bladeRows+1))
	m.part(14, 16, bladeMouth-14, 226, m.under())
	if m.check() == "clearance" {
		m.bladesOnDisc()
	}
	m.line(bladeMouth, 8, bladeMouth, 242, draw.Visible.Wide(3))
	for i := range bladeRows {
		n := first + i
		if n == 0 || n > last {
			continue // no pack is nothing thick
		}
		x, y := bladeMouth+3, bladeTop+bladePitch*float64(i)-8
		if n <= clears {
			x = bladeIn
		}
		o := []draw.Pt{m.at(x+6, y), m.at(318, y), m.at(318, y+14), m.at(x+6, y+14), m.at(x, y+10), m.at(x, y+4)}
		c.Polygon(o, th.Panel)
		c.Outline(o, draw.Visible)
		m.middle(290, y+7, draw.Middle, assets.Figure(float64(n)*step, 2))
	}
	m.say(bladeMouth+6, 14, draw.Left, "instrument.blade."+m.mouth())
	m.text(318, 14, draw.Right, m.v.Unit)
}

// bladesOnDisc draws what the gap is between: the disc, which is wider than the
// lining and goes on under it; the blades lie on it.
func (m *mount) bladesOnDisc() {
	m.box(bladeMouth, 20, bladeDisc-bladeMouth, 218, m.c.Theme.Disc, draw.Visible)
	m.say(70, 12, draw.Middle, "instrument.lining")
	m.leader(70, 15, 70, 26)
	m.say(bladeDisc+14, 250, draw.Left, "instrument.disc")
	m.leader(bladeDisc+12, 246, bladeDisc-12, 234)
}

// mouth is what a gap is called.
func (m *mount) mouth() string {
	if m.check() == "clearance" {
		return "clearance"
	}
	return "plate"
}

// under is what covers the gap.
func (m *mount) under() draw.HatchKind {
	if m.check() == "clearance" {
		return draw.HatchLining
	}
	return draw.HatchBody
}
