package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"runtime"
	"time"

	xterm "golang.org/x/term"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/term"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// workers is how many goroutines fill a table of evidence while a job is
// played: one processor is left to the hand.
var workers = max(1, runtime.NumCPU()-1)

type termCmd struct {
	Job    string  `arg:"" optional:"" help:"Id of the job; without one, the first of the list; unseen, unseen_gentle or unseen_hard: a car nobody wrote down; practise: the car that you need next; selfcheck: ten unseen cars without a hint, in any number of sittings."`
	Seed   *uint64 `help:"Luck of the readings, from 1; without one, any." placeholder:"N"`
	Resume string  `xor:"what" help:"Go on with this kept session." placeholder:"NAME"`
	Bench  bool    `xor:"what" help:"The bench instead of a job."`
	Lesson string  `xor:"what" help:"This lesson on the bench instead of a job; list names them." placeholder:"ID"`
	Car    string  `help:"Car on the bench." default:"compact_hatchback" placeholder:"ID"`
	Width  *int    `help:"Characters of a line; without it, as many as the terminal has." placeholder:"N"`

	before *play.PractiseView // to be told before the car
}

func (t *termCmd) Run(c *cli) error {
	if err := errors.Join(knownWidth(t.Width), knownSeed(t.Seed), t.oneThing()); err != nil {
		return err
	}
	desk, words, err := c.desk()
	if err != nil {
		return err
	}
	if err := knownCar(desk.Library(), t.Car); err != nil {
		return err
	}
	opt := term.Options{Width: lineWidth(t.Width, os.Stdout), Prompt: typed()}
	if t.Bench {
		b, err := play.NewBench(desk.Library(), words, t.Car)
		if err != nil {
			return err
		}
		return term.Bench(b, words, os.Stdin, os.Stdout, opt)
	}
	if t.Lesson != "" {
		l, err := play.NewLesson(desk.Library(), words, t.Lesson)
		if err != nil {
			return err
		}
		return term.Bench(l, words, os.Stdin, os.Stdout, opt)
	}
	dir, err := c.sessions()
	if err != nil {
		return err
	}
	if t.Job == checkWord && t.Resume == "" {
		return t.check(c, desk, words, dir, opt)
	}
	k, err := t.open(desk, words, dir)
	if err != nil {
		return err
	}
	defer k.Close()
	if k.Torn {
		fmt.Fprintln(os.Stderr, words.Say("term.torn"))
	}
	goOn := c.kept(words, k.Name, dir)
	defer interrupted(goOn)()
	k.FillTable(workers)
	if t.before != nil {
		if err := term.Tell(t.told(c, dir), t.before.Notice, words, os.Stdout, opt); err != nil {
			return err
		}
	}
	if err = term.Run(context.Background(), &recorded{Kept: k, words: words}, words, os.Stdin, os.Stdout, opt); err != nil {
		fmt.Fprintln(os.Stderr, goOn)
	}
	return left(err)
}

// oneThing refuses a job beside what is played instead of a job.
func (t *termCmd) oneThing() error {
	if t.Job == "" {
		return nil
	}
	for flag, given := range map[string]bool{"--resume": t.Resume != "", "--bench": t.Bench, "--lesson": t.Lesson != ""} {
		if given {
			return mistaken("%s and %s do not go together; give a job or the flag", t.Job, flag)
		}
	}
	return nil
}

// told is what a learner's kept cars say, before the car they need next.
func (t *termCmd) told(c *cli, dir string) []play.Node {
	nodes := t.before.Nodes
	if a := t.before.Lesson; a != nil {
		nodes = append(nodes, play.Node{ID: "lesson", Role: "text", Name: a.Label, Value: c.command("term --lesson "+a.Act.What, dir)})
	}
	return nodes
}

