package scene

import (
	"math"

	"evenwear/assets"
	"evenwear/game/draw"
)

// A lettering keeps figures, filled sentences and wrapped lines that were
// needed before, so that a frame in steady motion allocates nothing.
type lettering struct {
	words   *assets.Words
	figures map[figureKey]string
	filled  map[filledKey]string
	wrapped map[wrappedKey][]string
}

type figureKey struct {
	n        int64
	decimals int
}

type filledKey struct{ id, a, b string }

type wrappedKey struct {
	text  string
	style draw.TextStyle
	width float64
}

// mostKept bounds each of the caches; a full one starts again from nothing.
const mostKept = 4096

func newLettering(w *assets.Words) *lettering {
	return &lettering{words: w, figures: map[figureKey]string{}, filled: map[filledKey]string{}, wrapped: map[wrappedKey][]string{}}
}

// num is x as a figure with a fixed number of decimals.
func (l *lettering) num(x float64, decimals int) string {
	n := int64(math.Round(x * math.Pow10(decimals)))
	k := figureKey{n, decimals}
	if s, ok := l.figures[k]; ok {
		return s
	}
	if len(l.figures) >= mostKept {
		clear(l.figures)
	}
	s := assets.Figure(float64(n)/math.Pow10(decimals), decimals)
	l.figures[k] = s
	return s
}

// word is a sentence without blanks.
func (l *lettering) word(id string) string { return l.fill(id, "", "") }

// fill is a sentence whose one blank, called name, is filled with value.
func (l *lettering) fill(id, name, value string) string {
	k := filledKey{id, name, value}
	if s, ok := l.filled[k]; ok {
		return s
	}
	if len(l.filled) >= mostKept {
		clear(l.filled)
	}
	s := l.words.Say(id)
	if name != "" {
		s = l.words.Say(id, name, value)
	}
	l.filled[k] = s
	return s
}

// lines breaks a text for a width [unit].
func (l *lettering) lines(c *draw.Canvas, text string, st draw.TextStyle, width float64) []string {
	k := wrappedKey{text, st, width}
	if s, ok := l.wrapped[k]; ok {
		return s
	}
	if len(l.wrapped) >= mostKept {
		clear(l.wrapped)
	}
	s := c.Wrap(st, text, width)
	l.wrapped[k] = s
	return s
}

// block writes a text in at most n lines within width from a baseline down,
// smaller before it is cut, and returns the baseline that would come next.
func (l *lettering) block(c *draw.Canvas, at draw.Pt, st draw.TextStyle, text string, width float64, n int) float64 {
	if n < 1 {
		return at.Y
	}
	lines := l.lines(c, text, st, width)
	if len(lines) > n && st.Size > 13 {
		st = st.At(13)
		lines = l.lines(c, text, st, width)
	}
	for i, line := range lines {
		if i == n-1 && len(lines) > n {
			line = fit(c, l, line+" "+lines[i+1], st, width)
		} else {
			line = fit(c, l, line, st, width)
		}
		c.Text(at, st, c.Theme.Ink, line)
		at.Y += st.LineHeight()
		if i == n-1 {
			break
		}
	}
	return at.Y
}

// head draws the top of a sheet: its name and a sentence beside it.
func (l *lettering) head(c *draw.Canvas, name, sentence string, right float64) {
	c.Text(draw.Pt{X: 29, Y: 45}, draw.SheetText, c.Theme.Ink, name)
	x := 29 + c.Measure(draw.SheetText, name) + 14
	st := draw.SentenceText
	lines := l.lines(c, sentence, st, right-x)
	if len(lines) == 1 {
		c.Text(draw.Pt{X: x, Y: 44}, st, c.Theme.Ink, sentence)
		return
	}
	l.block(c, draw.Pt{X: x, Y: 35}, st.At(14), sentence, right-x, 2)
}
