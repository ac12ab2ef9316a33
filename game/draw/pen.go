package draw

import "image/color"

// A Pen is one kind of line.
type Pen struct {
	Width float64    // [unit] 3 units = 1 mm
	Dash  []float64  // [unit] drawn, left out, drawn, …; nil is a full line
	Col   color.RGBA // zero: the theme's ink
}

// The line kinds of the sheet: outlines and cut edges wide, everything else
// narrow, 0.7 mm to 0.35 mm (ISO 128-24).
var (
	Visible  = Pen{Width: 2.1}
	Thin     = Pen{Width: 1.05}
	HatchPen = Pen{Width: 0.84}
	Hidden   = Pen{Width: 1.05, Dash: []float64{6, 4}}
	Centre   = Pen{Width: 1.05, Dash: []float64{14, 3, 3, 3}}
	InFront  = Pen{Width: 1.05, Dash: []float64{9, 3, 2, 3, 2, 3}}
	pencil   = Pen{Width: 1.7}
)

// In returns the pen in another colour.
func (p Pen) In(col color.RGBA) Pen {
	p.Col = col
	return p
}

// Wide returns the pen at another width [unit].
func (p Pen) Wide(w float64) Pen {
	p.Width = w
	return p
}
