package scene

import (
	"evenwear/game/draw"
)

// rule draws the rule that stands on the floor beside the pedal, with the
// pedal's edge at the first position dashed and at the second full, and both
// places of the rule enlarged.
func (m *mount) rule() {
	c, th := m.c, m.c.Theme
	s := ruler{m.at(96, 236), m.at(96, 12), m.v.Lo, m.v.Hi}
	if !(m.v.Hi > m.v.Lo) || !(m.v.Division > 0) {
		return
	}
	m.floor(8, 160, 236)
	m.box(96, 6, 40, 230, th.Panel, draw.Visible)
	above := ruler{s.at(s.lo + 5*m.v.Division), s.b, s.lo + 5*m.v.Division, s.hi} // zero is the floor
	m.graduate(&above, 5*m.v.Division, 2*m.v.Long, 9*m.k, right)
	for i := range 2 {
		v, ok := m.needle(i)
		if !ok {
			break
		}
		edge := s.at(v)
		y := (edge.Y - m.o.Y) / m.k
		m.pedal(90, y, i == 0)
		pen := draw.Thin
		if i == 0 {
			pen = draw.Hidden
		}
		m.line(90, y, 105, y, pen) // over the marks, not over the figures
		m.line(136, y, 156, y, pen)
		top := 14 + 120*float64(i)
		m.ruleDetail(v, top, i == 0)
		m.line(156, y, 190, top+50, pen)
		m.say(190, top-2, draw.Left, "instrument."+[2]string{"first.", "second."}[i]+m.check())
	}
	c.Line(m.at(96, 236), m.at(136, 236), draw.Visible)
}

// ruleDetail enlarges the rule about a position: a division is five units.
func (m *mount) ruleDetail(v, top float64, first bool) {
	const h, half, clear = 100.0, 9.0, 5.0 // a figure at either end stands clear of the edge
	x := 206.0
	lo, hi := window(v, half*m.v.Division, m.v.Division)
	s := ruler{m.at(x, top+4+h-clear), m.at(x, top+4+clear), lo, hi}
	m.box(x, top+4, 60, h, m.c.Theme.Panel, draw.Thin)
	m.graduate(&s, m.v.Division, m.v.Long, 18*m.k, right)
	p := s.at(v)
	pen := draw.Visible
	if first {
		pen = draw.Hidden.Wide(2.1)
	}
	m.c.Line(draw.Pt{X: p.X - 16*m.k, Y: p.Y}, draw.Pt{X: p.X + 20*m.k, Y: p.Y}, pen)
}

// pedal draws the pad of the pedal with its upper edge at a height, and the arm
// that it hangs on.
func (m *mount) pedal(x, y float64, dashed bool) {
	o := [4]draw.Pt{m.at(x-40, y-12), m.at(x, y), m.at(x-2, y+6), m.at(x-42, y-6)}
	arm := [3]draw.Pt{m.at(x-22, y-6), m.at(x-21, y-22), m.at(x-27, y-31)}
	if dashed {
		m.c.Outline(o[:], draw.Hidden)
		m.c.Polyline(arm[:], draw.Hidden)
		return
	}
	m.c.Polygon(o[:], m.c.Theme.Plate)
	m.c.Outline(o[:], draw.Visible)
	m.c.Polyline(arm[:], draw.Visible)
}

// floor draws the ground with its hatch under it.
func (m *mount) floor(x0, x1, y float64) {
	m.line(x0, y, x1, y, draw.Visible)
	for x := x0 + 4; x < x1; x += 9 {
		m.line(x, y+8, x+6, y+1, draw.Thin)
	}
}
