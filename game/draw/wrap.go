package draw

import (
	"image/color"
	"strings"
	"unicode/utf8"

	"evenwear/assets"
)

type wrapKey struct {
	st    TextStyle
	width float64 // [unit]
	s     string
}

// maxWraps bounds what Wrap remembers; a sheet holds a few dozen sentences.
const maxWraps = 500

// Wrap breaks s into lines no longer than width [unit] where its words allow
// it. It remembers its answers: the lines belong to the canvas and must not be
// changed.
func (c *Canvas) Wrap(st TextStyle, s string, width float64) []string {
	st.Align = Left
	k := wrapKey{st, width, s}
	if lines, ok := c.wraps[k]; ok {
		return lines
	}
	var lines []string
	for para := range strings.SplitSeq(assets.Bind(s), "\n") {
		line := ""
		for _, word := range strings.FieldsFunc(para, breaks) {
			try := word
			if line != "" {
				try = line + " " + word
			}
			if line != "" && c.Measure(st, try) > width {
				lines = append(lines, line)
				try = word
			}
			line = try
		}
		lines = append(lines, line)
	}
	if len(c.wraps) >= maxWraps {
		clear(c.wraps)
	}
	c.wraps[k] = lines
	return lines
}

// breaks reports where a line may be broken: not between a figure and its unit,
// nor within a figure of thousands, whose spaces are of another kind.
func breaks(r rune) bool { return r == ' ' || r == '\t' }

// Fit returns s, or as much of it as is no longer than width [unit] with an
// ellipsis behind it.
func (c *Canvas) Fit(st TextStyle, s string, width float64) string {
	if c.Measure(st, s) <= width {
		return s
	}
	for i := len(s) - 1; i > 0; i-- {
		if utf8.RuneStart(s[i]) {
			if t := strings.TrimRight(s[:i], " ") + "…"; c.Measure(st, t) <= width {
				return t
			}
		}
	}
	return "…"
}

// LineHeight returns the distance between baselines [unit].
func (s TextStyle) LineHeight() float64 { return s.Size * 1.2 }

// Paragraph writes s in lines of at most width from a first baseline down and
// returns the baseline that would come next.
func (c *Canvas) Paragraph(at Pt, st TextStyle, col color.RGBA, s string, width float64) Pt {
	x := at.X
	switch st.Align {
	case Middle:
		x += width / 2
	case Right:
		x += width
	}
	for _, line := range c.Wrap(st, s, width) {
		c.Text(Pt{x, at.Y}, st, col, line)
		at.Y += st.LineHeight()
	}
	return at
}
