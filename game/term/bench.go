package term

import (
	"errors"
	"io"

	"evenwear/game/play"
)

// settling is how long the bench is stepped after each act [ms]: a press or a
// release has come to rest by then.
const settling = 2000

// Bench lets the caliper be worked from a terminal: press with so many newtons,
// let go, set the pins, put a cause in.
func Bench(b *play.Bench, words Words, in io.Reader, out io.Writer, opt Options) error {
	t := newTerminal(words, in, out, opt)
	for {
		v := b.View()
		t.show(v.Nodes, v.Notice)
		a, err := t.next(words.Say("term.help_bench"))
		if errors.Is(err, ErrLeft) {
			return nil // free play is over whenever one leaves
		}
		if err != nil {
			return err
		}
		if b.Do(a) == nil {
			for range settling / 1000 {
				b.Advance(1000)
			}
		}
	}
}
