package main

import (
	"errors"
	"fmt"
	"os"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/scene"
	"evenwear/game/window"
)

type windowCmd struct {
	Car   string `help:"Car on the bench." default:"compact_hatchback"`
	Slate bool   `help:"Light lines on slate."`
	Calm  bool   `help:"Reduced motion."`
}

func (w *windowCmd) Run(c *cli) error {
	desk, words, err := c.desk()
	if err != nil {
		return err
	}
	fonts, err := assets.LoadFonts()
	if err != nil {
		return err
	}
	app := scene.NewApp(scene.Options{Words: words, Fonts: fonts, Slate: w.Slate, Calm: w.Calm, Cover: scene.Cover{
		Bench: func(a *scene.App) (scene.Scene, error) {
			b, err := play.NewBench(desk.Library(), words, w.Car)
			if err != nil {
				return nil, err
			}
			return scene.NewBench(a, b), nil
		},
	}})
	err = window.Run(app, window.Options{Title: "Evenwear"})
	if errors.Is(err, window.ErrNoDisplay) {
		fmt.Fprintf(os.Stderr, "game: %v; going on in the terminal\n", err)
		t := termCmd{Car: w.Car, Width: 80}
		return t.Run(c)
	}
	return err
}
