package widget

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"evenwear/assets"
	"evenwear/game/draw"
)

// A NumberField takes the figure a learner read, as it is typed: whoever takes
// it over says what is no figure. Digits, point, comma and minus belong to it;
// letters do not, so the keys of the screen still act.
type NumberField struct {
	Rect    draw.Rect
	Text    string // as written
	Focused bool
}

// maxFigure is the longest text kept [characters]: more than any figure has, so
// that what is cut was no figure before.
const maxFigure = 30

// Handle answers an event and says whether the field took it.
func (f *NumberField) Handle(e Event) bool {
	if !f.Focused {
		return false
	}
	switch {
	case e.Kind == KeyDown && e.Key == "Backspace":
		if f.Text != "" {
			_, n := utf8.DecodeLastRuneInString(f.Text)
			f.Text = f.Text[:len(f.Text)-n]
		}
		return true
	case e.Kind == KeyDown && e.Key == "Delete":
		f.Text = ""
		return true
	case e.Kind == TextIn:
		return f.typed(e.Rune)
	}
	return false
}

// OfFigure reports whether a character can stand in a figure.
func OfFigure(r rune) bool { return r >= '0' && r <= '9' || strings.ContainsRune(".,-−", r) }

// typed takes one character of a figure.
func (f *NumberField) typed(r rune) bool {
	if !OfFigure(r) {
		return false
	}
	f.Keep(r)
	return true
}

// Keep lets a character stand in the field, also one that is none of a figure.
func (f *NumberField) Keep(r rune) {
	if utf8.RuneCountInString(f.Text) < maxFigure {
		f.Text += string(r)
	}
}

// Draw draws the field and the learner's figure in pencil.
func (f *NumberField) Draw(c *draw.Canvas) {
	edge(c, f.Rect, false, f.Focused, false)
	st, text := f.lettered(c)
	x, y := f.Rect.X+f.Rect.W/2, f.Rect.Y+f.Rect.H/2+7
	w := c.Measure(st, text)
	c.Text(draw.Pt{X: x - w/2, Y: y}, st, c.Theme.Graphite, text)
	if f.Focused {
		caret(c, x+w/2+4, f.Rect)
	}
}

// lettered is the figure as it stands within the field: a long one in a smaller
// hand, and of one that is still too long its end, where the next figure goes.
func (f *NumberField) lettered(c *draw.Canvas) (draw.TextStyle, string) {
	room := f.Rect.W - 22
	for size := 20.0; size >= 13; size-- {
		if st := draw.HandText.At(size); c.Measure(st, f.Text) <= room {
			return st, f.Text
		}
	}
	st, text := draw.HandText.At(13), f.Text
	for text != "" && c.Measure(st, "…"+text) > room {
		_, n := utf8.DecodeRuneInString(text)
		text = text[n:]
	}
	return st, "…" + text
}

func caret(c *draw.Canvas, x float64, r draw.Rect) {
	h := min(20, r.H-10)
	y := r.Y + (r.H-h)/2
	c.Line(draw.Pt{X: x, Y: y}, draw.Pt{X: x, Y: y + h}, draw.Thin.In(c.Theme.Graphite).Wide(1.7))
}

// Target returns what the field reacts to.
func (f *NumberField) Target(id string, panel int) Target {
	return Target{ID: id, Rect: f.Rect, Panel: panel, Enabled: true, Through: true}
}

// A TextField takes a learner's sentence. While it is in focus nothing but Esc
// and Tab passes it by.
type TextField struct {
	Rect    draw.Rect
	Text    string
	Max     int // [characters] 0 is 400
	Focused bool
}

// Handle answers an event and says whether the field took it.
func (f *TextField) Handle(e Event) bool {
	if !f.Focused {
		return false
	}
	switch e.Kind {
	case KeyDown:
		if e.Key == "Backspace" && f.Text != "" {
			_, n := utf8.DecodeLastRuneInString(f.Text)
			f.Text = f.Text[:len(f.Text)-n]
		}
		return e.Key != "Esc" && e.Key != "Tab"
	case TextIn:
		most := f.Max
		if most <= 0 {
			most = 400
		}
		if unicode.IsPrint(e.Rune) && utf8.RuneCountInString(f.Text) < most {
			f.Text += string(e.Rune)
		}
		return true
	}
	return false
}

// Draw draws the field and the learner's words in pencil; when they are longer
// than the field its last lines are shown.
func (f *TextField) Draw(c *draw.Canvas) {
	edge(c, f.Rect, false, f.Focused, false)
	st := draw.TextStyle{Face: assets.Hand, Size: 17}
	lines := c.Wrap(st, f.Text, f.Rect.W-20)
	fit := max(1, int((f.Rect.H-8)/st.LineHeight()))
	lines = lines[max(0, len(lines)-fit):]
	y := f.Rect.Y + 4
	for i, line := range lines {
		y += st.LineHeight()
		c.Text(draw.Pt{X: f.Rect.X + 10, Y: y - 4}, st, c.Theme.Graphite, line)
		if f.Focused && i == len(lines)-1 {
			caret(c, f.Rect.X+12+c.Measure(st, line), draw.Rect{Y: y - st.LineHeight(), H: st.LineHeight() + 4})
		}
	}
}

// Target returns what the field reacts to.
func (f *TextField) Target(id string, panel int) Target {
	return Target{ID: id, Rect: f.Rect, Panel: panel, Enabled: true}
}
