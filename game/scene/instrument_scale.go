package scene

import (
	"math"

	"evenwear/game/draw"
)

// A ruler is a straight scale: value lo stands at a, value hi at b.
type ruler struct {
	a, b   draw.Pt // [unit] on the sheet
	lo, hi float64 // [unit of the scale]
}

// at is where a value stands on the sheet.
func (s *ruler) at(v float64) draw.Pt {
	return s.a.Add(s.b.Sub(s.a).Mul((v - s.lo) / (s.hi - s.lo)))
}

// per is how long one unit of the scale is drawn [unit].
func (s *ruler) per() float64 { return s.b.Sub(s.a).Len() / math.Abs(s.hi-s.lo) }

// An arc is a scale on a circle: value lo at angle a, value hi at angle b [rad],
// clockwise from the top.
type arc struct {
	c      draw.Pt // [unit] on the sheet
	a, b   float64
	lo, hi float64 // [unit of the scale]
}

// dir is the direction in which a value stands.
func (s *arc) dir(v float64) draw.Pt {
	sin, cos := math.Sincos(s.a + (s.b-s.a)*(v-s.lo)/(s.hi-s.lo))
	return draw.Pt{X: sin, Y: -cos}
}

// at is where a value stands at a radius [unit].
func (s *arc) at(v, r float64) draw.Pt { return s.c.Add(s.dir(v).Mul(r)) }

// marks are the divisions of a scale from lo to hi: the n-th of count stands at
// (first + n)·division. What does not divide a scale gives none.
func marks(lo, hi, division float64) (first, count int) {
	n := (hi - lo) / division
	if !(division > 0) || !(n >= 0 && n < 5000) {
		return 0, 0
	}
	first = int(math.Ceil(lo/division - 1e-6))
	return first, int(math.Floor(hi/division+1e-6)) - first + 1
}

// every is how many divisions lie between two long marks.
func every(long, division float64) int {
	if !(long/division >= 1 && long/division < 5000) {
		return 1
	}
	return int(math.Round(long / division))
}

func toStep(x, step float64) float64 { return math.Round(x/step) * step }

// graduate draws the divisions of a ruler on one side of it, below or to the
// right, out [unit] long at the long marks, which are numbered, seven tenths of
// it half way between two and half of it elsewhere. Numbers closer than their
// room are left out, and so is what lies beyond the ends of the instrument.
func (m *mount) graduate(s *ruler, division, long, out float64, side draw.Pt) {
	first, count := marks(s.lo, s.hi, division)
	n := every(long, division)
	step := 1 // of the numbers
	st := m.style(draw.SmallText)
	across := side.X*side.X < 0.5 // numbers stand above each other or beside each other
	room := st.Size + 3
	if across {
		room = max(m.c.Measure(st, figureOf(s.lo)), m.c.Measure(st, figureOf(s.hi))) + 8
	}
	for float64(step)*long*s.per() < room && step < 64 {
		step *= 2
		if step == 4 {
			step = 5
		}
	}
	for i := first; i < first+count; i++ {
		v := float64(i) * division
		if v < m.v.Lo-division/2 || v > m.v.Hi+division/2 {
			continue
		}
		p := s.at(v)
		l := 0.5
		switch {
		case i%n == 0:
			l = 1
		case n%2 == 0 && i%(n/2) == 0:
			l = 0.72
		}
		end := p.Add(side.Mul(out * l))
		m.c.Line(p, end, draw.Thin)
		if i%(n*step) != 0 {
			continue
		}
		q := p.Add(side.Mul(out + 4))
		if across {
			m.c.Text(q.Add(draw.Pt{Y: st.Size * 0.75}), st.To(draw.Middle), m.c.Theme.Ink, figureOf(v))
		} else {
			m.c.Text(q.Add(draw.Pt{Y: st.Size * 0.36}), st, m.c.Theme.Ink, figureOf(v))
		}
	}
}

// edge draws the line of a piece of a scale, as far as the instrument goes.
func (m *mount) edge(s *ruler) {
	m.c.Line(s.at(max(s.lo, m.v.Lo)), s.at(min(s.hi, m.v.Hi)), draw.Visible)
}

// window is the piece of a scale about v, half to either side, on whole divisions.
func window(v, half, division float64) (lo, hi float64) {
	mid := toStep(v, division)
	return mid - half, mid + half
}

var down, right = draw.Pt{Y: 1}, draw.Pt{X: 1}

// pointer draws a filled arrowhead whose tip is at p, coming along dir.
func (m *mount) pointer(p, dir draw.Pt) {
	l, h := 11*m.k, 4*m.k
	n := draw.Pt{X: -dir.Y, Y: dir.X}.Mul(h)
	back := p.Sub(dir.Mul(l))
	m.c.Polygon([]draw.Pt{p, back.Add(n), back.Sub(n)}, m.c.Theme.Ink)
}

// plainScale is a ruled scale with a pointer, for what has no drawing of its
// own: the whole scale, and the piece about the pointer enlarged.
func (m *mount) plainScale() {
	v := m.v
	if !(v.Hi > v.Lo) || !(v.Division > 0) {
		return
	}
	whole := ruler{m.at(20, 80), m.at(310, 80), v.Lo, v.Hi}
	coarse := v.Division
	for coarse*whole.per() < 3 {
		coarse *= 10
	}
	m.text(165, 30, draw.Middle, v.Unit)
	m.c.Line(whole.a, whole.b, draw.Visible)
	m.graduate(&whole, coarse, max(v.Long, coarse), 14*m.k, down)
	x, ok := m.needle(0)
	if !ok {
		return
	}
	m.pointer(whole.at(x), down)
	m.closeUp(&whole, x, 165, 180, 260)
}

// closeUp draws the piece of a level scale about x enlarged, in a window w wide
// with its middle at cx and its line at y, ties it to the whole scale, and puts
// the pointer on it.
func (m *mount) closeUp(whole *ruler, x, cx, y, w float64) {
	v := m.v
	half := v.Division * max(math.Floor(w*m.k/max(6*m.k, 6)/2), 3)
	lo, hi := window(x, half, v.Division)
	m.box(cx-w/2-8, y-22, w+16, 66, m.c.Theme.Panel, draw.Thin)
	part := ruler{m.at(cx-w/2, y), m.at(cx+w/2, y), lo, hi}
	m.edge(&part)
	m.graduate(&part, v.Division, v.Long, 14*m.k, down)
	m.pointer(part.at(x), down)
	for i, p := range [2]draw.Pt{whole.at(max(lo, whole.lo)), whole.at(min(hi, whole.hi))} {
		m.c.Line(p.Add(draw.Pt{Y: 36 * m.k}), m.at(cx-w/2-8+float64(i)*(w+16), y-22), draw.Hidden) // from under its figures
	}
}
