package term

import (
	"strings"
	"unicode/utf8"

	"evenwear/assets"
)

// wrap breaks a paragraph into lines of at most width characters. Lines after
// the first are indented by hang. A word longer than a line is cut.
func wrap(s string, width, hang int) []string {
	var lines []string
	line, used := "", 0
	indent := strings.Repeat(" ", hang)
	for _, word := range words(assets.Bind(s)) {
		for {
			n := utf8.RuneCountInString(word)
			sep := 1
			if strings.TrimSpace(line) == "" {
				sep = 0
			}
			if used+sep+n <= width {
				line += strings.Repeat(" ", sep) + word
				used += sep + n
				break
			}
			if sep == 1 {
				lines = append(lines, line)
				line, used = indent, hang
				continue
			}
			r := []rune(word) // longer than a whole line
			lines = append(lines, line+string(r[:width-used]))
			word = string(r[width-used:])
			line, used = indent, hang
		}
	}
	if strings.TrimSpace(line) != "" {
		lines = append(lines, line)
	}
	for i := range lines { // what reads a pipe looks for ordinary blanks
		lines[i] = strings.ReplaceAll(lines[i], "\u00a0", " ")
	}
	return lines
}

// words splits at blanks but keeps the blanks at the start with the first word.
func words(s string) []string {
	body := strings.TrimLeft(s, " ")
	list := strings.FieldsFunc(body, func(r rune) bool { return r == ' ' || r == '\n' }) // a space that does not break stays
	if len(list) > 0 {
		list[0] = s[:len(s)-len(body)] + list[0]
	}
	return list
}
