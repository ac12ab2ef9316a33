package widget

import (
	"image/color"
	"math"

	"evenwear/game/draw"
)

// A Rod carries counters as nuts threaded on it; every fifth carries a stroke,
// so that a row counts at a glance.
type Rod struct {
	Rect  draw.Rect // the rod runs along its middle
	Nuts  int
	Of    int  // how many would fill it; 0 is 20
	Solid bool // blacked nuts: the second call on the board
	Ink   bool // in ink: a mean the program worked out, not what one learner said
}

// Counters is how many nuts there are in all.
const Counters = 20

// pitch returns how much of the rod one nut takes [unit].
func (r *Rod) pitch() float64 {
	of := r.Of
	if of <= 0 {
		of = Counters
	}
	return min(r.Rect.W/float64(of), r.Rect.H*0.66)
}

// At returns how many nuts end where a pointer is: the one under it is the last.
func (r *Rod) At(p draw.Pt) int {
	return max(0, int(math.Round((p.X-r.Rect.X)/r.pitch())))
}

func (r *Rod) col(th *draw.Theme) color.RGBA {
	if r.Ink {
		return th.Ink
	}
	return th.Graphite
}

// Draw draws the rod with its thread and its nuts, in pencil grey when they are
// what the learner said.
func (r *Rod) Draw(c *draw.Canvas) {
	th := c.Theme
	y := r.Rect.Y + r.Rect.H/2
	half := r.Rect.H * 0.14
	thread := draw.Rect{X: r.Rect.X + r.pitch()*float64(r.Nuts), Y: y - half, W: 0, H: 2 * half}
	thread.W = r.Rect.X + r.Rect.W - thread.X
	grey := draw.Thin.In(r.col(th))
	if thread.W > 0 {
		k := thread.Corners()
		c.Polygon(k[:], th.Panel)
		for x := thread.X + 4; x < thread.X+thread.W; x += 4 {
			c.Line(draw.Pt{X: x - 3, Y: y + half}, draw.Pt{X: x, Y: y - half}, draw.HatchPen.In(r.col(th)))
		}
		c.Outline(k[:], grey)
	}
	for i := range r.Nuts {
		r.nut(c, i, y)
	}
}

// nut draws one hexagon nut seen from its side: its corners bevelled, two edges
// across it.
func (r *Rod) nut(c *draw.Canvas, i int, y float64) {
	th := c.Theme
	w, h := r.pitch()-1.5, r.Rect.H*0.46
	x := r.Rect.X + r.pitch()*float64(i)
	k := w * 0.2
	pts := [8]draw.Pt{
		{X: x + k, Y: y - h}, {X: x + w - k, Y: y - h}, {X: x + w, Y: y - h + k}, {X: x + w, Y: y + h - k},
		{X: x + w - k, Y: y + h}, {X: x + k, Y: y + h}, {X: x, Y: y + h - k}, {X: x, Y: y - h + k},
	}
	pen := draw.Thin.In(r.col(th)).Wide(1.4)
	if r.Solid {
		c.Polygon(pts[:], r.col(th))
		pen = pen.In(th.Panel)
	} else {
		c.Polygon(pts[:], th.Disc)
	}
	for _, dy := range [2]float64{-h / 2, h / 2} {
		c.Line(draw.Pt{X: x, Y: y + dy}, draw.Pt{X: x + w, Y: y + dy}, pen.Wide(1.05))
	}
	if !r.Solid {
		c.Outline(pts[:], pen)
	}
	if i%5 == 4 {
		c.Line(draw.Pt{X: x + w*0.15, Y: y + h*0.4}, draw.Pt{X: x + w*0.85, Y: y - h*0.4}, pen.Wide(1.7))
	}
}

// RodAct is what a key does to the rod of the ringed row.
type RodAct uint8

// The acts on a rod.
const (
	Nothing RodAct = iota
	More
	Less
	ClearRod
	DropRow
)

// RodKey returns what an event does to the ringed row: → more, ← less, 0
// clears, Delete takes the row out.
func RodKey(e Event) RodAct {
	if e.Kind != KeyDown {
		return Nothing
	}
	switch e.Key {
	case "Right":
		return More
	case "Left":
		return Less
	case "0":
		return ClearRod
	case "Delete":
		return DropRow
	}
	return Nothing
}
