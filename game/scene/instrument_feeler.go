package scene

import (
	"math"
	"strconv"

	"evenwear/game/draw"
)

// The feeler on its mount [unit]: the datum edge on the plate, the first step
// and the height of one. A millimetre is drawn feelerMM long.
const (
	feelerDatum = 246.0
	feelerTop   = 40.0
	feelerStep  = 16.0
	feelerMM    = 9.0
)

// feeler draws the stepped feeler against a lining, looking in from the rim. Its
// datum edge lies where the plate meets the lining, and every step ends its own
// millimetres from there. The disc's face, carried across the steps, shows which
// end before it. An inner pad is the same seen in a mirror.
func (m *mount) feeler() {
	thick, ok := m.needle(0)
	first, last := int(m.v.Lo), int(m.v.Hi)
	if !ok || last < first || last > first+10 {
		return
	}
	c, th := m.c, m.c.Theme
	inner := m.v.Pad == "inner"
	// x mirrors for the inner pad, about the middle of what is drawn.
	x := func(x float64) float64 {
		if inner {
			return 104 + mountW - x
		}
		return x
	}
	at := func(px, y float64) draw.Pt { return m.at(x(px), y) }
	quad := func(x0, y0, x1, y1 float64) []draw.Pt {
		return []draw.Pt{at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)}
	}
	foot := feelerTop + feelerStep*float64(last-first+1)
	face := feelerDatum - feelerMM*thick
	const top, low = 24.0, 232.0

	disc := quad(110, top, face, low)
	c.Polygon(disc, th.Disc)
	rim := (110 + face) / 2 // the vents of the rim keep off the lining
	for y := top + 8; y+14 < low; y += 27 {
		c.Polygon(quad(rim-12, y, rim+12, y+14), th.Rub)
	}
	c.Polyline([]draw.Pt{at(110, top), at(face, top), at(face, low), at(110, low)}, draw.Visible)
	m.breakLine(x(110), top, x(110), low)
	lining := quad(face, top, feelerDatum, low)
	c.Part(lining, draw.HatchLining, at(feelerDatum, top))
	c.Part(quad(feelerDatum, top, feelerDatum+5*feelerMM, low), draw.HatchPlate, at(feelerDatum, top))

	steps := make([]draw.Pt, 0, 2*11+4)
	for n := first; n <= last; n++ {
		y, end := feelerTop+feelerStep*float64(n-first), feelerDatum-feelerMM*float64(n)
		steps = append(steps, at(end, y), at(end, y+feelerStep))
	}
	steps = append(steps, at(324, foot), at(324, feelerTop))
	c.Polygon(steps, th.Panel)
	c.Outline(steps, draw.Visible)
	for n := first; n <= last; n++ {
		y := feelerTop + feelerStep*float64(n-first)
		if n > first {
			c.Line(at(feelerDatum-feelerMM*float64(n-1), y), at(feelerDatum+30, y), draw.Thin)
		}
		m.middle(x(feelerDatum+16), y+feelerStep/2, draw.Middle, strconv.Itoa(n))
	}
	m.c.Line(at(feelerDatum, feelerTop), at(feelerDatum, foot), draw.Hidden)
	m.c.Line(at(face, top), at(face, low), draw.Hidden)
	m.middle(x(300), (feelerTop+foot)/2, draw.Middle, m.v.Unit)

	m.feelerLabels(x, face, low)
	// The eye is where the face passes from a step that ends before it to one that does not.
	clears := min(max(int(math.Floor(thick+1e-9)), first), last-1)
	y := feelerTop + feelerStep*float64(clears-first+1)
	m.feelerDetail(at(face, y), steps, disc, lining, at(feelerDatum, top), clears, inner)
}

func (m *mount) feelerLabels(x func(float64) float64, face, low float64) {
	a, b := draw.Right, draw.Left
	if m.v.Pad == "inner" {
		a, b = b, a
	}
	// A thin lining leaves its name little room, a thick one the names of the disc.
	const half, close = 24.0, 170.0
	mid := (face + feelerDatum) / 2
	m.say(x(mid), 14, draw.Middle, "instrument.lining")
	m.leader(x(mid), 17, x(mid), 31)
	if face < close {
		m.say(x((110+face)/2), 14, draw.Middle, "instrument.disc")
		m.leader(x((110+face)/2), 17, x((110+face)/2), 30)
		m.say(x(face+8), low+15, b, "instrument.disc_face")
		m.line(x(face+6), low+11, x(face), low+2, draw.Thin)
	} else {
		m.say(x(min(face-8, mid-half)), 14, a, "instrument.disc")
		m.leader(x(min(face-10, mid-half-2)), 17, x(face-16), 30)
		m.say(x(face-8), low+15, a, "instrument.disc_face")
		m.line(x(face-6), low+11, x(face), low+2, draw.Thin)
	}
	plate := max(feelerDatum+14, mid+half)
	m.say(x(plate), 14, b, "instrument.plate")
	m.leader(x(plate+4), 17, x(feelerDatum+24), 30)
	m.say(x(feelerDatum+8), low+15, b, "instrument.datum")
	m.line(x(feelerDatum+6), low+11, x(feelerDatum), low+2, draw.Thin)
}

// feelerDetail enlarges where the disc's face meets the steps.
func (m *mount) feelerDetail(eye draw.Pt, steps, disc, lining []draw.Pt, origin draw.Pt, clears int, inner bool) {
	c, th := m.c, m.c.Theme
	const r, times = 44.0, 3.0
	centre := m.at(48, 128)
	l := newLens(eye, centre, r*m.k, times)
	m.c.Circle(eye, r/times*m.k, nil, draw.Thin)
	m.text(48, 76, draw.Middle, m.w.Say("instrument.detail", "times", int(times)))
	c.Circle(centre, l.r, &th.Paper, draw.Pen{})
	c.Polygon(l.cut(disc), th.Disc)
	piece := l.cut(lining)
	c.Polygon(piece, th.Lining)
	c.Hatch(piece, draw.HatchLining, l.see(origin))
	c.Polygon(l.cut(steps), th.Panel)
	for i, p := range steps[:len(steps)-2] {
		l.line(c, p, steps[i+1], draw.Visible)
	}
	l.line(c, disc[1], disc[2], draw.Hidden)
	side := 1.0
	if inner {
		side = -1
	}
	for i := range 2 { // the two steps by their names
		m.middle(48+side*26, 128+(float64(i)-0.5)*34, draw.Middle, strconv.Itoa(clears+i))
	}
	c.Circle(centre, l.r, nil, draw.Visible)
}

// breakLine ends a part that goes on beyond the drawing.
func (m *mount) breakLine(x0, y0, x1, y1 float64) {
	a, b := m.at(x0, y0), m.at(x1, y1)
	d := b.Sub(a).Mul(1 / b.Sub(a).Len())
	n := draw.Pt{X: -d.Y, Y: d.X}
	mid := a.Add(b).Mul(0.5)
	m.c.Polyline([]draw.Pt{a, mid.Sub(d.Mul(6)), mid.Sub(d.Mul(3)).Add(n.Mul(4)), mid.Add(d.Mul(3)).Sub(n.Mul(4)), mid.Add(d.Mul(6)), b}, draw.Thin)
}
