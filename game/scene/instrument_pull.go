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
	c := m.c
	y, from := 62.0, 166.0 // of the balance; where it takes hold
	switch id := m.check(); {
	case push:
		m.bore()
		m.say(126, 128, draw.Middle, "instrument.piston")
		m.leader(126, 116, 126, 80)
	case id == "turning_force" || id == "braked_force":
		y, from = 26, 84
		m.tyre()
	case id == "ear_inner" || id == "ear_outer":
		from = 112
		m.padInCarrier()
	default:
		switch m.v.Half {
		case "upper":
			y = 26
		case "lower":
			y = 98
		}
		m.caliper()
	}
	// A hook pulls, a rod presses; the arrow says which way.
	if push {
		m.box(170, y-4, 40, 8, m.c.Theme.Pin, draw.Thin)
		c.Arrow(m.at(300, y), m.at(288, y), draw.Head)
	} else {
		m.line(from, y, 210, y, draw.Visible)
		m.dot(from, y)
		c.Arrow(m.at(286, y), m.at(306, y), draw.Head)
	}
	m.box(210, y-9, 72, 18, c.Theme.Panel, draw.Visible)
	m.line(218, y, 274, y, draw.Thin)
	m.say(246, y+32, draw.Middle, "instrument.enlarged")
	c.Arrow(m.at(290, y+16), m.at(290, 134), draw.Head)
}

// tyre draws the lifted wheel with the cord that comes off it at the top.
func (m *mount) tyre() {
	th := m.c.Theme
	at := m.at(84, 74)
	m.c.Circle(at, 48*m.k, &th.Rub, draw.Visible)
	m.c.Circle(at, 33*m.k, &th.Panel, draw.Visible)
	m.c.Circle(at, 10*m.k, &th.Plate, draw.Visible)
	m.c.Arc(at, 40*m.k, -2.6, -0.6, draw.Thin.In(th.Panel))
	m.say(140, 46, draw.Left, "instrument.cord")
	m.leader(150, 36, 158, 26)
}

// padInCarrier draws a pad that its ears hold between the carrier's rails.
func (m *mount) padInCarrier() {
	m.part(22, 10, 128, 16, draw.HatchCarrier)
	m.part(22, 98, 128, 16, draw.HatchCarrier)
	m.part(88, 36, 12, 52, draw.HatchLining)
	m.part(100, 20, 12, 84, draw.HatchPlate)
	m.say(30, 66, draw.Left, "instrument.ears")
	m.line(44, 56, 100, 24, draw.Thin)
	m.line(44, 72, 100, 100, draw.Thin)
}
