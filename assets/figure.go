package assets

import (
	"math"
	"strconv"
	"strings"
)

// Figure writes x with a number of decimals, or with as many as it needs where
// decimals is negative: a point before them, a true minus sign, and a narrow
// space between thousands from five digits on, as on a drawing.
func Figure(x float64, decimals int) string {
	switch {
	case math.IsNaN(x):
		return "–"
	case math.IsInf(x, 0):
		return "∞"
	}
	s := strconv.FormatFloat(math.Abs(x), 'f', decimals, 64)
	whole, part, _ := strings.Cut(s, ".")
	if len(whole) > 4 {
		for i := len(whole) - 3; i > 0; i -= 3 {
			whole = whole[:i] + "\u2009" + whole[i:]
		}
	}
	if part != "" {
		whole += "." + part
	}
	if x < 0 && strings.Trim(s, "0.") != "" {
		return "−" + whole
	}
	return whole
}
