package term

import (
	"errors"
	"io"

	"evenwear/game/play"
)

// settling is how long the bench is stepped after each act [ms]: a press or a
// release has come to rest by then.
const settling = 2000

// A Worked bench is [play.Bench] or [play.Lesson].
type Worked interface {
	View() *play.BenchView
	Do(play.Act) error
	Advance(ms int64)
}

// runsOut is after how long a lesson that works its pedal is left alone [s].
const runsOut = 300

// Bench lets the caliper be worked from a terminal: press with so many newtons,
// let go, set the pins, put a cause in; or be worked by a lesson.
func Bench(b Worked, words Words, in io.Reader, out io.Writer, opt Options) error {
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
			if l, ok := b.(*play.Lesson); ok {
				for i := 0; i < runsOut && l.Running(); i++ {
					l.Advance(1000)
				}
			}
		}
	}
}