// open begins a session or goes on with one.
func (t *termCmd) open(desk *play.Desk, words *assets.Words, dir string) (*play.Kept, error) {
	if t.Resume != "" {
		k, err := desk.Resume(dir, t.Resume)
		if err != nil {
			return nil, err
		}
		if r := checkOf(dir, k.Drawn()); r != nil {
			k.Close()
			return nil, errors.New(words.Say("check.of_check", "session", k.Name, "check", r.Name))
		}
		return k, nil
	}
	job, seed := t.Job, uint64(0)
	if t.Seed != nil {
		seed = *t.Seed
	}
	if job == "" {
		if len(desk.Library().Jobs) == 0 {
			return nil, errors.New("the library has no jobs")
		}
		job = desk.Library().ByAim()[0].ID
	}
	var drawn *record.Purpose
	if job == practiseWord {
		p, err := readPractice(desk, words, dir)
		if err != nil {
			return nil, err
		}
		t.before = p.View()
		c, err := p.next()
		if err != nil {
			return nil, err
		}
		job, drawn = c.Job, &c.For
	} else if id, ok, err := unseen(dir, job, aloud); err != nil {
		return nil, err
	} else if ok {
		job = id
	}
	if seed == 0 {
		seed = anySeed()
	}
	s, err := desk.Open(job, seed)
	if err != nil {
		return nil, err
	}
	k, err := s.KeepFor(dir, drawn)
	if err != nil {
		return nil, unkept(dir, err)
	}
	return k, nil
}

// knownCar refuses a car that the library does not have.
func knownCar(lib *scenarios.Library, id string) error {
	if lib.Car(id) != nil {
		return nil
	}
	var known []string
	for _, c := range lib.Cars {
		known = append(known, c.ID)
	}
	return fmt.Errorf("unknown car %q; %s", id, scenarios.NearestWords(id, known))
}

// typed reports whether somebody types: a pipe needs no prompt.
func typed() bool {
	return xterm.IsTerminal(int(os.Stdin.Fd()))
}

type listCmd struct{}

func (listCmd) Run(c *cli) error {
	lib, err := c.library()
	if err != nil {
		return err
	}
	dir, err := c.sessions()
	if err != nil {
		return err
	}
	list, err := record.List(dir)
	if err != nil {
		return unkept(dir, err)
	}
	for _, j := range lib.ByAim() {
		if _, err := fmt.Printf("%-18s %3.0f min  %s\n", j.ID, j.Minutes, j.Title); err != nil {
			return err
		}
	}
	for _, l := range lib.Lessons {
		if _, err := fmt.Printf("lesson: %-28s %s\n", l.ID, l.Title); err != nil {
			return err
		}
	}
	checks, damaged, err := record.Checks(dir)
	if err != nil {
		return unkept(dir, err)
	}
	for _, d := range damaged {
		aloud(d)
	}
	for _, c := range checks {
		if _, err := fmt.Printf("self-check: %-24s cars: %d, begun %s\n", c.Name, len(c.Cars), c.Began.Format(time.DateOnly)); err != nil {
			return err
		}
	}
	for _, e := range list {
		line := fmt.Sprintf("kept: %-30s acts: %d", e.Name, e.Acts)
		if e.Err != nil {
			line = fmt.Sprintf("kept: %-30s %v", e.Name, e.Err)
		}
		if _, err := fmt.Println(line); err != nil {
			return err
		}
	}
	return nil
}

type forgetCmd struct {
	Name    string `arg:"" optional:"" help:"Name of the session or the self-check, as list shows it."`
	Results bool   `help:"Delete what all debriefs came to; the sessions stay."`
}

func (f *forgetCmd) Run(c *cli) error {
	dir, err := c.sessions()
	if err != nil {
		return err
	}
	if f.Name == "" && !f.Results {
		return errors.New("forget what? name a session, as list shows it, or say --results for what all debriefs came to")
	}
	if f.Results {
		if err := record.ForgetResults(dir); err != nil {
			return err
		}
	}
	if f.Name == "" {
		return nil
	}
	return record.Forget(dir, f.Name)
}
