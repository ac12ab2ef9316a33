package scene

import (
	"math"
	"strings"

	"evenwear/game/draw"
)

// observation letters what hands, foot and eye perceive, large, over a drawing
// of the part they are at. The drawing is the same whatever is perceived.
func (m *mount) observation() {
	c, th := m.c, m.c.Theme
	st := draw.SentenceText.At(19 * min(max(m.k, 0.85), 1.5))
	p := m.at(6, 0)
	p.Y += st.Size
	c.Paragraph(p, st, th.Ink, m.v.Marks, m.k*(mountW-12))
	switch m.check() {
	case "wetness", "hose_bulge":
		m.seeHose(m.check() == "hose_bulge")
	case "trapped_pressure", "hose_release", "bleed_bubbles", "wet_screw":
		m.seeBleed()
	case "pin_boots":
		m.seeBoots()
	case "piston_boot", "wet_piston":
		m.seeDustBoot(m.check() == "wet_piston")
	case "disc_film", "disc_crack", "groove_inner", "groove_outer":
		m.seeDisc()
	case "bond_inner", "bond_outer", "face_inner", "face_outer":
		m.seePad(strings.HasPrefix(m.check(), "face"))
	case "spin":
		m.seeWheel()
	case "pedal_feel", "pulsation":
		m.seePedal()
	case "warning_lamp":
		m.seeLamp()
	case "opening_inner", "opening_outer":
		m.seeOpening(m.v.Pad == "inner")
	case "slow_stop":
		m.seeSteering()
	case "fluid_layers":
		m.seeGlass()
	case "cap_vent", "cap_rubber":
		m.seeCap(m.check() == "cap_rubber")
	}
}

// seeHose draws the joint of the hose: wiped, or with a hand round the hose.
func (m *mount) seeHose(hand bool) {
	c, th := m.c, m.c.Theme
	m.part(196, 124, 120, 92, draw.HatchBody)
	m.box(170, 158, 26, 26, th.Plate, draw.Visible)
	m.box(152, 162, 18, 18, th.Pin, draw.Visible)
	m.line(161, 162, 161, 180, draw.Thin)
	m.box(8, 160, 144, 22, th.Rub, draw.Visible)
	m.line(6, 171, 320, 171, draw.Centre)
	c.TextOn(m.at(256, 150), m.style(draw.SmallText).To(draw.Middle), th.Ink, th.Body, m.w.Say("instrument.body"))
	m.say(40, 148, draw.Left, "instrument.hose")
	m.leader(58, 152, 66, 165)
	m.say(146, 232, draw.Left, "instrument.joint")
	m.leader(164, 220, 172, 180)
	if hand {
		m.fingers(78, 154, 34, 4)
	}
}

// fingers draws a hand's fingers laid round something level, h high.
func (m *mount) fingers(x, y, h float64, n int) {
	for i := range n {
		m.finger(x+12*float64(i), y, h)
	}
}

func (m *mount) finger(x, y, h float64) {
	var o [20]draw.Pt
	for i := range 10 {
		s, k := math.Sincos(math.Pi * float64(i) / 9)
		o[i] = m.at(x+6-6*k, y+6-6*s)
		o[19-i] = m.at(x+6-6*k, y+h-6+6*s)
	}
	m.c.Polygon(o[:], m.c.Theme.Panel)
	m.c.Outline(o[:], draw.Thin.Wide(1.5))
}

