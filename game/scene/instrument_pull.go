package scene

import (
	"evenwear/game/draw"
)

// pullGauge draws the spring balance: a plunger whose pointer runs along the
// scale on the tube. It pulls at the body, at one end of it, or presses the
// piston back.
func (m *mount) pullGauge() {
	v := m.v
	x, ok := m.onScale()
	if !ok {
		return
	}
	c, th := m.c, m.c.Theme
	push := m.check() == "push_piston"
	m.pulled(push)
	// The tube with its slot.
	m.box(12, 138, 306, 96, th.Panel, draw.Visible)
	m.box(18, 150, 294, 12, th.Pin, draw.Thin)
	s := ruler{m.at(30, 168), m.at(296, 168), v.Lo, v.Hi}
	p := s.at(x)
	spring := make([]draw.Pt, 0, 32)
	from := m.at(18, 156)
	for i := range 31 {
		y := -4.5 * m.k
		if i%2 == 1 {
			y = -y
		}
		spring = append(spring, draw.Pt{X: from.X + (p.X-5*m.k-from.X)*float64(i)/30, Y: from.Y + y})
	}
	c.Polyline(spring, draw.Thin)
	c.Box(draw.Rect{X: p.X - 5*m.k, Y: m.at(0, 151).Y, W: 10 * m.k, H: 10 * m.k}, &th.Plate, draw.Thin)
	c.Line(s.a, s.b, draw.Thin)
	m.graduate(&s, v.Division, v.Long, 16*m.k, down)
	c.Line(p, draw.Pt{X: p.X, Y: m.at(0, 150).Y}, draw.Visible)
	m.pointer(draw.Pt{X: p.X, Y: p.Y}, down)
	m.text(165, 228, draw.Middle, v.Unit)
}

// pulled draws what the balance is set against, and the balance small beside it.
func (m *mount) pulled(push bool) {
	c, th := m.c, m.c.Theme
	y := 62.0 // of the balance
	if push {
		o := []draw.Pt{m.at(40, 12), m.at(150, 12), m.at(150, 34), m.at(62, 34), m.at(62, 90), m.at(150, 90), m.at(150, 112), m.at(40, 112)}
		c.Part(o, draw.HatchBody, o[0])
		fluid := m.rect(62, 34, 30, 56).Corners()
		c.Level(fluid[:], 1, fluid[0])
		m.part(92, 34, 78, 56, draw.HatchPiston)
		m.line(30, y, 190, y, draw.Centre)
		m.say(126, 128, draw.Middle, "instrument.piston")
		m.leader(126, 116, 126, 80)
	} else {
		switch m.v.Half {
		case "upper":
			y = 26
		case "lower":
			y = 98
		}
		for _, at := range [2]float64{26, 98} { // the pins, not cut, and their boots
			m.box(34, at-5, 60, 10, th.Pin, draw.Visible)
			m.box(78, at-9, 16, 18, th.Rub, draw.Thin)
		}
		m.part(22, 12, 20, 100, draw.HatchCarrier)
		o := m.rect(94, 10, 72, 104).Corners()
		c.Polygon(o[:], th.Body)
		c.Outline(o[:], draw.Visible)
		m.box(110, 38, 40, 48, th.Panel, draw.Thin)
		m.say(130, 66, draw.Middle, "instrument.body")
		m.say(66, 66, draw.Middle, "instrument.pins")
		m.line(66, 52, 66, 32, draw.Thin)
		m.line(66, 71, 66, 92, draw.Thin)
	}
	// A hook pulls, a rod presses; the arrow says which way.
	from := 166.0
	if push {
		from = 170
		m.box(170, y-4, 40, 8, th.Pin, draw.Thin)
		c.Arrow(m.at(300, y), m.at(288, y), draw.Head)
	} else {
		m.line(from, y, 210, y, draw.Visible)
		m.dot(from, y)
		c.Arrow(m.at(286, y), m.at(306, y), draw.Head)
	}
	m.box(210, y-9, 72, 18, th.Panel, draw.Visible)
	m.line(218, y, 274, y, draw.Thin)
	m.say(246, y+32, draw.Middle, "instrument.enlarged")
	c.Arrow(m.at(290, y+16), m.at(290, 134), draw.Head)
}
