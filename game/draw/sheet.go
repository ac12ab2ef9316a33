package draw

import "image/color"

// The frame of the standing sheet [unit].
const (
	Margin = 18.0
	Gutter = 12.0
)

// Frame is the inside of the border; Block is where the title block stands.
var (
	Frame = Rect{Margin, Margin, SheetW - 2*Margin, SheetH - 2*Margin}
	Block = Rect{792, 634, 470, 68}
)

// zoneNames letter the rows of the border; columns are numbered.
var zoneNames = [2][]string{{"1", "2", "3", "4", "5", "6", "7", "8"}, {"A", "B", "C", "D"}}

// Sheet clears the whole sheet and draws its margin, border and zones.
func (c *Canvas) Sheet() {
	c.fillPixels(c.img.Bounds(), c.Theme.Margin)
	c.Clear(Frame)
	k := Frame.Corners()
	c.Outline(k[:], Visible)
	cols, rows := zoneNames[0], zoneNames[1]
	w, h := Frame.W/float64(len(cols)), Frame.H/float64(len(rows))
	for i, name := range cols {
		x := Frame.X + w*float64(i)
		c.Text(Pt{x + w/2, 14}, SmallText.To(Middle), color.RGBA{}, name)
		c.Text(Pt{x + w/2, SheetH - 4}, SmallText.To(Middle), color.RGBA{}, name)
		if i > 0 {
			c.Line(Pt{x, 3}, Pt{x, Margin}, Thin)
			c.Line(Pt{x, SheetH - Margin}, Pt{x, SheetH - 3}, Thin)
		}
	}
	for i, name := range rows {
		y := Frame.Y + h*float64(i)
		c.Text(Pt{9, y + h/2 + 5}, SmallText.To(Middle), color.RGBA{}, name)
		c.Text(Pt{SheetW - 9, y + h/2 + 5}, SmallText.To(Middle), color.RGBA{}, name)
		if i > 0 {
			c.Line(Pt{3, y}, Pt{Margin, y}, Thin)
			c.Line(Pt{SheetW - Margin, y}, Pt{SheetW - 3, y}, Thin)
		}
	}
}

// A Field is one live fact of the title block.
type Field struct {
	Caption, Value string
	Underlined     bool // changed since the last press
}

// TitleBlock draws the title block in r: the name and the first fields above,
// the others below. Cells are as wide as their text and share what is left; text
// that does not fit is cut with an ellipsis.
func (c *Canvas) TitleBlock(r Rect, name string, above, below []Field) {
	c.Fill(r, c.Theme.Panel)
	k := r.Corners()
	c.Outline(k[:], Visible)
	h := r.H / 2
	w := c.Measure(SheetText, name) + 16
	c.Text(Pt{r.X + 8, r.Y + h/2 + 8}, SheetText, color.RGBA{}, name)
	c.Line(Pt{r.X, r.Y + h}, Pt{r.X + r.W, r.Y + h}, Thin)
	c.Line(Pt{r.X + w, r.Y}, Pt{r.X + w, r.Y + h}, Thin)
	c.fields(Rect{r.X + w, r.Y, r.W - w, h}, above)
	c.fields(Rect{r.X, r.Y + h, r.W, h}, below)
}

// fields draws one row of the title block.
func (c *Canvas) fields(r Rect, list []Field) {
	const pad = 5.0
	total := 0.0
	for _, f := range list {
		total += c.fieldWidth(f) + 2*pad
	}
	x := r.X
	for i, f := range list {
		w := c.fieldWidth(f) + 2*pad
		if total > r.W {
			w *= r.W / total
		} else {
			w += (r.W - total) / float64(len(list))
		}
		if i > 0 {
			c.Line(Pt{x, r.Y}, Pt{x, r.Y + r.H}, Thin)
		}
		c.Text(Pt{x + pad, r.Y + 13}, SmallText, c.Theme.Graphite, c.Fit(SmallText, f.Caption, w-2*pad))
		v := c.Fit(LabelText, f.Value, w-2*pad)
		c.Text(Pt{x + pad, r.Y + 28}, LabelText, color.RGBA{}, v)
		if f.Underlined {
			c.Line(Pt{x + pad, r.Y + 31}, Pt{x + pad + c.Measure(LabelText, v), r.Y + 31}, Visible)
		}
		x += w
	}
}

func (c *Canvas) fieldWidth(f Field) float64 {
	return max(c.Measure(SmallText, f.Caption), c.Measure(LabelText, f.Value))
}

// Panel fills r with the panel colour and gives it a visible edge.
func (c *Canvas) Panel(r Rect) {
	k := r.Corners()
	c.Polygon(k[:], c.Theme.Panel)
	c.Outline(k[:], Visible)
}

// Heading letters a heading with its baseline at a place, and a caption behind
// it; it returns where the line ends.
func (c *Canvas) Heading(at Pt, s, caption string) Pt {
	c.Text(at, HeadingText, color.RGBA{}, s)
	at.X += c.Measure(HeadingText, s)
	if caption != "" {
		at.X += 14
		c.Text(at, LabelText, color.RGBA{}, caption)
		at.X += c.Measure(LabelText, caption)
	}
	return at
}

// Rule draws the thin level line between two rows.
func (c *Canvas) Rule(x0, x1, y float64) { c.Line(Pt{x0, y}, Pt{x1, y}, Thin) }

// Row draws one row of a table of figures in r: label left, figure against the
// unit column, unit, and the rule under it.
func (c *Canvas) Row(r Rect, label, value, unit string) {
	const unitW = 36.0
	y := r.Y + r.H - 9
	vw := c.Measure(ValueText, value)
	c.Text(Pt{r.X, y}, LabelText, color.RGBA{}, c.Fit(LabelText, label, r.W-unitW-vw-12))
	c.Text(Pt{r.X + r.W - unitW - 8, y}, ValueText.To(Right), color.RGBA{}, value)
	c.Text(Pt{r.X + r.W - unitW, y}, LabelText, color.RGBA{}, unit)
	c.Rule(r.X, r.X+r.W, r.Y+r.H)
}
