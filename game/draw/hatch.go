package draw

import (
	"image/color"
	"math"
	"slices"
)

// A HatchKind is what a cut face is made of.
type HatchKind uint8

// The hatches by part.
const (
	HatchDisc HatchKind = iota
	HatchBody
	HatchPiston
	HatchPlate
	HatchLining
	HatchCarrier
	HatchKnuckle
	HatchWasher
	HatchBar // filled part of a bar or a gauge: no material
	Rubber   // blacked in
	Grease   // dots
	hatchKinds
)

// A family is one set of parallel lines.
type family struct {
	angle float64   // [°] from the right, anticlockwise on the sheet
	pitch float64   // [unit]
	dash  []float64 // [unit] nil is full
}

var (
	liningDash = []float64{5, 3}
	greaseDots = []float64{1.2, 2.8}
)

// hatches is the table of the sheet. Parts that touch differ in angle by 15° or
// more (ISO 128-50 by repute; PCT Guidelines A-V 7.3.2).
var hatches = [hatchKinds][]family{
	HatchDisc:    {{45, 7, nil}},
	HatchBody:    {{135, 9, nil}},
	HatchPiston:  {{30, 5, nil}},
	HatchPlate:   {{150, 4, nil}},
	HatchLining:  {{40, 8, liningDash}, {140, 8, liningDash}},
	HatchCarrier: {{60, 12, nil}},
	HatchKnuckle: {{120, 14, nil}},
	HatchWasher:  {{90, 3, nil}},
	HatchBar:     {{45, 5, nil}},
	Rubber:       {},
	Grease:       {{0, 4, greaseDots}},
}

// Tint returns the ground a part is hatched on.
func (t *Theme) Tint(h HatchKind) color.RGBA {
	switch h {
	case HatchDisc:
		return t.Disc
	case HatchBody:
		return t.Body
	case HatchPiston, HatchWasher:
		return t.Piston
	case HatchPlate:
		return t.Plate
	case HatchLining:
		return t.Lining
	case HatchCarrier, HatchKnuckle:
		return t.Carrier
	case Rubber:
		return t.Rub
	case Grease:
		return t.Fluid[0]
	}
	return t.Panel
}

// Part draws a cut part: its tint, its hatch, its visible edge. The origin is
// any place that moves with the part.
func (c *Canvas) Part(outline []Pt, h HatchKind, origin Pt) {
	c.Polygon(outline, c.Theme.Tint(h))
	c.Hatch(outline, h, origin)
	c.Outline(outline, Visible)
}

// Hatch hatches the inside of an outline, by the even-odd rule. The lines pass
// through origin, so a hatch stays with its part when origin does.
func (c *Canvas) Hatch(outline []Pt, h HatchKind, origin Pt) {
	if h >= hatchKinds || len(outline) < 3 {
		return
	}
	if h == Rubber {
		c.Polygon(outline, c.Theme.Rub)
		return
	}
	col := c.Theme.Ink
	half := HatchPen.Width * c.scale / 2
	if h == Grease {
		col, half = c.Theme.FluidLine, 0.6*c.scale
	}
	c.load(outline)
	if !c.seen(0) {
		return
	}
	c.scan.begin()
	o := c.px(origin)
	for _, f := range hatches[h] {
		c.family(f, o, half)
	}
	c.end(col)
}

// family adds the lines of one family inside c.path. It turns the outline so
// that the lines lie level, and cuts each where it crosses the outline.
func (c *Canvas) family(f family, o Pt, half float64) {
	s, k := math.Sincos(-f.angle * math.Pi / 180)
	along, across := Pt{k, s}, Pt{-s, k}
	c.rows = c.rows[:0]
	for _, p := range c.path {
		d := p.Sub(o)
		c.rows = append(c.rows, Pt{d.X*along.X + d.Y*along.Y, d.X*across.X + d.Y*across.Y})
	}
	lo, hi := bounds(c.rows)
	pitch := f.pitch * c.scale
	first, last := math.Ceil(lo.Y/pitch), math.Floor(hi.Y/pitch)
	if !(last-first < 4000) { // far off any sheet
		return
	}
	for n := first; n <= last; n++ {
		y := n * pitch
		c.cut(y)
		for i := 0; i+1 < len(c.cross); i += 2 {
			x0, x1 := c.cross[i], c.cross[i+1]
			base := o.Add(across.Mul(y))
			if f.dash == nil {
				c.stripe(base, along, x0, x1, half)
				continue
			}
			// Dashes are fixed to the part too, and staggered from line to line.
			on, period := f.dash[0]*c.scale, (f.dash[0]+f.dash[1])*c.scale
			shift := math.Mod(n, 2) * period / 2
			for d := math.Floor((x0-shift)/period)*period + shift; d < x1; d += period {
				c.stripe(base, along, math.Max(d, x0), math.Min(d+on, x1), half)
			}
		}
	}
}

// cut finds where the level line at y crosses the turned outline, in order.
func (c *Canvas) cut(y float64) {
	c.cross = c.cross[:0]
	n := len(c.rows)
	for i, a := range c.rows {
		b := c.rows[(i+1)%n]
		if (a.Y <= y) != (b.Y <= y) {
			c.cross = append(c.cross, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
		}
	}
	slices.Sort(c.cross)
}

// stripe adds one hatch line from x0 to x1 along a direction.
func (c *Canvas) stripe(base, along Pt, x0, x1, half float64) {
	if x1 <= x0 {
		return
	}
	a, b, o := base.Add(along.Mul(x0)), base.Add(along.Mul(x1)), along.normal().Mul(half)
	c.quad(a.Add(o), a.Sub(o), b.Sub(o), b.Add(o))
}

// levelPitch is how far apart the strokes in fluid stand [unit], by step of
// pressure: they close up, so that pressure reads in grey too.
var levelPitch = [5]float64{9, 8, 6, 5, 4}

// Level fills an outline with fluid under a step of pressure, 0 to 4 (see
// [FluidStep]), and draws its level strokes through origin.
func (c *Canvas) Level(outline []Pt, step int, origin Pt) {
	if len(outline) < 3 {
		return
	}
	step = min(max(step, 0), 4)
	c.Polygon(outline, c.Theme.Fluid[step])
	c.load(outline)
	c.scan.begin()
	c.family(family{0, levelPitch[step], nil}, c.px(origin), HatchPen.Width*c.scale/2)
	c.end(c.Theme.FluidLine)
}
