package scene

import (
	"math"

	"evenwear/game/draw"
)

// What hands and eyes are at when they look at a part of the brake. Each drawing
// is the same whatever is found.

// below is the lower part of the mount as a mount of its own: what is drawn for
// the top then stands under the lettering.
func (m *mount) below(dx, dy float64) *mount {
	n := *m
	n.o = m.at(dx, dy)
	return &n
}

// caliper draws the two pins, not cut, with their boots in the carrier and the
// body that slides on them; 112 high.
func (m *mount) caliper() {
	for _, at := range [2]float64{26, 98} {
		m.box(34, at-5, 60, 10, m.c.Theme.Pin, draw.Visible)
		m.box(78, at-9, 16, 18, m.c.Theme.Rub, draw.Thin)
	}
	m.part(22, 12, 20, 100, draw.HatchCarrier)
	o := m.rect(94, 10, 72, 104).Corners()
	m.c.Polygon(o[:], m.c.Theme.Body)
	m.c.Outline(o[:], draw.Visible)
	m.box(110, 38, 40, 48, m.c.Theme.Panel, draw.Thin)
	m.say(130, 66, draw.Middle, "instrument.body")
	m.say(66, 66, draw.Middle, "instrument.pins")
	m.line(66, 52, 66, 32, draw.Thin)
	m.line(66, 71, 66, 92, draw.Thin)
}

// bore draws the body cut through its bore with the piston in it; 112 high.
func (m *mount) bore() {
	o := []draw.Pt{m.at(40, 12), m.at(150, 12), m.at(150, 34), m.at(62, 34), m.at(62, 90), m.at(150, 90), m.at(150, 112), m.at(40, 112)}
	m.c.Part(o, draw.HatchBody, o[0])
	fluid := m.rect(62, 34, 30, 56).Corners()
	m.c.Level(fluid[:], 1, fluid[0])
	m.part(92, 34, 78, 56, draw.HatchPiston)
	m.line(30, 62, 190, 62, draw.Centre)
}

// seeBoots draws the pins with the eye on their boots.
func (m *mount) seeBoots() {
	n := m.below(70, 122)
	n.caliper()
	n.eye(122, -4)
	n.line(110, 0, 90, 16, draw.Hidden)
}

// seeDustBoot draws the piston's boot, and where its lip is lifted.
func (m *mount) seeDustBoot(lifted bool) {
	n := m.below(40, 122)
	n.bore()
	for _, y := range [2]float64{30, 86} { // the fold on either side of the cut
		n.box(150, y, 14, 8, n.c.Theme.Rub, draw.Thin)
	}
	n.say(196, 106, draw.Left, "instrument.dust_boot")
	n.leader(194, 101, 158, 91)
	if lifted {
		n.c.Arrow(n.at(170, 30), n.at(170, 10), draw.Head)
		return
	}
	n.eye(204, 24)
	n.line(192, 27, 166, 34, draw.Hidden)
}

// seeDisc draws the disc from outside with the body over it: under a fingernail
// drawn to the rim, lit from the side, or seen between the pads.
func (m *mount) seeDisc() {
	c, th := m.c, m.c.Theme
	at := m.at(140, 178)
	c.Circle(at, 64*m.k, &th.Disc, draw.Visible)
	c.Circle(at, 28*m.k, &th.Panel, draw.Visible)
	for i := range 4 {
		s, k := math.Sincos(math.Pi/4 + math.Pi/2*float64(i))
		c.Circle(at.Add(draw.Pt{X: k, Y: s}.Mul(17*m.k)), 3*m.k, &th.Pin, draw.Thin)
	}
	c.Circle(at, 6*m.k, &th.Panel, draw.Thin)
	var body [18]draw.Pt
	for i := range 9 {
		s, k := math.Sincos(-0.62 + 1.24*float64(i)/8)
		body[i] = at.Add(draw.Pt{X: k, Y: s}.Mul(74 * m.k))
		body[17-i] = at.Add(draw.Pt{X: k, Y: s}.Mul(36 * m.k))
	}
	c.Polygon(body[:], th.Body)
	c.Outline(body[:], draw.Visible)
	m.say(224, 200, draw.Left, "instrument.body")
	m.leader(222, 196, 196, 190)
	if id := m.check(); id == "groove_inner" || id == "groove_outer" {
		m.finger(98, 150, 40)
		c.Arrow(m.at(96, 166), m.at(76, 152), draw.Head)
		return
	}
	m.eye(56, 122)
	m.line(66, 130, 92, 146, draw.Hidden)
}

// seePad draws a pad lifted out: its edge where lining and plate meet, or its face.
func (m *mount) seePad(face bool) {
	if !face {
		m.part(60, 150, 200, 12, draw.HatchPlate)
		m.part(84, 162, 152, 36, draw.HatchLining)
		m.say(60, 140, draw.Left, "instrument.plate")
		m.leader(78, 143, 78, 156)
		m.say(150, 222, draw.Middle, "instrument.lining")
		m.leader(150, 212, 150, 186)
		m.eye(292, 128)
		m.line(280, 132, 238, 161, draw.Hidden)
		return
	}
	c := m.c
	plate := []draw.Pt{m.at(50, 176), m.at(70, 176), m.at(78, 128), m.at(242, 128), m.at(250, 176), m.at(270, 176), m.at(270, 194), m.at(250, 194), m.at(242, 226), m.at(78, 226), m.at(70, 194), m.at(50, 194)}
	c.Polygon(plate, c.Theme.Plate)
	c.Outline(plate, draw.Visible)
	lining := []draw.Pt{m.at(92, 136), m.at(228, 136), m.at(236, 178), m.at(230, 218), m.at(90, 218), m.at(84, 178)}
	c.Part(lining, draw.HatchLining, lining[0])
	m.eye(292, 128)
	m.line(280, 132, 226, 160, draw.Hidden)
	m.say(54, 214, draw.Right, "instrument.ears")
	m.leader(50, 206, 58, 188)
}
