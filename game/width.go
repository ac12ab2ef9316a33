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

// knownWidth refuses a width that no line has.
func knownWidth(asked *int) error {
	if asked != nil && (*asked < term.Narrowest || *asked > widest) {
		return mistaken("--width %d: a line has %d to %d characters", *asked, term.Narrowest, widest)
	}
	return nil
}

// knownSeed refuses the seed that stands for none.
func knownSeed(asked *uint64) error {
	if asked != nil && *asked == 0 {
		return mistaken("--seed 0: want a whole number from 1")
	}
	return nil
}

// lineWidth tells the characters of a line: what was asked for, else what the
// terminal has now, else what COLUMNS says, else 80. It is asked at every print,
// so that the lines follow a terminal that is pulled wider.
func lineWidth(asked *int, out *os.File) func() int {
	return func() int {
		if asked != nil {
			return *asked
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
