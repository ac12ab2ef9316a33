package scene

import (
	"math"

	"evenwear/game/draw"
)

// pendulum draws the side-force pendulum in the car: it hangs against an arc of
// its scale, geared up as it is, and the piece about the pointer is enlarged.
// The whole arc carries one mark for every five divisions.
func (m *mount) pendulum() {
	v := m.v
	x, ok := m.onScale()
	if !ok {
		return
	}
	c, th := m.c, m.c.Theme
	const r = 118.0
	s := arc{c: m.at(165, 14), a: math.Pi + 1.0, b: math.Pi - 1.0, lo: v.Lo, hi: v.Hi}
	const y, w = 206.0, 270.0
	lo, hi := window(x, 20*v.Division, v.Division)
	m.rays(s.at(max(lo, v.Lo), r*m.k), s.at(min(hi, v.Hi), r*m.k), 165-w/2-12, 165+w/2+12, y-22)
	first, count := marks(v.Lo, v.Hi, 5*v.Division)
	long := every(v.Long, 5*v.Division)
	st := m.style(draw.SmallText).To(draw.Middle)
	for i := first; i < first+count; i++ {
		at := float64(i) * 5 * v.Division
		l := 6.0
		if i%long == 0 {
			l = 10
		}
		if i%(10*long) == 0 {
			l = 14
			p := s.at(at, (r+24)*m.k)
			p.Y += st.Size * 0.36
			c.TextOn(p, st, th.Ink, th.Paper, figureOf(at))
		}
		c.Line(s.at(at, r*m.k), s.at(at, (r+l)*m.k), draw.Thin)
	}
	c.Arc(s.c, r*m.k, math.Pi/2-1, math.Pi/2+1, draw.Visible)
	m.box(140, 4, 50, 10, th.Plate, draw.Visible)
	tip := s.at(x, r*m.k)
	c.Line(s.c, tip, draw.Visible)
	bob := s.at(x, 78*m.k)
	c.Circle(bob, 12*m.k, &th.Piston, draw.Visible)
	c.Circle(s.c, 4*m.k, &th.Panel, draw.Visible)
	m.say(20, 24, draw.Left, "instrument.to_left")
	m.say(310, 24, draw.Right, "instrument.to_right")
	m.text(310, 42, draw.Right, v.Unit)

	part := ruler{m.at(165-w/2, y), m.at(165+w/2, y), lo, hi}
	m.box(165-w/2-12, y-22, w+24, 64, th.Panel, draw.Thin)
	m.edge(&part)
	m.graduate(&part, v.Division, v.Long, 16*m.k, down)
	m.pointer(part.at(x), down)
}

// rays tie a piece of a scale to the window that enlarges it.
func (m *mount) rays(a, b draw.Pt, x0, x1, y float64) {
	m.c.Line(a, m.at(x0, y), draw.Hidden)
	m.c.Line(b, m.at(x1, y), draw.Hidden)
}

// tape draws the tape laid from the mark on the road, where the foot went down,
// to the front of the car where it stands, and enlarges the tape's piece there.
func (m *mount) tape() {
	v := m.v
	x, ok := m.onScale()
	if !ok {
		return
	}
	c, th := m.c, m.c.Theme
	const y = 98.0
	s := ruler{m.at(14, y), m.at(314, y), v.Lo, v.Hi}
	p := s.at(x)
	m.car(p)
	m.line(4, 70, 326, 70, draw.Visible)
	m.line(14, 40, 14, 70, draw.Visible)
	flag := []draw.Pt{m.at(14, 40), m.at(30, 45), m.at(14, 50)}
	c.Polygon(flag, th.Ink)
	m.say(14, 32, draw.Left, "instrument.foot_down")
	m.box(14, y-14, 300, 14, th.Panel, draw.Thin)
	m.graduate(&s, v.Division, v.Long, 12*m.k, down)
	c.Line(draw.Pt{X: p.X, Y: m.at(0, 44).Y}, p, draw.Thin)
	m.pointer(p, down)

	const yy, w = 188.0, 280.0
	lo, hi := window(x, 7*v.Division, v.Division)
	part := ruler{m.at(165-w/2, yy), m.at(165+w/2, yy), lo, hi}
	m.box(165-w/2-14, yy-22, w+28, 68, th.Panel, draw.Thin)
	m.edge(&part)
	m.graduate(&part, v.Division, v.Long, 18*m.k, down)
	m.pointer(part.at(x), down)
	m.text(165+w/2, yy-7, draw.Right, v.Unit)
	m.rays(s.at(max(lo, v.Lo)).Add(draw.Pt{Y: 34 * m.k}), s.at(min(hi, v.Hi)).Add(draw.Pt{Y: 34 * m.k}), 165-w/2-14, 165+w/2+14, yy-22)
}

// car draws the car from its side with its front at a place. Its length is to
// the scale of the tape.
func (m *mount) car(front draw.Pt) {
	u := 3.0 * m.k // a metre, and higher than true so that it is seen
	o := [8]draw.Pt{{X: 0, Y: -1.5}, {X: 0, Y: -3.6}, {X: -1, Y: -4.4}, {X: -1.9, Y: -6.6}, {X: -3.7, Y: -6.6}, {X: -4.1, Y: -4.4}, {X: -4.1, Y: -1.5}, {X: -2, Y: -1.5}}
	base := draw.Pt{X: front.X, Y: m.at(0, 70).Y}
	for i := range o {
		o[i] = base.Add(o[i].Mul(u))
	}
	m.c.Polygon(o[:], m.c.Theme.Body)
	m.c.Outline(o[:], draw.Thin.Wide(1.5))
	for _, x := range [2]float64{-0.9, -3.2} {
		m.c.Circle(base.Add(draw.Pt{X: x * u, Y: -1.1 * u}), 1.1*u, &m.c.Theme.Rub, draw.Thin)
	}
}
