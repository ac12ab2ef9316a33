package program

import (
	"strings"
	"testing"
)

// TestColumns: on a pipe COLUMNS says how wide a line is, unless --width does; a
// COLUMNS that is no width counts as none.
func TestColumns(t *testing.T) {
	for _, row := range []struct {
		columns string
		args    string
		width   int
	}{
		{"40", "", 40}, {"40", " --width 60", 60}, {"wide", "", 80}, {"-3", "", 80}, {"7", "", 20}, {"", "", 80},
	} {
		cmd := command(t, strings.Fields("term warm_wheel --sessions "+t.TempDir()+row.args)...)
		cmd.Env = append(cmd.Env, "COLUMNS="+row.columns)
		e := ended(t, cmd, strings.NewReader(""))
		narrow(t, e.out, row.width)
		if row.width > 40 {
			if n := widestOf(e.out); n <= row.width-10 {
				t.Errorf("COLUMNS=%s%s: the widest line has %d characters of %d", row.columns, row.args, n, row.width)
			}
		}
	}
}

// widestOf is the number of characters of the longest line.
func widestOf(text string) int {
	widest := 0
	for l := range strings.Lines(text) {
		widest = max(widest, len([]rune(strings.TrimRight(l, "\r\n"))))
	}
	return widest
}
