package main

import (
	"context"
	"os"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/scene"
	"evenwear/game/term"
)

// checkWord is what stands for a self-check instead of a job.
const checkWord = "selfcheck"

// A termCheck is a self-check in a terminal.
type termCheck struct{ *selfCheck }

// Open begins a car, goes on with it, or opens its debrief.
func (c termCheck) Open(n int) (term.Game, func(), error) {
	k, err := c.Car(n)
	if err != nil {
		return nil, nil, err
	}
	return &recorded{Kept: k, words: c.words}, func() { k.Close() }, nil
}

// A windowCheck is a self-check in the window.
type windowCheck struct{ *selfCheck }

// Open begins a car, goes on with it, or opens its debrief.
func (c windowCheck) Open(a *scene.App, n int, back func()) (scene.Scene, error) {
	sealed := !c.round.Over()
	k, err := c.Car(n)
	if err != nil {
		return nil, err
	}
	return scene.NewJobOf(a, &recorded{Kept: k, words: c.words}, func() { k.Close() }, back, sealed), nil
}

// check plays a self-check in a terminal.
func (t *termCmd) check(c *cli, desk *play.Desk, words *assets.Words, dir string, opt term.Options) error {
	s, err := openCheck(desk, words, dir)
	if err != nil {
		return err
	}
	goOn := c.keptCheck(words, s.round.Name, dir)
	defer interrupted(goOn)()
	err = term.RunCheck(context.Background(), termCheck{s}, words, os.Stdin, os.Stdout, opt)
	if err != nil {
		os.Stderr.WriteString(goOn + "\n")
	}
	return left(err)
}
