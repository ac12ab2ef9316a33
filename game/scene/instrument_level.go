package scene

import (
	"evenwear/game/draw"
)

// reservoir draws the brake fluid's reservoir, seen through its wall: MIN is the
// scale's zero, MAX its hundred, with ticks between, below and above.
func (m *mount) reservoir() {
	v := m.v
	level, ok := m.onScale()
	if !ok {
		return
	}
	c, th := m.c, m.c.Theme
	const top, foot, x0, x1 = 52.0, 214.0, 50.0, 236.0
	s := ruler{m.at(x1, foot-8), m.at(x1, top+8), v.Lo, v.Hi}
	m.box(92, 12, 84, 30, th.Rub, draw.Visible)
	m.box(84, 42, 100, 10, th.Panel, draw.Visible)
	for _, x := range [2]float64{72, 190} { // the two outlets, one a circuit
		m.box(x, 226, 18, 20, th.Fluid[1], draw.Visible)
	}
	body := []draw.Pt{m.at(x0, top), m.at(x1, top), m.at(x1, foot), m.at(x1-18, 228), m.at(x0+18, 228), m.at(x0, foot)}
	c.Polygon(body, th.Panel)
	y := s.at(level).Y
	fluid := []draw.Pt{{X: body[0].X, Y: y}, {X: body[1].X, Y: y}, body[2], body[3], body[4], body[5]}
	c.Level(fluid, 1, body[4])
	c.Line(fluid[0], fluid[1], draw.Visible)
	c.Outline(body, draw.Visible)

	first, count := marks(v.Lo, v.Hi, v.Division)
	long := every(v.Long, v.Division)
	for i := first; i < first+count; i++ {
		p := s.at(float64(i) * v.Division)
		if i%long != 0 {
			c.Line(p, p.Sub(draw.Pt{X: 18 * m.k}), draw.Thin)
		}
	}
	// The marks stand on the wall: their lettering clears a ground of its own.
	for _, mark := range [2]struct {
		at float64
		id string
	}{{0, "instrument.min"}, {100, "instrument.max"}} {
		p := s.at(mark.at)
		c.Line(p, p.Sub(draw.Pt{X: 46 * m.k}), draw.Visible)
		ground := th.Panel
		if p.Y+6*m.k > y {
			ground = th.Fluid[1]
		}
		st := m.style(draw.ValueText).To(draw.Right)
		q := p.Add(draw.Pt{X: -54 * m.k, Y: st.Size * 0.36})
		c.TextOn(q, st, th.Ink, ground, m.w.Say(mark.id))
	}
	a, b := s.at(0), s.at(100)
	out := draw.Pt{X: 22 * m.k}
	c.Line(a.Add(draw.Pt{X: 4 * m.k}), a.Add(out.Mul(1.2)), draw.Thin)
	c.Line(b.Add(draw.Pt{X: 4 * m.k}), b.Add(out.Mul(1.2)), draw.Thin)
	c.Arrow(a.Add(out), b.Add(out), draw.Both)
	mid := a.Add(b).Mul(0.5)
	st := m.style(draw.SmallText)
	c.Paragraph(mid.Add(out).Add(draw.Pt{X: 8 * m.k}), st, th.Ink, m.w.Say("instrument.tick", "n", v.Division), 60*m.k)
}