// seeBleed draws the bleed screw with its hose and the bottle.
func (m *mount) seeBleed() {
	c, th := m.c, m.c.Theme
	m.part(14, 190, 110, 50, draw.HatchBody)
	m.box(52, 164, 34, 26, th.Plate, draw.Visible)
	m.line(64, 164, 64, 190, draw.Thin)
	m.line(74, 164, 74, 190, draw.Thin)
	m.box(62, 138, 14, 26, th.Pin, draw.Visible)
	var tube [15]draw.Pt
	for i := range tube {
		t := float64(i) / 14
		u := 1 - t
		tube[i] = m.at(u*u*u*69+3*u*u*t*69+3*u*t*t*236+t*t*t*236, u*u*u*142+3*u*u*t*92+3*u*t*t*92+t*t*t*200)
	}
	c.Polyline(tube[:], draw.Pen{Width: 9})
	c.Polyline(tube[:], draw.Pen{Width: 5.5, Col: th.Fluid[0]})
	fluid := m.rect(204, 196, 64, 44).Corners()
	c.Level(fluid[:], 1, fluid[0])
	c.Polyline([]draw.Pt{m.at(226, 132), m.at(226, 150), m.at(204, 162), m.at(204, 240), m.at(268, 240), m.at(268, 162), m.at(246, 150), m.at(246, 132)}, draw.Visible)
	c.Polyline(tube[9:], draw.Pen{Width: 9})
	c.Polyline(tube[9:], draw.Pen{Width: 5.5, Col: th.Fluid[0]})
	m.say(98, 182, draw.Left, "instrument.bleed_screw")
	m.leader(95, 178, 80, 178)
	m.say(276, 190, draw.Left, "instrument.bottle")
}

// seeWheel draws the wheel off the ground, and which way it is pushed.
func (m *mount) seeWheel() {
	c, th := m.c, m.c.Theme
	at := m.at(165, 166)
	c.Circle(at, 68*m.k, &th.Rub, draw.Visible)
	c.Circle(at, 46*m.k, &th.Panel, draw.Visible)
	for i := range 5 {
		s, k := math.Sincos(2*math.Pi*float64(i)/5 - math.Pi/2)
		n := draw.Pt{X: -s, Y: k}.Mul(6 * m.k)
		a, b := at.Add(draw.Pt{X: k, Y: s}.Mul(14*m.k)), at.Add(draw.Pt{X: k, Y: s}.Mul(46*m.k))
		o := []draw.Pt{a.Add(n), b.Add(n), b.Sub(n), a.Sub(n)}
		c.Polygon(o, th.Plate)
		c.Outline(o, draw.Thin)
	}
	c.Circle(at, 16*m.k, &th.Plate, draw.Visible)
	c.Circle(at, 5*m.k, &th.Pin, draw.Thin)
	c.Arc(at, 78*m.k, -1.1, -0.1, draw.Thin.Wide(1.6))
	s, k := math.Sincos(-0.1)
	tip := at.Add(draw.Pt{X: k, Y: s}.Mul(78 * m.k))
	m.pointer(tip.Add(draw.Pt{Y: 7 * m.k}), down)
	m.floor(60, 270, 241)
}

// seePedal draws the foot on the pedal.
func (m *mount) seePedal() {
	c, th := m.c, m.c.Theme
	arm := []draw.Pt{m.at(206, 112), m.at(214, 150), m.at(196, 196)}
	c.Polyline(arm, draw.Pen{Width: 7 * m.k})
	c.Polyline(arm, draw.Pen{Width: 7*m.k - 3.4, Col: th.Plate})
	c.Circle(arm[0], 6*m.k, &th.Pin, draw.Visible)
	pad := []draw.Pt{m.at(176, 178), m.at(184, 172), m.at(214, 214), m.at(206, 220)}
	c.Polygon(pad, th.Rub)
	sole := []draw.Pt{m.at(172, 178), m.at(150, 152), m.at(138, 160), m.at(120, 184), m.at(92, 200), m.at(76, 178), m.at(52, 196), m.at(74, 232), m.at(86, 240), m.at(100, 232), m.at(178, 222), m.at(200, 222), m.at(204, 214)}
	c.Polygon(sole, th.Panel)
	c.Outline(sole, draw.Visible)
	m.floor(30, 290, 241)
	m.say(232, 156, draw.Left, "instrument.pedal")
	m.leader(229, 152, 213, 152)
}

