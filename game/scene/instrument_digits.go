package scene

import (
	"math"

	"evenwear/game/draw"
)

// thermometer draws the infrared thermometer held to the matt spot of the hub;
// its display shows its digits.
func (m *mount) thermometer() {
	c, th := m.c, m.c.Theme
	// Half section of disc and hat, cut, with the spot on the hat's face.
	m.part(22, 14, 20, 92, draw.HatchDisc)
	hat := []draw.Pt{m.at(22, 106), m.at(42, 106), m.at(42, 122), m.at(70, 122), m.at(70, 226), m.at(52, 226), m.at(52, 138), m.at(22, 138)}
	c.Part(hat, draw.HatchDisc, m.at(22, 14))
	m.breakLine(18, 14, 46, 14)
	m.breakLine(48, 226, 74, 226)
	m.box(70, 152, 5, 24, th.Rub, draw.Thin)
	m.line(75, 154, 196, 150, draw.Hidden)
	m.line(75, 174, 196, 170, draw.Hidden)
	m.say(92, 200, draw.Left, "instrument.matt_spot")
	m.line(90, 194, 76, 178, draw.Thin)
	m.lines(92, 218, 100, "instrument.bright_low")
	m.say(60, 34, draw.Left, "instrument.disc")
	m.leader(56, 30, 36, 36)
	m.say(60, 96, draw.Left, "instrument.hub")
	m.leader(66, 100, 58, 130)

	gun := []draw.Pt{m.at(206, 138), m.at(214, 116), m.at(310, 108), m.at(320, 122), m.at(320, 172), m.at(300, 184), m.at(312, 244), m.at(278, 244), m.at(262, 186), m.at(206, 180)}
	c.Polygon(gun, th.Body)
	c.Outline(gun, draw.Visible)
	m.box(196, 142, 10, 36, th.Rub, draw.Visible)
	c.Polyline([]draw.Pt{m.at(262, 186), m.at(250, 190), m.at(252, 206), m.at(268, 208)}, draw.Visible)
	m.display(214, 124, 98, 48)
}

// tester draws the water tester with its prongs in the cup of brake fluid and its
// needle on an arc.
func (m *mount) tester() {
	v := m.v
	x, ok := m.onScale()
	if !ok {
		return
	}
	c, th := m.c, m.c.Theme
	m.box(50, 4, 230, 136, th.Panel, draw.Visible)
	s := arc{c: m.at(165, 124), a: -1.2, b: 1.2, lo: v.Lo, hi: v.Hi}
	const r = 106.0
	c.Arc(s.c, r*m.k, -math.Pi/2-1.2, -math.Pi/2+1.2, draw.Thin)
	first, count := marks(v.Lo, v.Hi, v.Division)
	long := every(v.Long, v.Division)
	st := m.style(draw.SmallText).To(draw.Middle)
	for i := first; i < first+count; i++ {
		at := float64(i) * v.Division
		l := 6.0
		switch {
		case i%long == 0:
			l = 13
			p := s.at(at, (r-22)*m.k)
			p.Y += st.Size * 0.36
			c.Text(p, st, th.Ink, figureOf(at))
		case long%2 == 0 && i%(long/2) == 0:
			l = 10
		}
		c.Line(s.at(at, r*m.k), s.at(at, (r-l)*m.k), draw.Thin)
	}
	ink := th.Ink
	c.Line(s.c, s.at(min(max(x, v.Lo), v.Hi), (r-1)*m.k), draw.Visible.Wide(1.6))
	c.Circle(s.c, 5*m.k, &ink, draw.Pen{})
	m.say(272, 132, draw.Right, "instrument.water")

	m.box(146, 140, 38, 14, th.Piston, draw.Visible)
	fluid := m.rect(92, 190, 146, 48).Corners()
	c.Level(fluid[:], 1, fluid[0])
	c.Line(fluid[0], fluid[1], draw.Thin)
	for _, x := range [2]float64{154, 170} { // the prongs
		m.box(x, 154, 6, 62, th.Pin, draw.Visible)
	}
	c.Polyline([]draw.Pt{m.at(92, 170), m.at(92, 238), m.at(238, 238), m.at(238, 170)}, draw.Visible)
	m.say(262, 206, draw.Left, "instrument.fluid")
	m.leader(258, 202, 220, 216)
	m.say(196, 164, draw.Left, "instrument.prongs")
	m.line(194, 162, 177, 172, draw.Thin)
}

// display draws a display with its digits and unit as large as fits.
func (m *mount) display(x, y, w, h float64) {
	m.box(x, y, w, h, m.c.Theme.Panel, draw.Visible)
	s := m.v.Digits + " " + m.v.Unit
	st := draw.ValueText.At(24 * m.k).To(draw.Middle)
	for st.Size > 14 && m.c.Measure(st, s) > (w-10)*m.k {
		st.Size -= 1
	}
	p := m.at(x+w/2, y+h/2)
	p.Y += st.Size * 0.36
	m.c.Text(p, st, m.c.Theme.Ink, s)
}
