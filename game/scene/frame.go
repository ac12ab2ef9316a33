package scene

import (
	"evenwear/game/draw"
)

// titleBlock is the corner that always carries live facts.
var titleBlock = draw.Rect{X: 792, Y: 634, W: 470, H: 68}

// A Fact is one cell of the title block.
type Fact struct {
	Caption, Value string
	Width          float64 // [unit]; the last of a row takes what is left
	Marked         bool    // underlined: it has just changed
}

// drawTitle draws the title block: the program's name and one row of facts
// beside it, one row under both.
func drawTitle(c *draw.Canvas, l *lettering, beside, under []Fact) {
	th, r := c.Theme, titleBlock
	c.Fill(r, th.Panel)
	const name = 157.0
	c.Text(draw.Pt{X: r.X + 7, Y: r.Y + 25}, draw.SheetText.At(20), th.Ink, l.word("bench_sheet.program"))
	row := func(y, x float64, facts []Fact) {
		for i, f := range facts {
			if x > r.X {
				c.Line(draw.Pt{X: x, Y: y}, draw.Pt{X: x, Y: y + 34}, draw.Thin)
			}
			room := f.Width
			if i == len(facts)-1 {
				room = r.X + r.W - x
			}
			c.Text(draw.Pt{X: x + 5, Y: y + 13}, draw.SmallText, th.Graphite, f.Caption)
			value := fit(c, l, f.Value, draw.LabelText, room-8)
			c.Text(draw.Pt{X: x + 5, Y: y + 29}, draw.LabelText, th.Ink, value)
			if f.Marked {
				w := c.Measure(draw.LabelText, value)
				c.Line(draw.Pt{X: x + 5, Y: y + 32}, draw.Pt{X: x + 5 + w, Y: y + 32}, draw.Thin)
			}
			x += f.Width
		}
	}
	row(r.Y, r.X+name, beside)
	row(r.Y+34, r.X, under)
	c.Line(draw.Pt{X: r.X, Y: r.Y + 34}, draw.Pt{X: r.X + r.W, Y: r.Y + 34}, draw.Thin)
	c.Box(r, nil, draw.Visible)
}

// fit is s, or as much of it as stands within width with an ellipsis.
func fit(c *draw.Canvas, l *lettering, s string, st draw.TextStyle, width float64) string {
	if c.Measure(st, s) <= width {
		return s
	}
	k := wrappedKey{"…" + s, st, width}
	if got, ok := l.wrapped[k]; ok {
		return got[0]
	}
	r := []rune(s)
	for len(r) > 0 && c.Measure(st, string(r)+"…") > width {
		r = r[:len(r)-1]
	}
	out := string(r) + "…"
	l.wrapped[k] = []string{out}
	return out
}
