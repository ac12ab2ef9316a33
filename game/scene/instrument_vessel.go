package scene

import (
	"evenwear/game/draw"
)

// The vessels under the bonnet beside the brake reservoir, and what their
// levels are read with. All stand on one kind of scale: MIN at 0, MAX at 100,
// ten ticks between them and ticks of the same size beyond.

// ticks draws the divisions of an upright ruler, l to its left, with MIN and MAX
// long and lettered left of them on the ground given.
func (m *mount) ticks(s *ruler, l float64) {
	v := m.v
	first, count := marks(v.Lo, v.Hi, v.Division)
	for i := first; i < first+count; i++ {
		if at := float64(i) * v.Division; at != 0 && at != 100 {
			p := s.at(at)
			m.c.Line(p, p.Sub(draw.Pt{X: l * m.k}), draw.Thin)
		}
	}
}

// minMax letters MIN and MAX, right of x on the mount, with a line from each to
// the ruler.
func (m *mount) minMax(s *ruler, x float64) {
	st := m.style(draw.ValueText)
	for _, mark := range [2]struct {
		at float64
		id string
	}{{0, "instrument.min"}, {100, "instrument.max"}} {
		p := s.at(mark.at)
		q := draw.Pt{X: m.at(x, 0).X, Y: p.Y}
		m.c.Line(p, q, draw.Visible)
		m.c.Text(q.Add(draw.Pt{X: 4 * m.k, Y: st.Size * 0.36}), st, m.c.Theme.Ink, m.w.Say(mark.id))
	}
}

// film wets a stick from its tip up to the level: its edge is ragged, and its
// middle is what is read.
func (m *mount) film(x0, x1, level, foot, tip float64, step int) {
	const teeth = 8
	w := (x1 - x0) / teeth
	o := []draw.Pt{m.at(x1, foot), m.at((x0+x1)/2, tip), m.at(x0, foot)}
	edge := make([]draw.Pt, 0, teeth+1)
	for i := range teeth + 1 {
		y := level - 1.4
		if i%2 == 1 {
			y = level + 1.4
		}
		edge = append(edge, m.at(x0+w*float64(i), min(y, foot)))
	}
	o = append(o, edge...)
	m.c.Level(o, step, m.at(x0, foot))
	m.c.Polyline(edge, draw.Thin.Wide(1.5))
}

// blade is the end of a stick with marks, drawn out of its vessel: tip down, in
// the frame x0 to x1, scale from top to foot. It returns its scale.
func (m *mount) blade(x0, x1, top, foot, tip, level float64, step int) *ruler {
	s := &ruler{m.at(x1, foot), m.at(x1, top), m.v.Lo, m.v.Hi}
	o := []draw.Pt{m.at(x0, top), m.at(x1, top), m.at(x1, foot), m.at((x0+x1)/2, tip), m.at(x0, foot)}
	m.c.Polygon(o, m.c.Theme.Pin)
	if level > m.v.Lo {
		m.film(x0, x1, (s.at(level).Y-m.o.Y)/m.k, foot, tip, step)
	}
	m.c.Outline(o, draw.Visible)
	m.ticks(s, 9)
	for _, at := range [2]float64{0, 100} {
		p := s.at(at)
		m.c.Line(p, draw.Pt{X: m.at(x0, 0).X, Y: p.Y}, draw.Visible)
	}
	return s
}

// dipstick draws the engine's dipstick, wiped, dipped and drawn.
func (m *mount) dipstick() {
	level, ok := m.onScale()
	if !ok {
		return
	}
	const x0, x1, top, foot = 120.0, 156.0, 34.0, 226.0
	m.box(132, 8, 12, 26, m.c.Theme.Pin, draw.Visible)
	m.breakLine(126, 8, 150, 8)
	s := m.blade(x0, x1, top, foot, 242, level, 3)
	m.minMax(s, 186)
	m.say(106, 30, draw.Right, "instrument.dipstick")
	m.leader(108, 26, 136, 22)
	m.lines(14, 128, 90, "instrument.warm_marks")
	m.tickNote(s, 230)
}

// tickNote says right of a scale what a tick is.
func (m *mount) tickNote(s *ruler, x float64) {
	a, b := s.at(0), s.at(100)
	at := m.at(x, 0).X
	m.c.Arrow(draw.Pt{X: at, Y: a.Y}, draw.Pt{X: at, Y: b.Y}, draw.Both)
	st := m.style(draw.SmallText)
	m.c.Paragraph(draw.Pt{X: at + 8*m.k, Y: (a.Y + b.Y) / 2}, st, m.c.Theme.Ink, m.w.Say("instrument.tick", "n", m.v.Division), 60*m.k)
}

// capStick draws the stick under the cap of the power steering's reservoir.
func (m *mount) capStick() {
	level, ok := m.onScale()
	if !ok {
		return
	}
	th := m.c.Theme
	m.box(98, 6, 80, 26, th.Rub, draw.Visible)
	for x := 106.0; x < 174; x += 8 { // what a hand turns it by
		m.line(x, 9, x, 29, draw.Thin.In(th.Paper))
	}
	m.box(106, 32, 64, 10, th.Panel, draw.Visible)
	s := m.blade(120, 156, 42, 230, 244, level, 2)
	m.minMax(s, 186)
	m.say(86, 24, draw.Right, "instrument.cap")
	m.lines(14, 128, 90, "instrument.cold_marks")
	m.tickNote(s, 230)
}

