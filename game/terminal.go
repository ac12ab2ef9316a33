package main

import (
	"context"
	"crypto/rand"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"runtime"
	"syscall"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/term"
	"evenwear/scoring/record"
)

// workers is how many goroutines fill a table of evidence while a job is
// played: one processor is left to the hand.
var workers = max(1, runtime.NumCPU()-1)

// widest is more characters than a line of any terminal has.
const widest = 500

type termCmd struct {
	Job    string `arg:"" optional:"" help:"Id of the job; without one, the first of the list."`
	Seed   uint64 `help:"Luck of the readings; without one, any."`
	Resume string `help:"Go on with this kept session." placeholder:"NAME"`
	Bench  bool   `help:"The bench instead of a job."`
	Car    string `help:"Car on the bench." default:"compact_hatchback"`
	Width  int    `help:"Characters of a line." default:"80"`
}

func (t *termCmd) Run(c *cli) error {
	desk, words, err := c.desk()
	if err != nil {
		return err
	}
	if t.Width < term.Narrowest || t.Width > widest {
		return fmt.Errorf("--width %d: a line has %d to %d characters", t.Width, term.Narrowest, widest)
	}
	opt := term.Options{Width: t.Width, Prompt: typed()}
	if t.Bench {
		b, err := play.NewBench(desk.Library(), words, t.Car)
		if err != nil {
			return err
		}
		return term.Bench(b, words, os.Stdin, os.Stdout, opt)
	}
	dir, err := c.sessions()
	if err != nil {
		return err
	}
	k, err := t.open(desk, dir)
	if err != nil {
		return err
	}
	defer k.Close()
	if k.Torn {
		fmt.Fprintln(os.Stderr, words.Say("term.torn"))
	}
	k.FillTable(workers)
	err = term.Run(context.Background(), k, words, os.Stdin, os.Stdout, opt)
	if errors.Is(err, term.ErrLeft) || errors.Is(err, syscall.EPIPE) {
		fmt.Fprintln(os.Stderr, kept(words, k.Name, dir, c.Sessions != ""))
	}
	return left(err)
}

// open begins a session or goes on with one.
func (t *termCmd) open(desk *play.Desk, dir string) (*play.Kept, error) {
	if t.Resume != "" {
		return desk.Resume(dir, t.Resume)
	}
	job, seed := t.Job, t.Seed
	if job == "" {
		if len(desk.Library().Jobs) == 0 {
			return nil, errors.New("the library has no jobs")
		}
		job = desk.Library().Jobs[0].ID
	}
	if seed == 0 {
		seed = anySeed()
	}
	s, err := desk.Open(job, seed)
	if err != nil {
		return nil, err
	}
	return s.Keep(dir)
}

// anySeed is small enough to be read out loud.
func anySeed() uint64 {
	var b [8]byte
	rand.Read(b[:])
	return binary.LittleEndian.Uint64(b[:])%9000 + 1000
}

// kept says how to go on.
func kept(words *assets.Words, name, dir string, told bool) string {
	command := "game term --resume " + name
	if told {
		command += " --sessions " + dir
	}
	return words.Say("term.kept", "name", name, "command", command)
}

// typed reports whether somebody types: a pipe needs no prompt.
func typed() bool {
	info, err := os.Stdin.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

type listCmd struct{}

func (listCmd) Run(c *cli) error {
	lib, err := c.library()
	if err != nil {
		return err
	}
	for _, j := range lib.Jobs {
		if _, err := fmt.Printf("%-18s %3.0f min  %s\n", j.ID, j.Minutes, j.Title); err != nil {
			return err
		}
	}
	dir, err := c.sessions()
	if err != nil {
		return err
	}
	list, err := record.List(dir)
	if err != nil {
		return err
	}
	for _, e := range list {
		line := fmt.Sprintf("kept: %-30s %3d acts", e.Name, e.Acts)
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
	Name string `arg:"" help:"Name of the session, as list shows it."`
}

func (f *forgetCmd) Run(c *cli) error {
	dir, err := c.sessions()
	if err != nil {
		return err
	}
	return record.Forget(dir, f.Name)
}
