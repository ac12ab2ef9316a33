package scene

import (
	"image/color"
	"math"
	"strconv"
	"strings"

	"evenwear/assets"
	"evenwear/game/draw"
	"evenwear/game/play"
)

// drawInstrument draws what the eye sees of an instrument inside r, without
// ever lettering its reading. swing, 0 to 1, is the share of a turn for an
// instrument whose needle holds a turn. A kind without a drawing of its own is
// a ruled scale with a pointer.
func drawInstrument(c *draw.Canvas, w *assets.Words, v *play.InstrumentView, r draw.Rect, swing float64) {
	m := mount{c: c, w: w, v: v, swing: swing}
	m.k = min(r.W/mountW, r.H/mountH)
	m.o = draw.Pt{X: r.X + (r.W-m.k*mountW)/2, Y: r.Y + (r.H-m.k*mountH)/2}
	switch v.Kind {
	case "stepped_feeler":
		m.feeler()
	case "blade_feeler":
		m.blades()
	case "dial_indicator":
		m.dial()
	case "rule":
		m.rule()
	case "thickness_gauge":
		m.gauge()
	case "reservoir":
		m.reservoir()
	case "dipstick":
		m.dipstick()
	case "coolant":
		m.coolant()
	case "cap_stick":
		m.capStick()
	case "dip_tube":
		m.dipTube()
	case "boil_tester":
		m.boilTester()
	case "pull_gauge":
		m.pullGauge()
	case "pendulum":
		m.pendulum()
	case "tape":
		m.tape()
	case "thermometer":
		m.thermometer()
	case "tester":
		m.tester()
	case "observation":
		m.observation()
	default:
		m.plainScale()
	}
}

// Every instrument is laid out on a mount of this size [unit] and enlarged with
// it; line widths, dashes and hatches keep theirs, lettering grows by half as much.
const mountW, mountH = 330.0, 250.0

// A mount is an instrument on its place on the sheet.
type mount struct {
	c     *draw.Canvas
	w     *assets.Words
	v     *play.InstrumentView
	k     float64 // [unit/unit] sheet per mount
	o     draw.Pt // the mount's top left corner on the sheet
	swing float64
}

// at is the place on the sheet of a place on the mount.
func (m *mount) at(x, y float64) draw.Pt { return draw.Pt{X: m.o.X + m.k*x, Y: m.o.Y + m.k*y} }

func (m *mount) rect(x, y, w, h float64) draw.Rect {
	p := m.at(x, y)
	return draw.Rect{X: p.X, Y: p.Y, W: m.k * w, H: m.k * h}
}

func (m *mount) line(x0, y0, x1, y1 float64, p draw.Pen) { m.c.Line(m.at(x0, y0), m.at(x1, y1), p) }

// box fills and outlines an upright rectangle.
func (m *mount) box(x, y, w, h float64, fill color.RGBA, p draw.Pen) {
	m.c.Box(m.rect(x, y, w, h), &fill, p)
}

// part draws a cut rectangle; its hatch is fixed to its top left corner.
func (m *mount) part(x, y, w, h float64, k draw.HatchKind) {
	o := m.rect(x, y, w, h).Corners()
	m.c.Part(o[:], k, o[0])
}

// style is a text style at the mount's size: never smaller than on the sheet.
func (m *mount) style(st draw.TextStyle) draw.TextStyle {
	return st.At(st.Size * min(max(1+(m.k-1)/2, 1), 1.4))
}

func (m *mount) text(x, y float64, a draw.Align, s string) {
	m.c.Text(m.at(x, y), m.style(draw.SmallText).To(a), m.c.Theme.Ink, s)
}

// say letters a wording of this page.
func (m *mount) say(x, y float64, a draw.Align, id string) { m.text(x, y, a, m.w.Say(id)) }

// middle letters s with its middle at a place, whatever its size.
func (m *mount) middle(x, y float64, a draw.Align, s string) {
	st := m.style(draw.SmallText).To(a)
	p := m.at(x, y)
	p.Y += st.Size * 0.35
	m.c.Text(p, st, m.c.Theme.Ink, s)
}

// lines letters a wording broken at a width, from a first baseline down.
func (m *mount) lines(x, y, width float64, id string) {
	m.c.Paragraph(m.at(x, y), m.style(draw.SmallText), m.c.Theme.Ink, m.w.Say(id), m.k*width)
}

// leader runs from a label to a dot on the part.
func (m *mount) leader(x0, y0, x1, y1 float64) {
	m.line(x0, y0, x1, y1, draw.Thin)
	m.dot(x1, y1)
}

func (m *mount) dot(x, y float64) {
	ink := m.c.Theme.Ink
	m.c.Circle(m.at(x, y), 2.2, &ink, draw.Pen{})
}

// needle is one position of the instrument; ok is false where it has none.
func (m *mount) needle(i int) (x float64, ok bool) {
	if i >= len(m.v.Needle) {
		return 0, false
	}
	return m.v.Needle[i], true
}

// onScale is the first position of an instrument that has a scale; ok is false
// where it has neither.
func (m *mount) onScale() (x float64, ok bool) {
	x, ok = m.needle(0)
	return x, ok && m.v.Hi > m.v.Lo && m.v.Division > 0
}

// check is the id of the check without its wheel.
func (m *mount) check() string {
	id, _, _ := strings.Cut(m.v.Check, "@")
	return id
}

// division says in words what a division of an instrument is; nothing where words
// are chosen.
func division(w *assets.Words, v *play.InstrumentView) string {
	if len(v.Words) > 0 || !(v.Division > 0) {
		return ""
	}
	id := "instrument.division." + v.Kind
	if !w.Has(id) {
		id = "instrument.division"
	}
	return w.Say(id, "division", figureOf(v.Division), "coarse", figureOf(5*v.Division), "unit", v.Unit, "lo", figureOf(v.Lo), "hi", figureOf(v.Hi))
}

// figureOf letters a mark of a scale. Marks are whole numbers or have one decimal.
func figureOf(x float64) string {
	n := int(x + 0.5)
	if x >= 0 && x < 100 && math.Abs(x-float64(n)) < 1e-6 {
		return strconv.Itoa(n) // kept by the library: nothing is allocated
	}
	return assets.Figure(math.Round(x*100)/100, -1) // a multiple of 0.01 has other last bits than what it is written as
}
