package audit

import (
	"fmt"
	"math/rand/v2"

	"evenwear/scoring/learner"
)

// Options say how much is played. The zero Options is the whole audit.
type Options struct {
	Seed    uint64
	Workers int // goroutines; 0 means 1. Results do not hang on it
	Sample  int // jobs of the bank, drawn by Seed; 0 means all

	// Causes the notes on whose cars put misconceptions to the test, over the bank, which
	// are named from what is said of these.
	Shown []string

	// What a sample makes smaller; 0 means the default.
	Learners int // of the reference population: 200
	Crude    int // of each kind that does not infer: 200
	Holders  int // of each misconception: 14, 210 in all
	Unseen   int // jobs nobody wrote down, over the bank: 10
	Fresh    int // cars of the calibration, for each job of the bank: 40
	Draws    int // readings of each pair of causes: 24
	Small    int // problems small enough to be solved, for each car: 40
	Sessions int // in which the model inspector plays a job: 9
}

// full fills the defaults in.
func (o Options) full() Options {
	for _, d := range []struct {
		at *int
		v  int
	}{{&o.Workers, 1}, {&o.Learners, learner.ReferenceSize}, {&o.Crude, learner.ReferenceSize}, {&o.Holders, 14}, {&o.Unseen, 10}, {&o.Fresh, 40}, {&o.Draws, 24}, {&o.Small, 40}, {&o.Sessions, 9}} {
		if *d.at == 0 {
			*d.at = d.v
		}
	}
	return o
}

// verify refuses what cannot be played, in a sentence.
func (o *Options) verify() error {
	for name, v := range map[string]int{"workers": o.Workers, "sample": o.Sample, "learners": o.Learners, "crude": o.Crude, "holders": o.Holders,
		"unseen": o.Unseen, "fresh": o.Fresh, "draws": o.Draws, "small": o.Small, "sessions": o.Sessions} {
		if v < 0 {
			return fmt.Errorf("audit: %s is %d; wanted 0 or more", name, v)
		}
	}
	return nil
}

// A crowd is everybody who plays a job, in one order for all jobs.
type crowd struct {
	all   []learner.Learner
	group []string // by learner: "noisy_reasoner", a crude kind, or a misconception
	index []int    // by learner: its number in the group
}

func (c *crowd) add(group string, index int, l learner.Learner) {
	c.all, c.group, c.index = append(c.all, l), append(c.group, group), append(c.index, index)
}

// crowd draws everybody. Holders infer as the reference population does.
func (o *Options) crowd() *crowd {
	c := &crowd{}
	for i, l := range learner.Reference(o.Learners, rand.New(rand.NewPCG(o.Seed, 1))) {
		c.add(string(learner.Reasoner), i, l)
	}
	for _, k := range learner.Kinds {
		if k == learner.Reasoner {
			continue
		}
		l := learner.Learner{Kind: k, Skill: 0.5, Exponent: 1}
		n := o.Crude
		if k == learner.Inspector {
			l, n = learner.Perfect, o.Sessions
		}
		for i := range n {
			c.add(string(k), i, l)
		}
	}
	for m, idea := range learner.Misconceptions {
		for i, l := range learner.Reference(o.Holders, rand.New(rand.NewPCG(o.Seed, 2+uint64(m)))) {
			l.Holds = idea.ID
			c.add(idea.ID, i, l)
		}
	}
	return c
}
