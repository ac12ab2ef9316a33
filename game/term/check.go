package term

import (
	"context"
	"errors"
	"io"
	"time"

	"evenwear/game/play"
)

// A Check is a self-check: some cars, played one after the other.
type Check interface {
	View() *play.CheckView
	// Open begins a car, goes on with it, or opens its debrief; end closes it.
	Open(car int) (g Game, end func(), err error)
	Await()  // work marks out in the background
	Cancel() // stop that; what is worked out stays
	Renew() error
}

// RunCheck plays a self-check until the learner leaves or the input ends, which
// is no error once all is marked; [ErrLeft] says that it was left before. A
// session gives no debrief before every car is handed over.
func RunCheck(ctx context.Context, c Check, words Words, in io.Reader, out io.Writer, opt Options) error {
	t := newTerminal(words, in, out, opt)
	defer c.Cancel()
	for {
		c.Await()
		v := c.View()
		t.show(v.Nodes, v.Notice)
		a, err := t.next(words.Say("term.help_check"))
		if errors.Is(err, ErrLeft) && c.View().Complete {
			t.line(words.Say("check.done"), 0)
			return t.out.Flush()
		}
		if err != nil {
			return err
		}
		switch a.Do {
		case play.NewCheck:
			err = c.Renew()
		case play.MarkAll:
			err = t.mark(ctx, c)
		case play.OpenCar:
			err = t.car(ctx, c, int(a.N), !v.Over)
		}
		var left *carError
		if errors.As(err, &left) {
			return left.err
		}
		if err != nil { // told; the other cars can be played
			t.line(words.Say("term.notice", "text", err.Error()), 4)
		}
	}
}

// A carError ends the self-check: the learner left a car, or nobody reads.
type carError struct{ err error }

func (e *carError) Error() string { return e.err.Error() }

// car plays one car; sealed: to its hand-over alone.
func (t *terminal) car(ctx context.Context, c Check, n int, sealed bool) error {
	g, end, err := c.Open(n)
	if err != nil {
		return err
	}
	defer end()
	clear(t.shown)
	if err := t.run(ctx, g, sealed); err != nil {
		return &carError{err}
	}
	clear(t.shown)
	if sealed {
		t.line(t.words.Say("check.handed_over", "n", n), 0)
	}
	return nil
}

// mark waits for the marks, and says every tenth of them.
func (t *terminal) mark(ctx context.Context, c Check) error {
	c.Await()
	told := -1
	for {
		v := c.View()
		w := v.Waiting
		switch {
		case w == nil || v.Complete:
			return nil
		case w.Error != "":
			return errors.New(w.Error)
		case !w.Going:
			return nil
		}
		if tenth := int(w.Share * 10); tenth > told {
			told = tenth
			t.line(t.words.Say("term.waiting", "text", w.Text, "percent", tenth*10), 0)
			if err := t.out.Flush(); err != nil {
				return &carError{err}
			}
		}
		select {
		case <-ctx.Done():
			return &carError{ctx.Err()}
		case <-time.After(500 * time.Millisecond):
		}
	}
}
