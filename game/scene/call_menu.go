package scene

import (
	"image/color"
	"strconv"
	"strings"
	"unicode/utf8"

	"evenwear/game/draw"
	"evenwear/game/widget"
)

// A menu is a block of keys of which arrows choose one and Enter presses it: one
// stop for Tab. What does not fit scrolls.
type menu struct {
	id    string
	panel int
	area  draw.Rect
	cols  int
	rowH  float64
	items []menuItem
	list  widget.List // rows of keys; Selected is not used
	sel   int         // [item] ringed
	downY float64
	held  bool
	paint func(c *draw.Canvas, i int, r draw.Rect) // letters an item itself
	inner func(r draw.Rect) draw.Rect              // the key within its row; nil: all of it
	why   func(i int) string                       // an item is unavailable; nil: it says nothing
	tell  func(sentence string)                    // of the form that holds it
}

// menuGap is between the keys of a menu, one above the other [unit].
const menuGap = 3.0

type menuItem struct {
	widget.Key
	do func()
}

// fit works out rows and columns.
func (m *menu) fit(touch bool) {
	m.cols = max(m.cols, 1)
	m.list.Rect, m.list.RowH = m.area, m.rowH
	if touch {
		m.list.RowH = max(m.rowH, min(widget.TouchTarget+menuGap, m.area.H))
	}
	m.list.Rows = (len(m.items) + m.cols - 1) / m.cols
	m.sel = max(0, min(m.sel, len(m.items)-1))
}

// any says whether there is something to press.
func (m *menu) any() bool {
	for i := range m.items {
		if !m.items[i].Off {
			return true
		}
	}
	return false
}

// cell is where item i stands.
func (m *menu) cell(i int) draw.Rect {
	r := m.list.Row(i / m.cols)
	w := (r.W - 1) / float64(m.cols)
	k := draw.Rect{X: r.X + 1 + w*float64(i%m.cols), Y: r.Y + menuGap/2, W: w - 5, H: r.H - menuGap}
	if m.inner != nil {
		return m.inner(k)
	}
	return k
}

// columns is how many columns of a block so wide hold these labels, at most
// most. A key as high as a finger needs takes two lines.
func columns(items []menuItem, width float64, most int, touch bool) int {
	long := 1
	for i := range items {
		n := utf8.RuneCountInString(items[i].Label)
		if touch && n > 14 && strings.Contains(items[i].Label, " ") {
			n = n/2 + 3
		}
		long = max(long, n)
	}
	// A letter of a key, shrunk to its smallest, is 6.1 wide on the mean.
	pitch := 6.1*float64(long) + 20
	if len(items) > 0 && items[0].Letter != "" {
		pitch += letterRoom
	}
	return max(1, min(most, int(width/pitch)))
}

// letterRoom is what the letter of a key takes from its label [unit].
const letterRoom = 25.0

// number letters the first nine of these with the figures that press them.
func number(items []menuItem) {
	for i := range items[:min(9, len(items))] {
		items[i].Letter = strconv.Itoa(i + 1)
	}
}

func (m *menu) shown() (from, to int) {
	a, b := m.list.Visible()
	return a * m.cols, min(b*m.cols, len(m.items))
}

func (m *menu) draw(c *draw.Canvas) {
	from, to := m.shown()
	for i := from; i < to; i++ {
		k := m.items[i].Key
		k.Rect = m.cell(i)
		k.Focused = false
		two := m.twoLines(c, &k)
		k.Draw(c)
		for n, line := range two {
			at := draw.Pt{X: k.Rect.X + 9, Y: k.Rect.Y + k.Rect.H/2 - 3 + 16*float64(n)}
			c.Text(at, smallKey, keyColour(c, &m.items[i].Key), line)
			if n == 1 && m.items[i].Pencil {
				c.Pencil([]draw.Pt{{X: at.X, Y: at.Y + 4}, {X: at.X + c.Measure(smallKey, line), Y: at.Y + 3}})
			}
		}
		if m.paint != nil {
			m.paint(c, i, k.Rect)
		}
		if m.list.Focused && i == m.sel { // the ring stays inside the block
			ring := widget.Chamfered(k.Rect.Inset(3))
			col := c.Theme.Key
			if k.Chosen {
				col = c.Theme.OnKey
			}
			c.Outline(ring[:], draw.Thin.In(col).Wide(1.4))
		}
	}
	m.list.Draw(c)
}

