//go:build !js

package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"evenwear/assets"
	"evenwear/game/audit"
	"evenwear/game/practice"
	"evenwear/scenarios"
)

// auditCmd proves a bank of jobs by simulated learners.
type auditCmd struct {
	Dir     string `arg:"" optional:"" name:"folder" help:"A folder whose jobs are proven; without one the program's own are."`
	Sample  int    `help:"Prove only so many jobs, drawn by the seed; 0 means all." placeholder:"N"`
	Workers int    `help:"Goroutines; the table is the same for any number. 0 means one a core." placeholder:"N"`
	Resume  string `help:"File in which what is worked out is kept, and from which it is gone on with." type:"path" placeholder:"FILE"`
	Seed    uint64 `help:"Seed of all luck." default:"1"`
	Drawn   int    `help:"Prove no jobs but cars drawn from so many seeds: each is written, loaded and told of truly." placeholder:"N"`
}

func (a *auditCmd) Run(c *cli) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	return a.run(ctx, c, os.Stdout, os.Stderr)
}

func (a *auditCmd) run(ctx context.Context, c *cli, out, told io.Writer) error {
	for name, n := range map[string]int{"sample": a.Sample, "workers": a.Workers, "drawn": a.Drawn} {
		if n < 0 {
			return mistaken("--%s %d: want 0 or more", name, n)
		}
	}
	lib, names, err := a.bank(c)
	if err != nil {
		return err
	}
	words, err := assets.English()
	if err != nil {
		return err
	}
	workers := a.Workers
	if workers == 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	if a.Drawn != 0 {
		return a.draw(ctx, lib, workers, out, told)
	}
	audited, err := audit.New(lib, words, names, audit.Options{Seed: a.Seed, Workers: workers, Sample: a.Sample, Shown: practice.Confronting(lib, practice.Notes)})
	if err != nil {
		return err
	}
	if a.Resume != "" {
		said, err := audited.Resume(a.Resume)
		if err != nil {
			return err
		}
		if said != "" {
			fmt.Fprintln(told, "game:", said)
		}
	}
	report, err := audited.Run(ctx, progressLines(told, len(audited.Jobs())))
	switch {
	case errors.Is(err, context.Canceled) && a.Resume != "":
		return fmt.Errorf("the audit was stopped; what was worked out is in %s, and the same command goes on from there", a.Resume)
	case errors.Is(err, context.Canceled):
		return errors.New("the audit was stopped; with --resume FILE it could be gone on with")
	case err != nil:
		return err
	}
	if _, err := fmt.Fprint(out, report); err != nil {
		return err
	}
	if n := report.Failing(); n > 0 {
		return fmt.Errorf("jobs that fail: %d", n)
	}
	return nil
}

// draw proves cars nobody wrote down.
func (a *auditCmd) draw(ctx context.Context, lib *scenarios.Library, workers int, out, told io.Writer) error {
	d, err := audit.Draw(ctx, lib, audit.Options{Seed: a.Seed, Workers: workers}, a.Drawn, progressLines(told, 0))
	if errors.Is(err, context.Canceled) {
		return errors.New("the drawing was stopped; nothing of it is kept")
	}
	if err != nil {
		return err
	}
	if _, err := fmt.Fprint(out, d); err != nil {
		return err
	}
	if n := d.Failing(); n > 0 {
		return fmt.Errorf("cars that fail: %d", n)
	}
	return nil
}

// bank is the library with the names of the jobs to be proven: those of the folder,
// or all.
func (a *auditCmd) bank(c *cli) (*scenarios.Library, []string, error) {
	if a.Dir == "" {
		lib, err := c.library()
		return lib, nil, err
	}
	lib, err := scenarios.Overlay(a.Dir)
	if err != nil {
		return nil, nil, err
	}
	entries, err := os.ReadDir(filepath.Join(a.Dir, "jobs"))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, nil, fmt.Errorf("%s: its jobs cannot be read: %w", a.Dir, err)
	}
	var names []string
	for _, e := range entries {
		if id, ok := strings.CutSuffix(e.Name(), ".yaml"); ok {
			names = append(names, id)
		}
	}
	if len(names) == 0 {
		return nil, nil, fmt.Errorf("%s: there are no jobs in it; they stand in %s and end in .yaml", a.Dir, filepath.Join(a.Dir, "jobs"))
	}
	return lib, names, nil
}

// progressLines tells each step as it begins and, of a long one, how far it is;
// without jobs there is one step.
func progressLines(w io.Writer, jobs int) func(audit.Progress) {
	const every = 10 * time.Second
	var last audit.Progress
	var when time.Time
	return func(p audit.Progress) {
		if p.Job == last.Job && p.Step == last.Step && time.Since(when) < every {
			return
		}
		last, when = p, time.Now()
		if jobs == 0 {
			fmt.Fprintf(w, "%s: %.1f %%\n", p.Job, 100*p.Share)
			return
		}
		fmt.Fprintf(w, "job %d of %d, %s: %s %.0f %%\n", p.Number, jobs, p.Job, p.Step, 100*p.Share)
	}
}
