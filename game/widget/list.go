package widget

import (
	"math"

	"evenwear/game/draw"
)

// A List shows some of many rows and scrolls over them.
type List struct {
	Rect     draw.Rect
	RowH     float64 // [unit]
	Rows     int
	Top      float64 // [row] the first one shown
	Selected int
	Focused  bool

	held bool
	grip float64 // [row] Top and finger together when it was gripped
}

// shown returns how many whole rows are in sight.
func (l *List) shown() int {
	if !(l.RowH > 0) {
		return 0
	}
	return int(l.Rect.H / l.RowH)
}

// Visible returns the first row in sight and the one after the last.
func (l *List) Visible() (from, to int) {
	l.bound()
	from = int(math.Round(l.Top))
	return from, min(l.Rows, from+l.shown())
}

// Row returns where row i stands.
func (l *List) Row(i int) draw.Rect {
	from, _ := l.Visible()
	w := l.Rect.W
	if l.Rows > l.shown() {
		w -= railWidth
	}
	return draw.Rect{X: l.Rect.X, Y: l.Rect.Y + float64(i-from)*l.RowH, W: w, H: l.RowH}
}

const railWidth = 16.0 // [unit]

// Draw draws the rail at the right when there is more than is in sight; rows
// are the caller's to draw.
func (l *List) Draw(c *draw.Canvas) {
	if l.Rows <= l.shown() {
		return
	}
	from, to := l.Visible()
	x := l.Rect.X + l.Rect.W - railWidth/2
	c.Line(draw.Pt{X: x, Y: l.Rect.Y}, draw.Pt{X: x, Y: l.Rect.Y + l.Rect.H}, draw.Thin)
	at := func(row int) float64 { return l.Rect.Y + l.Rect.H*float64(row)/float64(l.Rows) }
	grip := draw.Rect{X: x - 5, Y: at(from), W: 10, H: max(14, at(to)-at(from))}
	edge(c, grip, false, l.Focused, false)
}

// Handle answers the arrow keys, the wheel and a dragging hand; it says whether
// anything changed.
func (l *List) Handle(e Event) bool {
	top, sel := l.Top, l.Selected
	switch e.Kind {
	case KeyDown:
		if l.Focused {
			l.key(e.Key)
		}
	case Wheel:
		if l.Rect.Contains(e.At) {
			l.Top += e.Turn
		}
	case PointerDown:
		if l.held = l.Rect.Contains(e.At); l.held {
			l.grip = l.Top + e.At.Y/l.RowH
		}
	case PointerMove:
		if l.held && e.Touch {
			l.Top = l.grip - e.At.Y/l.RowH
		} else if l.held && e.At.X > l.Rect.X+l.Rect.W-railWidth {
			l.Top = (e.At.Y-l.Rect.Y)/l.Rect.H*float64(l.Rows) - float64(l.shown())/2
		}
	case PointerUp:
		l.held = false
	}
	l.bound()
	return l.Top != top || l.Selected != sel
}

func (l *List) key(key string) {
	switch key {
	case "Up":
		l.Selected--
	case "Down":
		l.Selected++
	case "PageUp":
		l.Selected -= l.shown()
	case "PageDown":
		l.Selected += l.shown()
	case "Home":
		l.Selected = 0
	case "End":
		l.Selected = l.Rows - 1
	default:
		return
	}
	l.Selected = max(0, min(l.Selected, l.Rows-1))
	l.Show(l.Selected)
}

// Show scrolls as little as brings row i into sight.
func (l *List) Show(i int) {
	l.Top = max(min(l.Top, float64(i)), float64(i-l.shown()+1))
	l.bound()
}

func (l *List) bound() {
	if l.Top != l.Top {
		l.Top = 0
	}
	l.Top = max(0, min(l.Top, float64(l.Rows-l.shown())))
}

// A Tick is a box that a pencil stroke is in, or not. It shows what has been
// done and is not pressed, so it has no chamfer.
type Tick struct {
	At draw.Pt // top left
	On bool
}

// Draw draws the box, 14 wide.
func (t Tick) Draw(c *draw.Canvas) {
	c.Outline([]draw.Pt{{X: t.At.X, Y: t.At.Y}, {X: t.At.X + 14, Y: t.At.Y}, {X: t.At.X + 14, Y: t.At.Y + 14}, {X: t.At.X, Y: t.At.Y + 14}}, draw.Thin)
	if t.On {
		c.Pencil([]draw.Pt{{X: t.At.X + 2, Y: t.At.Y + 7}, {X: t.At.X + 6, Y: t.At.Y + 12}, {X: t.At.X + 16, Y: t.At.Y - 2}})
	}
}
