package widget

import (
	"image/color"

	"evenwear/assets"
	"evenwear/game/draw"
)

// A Key is what is pressed.
type Key struct {
	Rect    draw.Rect
	Label   string
	Size    float64 // [unit] of the lettering; 0 is the sheet's own
	Letter  string  // shown in a box: the key on the keyboard
	Value   string  // right of the label: minutes, a count
	Left    bool    // label at the left edge; a key with a value always has it there
	Radio   bool    // one of several: a ring before the label
	Drop    bool    // opens a list: a wedge
	Strong  bool    // the large next step
	Pencil  bool    // underlined in pencil: something stands on it
	Chosen  bool
	Focused bool
	Off     bool // unavailable
}

// corner returns how much of the top right corner of r is cut away.
func corner(r draw.Rect) float64 { return min(10, r.H*0.3, r.W*0.3) }

// Chamfered returns the outline of what can be pressed.
func Chamfered(r draw.Rect) [5]draw.Pt {
	k := corner(r)
	return [5]draw.Pt{
		{X: r.X, Y: r.Y}, {X: r.X + r.W - k, Y: r.Y}, {X: r.X + r.W, Y: r.Y + k},
		{X: r.X + r.W, Y: r.Y + r.H}, {X: r.X, Y: r.Y + r.H},
	}
}

// edge draws the chamfered ground of anything that can be pressed, and returns
// the colour to letter it with.
func edge(c *draw.Canvas, r draw.Rect, chosen, focused, off bool) color.RGBA {
	th := c.Theme
	pts := Chamfered(r)
	ground, col := th.Panel, th.Key
	if off {
		col = th.Graphite
	} else if chosen {
		ground, col = th.Key, th.OnKey
	}
	c.Polygon(pts[:], ground)
	if off {
		c.Outline(pts[:], draw.Hidden.In(th.Graphite))
	} else {
		c.Outline(pts[:], draw.Visible.In(th.Key))
	}
	if focused {
		ring := Chamfered(r.Inset(-4))
		c.Outline(ring[:], draw.Thin.In(th.Key).Wide(1.4))
	}
	return col
}

// Draw draws the key.
func (k *Key) Draw(c *draw.Canvas) {
	r := k.Rect
	col := edge(c, r, k.Chosen, k.Focused, k.Off)
	st := draw.KeyText
	if k.Strong {
		st = draw.StrongText.At(16)
	}
	if k.Size > 0 {
		st = st.At(k.Size)
	}
	base := r.Y + r.H/2 + st.Size*0.34
	left, right := r.X+9, r.X+r.W-9
	if k.Letter != "" {
		box := k.letterBox(c)
		letter(c, box, k.Letter, col)
		right = box.X - 7
	}
	if k.Drop {
		x, y := right-8, r.Y+r.H/2
		c.Polygon([]draw.Pt{{X: x - 5, Y: y - 4}, {X: x + 5, Y: y - 4}, {X: x, Y: y + 5}}, col)
		right = x - 12
	}
	if k.Radio {
		at := draw.Pt{X: left + 6, Y: r.Y + r.H/2}
		c.Circle(at, 6, nil, draw.Thin.In(col).Wide(1.7))
		if k.Chosen {
			c.Circle(at, 3, &col, draw.Pen{})
		}
		left += 21
	}
	if k.Value != "" {
		c.Text(draw.Pt{X: right, Y: base}, draw.ValueText.To(draw.Right), col, k.Value)
		right -= c.Measure(draw.ValueText, k.Value) + 8
	}
	k.label(c, st, col, left, right, base)
}

// label letters the key between left and right, smaller by a step rather than
// cut where that is enough.
func (k *Key) label(c *draw.Canvas, st draw.TextStyle, col color.RGBA, left, right, base float64) {
	if c.Measure(st, k.Label) > right-left {
		st = st.At(max(13, st.Size*0.86))
	}
	s := c.Fit(st, k.Label, right-left)
	w := c.Measure(st, s)
	x := left
	if k.Value == "" && !k.Left && !k.Radio && !k.Drop {
		x = (left + right - w) / 2
	}
	c.Text(draw.Pt{X: x, Y: base}, st, col, s)
	if k.Pencil {
		c.Pencil([]draw.Pt{{X: x, Y: base + 5}, {X: x + w, Y: base + 4}})
	}
}

func (k *Key) letterBox(c *draw.Canvas) draw.Rect {
	w := max(18, c.Measure(draw.SmallText, k.Letter)+10)
	h := min(19, k.Rect.H-6)
	return draw.Rect{X: k.Rect.X + k.Rect.W - w - 7, Y: k.Rect.Y + (k.Rect.H-h)/2 + 1, W: w, H: h}
}

func letter(c *draw.Canvas, box draw.Rect, s string, col color.RGBA) {
	pts := box.Corners()
	p := draw.Thin.In(col)
	c.Outline(pts[:], p)
	c.Text(draw.Pt{X: box.X + box.W/2, Y: box.Y + box.H/2 + 4.5}, draw.TextStyle{Face: assets.Lettering, Size: 13, Align: draw.Middle}, col, s)
}

// Target returns what the key reacts to.
func (k *Key) Target(id string, panel int) Target {
	return Target{ID: id, Rect: k.Rect, Key: k.Letter, Panel: panel, Enabled: !k.Off, Brief: true}
}
