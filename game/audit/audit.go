package audit

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"runtime/debug"
	"slices"
	"strings"

	"evenwear/game/play"
	"evenwear/scenarios"
)

// An Audit is a bank about to be proven.
type Audit struct {
	run
	jobs []*scenarios.Job
	keep *Keep
}

// New prepares the audit of some jobs of a library; no names means all.
func New(lib *scenarios.Library, words play.Words, names []string, opt Options) (*Audit, error) {
	if err := opt.verify(); err != nil {
		return nil, err
	}
	a := &Audit{run: run{opt: opt.full(), lib: lib, words: words}}
	for _, j := range lib.Jobs {
		if len(names) == 0 || slices.Contains(names, j.ID) {
			a.jobs = append(a.jobs, j)
		}
	}
	for _, n := range names {
		if lib.Job(n) == nil {
			return nil, fmt.Errorf("audit: there is no job %q", n)
		}
	}
	if len(a.jobs) == 0 {
		return nil, errors.New("audit: there are no jobs to be proven")
	}
	if n := opt.Sample; n > 0 && n < len(a.jobs) {
		luck := rand.New(rand.NewPCG(opt.Seed, 3))
		luck.Shuffle(len(a.jobs), func(i, j int) { a.jobs[i], a.jobs[j] = a.jobs[j], a.jobs[i] })
		a.jobs = a.jobs[:n]
		slices.SortFunc(a.jobs, func(x, y *scenarios.Job) int { return strings.Compare(x.ID, y.ID) })
	}
	a.crowd = a.opt.crowd()
	return a, nil
}

// Jobs are the ids of the jobs to be proven, in their order.
func (a *Audit) Jobs() []string {
	var all []string
	for _, j := range a.jobs {
		all = append(all, j.ID)
	}
	return all
}

// Resume takes over what a file holds of this audit and keeps what is worked out
// there. told is what there is to say about the file.
func (a *Audit) Resume(path string) (told string, err error) {
	a.keep, err = OpenKeep(path, heading{Revision: revision(), Library: play.NewDesk(a.lib, a.words).Hash(), Jobs: a.Jobs(), Options: a.opt})
	if err != nil {
		return "", err
	}
	return a.keep.Told, nil
}

// revision is the program's, with what was changed since.
func revision() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return ""
	}
	out := ""
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" || s.Key == "vcs.modified" {
			out += s.Value + " "
		}
	}
	return strings.TrimSpace(out)
}

// Run works everything out and judges it. A job that cannot be worked out stands in
// the report with its reason; the error is that the audit was stopped or that what
// was worked out could not be kept.
func (a *Audit) Run(ctx context.Context, progress func(Progress)) (*Report, error) {
	a.progress = progress
	defer a.keep.Close()
	var groups [][]string // of the unseen jobs: each in turn, so that they are of all kinds
	for all := a.groups(); len(groups) < a.opt.Unseen; {
		groups = append(groups, all...)
	}
	var units []*Unit
	var cars []string
	for i, job := range a.jobs {
		a.number = i + 1
		first := !slices.Contains(cars, job.Car.ID)
		cars = append(cars, job.Car.ID)
		if u, ok := a.keep.Has(job.ID); ok {
			units = append(units, u)
			continue
		}
		u, err := a.unit(ctx, job, portion(groups[:a.opt.Unseen], i, len(a.jobs)), portion(a.opt.Shown, i, len(a.jobs)), first)
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err != nil {
			u = &Unit{Job: job.ID, Car: job.Car.ID, Failed: err.Error()}
		}
		if err := a.keep.Put(u); err != nil {
			return nil, err
		}
		units = append(units, u)
	}
	return a.judge(units), nil
}

// portion is what job i of n has of a list that is shared out evenly.
func portion[T any](list []T, i, n int) []T { return list[len(list)*i/n : len(list)*(i+1)/n] }
