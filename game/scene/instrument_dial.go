package scene

import (
	"math"

	"evenwear/game/draw"
)

// The dial indicator on its mount [unit].
const (
	dialX, dialY = 212.0, 124.0
	dialRim      = 110.0
	dialMarks    = 100.0 // radius of the divisions' outer ends
	dialFace     = 38.0  // the disc's face where the needle stands at zero
	dialPerMM    = 30.0  // [unit/mm] the disc's movement, drawn large
)

// dial draws the dial indicator on the disc: a hundred divisions of 0.01 mm to
// one turn of the needle, a small hand that counts the turns, and the disc that
// moves the plunger. A needle that holds a turn of the disc stands where the
// share of the turn puts it; of two positions the first is dashed.
func (m *mount) dial() {
	now, ok := m.dialAt()
	if !ok {
		return
	}
	c, th := m.c, m.c.Theme
	face := dialFace + dialPerMM*math.Min(now, 0.6)
	m.part(face-22, 16, 22, 216, draw.HatchDisc)
	m.breakLine(face-26, 16, face+4, 16)
	m.breakLine(face-26, 232, face+4, 232)
	m.box(76, dialY-7, dialX-dialRim-76, 14, th.Piston, draw.Visible)
	m.line(face+4, dialY, 76, dialY, draw.Visible.Wide(4))
	m.box(face, dialY-4, 6, 8, th.Ink, draw.Thin)

	centre := m.at(dialX, dialY)
	c.Circle(centre, dialRim*m.k, &th.Panel, draw.Visible)
	c.Circle(centre, (dialRim-5)*m.k, nil, draw.Thin)
	s := m.dialScale()
	for i := range 100 {
		v := float64(i) / 100
		l := 6.0
		switch {
		case i%10 == 0:
			l = 14
		case i%5 == 0:
			l = 10
		}
		c.Line(s.at(v, dialMarks*m.k), s.at(v, (dialMarks-l)*m.k), draw.Thin)
	}
	st := m.style(draw.LabelText).To(draw.Middle)
	for i := range 10 {
		p := s.at(float64(i)/10, 75*m.k)
		p.Y += st.Size * 0.35
		c.Text(p, st, th.Ink, figureOf(float64(10*i)))
	}
	m.say(dialX, dialY-34, draw.Middle, "instrument.dial_division")
	m.dialTurns(now)
	if len(m.v.Needle) == 2 {
		m.hand(&s, m.v.Needle[0], true)
	}
	m.hand(&s, now, false)
	ink := th.Ink
	c.Circle(centre, 5*m.k, &ink, draw.Pen{})
	m.dialLegend()
}

func (m *mount) dialScale() arc {
	return arc{c: m.at(dialX, dialY), a: 0, b: 2 * math.Pi, lo: 0, hi: 1}
}

// dialAt is where the needle stands now [mm].
func (m *mount) dialAt() (float64, bool) {
	n := m.v.Needle
	switch len(n) {
	case 0:
		return 0, false
	case 1, 2:
		return n[len(n)-1], true
	}
	t := math.Min(math.Max(m.swing, 0), 1) * float64(len(n)-1)
	i := min(int(t), len(n)-2)
	return n[i] + (n[i+1]-n[i])*(t-float64(i)), true
}

// hand draws the needle, its point on the divisions; dashed is where it stood before.
func (m *mount) hand(s *arc, v float64, dashed bool) {
	d := s.dir(v)
	n := draw.Pt{X: -d.Y, Y: d.X}.Mul(3.2 * m.k)
	tip, tail := s.at(v, (dialMarks-2)*m.k), s.c.Sub(d.Mul(24*m.k))
	if dashed {
		m.c.Line(s.c, tip, draw.Hidden.Wide(1.6))
		return
	}
	o := [4]draw.Pt{tip, s.c.Add(n), tail, s.c.Sub(n)}
	m.c.Polygon(o[:], m.c.Theme.Ink)
}

// dialTurns draws the small hand: one of its marks a turn of the needle.
func (m *mount) dialTurns(now float64) {
	s := arc{c: m.at(dialX-26, dialY+36), a: 0, b: 2 * math.Pi, lo: 0, hi: 10}
	r := 17 * m.k
	m.c.Circle(s.c, r, nil, draw.Thin)
	for i := range 10 {
		m.c.Line(s.at(float64(i), r), s.at(float64(i), r-4*m.k), draw.Thin)
	}
	m.c.Line(s.c, s.at(now, r-4*m.k), draw.Thin.Wide(1.6))
	m.say(dialX-4, dialY+41, draw.Left, "instrument.turns")
}

// dialLegend says what the disc does: how far it has been turned, or which
// needle is which.
func (m *mount) dialLegend() {
	if len(m.v.Needle) == 2 {
		m.line(64, 226, 84, 226, draw.Hidden.Wide(1.6))
		m.say(88, 230, draw.Left, "instrument.pushed_in")
		m.line(64, 242, 84, 242, draw.Visible)
		m.say(88, 246, draw.Left, "instrument.pulled_out")
		return
	}
	if len(m.v.Needle) < 3 {
		return
	}
	turn := arc{c: m.at(86, 224), a: 0, b: 2 * math.Pi, lo: 0, hi: 1}
	m.c.Circle(turn.c, 18*m.k, &m.c.Theme.Disc, draw.Visible)
	m.c.Circle(turn.c, 6*m.k, &m.c.Theme.Paper, draw.Thin)
	m.c.Line(turn.at(m.swing, 9*m.k), turn.at(m.swing, 17*m.k), draw.Visible.Wide(3))
	m.say(110, 246, draw.Left, "instrument.one_turn")
}
