package scene

import (
	"math"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// The right column: pressure and both clamp forces against time.

var plotArea = draw.Rect{X: 946, Y: 78, W: 315, H: 330}

const (
	plotX0, plotX1 = 1000.0, 1236.0
	plotPTop       = 88.0
	plotPFoot      = 172.0
	plotFTop       = 222.0
	plotFFoot      = 340.0
)

func (b *bench) plotStill(c *draw.Canvas) {
	b.headingWithUnit(c, 77, "bench_sheet.plot_pressure", "bench_sheet.unit_mpa")
}

// headingWithUnit letters a heading in capitals and its unit as it is written.
func (b *bench) headingWithUnit(c *draw.Canvas, y float64, id, unit string) {
	name := b.word(id)
	c.Text(draw.Pt{X: 957, Y: y}, draw.HeadingText, c.Theme.Ink, name)
	c.Text(draw.Pt{X: 964 + c.Measure(draw.HeadingText, name), Y: y}, draw.ValueText.At(16), c.Theme.Ink, b.word(unit))
}

// nice is the least of 1, 2, 3, 5 × 10ⁿ that is not below x, at least lo.
func nice(x, lo float64) float64 {
	for top := lo; ; {
		if x <= top {
			return top
		}
		e := math.Pow(10, math.Floor(math.Log10(top)+1e-9))
		switch m := math.Round(top / e); {
		case m < 2:
			top = 2 * e
		case m < 3:
			top = 3 * e
		case m < 5:
			top = 5 * e
		default:
			top = 10 * e
		}
	}
}

// plotSpan is the time the plots show [s]; a longer press scrolls through it.
const plotSpan = 4.0

// begin is the time at the left end of the plots [s].
func (b *bench) begin() float64 { return max(0, b.view.Time-plotSpan) }

func (b *bench) plotMoving(c *draw.Canvas) {
	th, v := c.Theme, b.view
	pMax, fMax := 0.0, 0.0
	for i := range v.Plot {
		s := &v.Plot[i]
		pMax, fMax = max(pMax, s.Pressure), max(fMax, s.Inner, s.Outer)
	}
	pTop, fTop, begin := nice(pMax, 2), nice(fMax, 3), b.begin()
	b.headingWithUnit(c, 212, "bench_sheet.plot_force", "bench_sheet.unit_kn")
	b.axes(c, plotPTop, plotPFoot, pTop, begin)
	b.axes(c, plotFTop, plotFFoot, fTop, begin)
	p := axisOf(plotPTop, plotPFoot, pTop, begin)
	f := axisOf(plotFTop, plotFFoot, fTop, begin)

	b.trace(c, p, func(s *play.BenchSample) float64 { return s.Pressure }, draw.Visible)
	b.trace(c, f, func(s *play.BenchSample) float64 { return s.Inner }, draw.Visible)
	b.trace(c, f, func(s *play.BenchSample) float64 { return s.Outer }, draw.Pen{Width: 2.1, Dash: outerDash})
	for _, share := range [3]float64{0.45, 0.67, 0.86} { // rings tell the outer trace from the inner in grey
		if t := begin + (v.Time-begin)*share; len(v.Plot) > 2 {
			s := sampleAt(v.Plot, t)
			c.Circle(f.at(s.Time, s.Outer), 4, &th.Paper, draw.Thin.Wide(1.6))
		}
	}
	if v.Predict.Said >= 0 && len(v.Plot) > 1 {
		pts := b.thin(f, 12, func(s *play.BenchSample) float64 { return s.Inner * v.Predict.Said / 100 })
		c.Pencil(pts)
	}
	if v.Time > 0 && len(v.Plot) > 0 {
		x := p.at(v.Time, 0).X
		for _, y := range [2][2]float64{{plotPTop, plotPFoot}, {plotFTop, plotFFoot}} {
			c.Line(draw.Pt{X: x, Y: y[0] - 4}, draw.Pt{X: x, Y: y[1]}, draw.Thin)
			c.Polygon([]draw.Pt{{X: x, Y: y[0] - 3}, {X: x - 4.5, Y: y[0] - 10}, {X: x + 4.5, Y: y[0] - 10}}, th.Ink)
		}
	}
	b.legend(c)
}

var outerDash = []float64{7, 5}

func (b *bench) legend(c *draw.Canvas) {
	th, n := c.Theme, &b.view.Now
	c.Line(draw.Pt{X: 960, Y: 377}, draw.Pt{X: 992, Y: 377}, draw.Visible)
	c.Text(draw.Pt{X: 998, Y: 381}, draw.SmallText, th.Ink, b.fill("bench_sheet.legend_inner", "kn", b.num(n.Half[0][0]+n.Half[0][1], 2)))
	c.Line(draw.Pt{X: 1106, Y: 377}, draw.Pt{X: 1136, Y: 377}, draw.Pen{Width: 2.1, Dash: outerDash})
	c.Circle(draw.Pt{X: 1121, Y: 377}, 4, &th.Paper, draw.Thin.Wide(1.6))
	c.Text(draw.Pt{X: 1144, Y: 381}, draw.SmallText, th.Ink, b.fill("bench_sheet.legend_outer", "kn", b.num(n.Half[1][0]+n.Half[1][1], 2)))
	if b.view.Predict.Said >= 0 {
		c.Pencil([]draw.Pt{{X: 960, Y: 396}, {X: 976, Y: 397}, {X: 992, Y: 396}})
		c.Text(draw.Pt{X: 998, Y: 401}, draw.HandText.At(15), th.Graphite, b.word("bench_sheet.legend_said"))
	}
	c.Text(draw.Pt{X: 1252, Y: 401}, draw.SmallText.To(draw.Right), th.Ink, b.word("bench_sheet.time_s"))
}

// A plotAxis turns a time and a value into a place.
type plotAxis struct{ begin, x, y, foot float64 }

func axisOf(top, foot, most, begin float64) plotAxis {
	return plotAxis{begin: begin, x: (plotX1 - plotX0) / plotSpan, y: (foot - top) / most, foot: foot}
}

func (a plotAxis) at(t, v float64) draw.Pt {
	return draw.Pt{X: plotX0 + (t-a.begin)*a.x, Y: a.foot - v*a.y}
}

func (b *bench) axes(c *draw.Canvas, top, foot, most, begin float64) {
	st, ink := draw.SmallText, c.Theme.Ink
	steps := int(math.Round(most))
	for steps > 5 {
		steps = map[bool]int{true: 5, false: 4}[steps%5 == 0]
	}
	for i := range steps + 1 {
		y := foot - (foot-top)*float64(i)/float64(steps)
		if i > 0 {
			c.Line(draw.Pt{X: plotX0, Y: y}, draw.Pt{X: plotX1, Y: y}, draw.Pen{Width: 0.9, Dash: dotDash})
		}
		c.Line(draw.Pt{X: plotX0 - 5, Y: y}, draw.Pt{X: plotX0, Y: y}, draw.Thin)
		n := most * float64(i) / float64(steps)
		d := 0
		if n != math.Round(n) {
			d = 1
		}
		c.Text(draw.Pt{X: plotX0 - 9, Y: y + 5}, st.To(draw.Right), ink, b.num(n, d))
	}
	a := axisOf(top, foot, most, begin)
	for t := math.Ceil(begin); t <= begin+plotSpan; t++ { // whole seconds, going by with the trace
		x := a.at(t, 0).X
		c.Line(draw.Pt{X: x, Y: foot}, draw.Pt{X: x, Y: foot + 4}, draw.Thin)
		c.Text(draw.Pt{X: x, Y: foot + 18}, st.To(draw.Middle), ink, b.num(t, 0))
	}
	c.Polyline([]draw.Pt{{X: plotX0, Y: top}, {X: plotX0, Y: foot}, {X: plotX1, Y: foot}}, draw.Thin.Wide(1.6))
}

var dotDash = []float64{2, 4}

// trace draws one quantity of the samples.
func (b *bench) trace(c *draw.Canvas, a plotAxis, of func(*play.BenchSample) float64, pen draw.Pen) {
	if pts := b.thin(a, 1, of); len(pts) > 1 {
		c.Polyline(pts, pen)
	}
}

// thin keeps one sample every so many units of width: more would only cost time.
func (b *bench) thin(a plotAxis, apart float64, of func(*play.BenchSample) float64) []draw.Pt {
	pts := b.pts[:0]
	n := len(b.view.Plot)
	for i := range b.view.Plot {
		s := &b.view.Plot[i]
		q := a.at(s.Time, of(s))
		if s.Time < a.begin {
			continue
		}
		if k := len(pts); k > 0 && i < n-1 && q.X-pts[k-1].X < apart && math.Abs(q.Y-pts[k-1].Y) < 6*apart {
			continue
		}
		pts = append(pts, q)
	}
	b.pts = pts
	return pts
}

func sampleAt(plot []play.BenchSample, t float64) play.BenchSample {
	lo, hi := 0, len(plot)-1
	for lo < hi {
		m := (lo + hi) / 2
		if plot[m].Time < t {
			lo = m + 1
		} else {
			hi = m
		}
	}
	return plot[lo]
}