// seeLamp draws the brake lamp's symbol among the instruments: a ring between
// two arcs, dark as before the ignition.
func (m *mount) seeLamp() {
	c := m.c
	m.box(75, 112, 180, 126, c.Theme.Panel, draw.Visible)
	at := m.at(165, 174)
	pen := draw.Visible.Wide(4)
	c.Circle(at, 30*m.k, nil, pen)
	c.Arc(at, 44*m.k, -0.9, 0.9, pen)
	c.Arc(at, 44*m.k, math.Pi-0.9, math.Pi+0.9, pen)
	m.line(165, 156, 165, 180, draw.Pen{Width: 5})
	m.line(165, 186, 165, 192, draw.Pen{Width: 5})
}

// seeOpening draws the way the eye looks through the opening of the body:
// straight at the outer lining, past the disc's edge at the inner. How thick the
// linings are is not to be had from here.
func (m *mount) seeOpening(inner bool) {
	m.part(96, 156, 26, 72, draw.HatchPlate)
	m.part(122, 156, 24, 72, draw.HatchLining)
	m.part(146, 152, 44, 86, draw.HatchDisc)
	m.part(190, 156, 24, 72, draw.HatchLining)
	m.part(214, 156, 26, 72, draw.HatchPlate)
	m.breakLine(142, 238, 194, 238)
	eye, to := draw.Pt{X: 262, Y: 104}, [2]float64{194, 210}
	if inner {
		to = [2]float64{124, 132}
	}
	for _, x := range to {
		m.line(eye.X-12, eye.Y+4, x, 156, draw.Hidden)
	}
	m.eye(eye.X, eye.Y)
	m.say(88, 196, draw.Right, "instrument.inner")
	m.say(248, 196, draw.Left, "instrument.outer")
	m.say(248, 228, draw.Left, "instrument.not_to_scale")
}

// eye draws an eye that looks to the left.
func (m *mount) eye(x, y float64) {
	at := m.at(x, y)
	r := 14 * m.k
	m.c.Arc(at.Add(draw.Pt{Y: r * 0.7}), r*1.22, -math.Pi/2-0.95, -math.Pi/2+0.95, draw.Visible)
	m.c.Arc(at.Sub(draw.Pt{Y: r * 0.7}), r*1.22, math.Pi/2-0.95, math.Pi/2+0.95, draw.Visible)
	ink := m.c.Theme.Ink
	m.c.Circle(at.Sub(draw.Pt{X: r * 0.3}), r*0.3, &ink, draw.Pen{})
}

// seeSteering draws the steering wheel, let go: where it was is dashed once it has turned.
func (m *mount) seeSteering() {
	c, th := m.c, m.c.Theme
	at := m.at(165, 174)
	turned := 0.0 // [rad] with the clock
	if len(m.v.Needle) > 0 {
		turned = 0.45 * m.v.Needle[0]
	}
	c.Circle(at, 62*m.k, &th.Rub, draw.Visible)
	c.Circle(at, 52*m.k, &th.Paper, draw.Visible)
	for _, a := range [3]float64{0.35, math.Pi - 0.35, math.Pi / 2} {
		s, k := math.Sincos(a + turned)
		d := draw.Pt{X: k, Y: s}
		n := draw.Pt{X: -s, Y: k}.Mul(5 * m.k)
		o := []draw.Pt{at.Add(n), at.Add(d.Mul(52 * m.k)).Add(n), at.Add(d.Mul(52 * m.k)).Sub(n), at.Sub(n)}
		c.Polygon(o, th.Plate)
		c.Outline(o, draw.Thin)
	}
	c.Circle(at, 16*m.k, &th.Plate, draw.Visible)
	rim := func(a, from, to float64, p draw.Pen) { // a stroke across the rim, a from its top
		s, k := math.Sincos(a)
		d := draw.Pt{X: s, Y: -k}
		c.Line(at.Add(d.Mul(from*m.k)), at.Add(d.Mul(to*m.k)), p)
	}
	rim(turned, 48, 66, draw.Visible.Wide(3)) // its top, which stands straight ahead on a straight road
	if turned != 0 {
		rim(0, 64, 76, draw.Hidden)
		c.Arc(at, 72*m.k, min(0, turned)-math.Pi/2, max(0, turned)-math.Pi/2, draw.Thin)
	}
}
