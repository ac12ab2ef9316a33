package assets

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// noBreak is the blank at which no line is broken.
const noBreak = "\u00a0"

// units are those that stay with their figure.
var units = map[string]bool{"%": true, "°C": true, "km": true, "km/h": true, "m": true, "mm": true, "cm³": true, "mm²": true, "µm²": true, "m/s²": true,
	"N": true, "kN": true, "N·m": true, "MPa": true, "bar": true, "s": true, "min": true}

// Bind makes the blanks of a text at which no line may be broken such: between
// the thousands of a figure and between a figure and its unit. Whoever breaks
// lines binds first, so that an author types ordinary blanks.
func Bind(text string) string {
	if !strings.Contains(text, " ") {
		return text
	}
	words := strings.Split(text, " ")
	var b strings.Builder
	b.WriteString(words[0])
	for i, w := range words[1:] {
		if binds(words[i], w) {
			b.WriteString(noBreak)
		} else {
			b.WriteByte(' ')
		}
		b.WriteString(w)
	}
	return b.String()
}

// binds reports whether two words stay together.
func binds(before, after string) bool {
	last, _ := utf8.DecodeLastRuneInString(before)
	if !unicode.IsDigit(last) {
		return false
	}
	word := strings.TrimRightFunc(after, func(r rune) bool { return strings.ContainsRune(".,;:?!)”\"", r) })
	if units[word] {
		return true
	}
	return len(word) == 3 && strings.Trim(word, "0123456789") == ""
}
