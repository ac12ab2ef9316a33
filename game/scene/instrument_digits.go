package scene

import (
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

// tester draws the water tester over the cup of brake fluid; its display shows
// its digits.
func (m *mount) tester() {
	c, th := m.c, m.c.Theme
	m.box(84, 14, 162, 90, th.Body, draw.Visible)
	m.display(104, 28, 122, 58)
	m.box(146, 104, 38, 34, th.Piston, draw.Visible)
	fluid := m.rect(92, 178, 146, 56).Corners()
	c.Level(fluid[:], 1, fluid[0])
	c.Line(fluid[0], fluid[1], draw.Thin)
	for _, x := range [2]float64{154, 170} { // the prongs
		m.box(x, 138, 6, 72, th.Pin, draw.Visible)
	}
	c.Polyline([]draw.Pt{m.at(92, 156), m.at(92, 234), m.at(238, 234), m.at(238, 156)}, draw.Visible)
	m.say(262, 196, draw.Left, "instrument.fluid")
	m.leader(258, 192, 220, 206)
	m.say(196, 126, draw.Left, "instrument.prongs")
	m.line(194, 128, 177, 150, draw.Thin)
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
