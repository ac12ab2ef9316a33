package scene

import (
	"math"

	"evenwear/game/draw"
)

// The thickness gauge on its mount [unit]: where the thimble's edge stands over
// the sleeve, how far apart half millimetres stand along the sleeve and
// hundredths round the thimble.
const (
	thimbleEdge = 214.0
	sleeveHalf  = 8.0
	sleeveLip   = 2.0 // an uncovered line stands this far off the edge
	thimbleStep = 7.2
)

// gauge draws the disc thickness gauge: the frame over the disc and, enlarged,
// its sleeve with whole millimetres above the line, halves below it and the
// fifty divisions of the thimble. Of two places measured both are drawn.
func (m *mount) gauge() {
	if len(m.v.Needle) == 0 {
		return
	}
	m.gaugeFrame()
	if len(m.v.Needle) == 1 {
		m.barrel(m.v.Needle[0], 104, 136, "")
		return
	}
	m.barrel(m.v.Needle[0], 88, 76, "instrument.thickest")
	m.barrel(m.v.Needle[1], 172, 76, "instrument.thinnest")
}

// gaugeFrame draws the gauge's frame over the disc's section. Its gap is no
// scale: only the sleeve is.
func (m *mount) gaugeFrame() {
	c, th := m.c, m.c.Theme
	bow := []draw.Pt{m.at(24, 2), m.at(146, 2), m.at(146, 54), m.at(130, 54), m.at(130, 20), m.at(44, 20), m.at(44, 54), m.at(24, 54)}
	c.Polygon(bow, th.Body)
	c.Outline(bow, draw.Visible)
	m.part(72, 28, 30, 50, draw.HatchDisc)
	m.breakLine(68, 78, 106, 78)
	for _, tip := range [2][2]float64{{44, 72}, {130, 102}} { // pointed anvils
		d := math.Copysign(12, tip[0]-tip[1])
		o := []draw.Pt{m.at(tip[0], 37), m.at(tip[1]+d, 37), m.at(tip[1], 43), m.at(tip[1]+d, 49), m.at(tip[0], 49)}
		c.Polygon(o, th.Pin)
		c.Outline(o, draw.Thin)
	}
	m.box(146, 36, 56, 14, th.Panel, draw.Visible)
	m.box(202, 31, 64, 24, th.Piston, draw.Visible)
	for x := 222.0; x < 264; x += 5 {
		m.line(x, 32, x, 54, draw.Thin)
	}
	m.box(266, 37, 16, 12, th.Panel, draw.Visible)
	m.line(14, 43, 292, 43, draw.Centre)
	m.say(112, 76, draw.Left, "instrument.enlarged")
	m.c.Arrow(m.at(202, 60), m.at(202, 80), draw.Head)
}

// barrel draws the sleeve and the thimble at a thickness [mm], in a strip h high.
func (m *mount) barrel(v, y, h float64, label string) {
	c, th := m.c, m.c.Theme
	const x0 = 14.0
	mid := y + h*0.56
	m.box(x0, y+5, thimbleEdge-x0, h-10, th.Panel, draw.Visible)
	m.line(x0, mid, thimbleEdge, mid, draw.Thin)
	sleeve := ruler{m.at(0, mid), m.at(1, mid), 0, 1}
	sleeve.a = m.at(thimbleEdge-sleeveLip-2*sleeveHalf*v, mid)
	sleeve.b = m.at(thimbleEdge-sleeveLip-2*sleeveHalf*(v-1), mid)
	last := int(math.Floor(v*2 + 1e-6)) // lines that the thimble has uncovered
	first := max(int(math.Ceil((v-(thimbleEdge-x0-6)/(2*sleeveHalf))*2)), 0)
	for i := first; i <= last; i++ {
		p := sleeve.at(float64(i) / 2)
		l := 9.0
		switch {
		case i%2 == 1:
			l = -9
		case i%10 == 0:
			l = 15
		}
		c.Line(p, p.Sub(draw.Pt{Y: l * m.k}), draw.Thin)
		if i%10 == 0 && p.X > m.at(x0+10, 0).X && p.X < m.at(thimbleEdge-9, 0).X {
			m.c.Text(p.Sub(draw.Pt{Y: 18 * m.k}), m.style(draw.SmallText).To(draw.Middle), th.Ink, figureOf(float64(i/2)))
		}
	}
	m.thimble(v, y, h, mid)
	if label != "" {
		m.say(x0+8, y+h-11, draw.Left, label)
	}
}

// thimble draws the round of the thimble, unrolled. The division at the sleeve's
// line is what the thimble adds.
func (m *mount) thimble(v, y, h, mid float64) {
	th := m.c.Theme
	m.box(thimbleEdge, y, 64, h, th.Piston, draw.Visible)
	m.box(thimbleEdge+64, y, 42, h, th.Piston, draw.Visible)
	for x := thimbleEdge + 70.0; x < thimbleEdge+104; x += 5 {
		m.line(x, y+1, x, y+h-1, draw.HatchPen)
	}
	turn := v * 100 // hundredths since the sleeve's zero; fifty to a turn
	s := ruler{m.at(thimbleEdge, mid), m.at(thimbleEdge, mid-thimbleStep), turn, turn + 1}
	lo := int(math.Ceil(turn - (y+h-4-mid)/thimbleStep))
	hi := int(math.Floor(turn + (mid-y-4)/thimbleStep))
	for i := lo; i <= hi; i++ {
		p := s.at(float64(i))
		n := ((i % 50) + 50) % 50
		l := 12.0
		if n%5 == 0 {
			l = 22
		}
		m.c.Line(p, p.Add(draw.Pt{X: l * m.k}), draw.Thin)
		st := m.style(draw.SmallText)
		q := p.Add(draw.Pt{X: 27 * m.k, Y: st.Size * 0.36})
		if n%5 == 0 && q.Y-st.Size*0.8 > m.at(0, y).Y && q.Y+2 < m.at(0, y+h).Y {
			m.c.Text(q, st, th.Ink, figureOf(float64(n)))
		}
	}
}
