package widget

import "evenwear/game/draw"

// Metrics says how large things must be for the hand that is used.
type Metrics struct {
	Touch bool
	Scale float64 // [px/unit] of the canvas; 0 is 1
	Text  float64 // [1] the learner's text size; 0 is 1
}

// Smallest sizes of a pointer target [px]: WCAG 2.2 SC 2.5.8 (AA) and 2.5.5
// (AAA); a key is never lower than the sheet's own 28 units.
const (
	MouseTarget = 24.0
	TouchTarget = 44.0
	keyHeight   = 28.0 // [unit]
)

// KeyHeight returns the least height and width of a key [unit].
func (m Metrics) KeyHeight() float64 {
	scale, text := m.Scale, m.Text
	if scale <= 0 {
		scale = 1
	}
	if text <= 0 {
		text = 1
	}
	h := max(keyHeight*text, MouseTarget/scale)
	if m.Touch {
		h = max(h, TouchTarget, TouchTarget/scale)
	}
	return h
}

// Grid lays n keys in r in columns, row by row, each at least as high as the
// metrics ask, with gaps [unit]. It may reach below r where n asks for it.
func (m Metrics) Grid(r draw.Rect, columns, n int, gap float64) []draw.Rect {
	columns = max(columns, 1)
	h := m.KeyHeight()
	w := (r.W - gap*float64(columns-1)) / float64(columns)
	cells := make([]draw.Rect, n)
	for i := range cells {
		x, y := float64(i%columns), float64(i/columns)
		cells[i] = draw.Rect{X: r.X + x*(w+gap), Y: r.Y + y*(h+gap), W: w, H: h}
	}
	return cells
}
