package main

import (
	"os"
	"strconv"

	xterm "golang.org/x/term"

	"evenwear/game/term"
)

// widest is more characters than a line of any terminal has.
const widest = 500

// usual is the width of a line where nothing tells it.
const usual = 80

// lineWidth tells the characters of a line: what was asked for, else what the
// terminal has now, else what COLUMNS says, else 80. It is asked at every print,
// so that the lines follow a terminal that is pulled wider.
func lineWidth(asked int, out *os.File) func() int {
	return func() int {
		if asked != 0 {
			return asked
		}
		width, _, err := xterm.GetSize(int(out.Fd()))
		if err != nil || width <= 0 {
			width, err = strconv.Atoi(os.Getenv("COLUMNS"))
		}
		if err != nil || width <= 0 {
			width = usual
		}
		return min(max(width, term.Narrowest), widest)
	}
}
