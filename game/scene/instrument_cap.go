package scene

import (
	"evenwear/game/draw"
)

// boilTester draws a drop of brake fluid on the heater of a boiling-point
// tester; its display shows its digits.
func (m *mount) boilTester() {
	c, th := m.c, m.c.Theme
	m.box(120, 20, 196, 116, th.Body, draw.Visible)
	m.display(142, 38, 152, 60)
	m.say(218, 122, draw.Middle, "instrument.boils_at")
	c.Polyline([]draw.Pt{m.at(120, 78), m.at(70, 78), m.at(70, 150)}, draw.Pen{Width: 6 * m.k})
	c.Polyline([]draw.Pt{m.at(120, 78), m.at(70, 78), m.at(70, 150)}, draw.Pen{Width: 6*m.k - 3, Col: th.Plate})
	// The cup in section with its heater under it, and the feeler's tip in the drop.
	m.part(22, 176, 14, 54, draw.HatchBody)
	m.part(104, 176, 14, 54, draw.HatchBody)
	m.part(22, 216, 96, 14, draw.HatchBody)
	drop := m.rect(36, 190, 68, 26).Corners()
	c.Level(drop[:], 2, drop[0])
	c.Line(drop[0], drop[1], draw.Visible)
	for _, b := range [4][3]float64{{46, 208, 3}, {58, 201, 4}, {86, 206, 3.4}, {95, 197, 3}} {
		c.Circle(m.at(b[0], b[1]), b[2]*m.k, &th.Panel, draw.Thin)
	}
	m.box(66, 150, 8, 56, th.Pin, draw.Visible)
	for x := 30.0; x < 112; x += 12 {
		c.Circle(m.at(x+4, 236), 3.6*m.k, &th.Plate, draw.Visible)
	}
	m.say(150, 176, draw.Left, "instrument.feeler_tip")
	m.leader(148, 172, 74, 190)
	m.say(150, 204, draw.Left, "instrument.fluid")
	m.leader(148, 200, 98, 208)
	m.say(150, 238, draw.Left, "instrument.heater")
	m.leader(148, 234, 112, 236)
}

// seeGlass draws a sample of brake fluid in a glass. What it has become is in
// the words, not in the drawing.
func (m *mount) seeGlass() {
	c, th := m.c, m.c.Theme
	fluid := m.rect(126, 142, 78, 92).Corners()
	c.Polygon(fluid[:], th.Fluid[0])
	c.Line(fluid[0], fluid[1], draw.Hidden)
	c.Polyline([]draw.Pt{m.at(126, 106), m.at(126, 236), m.at(204, 236), m.at(204, 106)}, draw.Visible)
	m.floor(60, 270, 238)
	m.say(226, 150, draw.Left, "instrument.sample")
	m.leader(224, 146, 196, 160)
	m.eye(280, 190)
	m.line(268, 188, 210, 180, draw.Hidden)
	m.line(268, 192, 210, 200, draw.Hidden)
}

// seeCap draws the reservoir's cap in section over its neck: lid, vent and the
// folded diaphragm; turned for its air, or off for its rubber.
func (m *mount) seeCap(off bool) {
	c, th := m.c, m.c.Theme
	up := 0.0
	if off {
		up = 22
	}
	// The neck, cut.
	m.part(96, 176, 12, 62, draw.HatchBody)
	m.part(222, 176, 12, 62, draw.HatchBody)
	m.breakLine(92, 238, 112, 238)
	m.breakLine(218, 238, 238, 238)
	m.line(108, 230, 222, 230, draw.Hidden)
	// The lid, cut, with its vent.
	for _, x := range [2][2]float64{{82, 76}, {172, 76}} {
		m.part(x[0], 126-up, x[1], 16, draw.HatchBody)
	}
	m.part(82, 142-up, 12, 44, draw.HatchBody)
	m.part(236, 142-up, 12, 44, draw.HatchBody)
	m.line(158, 126-up, 172, 126-up, draw.Hidden)
	// The diaphragm lies in its folds, blacked in.
	folds := []draw.Pt{m.at(96, 168-up), m.at(120, 168-up), m.at(130, 192-up), m.at(142, 160-up), m.at(188, 160-up), m.at(200, 192-up), m.at(210, 168-up), m.at(234, 168-up)}
	c.Polyline(folds, draw.Pen{Width: 5 * m.k, Col: th.Rub})
	m.say(262, 132, draw.Left, "instrument.vent")
	m.leader(260, 128, 166, 134-up)
	m.say(262, 192, draw.Left, "instrument.diaphragm")
	m.leader(260, 188, 206, 180-up)
	if off {
		m.finger(160, 166-up, 40)
		return
	}
	c.Arc(m.at(165, 134), 96*m.k, 2.75, 3.5, draw.Thin.Wide(1.6))
	tip := m.at(70.8, 115)
	m.pointer(tip, draw.Pt{X: 0.3, Y: -0.954})
}