// smallKey letters a key in two lines, or one that says more than its name.
var smallKey = draw.KeyText.At(13)

// twoLines takes a label off a high key that is too narrow for it, and returns
// it in two lines; nil: it stays on the key.
func (m *menu) twoLines(c *draw.Canvas, k *widget.Key) []string {
	room := k.Rect.W - 16
	if k.Letter != "" {
		room -= letterRoom
	}
	if m.paint != nil || k.Rect.H < 40 || k.Value != "" || c.Measure(smallKey, k.Label) <= room {
		return nil
	}
	lines := c.Wrap(smallKey, k.Label, room)
	if len(lines) != 2 {
		return nil
	}
	k.Label, k.Pencil = "", false
	return lines
}

// keyColour is what a key is lettered in.
func keyColour(c *draw.Canvas, k *widget.Key) color.RGBA {
	switch {
	case k.Off:
		return c.Theme.Graphite
	case k.Chosen:
		return c.Theme.OnKey
	}
	return c.Theme.Key
}

func (m *menu) down(e widget.Event) {
	m.list.Handle(e)
	m.held, m.downY = true, e.At.Y
}

// handle answers keys when the menu is in focus, the wheel, and a hand that
// began in it. It returns what was pressed.
func (m *menu) handle(e widget.Event) (do func(), took bool) {
	switch e.Kind {
	case widget.PointerMove:
		if m.held {
			m.list.Handle(e)
		}
		return nil, m.held
	case widget.PointerUp:
		if !m.held {
			return nil, false
		}
		m.held = false
		m.list.Handle(e)
		if d := e.At.Y - m.downY; d < -8 || d > 8 { // a drag, not a tap
			return nil, true
		}
		from, to := m.shown()
		for i := from; i < to; i++ {
			if m.cell(i).Inset(-2.5).Contains(e.At) {
				m.sel = i
				return m.press(), true
			}
		}
		return nil, true
	case widget.Wheel:
		return nil, m.area.Contains(e.At) && m.list.Handle(e)
	case widget.KeyDown:
		from, to := m.shown()
		for i := from; i < to; i++ {
			if k := &m.items[i]; k.Letter != "" && k.Letter == e.Key && (!k.Off || m.why != nil) {
				m.sel = i
				return m.press(), true
			}
		}
		if !m.list.Focused {
			return nil, false
		}
		if e.Key == "Enter" {
			return m.press(), true
		}
		return nil, m.move(e.Key)
	}
	return nil, false
}

func (m *menu) press() func() {
	if m.sel >= len(m.items) {
		return nil
	}
	if m.items[m.sel].Off {
		if m.why == nil {
			return nil
		}
		sentence := m.why(m.sel)
		return func() { m.tell(sentence) }
	}
	return m.items[m.sel].do
}

func (m *menu) move(key string) bool {
	step, ok := map[string]int{"Up": -m.cols, "Down": m.cols, "Left": -1, "Right": 1, "Home": -1 << 20, "End": 1 << 20, "PageUp": -5 * m.cols, "PageDown": 5 * m.cols}[key]
	if !ok || m.cols == 1 && (key == "Left" || key == "Right") {
		return false
	}
	m.sel = max(0, min(m.sel+step, len(m.items)-1))
	m.list.Show(m.sel / m.cols)
	return true
}

func seedText(n uint64) string { return strconv.FormatUint(n, 10) }