// coolant draws the coolant's expansion vessel, seen through its wall, its cap
// shut.
func (m *mount) coolant() {
	level, ok := m.onScale()
	if !ok {
		return
	}
	c, th := m.c, m.c.Theme
	const x0, x1, top, foot = 56.0, 196.0, 46.0, 228.0
	s := &ruler{m.at(x1, foot-4), m.at(x1, top+4), m.v.Lo, m.v.Hi}
	m.box(196, 204, 40, 16, th.Rub, draw.Visible) // to the engine
	m.box(20, 58, 36, 10, th.Rub, draw.Visible)   // from the radiator
	m.box(100, 34, 52, 12, th.Panel, draw.Visible)
	m.box(92, 8, 68, 26, th.Rub, draw.Visible)
	for x := 100.0; x < 156; x += 8 {
		m.line(x, 11, x, 31, draw.Thin.In(th.Paper))
	}
	body := []draw.Pt{m.at(x0+14, top), m.at(x1, top), m.at(x1, foot), m.at(x0+14, foot), m.at(x0, foot-16), m.at(x0, top+16)}
	c.Polygon(body, th.Panel)
	if y := s.at(level).Y; level > m.v.Lo {
		fluid := []draw.Pt{{X: m.at(x0, 0).X, Y: y}, {X: m.at(x1, 0).X, Y: y}, body[2], body[3], body[4]}
		if y < body[5].Y { // within the slant of the shoulder
			x := body[5].X + (body[0].X-body[5].X)*(body[5].Y-y)/(body[5].Y-body[0].Y)
			fluid = []draw.Pt{{X: x, Y: y}, {X: m.at(x1, 0).X, Y: y}, body[2], body[3], body[4], body[5]}
		} else if y > body[4].Y {
			x := body[4].X + (body[3].X-body[4].X)*(y-body[4].Y)/(body[3].Y-body[4].Y)
			fluid = []draw.Pt{{X: x, Y: y}, {X: m.at(x1, 0).X, Y: y}, body[2], body[3]}
		}
		c.Level(fluid, 0, body[3])
		c.Line(fluid[0], fluid[1], draw.Visible)
	}
	c.Outline(body, draw.Visible)
	m.ticks(s, 18)
	for _, at := range [2]float64{0, 100} {
		p := s.at(at)
		c.Line(p, p.Sub(draw.Pt{X: 40 * m.k}), draw.Visible)
	}
	m.minMax(s, 208)
	m.tickNote(s, 252)
	c.Triangle(m.at(186, 32), 17*m.k)
	m.lines(200, 16, 124, "instrument.hot_shut")
	m.lines(262, 204, 64, "instrument.cold_marks")
}

// dipTube draws the tube dipped through the washer bottle's filler, held shut by
// a thumb.
func (m *mount) dipTube() {
	level, ok := m.onScale()
	if !ok {
		return
	}
	c, th := m.c, m.c.Theme
	const x0, x1, top, foot = 146.0, 176.0, 40.0, 226.0
	s := &ruler{m.at(x1, foot), m.at(x1, top), m.v.Lo, m.v.Hi}
	m.box(x0, 24, x1-x0, foot-24, th.Panel, draw.Visible)
	if level > m.v.Lo {
		o := []draw.Pt{{X: m.at(x0, 0).X, Y: s.at(level).Y}, {X: m.at(x1, 0).X, Y: s.at(level).Y}, m.at(x1, foot), m.at(x0, foot)}
		c.Level(o, 0, o[3])
		c.Line(o[0], o[1], draw.Visible)
		c.Outline(o, draw.Visible)
	}
	m.graduate(s, m.v.Division, m.v.Long, 12*m.k, right)
	// A thumb lies on the upper end, level.
	thumb := []draw.Pt{m.at(92, 10), m.at(170, 8), m.at(182, 13), m.at(182, 21), m.at(170, 25), m.at(92, 28)}
	c.Polygon(thumb, th.Panel)
	c.Outline(thumb, draw.Thin.Wide(1.5))
	m.breakLine(92, 8, 92, 30)
	// The bottle's filler, open, and its cap hanging.
	bottle := []draw.Pt{m.at(24, 150), m.at(40, 150), m.at(40, 172), m.at(106, 172), m.at(106, 240), m.at(4, 240), m.at(4, 172), m.at(24, 172)}
	c.Polygon(bottle, th.Panel)
	c.Outline(bottle, draw.Visible)
	m.box(46, 152, 26, 10, th.Rub, draw.Visible)
	m.line(40, 157, 46, 157, draw.Thin)
	m.say(55, 210, draw.Middle, "instrument.washer")
	m.say(86, 60, draw.Right, "instrument.thumb")
	m.leader(88, 56, 110, 22)
	m.say(226, 140, draw.Left, "instrument.percent_full")
}
