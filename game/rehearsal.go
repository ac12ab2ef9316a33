package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"time"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/scene"
	"evenwear/game/term"
	"evenwear/game/window"
	"evenwear/scenarios"
)

// playCmd plays an author's own file.
type playCmd struct {
	File     string  `arg:"" help:"FOLDER/jobs/NAME.yaml." type:"path"`
	Seed     *uint64 `help:"Luck of the readings, from 1; without one, 1." placeholder:"N"`
	Terminal bool    `help:"In the terminal, though there is a display."`
	Width    *int    `help:"Characters of a line; without it, as many as the terminal has." placeholder:"N"`
}

func (p *playCmd) Run(*cli) error {
	if err := errors.Join(knownWidth(p.Width), knownSeed(p.Seed)); err != nil {
		return err
	}
	words, err := assets.English()
	if err != nil {
		return err
	}
	seed := uint64(1)
	if p.Seed != nil {
		seed = *p.Seed
	}
	r, err := rehearse(p.File, seed, words)
	if err != nil {
		return err
	}
	if !p.Terminal {
		err := r.window(words)
		if !errors.Is(err, window.ErrNoDisplay) {
			return err
		}
		fmt.Fprintf(os.Stderr, "game: %v; going on in the terminal\n", err)
	}
	return left(term.Run(context.Background(), r, words, os.Stdin, os.Stdout, term.Options{Width: lineWidth(p.Width, os.Stdout), Prompt: typed()}))
}

// A rehearsal is a session of a file that its author goes on changing: whenever
// the file has been saved it is read again and the same acts are done in it.
// What cannot be done any more is left out; a file with mistakes changes nothing
// and its mistakes are told. Nothing of it is kept.
type rehearsal struct {
	*play.Session
	words       *assets.Words
	file        string
	folder, job string
	seed        uint64
	saved       time.Time
	size        int64
	told        string // what is to be told with the next view
}

func rehearse(file string, seed uint64, words *assets.Words) (*rehearsal, error) {
	folder, job, err := jobFile(file)
	if err != nil {
		return nil, err
	}
	r := &rehearsal{words: words, file: file, folder: folder, job: job, seed: seed}
	r.saved, r.size = r.stamp()
	if r.Session, err = r.open(nil); err != nil {
		return nil, err
	}
	return r, nil
}

// stamp tells whether the file has been saved since.
func (r *rehearsal) stamp() (time.Time, int64) {
	info, err := os.Stat(r.file)
	if err != nil {
		return time.Time{}, 0
	}
	return info.ModTime(), info.Size()
}

// open reads the library anew and does acts in it.
func (r *rehearsal) open(acts []play.Act) (*play.Session, error) {
	lib, err := scenarios.Overlay(r.folder)
	if err != nil {
		return nil, err
	}
	s, err := play.NewDesk(lib, r.words).Replay(r.job, r.seed, acts)
	if err != nil {
		return nil, err
	}
	s.FillTable(workers)
	return s, nil
}

// Changed reads the file again when it has been saved, and tells whether it was.
func (r *rehearsal) Changed() bool {
	saved, size := r.stamp()
	if saved.Equal(r.saved) && size == r.size {
		return false
	}
	r.saved, r.size = saved, size
	s, err := r.open(r.Acts())
	if err != nil {
		r.told = err.Error()
		return true
	}
	r.Cancel()
	all := len(r.Acts())
	r.Session = s
	r.told = r.words.Say("author.read_again", "kept", len(s.Acts()), "all", all)
	return true
}

// View is the session's, after a look whether the file was saved.
func (r *rehearsal) View() *play.View {
	r.Changed()
	v := r.Session.View()
	if r.told != "" {
		v.Notice, r.told = r.told, ""
	}
	return v
}

// window plays in the window, on the job's sheet at once.
func (r *rehearsal) window(words *assets.Words) error {
	fonts, err := assets.LoadFonts()
	if err != nil {
		return err
	}
	open := func(a *scene.App) (scene.Scene, error) { return scene.NewJob(a, r, nil), nil }
	app := scene.NewApp(scene.Options{Words: words, Fonts: fonts, Cover: scene.Cover{Jobs: []scene.Offer{{Name: r.Session.View().Title.Job, Open: open}}}})
	app.Show(scene.NewJob(app, r, nil))
	return window.Run(app, window.Options{Title: "Evenwear"})
}
