package draw

import (
	"image/color"
	"strings"
)

// Wrap breaks s into lines no longer than width [unit] where its words allow it.
func (c *Canvas) Wrap(st TextStyle, s string, width float64) []string {
	var lines []string
	for _, para := range strings.Split(s, "\n") {
		line := ""
		for _, word := range strings.Fields(para) {
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
	return lines
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
