package term

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"evenwear/game/play"
)

// A Game is a job that can be played: a session, or one that is kept.
type Game interface {
	View() *play.View
	Do(play.Act) error
	Settle(ctx context.Context, progress func(share float64)) error
}

// Options say how a terminal is used.
type Options struct {
	Width  func() int // [characters] of a line, asked at every print; nil means 80
	Prompt bool       // print a prompt before reading
}

// Narrowest is the narrowest terminal that lines are broken for.
const Narrowest = 20

// ErrLeft says that the learner left before the job was over.
var ErrLeft = errors.New("left before the end")

// ErrEnded is an [ErrLeft]: the input ended before the job was over.
var ErrEnded = fmt.Errorf("the input ended: %w", ErrLeft)

type terminal struct {
	out   *bufio.Writer
	in    *bufio.Scanner
	words Words
	opt   Options
	shown map[string][]string // the lines that were printed of each entry
	sheet sheet
	found []string // lines a search found that are not printed yet
}

func newTerminal(words Words, in io.Reader, out io.Writer, opt Options) *terminal {
	if opt.Width == nil {
		opt.Width = func() int { return 80 }
	}
	t := &terminal{out: bufio.NewWriter(out), in: bufio.NewScanner(in), words: words, opt: opt, shown: map[string][]string{}}
	t.in.Buffer(nil, 1<<16)
	return t
}

// Run plays a job until it is over and its debrief is read. It returns
// [ErrLeft] when the learner leaves before, [ErrEnded] when the input ends, and
// the writer's error when nobody reads any more.
func Run(ctx context.Context, g Game, words Words, in io.Reader, out io.Writer, opt Options) error {
	return newTerminal(words, in, out, opt).run(ctx, g, false)
}

// Tell prints what is to be read, and asks nothing.
func Tell(nodes []play.Node, notice string, words Words, out io.Writer, opt Options) error {
	t := newTerminal(words, strings.NewReader(""), out, opt)
	t.show(nodes, notice)
	return t.out.Flush()
}

// run plays a job; a sealed one ends with the hand-over.
func (t *terminal) run(ctx context.Context, g Game, sealed bool) error {
	for {
		v := g.View()
		switch {
		case v.Stage == play.Debriefed && sealed:
			return nil
		case v.Stage == play.Debriefed:
			return t.end(ctx, g)
		}
		t.show(v.Nodes, v.Notice)
		a, err := t.act(v)
		if err != nil {
			return err
		}
		if err := g.Do(a); err != nil {
			var refused *play.Refusal
			if !errors.As(err, &refused) {
				return err // it could not be kept
			}
		} else if a.Do == play.Go {
			t.forget()
		}
	}
}

// act reads the next act; a belief with open counters is sealed the second time it
// is asked for, after the question.
func (t *terminal) act(v *play.View) (play.Act, error) {
	for asked := false; ; asked = true {
		a, err := t.next(t.words.Say("term.help"))
		if err != nil || a.Do != play.Seal || v.Call == nil || v.Call.Ask == "" || asked {
			return a, err
		}
		t.line(t.words.Say("term.notice", "text", v.Call.Ask), 4)
	}
}

// end waits for the debrief and prints it.
func (t *terminal) end(ctx context.Context, g Game) error {
	told := -1
	err := g.Settle(ctx, func(share float64) {
		// Every tenth is enough for a reader, and little enough for a speaker.
		if tenth := int(share * 10); tenth > told {
			told = tenth
			t.line(t.words.Say("term.waiting", "text", t.words.Say("debrief.waiting"), "percent", tenth*10), 0)
			t.out.Flush()
		}
	})
	if err != nil {
		return err
	}
	t.show(g.View().Nodes, "")
	t.line(t.words.Say("term.over"), 0)
	return t.out.Flush()
}

// show prints what has changed since it was last printed: of an entry its head
// and the lines that it did not have.
func (t *terminal) show(nodes []play.Node, notice string) {
	t.sheet, t.found = read(nodes, t.words), nil
	now := make(map[string][]string, len(t.sheet.entries))
	for _, e := range t.sheet.entries {
		was, known := t.shown[e.id]
		now[e.id] = e.lines
		if known && slices.Equal(was, e.lines) {
			continue
		}
		for i, l := range e.lines {
			if i == 0 || !slices.Contains(was, l) {
				t.line(l, 4)
			}
		}
	}
	// While an instrument is read the sheet is only covered, and how folds are read
	// need not be said at every place.
	for id, was := range t.shown {
		if _, has := now[id]; !has && (t.sheet.reading || id == foldsID) {
			now[id] = was
		}
	}
	t.shown = now
	if notice != "" {
		t.line(t.words.Say("term.notice", "text", notice), 4)
	}
}

// forget lets what is about a place be printed whole at the next one, though it
// reads the same there.
func (t *terminal) forget() {
	for _, e := range t.sheet.entries {
		if e.here {
			delete(t.shown, e.id)
		}
	}
}

// page is how many lines of a search are printed at once: fewer than any screen has.
const page = 16

// search prints the first page of what a line "/word" finds, or with nothing
// after the stroke the next page; of everything, when nothing was searched.
func (t *terminal) search(words string) {
	if words != "" || len(t.found) == 0 {
		t.found = t.sheet.search(words)
		if len(t.found) == 0 {
			t.line(t.words.Say("term.none_found", "words", short(words)), 4)
			return
		}
	}
	n := min(page, len(t.found))
	for _, l := range t.found[:n] {
		t.line(l, 4)
	}
	if t.found = t.found[n:]; len(t.found) > 0 {
		t.line(t.words.Say("term.more_found", "left", len(t.found)), 4)
	}
}

func (t *terminal) line(s string, hang int) {
	for _, l := range wrap(s, max(t.opt.Width(), Narrowest), hang) {
		fmt.Fprintln(t.out, l)
	}
}

// next reads lines until one is an act. A writer that nobody reads and an input
// that has ended come back as errors.
func (t *terminal) next(help string) (play.Act, error) {
	for {
		if t.opt.Prompt {
			t.out.WriteString(t.words.Say("term.prompt"))
		}
		if err := t.out.Flush(); err != nil {
			return play.Act{}, err
		}
		if !t.in.Scan() {
			if err := t.in.Err(); err != nil {
				return play.Act{}, err
			}
			return play.Act{}, ErrEnded
		}
		line := strings.TrimSpace(t.in.Text())
		switch strings.ToLower(line) {
		case "":
			continue
		case "?":
			t.line(help, 0)
			continue
		case ".":
			for _, e := range t.sheet.entries {
				for _, l := range e.lines {
					t.line(l, 4)
				}
			}
			continue
		case "quit":
			return play.Act{}, ErrLeft
		}
		if words, ok := strings.CutPrefix(line, "/"); ok && t.sheet.list != nil {
			t.search(strings.TrimSpace(words))
			continue
		}
		if a, ok := t.sheet.pick(line); ok {
			// Tried even when it is dimmed: the refusal says why, and a drive that
			// comes too soon counts.
			return a.Act, nil
		}
		if lines, ok := t.sheet.unfold(line); ok {
			for _, l := range lines {
				t.line(l, 4)
			}
			continue
		}
		if t.sheet.write != nil {
			act := t.sheet.write.Act
			act.Text = line
			return act, nil
		}
		if err := t.sheet.wrong; err != nil {
			t.line(t.words.Say("term.notice", "text", err.Error()), 4)
			continue
		}
		t.line(t.words.Say("term.unknown", "line", short(line)), 4)
	}
}

func short(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
