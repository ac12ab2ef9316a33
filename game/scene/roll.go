package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// A roll shows a run of items of unlike heights and scrolls over them by whole
// items, so that nothing is ever cut.
type roll struct {
	id    string
	area  draw.Rect
	items []rollItem
	first int
	held  bool
	grip  float64 // [unit] where a hand took hold
}

// A rollItem is one thing in a roll.
type rollItem struct {
	height float64 // [unit]
	draw   func(c *draw.Canvas, r draw.Rect)
}

const rollStep = 20.0 // [unit] a hand drags over one item

func (r *roll) add(height float64, d func(c *draw.Canvas, r draw.Rect)) {
	r.items = append(r.items, rollItem{height, d})
}

// shown are the items in sight: always one, even where it is too high.
func (r *roll) shown() (from, to int) {
	r.first = max(0, min(r.first, r.last()))
	left := r.area.H
	to = r.first
	for to < len(r.items) && (to == r.first || r.items[to].height <= left) {
		left -= r.items[to].height
		to++
	}
	return r.first, to
}

// last is the first item when the end is in sight.
func (r *roll) last() int {
	left := r.area.H
	i := len(r.items)
	for i > 0 && r.items[i-1].height <= left {
		i--
		left -= r.items[i].height
	}
	return min(i, max(0, len(r.items)-1))
}

// over says whether there is more than is in sight.
func (r *roll) over() bool { return r.last() > 0 }

// inner is where items stand: beside the rail where there is one.
func (r *roll) inner() draw.Rect {
	a := r.area
	if r.over() {
		a.W -= rollRail
	}
	return a
}

const rollRail = 18.0

// rail is what a hand sees of a roll that scrolls.
func (r *roll) rail() draw.Rect {
	from, to := r.shown()
	n := float64(max(1, len(r.items)))
	y := r.area.H * float64(from) / n
	return draw.Rect{X: r.area.X + r.area.W - 12, Y: r.area.Y + y, W: 10, H: max(16, r.area.H*float64(to-from)/n)}
}

// draw draws the items in sight and the rail.
func (r *roll) draw(c *draw.Canvas, focused bool) {
	a := r.inner()
	from, to := r.shown()
	y := a.Y
	for i := from; i < to; i++ {
		r.items[i].draw(c, draw.Rect{X: a.X, Y: y, W: a.W, H: r.items[i].height})
		y += r.items[i].height
	}
	if !r.over() {
		return
	}
	x := r.area.X + r.area.W - 7
	c.Line(draw.Pt{X: x, Y: r.area.Y}, draw.Pt{X: x, Y: r.area.Y + r.area.H}, draw.Thin)
	grip := widget.Chamfered(r.rail())
	c.Polygon(grip[:], c.Theme.Panel)
	c.Outline(grip[:], draw.Visible.In(c.Theme.Key))
	if focused {
		ring := widget.Chamfered(r.rail().Inset(-4))
		c.Outline(ring[:], draw.Thin.In(c.Theme.Key).Wide(1.4))
	}
}

// target is what Tab and a pointer reach of a roll that scrolls.
func (r *roll) target(panel int) widget.Target {
	return widget.Target{ID: r.id, Rect: draw.Rect{X: r.area.X + r.area.W - 14, Y: r.area.Y, W: 14, H: r.area.H}, Panel: panel, Enabled: r.over()}
}

// key answers a key of a keyboard; it says whether it took it.
func (r *roll) key(k string) bool {
	from, to := r.shown()
	page := max(1, to-from-1)
	by, ok := map[string]int{"Up": -1, "Down": 1, "PageUp": -page, "PageDown": page, "Home": -len(r.items), "End": len(r.items)}[k]
	if ok {
		r.first += by
		r.shown()
	}
	return ok
}

// hand answers wheel and dragging; it says whether it took the event.
func (r *roll) hand(e widget.Event) bool {
	switch e.Kind {
	case widget.Wheel:
		if !r.area.Contains(e.At) {
			return false
		}
		if e.Turn > 0 {
			r.first++
		} else {
			r.first--
		}
		r.shown()
		return true
	case widget.PointerDown:
		r.held, r.grip = r.over() && r.area.Contains(e.At), e.At.Y
		return r.held
	case widget.PointerMove:
		if !r.held {
			return false
		}
		step := rollStep
		if !e.Touch { // a mouse drags the rail, which goes the other way
			step = -max(4, r.area.H/float64(max(1, len(r.items))))
		}
		if n := int((r.grip - e.At.Y) / step); n != 0 {
			r.first += n
			r.grip -= float64(n) * step
			r.shown()
		}
		return true
	case widget.PointerUp:
		was := r.held
		r.held = false
		return was
	}
	return false
}
