package scene

import (
	"math"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// The half section is the bench's own drawing, moved into its place and cut at
// the piston's axis.

// sectionOf is the bench's drawing with a fault in it.
func (s *debrief) sectionOf(f *play.FaultView) *bench {
	if s.section != nil {
		return s.section
	}
	b := &bench{lettering: s.lettering, app: s.app, limit: 80, bare: true, halved: true}
	b.view = &play.BenchView{Wheel: f.Wheel, Disc: f.Disc, Piston: f.Piston, PinAt: f.PinAt, PadAt: f.PadAt, Vented: f.Vented,
		Now: f.Faulty, Axial: f.Axial}
	if f.Kind != "sound" {
		b.view.Ghost = &f.Healthy
	}
	b.stand()
	s.section = b
	return b
}

// A halfSection is which half of which section shows a fault, and where.
type halfSection struct {
	caption string
	by      draw.Pt     // from the bench's place to the debrief's
	windows []draw.Rect // what is seen of it
	axis    float64     // on the bench
	joint   bool        // section A–A, with the pipe's joint
	lower   bool
}

// Where the half section stands: its axis at the foot, or at the top for the
// lower half.
const (
	sectionTop  = 378.0
	sectionAxis = 546.0
	sectionLeft = 34.0 // left end of the body
	jointLeft   = 24.0 // left end of the joint's bolt
)

// halfOf is the half that shows a fault: the one with the pin that moves worst,
// or the joint for a leak.
func (s *debrief) halfOf(b *bench, f *play.FaultView) halfSection {
	window := draw.Rect{X: 20, Y: sectionTop, W: labelX0 - 24, H: sectionAxis - sectionTop + 6}
	if f.Leak > 0 {
		h := halfSection{caption: "debrief_sheet.half_piston", by: draw.Pt{X: jointLeft - b.now.bore + 68, Y: sectionAxis - 48 - axisAA}, axis: axisAA, joint: true}
		axis := h.by.Y + axisAA
		h.windows = []draw.Rect{{X: window.X, Y: window.Y, W: window.W, H: axis + 6 - window.Y},
			{X: window.X, Y: axis + 6, W: jointLeft + 46 - window.X, H: 40}} // joint and hose in full
		return h
	}
	bore := b.now.bore
	if b.view.Ghost != nil {
		bore = min(bore, b.well.bore)
	}
	h := halfSection{caption: "debrief_sheet.half_upper", by: draw.Pt{X: sectionLeft - bore + 20, Y: sectionAxis - axisBB}, axis: axisBB, windows: []draw.Rect{window}}
	if pinRank(f.Faulty.Pins[1]) > pinRank(f.Faulty.Pins[0]) {
		h.caption, h.lower = "debrief_sheet.half_lower", true
		h.by.Y = sectionTop + 6 - axisBB
	}
	return h
}

func pinRank(state string) int {
	return map[string]int{"dry": 1, "tight": 1, "bent": 2, "stuck": 3}[state]
}

// draw draws the half section.
func (h *halfSection) draw(c *draw.Canvas, b *bench, f *play.FaultView) {
	part := func() {
		c.Moved(h.by, func() {
			if h.joint {
				b.axialFixed(c)
				b.axialMoving(c, &b.level, &b.view.Now)
				drops(c, &b.level)
				return
			}
			b.carrier(c)
			b.pinsMoving(c, &b.now, &b.view.Now)
			if f.Air > 0 {
				b.air(c, f.Air)
			}
			if b.view.Ghost != nil {
				b.outline(c, &b.well)
			}
		})
	}
	for _, w := range h.windows {
		c.Clipped(w, part)
	}
}

// drops are the sign of a joint that weeps, under the banjo's washers.
func drops(c *draw.Canvas, p *pose) {
	th := c.Theme
	in := p.radius * 0.535
	for i, x := range [3]float64{-51, -23, -37} {
		at := p.body(axisAA, x, in-16-6*float64(i%2))
		pts := []draw.Pt{{X: at.X, Y: at.Y - 7}, {X: at.X + 4, Y: at.Y}, {X: at.X, Y: at.Y + 5}, {X: at.X - 4, Y: at.Y}}
		c.Polygon(pts, th.Fluid[4])
		c.Outline(pts, draw.Thin.In(th.FluidLine).Wide(1.4))
	}
}

// air draws the pocket that a volume [cm³] at one atmosphere takes in the bore
// as it is drawn: from the top down, with a level surface.
func (b *bench) air(c *draw.Canvas, cm3 float64) {
	p := &b.now
	long := (p.piston - p.bore) / trueScale // [mm]
	r := p.radius / trueScale
	if !(long > 0.5) {
		return
	}
	area := cm3 * 1000 / long // [mm²] of the bore's cross section
	h := segmentHeight(r, min(area, math.Pi*r*r)) * trueScale
	at := func(x, y float64) draw.Pt { return draw.Pt{X: x, Y: axisBB - p.radius + y} }
	pts := []draw.Pt{at(p.bore+1, 1), at(p.piston-1, 1), at(p.piston-1, h), at(p.bore+1, h)}
	c.Polygon(pts, c.Theme.Paper)
	c.Line(pts[3], pts[2], draw.Visible)
	for i := range 4 { // bubbles on their way up
		y := h + 7 + 9*float64(i)
		c.Circle(at(p.bore+(p.piston-p.bore)*(0.3+0.4*float64(i%2)), y), 3, &c.Theme.Paper, draw.Thin)
	}
}

// segmentHeight is how high a segment of a circle of radius r stands that has
// an area.
func segmentHeight(r, area float64) float64 {
	lo, hi := 0.0, 2*r
	for range 40 {
		h := (lo + hi) / 2
		d := r - h
		if r*r*math.Acos(d/r)-d*math.Sqrt(max(0, r*r-d*d)) < area {
			lo = h
		} else {
			hi = h
		}
	}
	return lo
}

// leaders run from labels to their parts where the half shows them.
func (s *debrief) leaders(c *draw.Canvas, b *bench, f *play.FaultView, h halfSection) {
	anchors := b.anchors(h)
	line := len(s.lines(c, s.labelHead(f), draw.SmallText, labelArea.W-rollRail))
	from, to := s.labels.shown()
	y := func(n int) (float64, bool) {
		if n < from || n >= to {
			return 0, false
		}
		at := labelArea.Y
		for i := from; i < n; i++ {
			at += s.labels.items[i].height
		}
		return at + 8, true
	}
	for i := range f.Labels {
		l := &f.Labels[i]
		if end, ok := anchors[l.Part]; ok {
			if at, in := y(line); in {
				b.leader(c, draw.Pt{X: labelX0 - 3, Y: at}, end.Add(h.by))
			}
		}
		line += len(s.lines(c, l.Text, draw.SmallText, labelArea.W-rollRail))
	}
}

// labelHead is the first label: what it is.
func (s *debrief) labelHead(f *play.FaultView) string {
	if f.Cause == "" {
		return s.word("debrief_sheet.sound_note")
	}
	return s.words.Say("play.at", "what", f.Cause, "place", f.Place)
}

// anchors are the places of parts on the bench that a half shows.
func (b *bench) anchors(h halfSection) map[string]draw.Pt {
	p := &b.now
	if h.joint {
		p = &b.level
		in := p.radius * 0.535
		return map[string]draw.Pt{"joint": p.body(axisAA, -23, in+10), "outer_lining": {X: p.plate[1] - 9, Y: axisAA - 33}, "inner_lining": {X: p.plate[0] + 7, Y: axisAA - 33}}
	}
	side := 1.0
	pin := "upper_pin"
	if h.lower {
		side, pin = -1, "lower_pin"
	}
	i := 0
	if h.lower {
		i = 1
	}
	return map[string]draw.Pt{
		pin:            {X: pinTip(p, i) - 12, Y: axisBB - p.pin(i) + side*6},
		"outer_lining": p.mid(1, side*60),
		"inner_lining": p.mid(0, side*40),
		"piston":       p.inner(axisBB, 40, side*p.radius),
		"air":          {X: (p.bore + p.piston) / 2, Y: axisBB - side*p.radius + 6},
		"disc":         {X: p.disc[1] - 5, Y: axisBB - side*20},
	}
}
