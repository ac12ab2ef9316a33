package scenarios

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// A Problem is one mistake in one file, placed where an editor can jump.
type Problem struct {
	File      string
	Line, Col int    // from 1; 0 when the file as a whole is meant
	Path      string // as the author would say it: "faults[0].since_km"; empty for the whole file
	What      string // what is wrong
	Allowed   string // what is allowed
}

// Error is "file:line:col: path: what is wrong; what is allowed".
func (p Problem) Error() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		fmt.Fprintf(&b, ":%d:%d", p.Line, p.Col)
	}
	b.WriteString(": ")
	if p.Path != "" {
		b.WriteString(p.Path + ": ")
	}
	b.WriteString(p.What)
	if p.Allowed != "" {
		b.WriteString("; " + p.Allowed)
	}
	return b.String()
}

// Problems is every mistake of a load, by file, line and column.
type Problems []Problem

// Error is one problem a line.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

func (ps Problems) sort() {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Col, b.Col))
	})
}
