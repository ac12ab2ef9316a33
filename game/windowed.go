package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/scene"
	"evenwear/game/window"
	"evenwear/scenarios"
	"evenwear/scoring/record"
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
	if err := knownCar(desk.Library(), w.Car); err != nil {
		return err
	}
	fonts, err := assets.LoadFonts()
	if err != nil {
		return err
	}
	cover, err := w.cover(c, desk, words)
	if err != nil {
		return err
	}
	app := scene.NewApp(scene.Options{Words: words, Fonts: fonts, Slate: w.Slate, Calm: w.Calm, Cover: cover})
	err = window.Run(app, window.Options{Title: "Evenwear"})
	if errors.Is(err, window.ErrNoDisplay) {
		fmt.Fprintf(os.Stderr, "game: %v; going on in the terminal\n", err)
		t := termCmd{Car: w.Car}
		return t.Run(c)
	}
	if err != nil {
		return fmt.Errorf("%w; game term plays the same jobs without a window", err)
	}
	return nil
}

// cover is what the first sheet offers: the bench, the session cut off last, every job.
func (w *windowCmd) cover(c *cli, desk *play.Desk, words *assets.Words) (scene.Cover, error) {
	cover := scene.Cover{Bench: func(a *scene.App) (scene.Scene, error) {
		b, err := play.NewBench(desk.Library(), words, w.Car)
		if err != nil {
			return nil, err
		}
		return scene.NewBench(a, b), nil
	}}
	dir, err := c.sessions()
	if err != nil {
		return cover, err
	}
	read := map[string]bool{} // sessions whose debrief has been looked at in this run
	show := func(a *scene.App, k *play.Kept) scene.Scene {
		k.FillTable(workers)
		r := &recorded{Kept: k, words: words}
		return scene.NewJob(a, r, func() {
			read[k.Name] = r.View().Debrief != nil
			k.Close()
		})
	}
	begin := func(a *scene.App, job string, drawn *record.Purpose) (scene.Scene, error) {
		s, err := desk.Open(job, anySeed())
		if err != nil {
			return nil, err
		}
		k, err := s.KeepFor(dir, drawn)
		if err != nil {
			return nil, unkept(dir, err)
		}
		return show(a, k), nil
	}
	lesson := func(a *scene.App, id string) (scene.Scene, error) {
		src, err := play.NewLesson(desk.Library(), words, id)
		if err != nil {
			return nil, err
		}
		return scene.NewLesson(a, src), nil
	}
	cover.Practise = func(a *scene.App) (scene.Scene, error) {
		p, err := readPractice(desk, words, dir)
		if err != nil {
			return nil, err
		}
		return scene.NewPractise(a, windowPractice{p, lesson, begin}), nil
	}
	cover.SelfCheck = func(a *scene.App) (scene.Scene, error) {
		s, err := openCheck(desk, words, dir)
		if err != nil {
			return nil, err
		}
		return scene.NewCheck(a, windowCheck{s}), nil
	}
	for _, l := range desk.Library().Lessons {
		cover.Lessons = append(cover.Lessons, scene.Offer{Name: l.Title, Detail: words.Say("cover.lesson_steps", "steps", len(l.Steps)),
			Open: func(a *scene.App) (scene.Scene, error) { return lesson(a, l.ID) }})
	}
	for _, ease := range scenarios.Eases {
		cover.Jobs = append(cover.Jobs, scene.Offer{Name: words.Say("cover.unseen_" + string(ease)), Detail: words.Say("cover.unseen"),
			Open: func(a *scene.App) (scene.Scene, error) {
				var damaged error
				id, _, err := unseen(dir, unseenWord+"_"+string(ease), func(e error) { damaged = errors.Join(damaged, e) })
				if err = errors.Join(err, damaged); err != nil {
					return nil, err // what is damaged is told once: the next press goes on
				}
				return begin(a, id, nil)
			}})
	}
	for _, j := range desk.Library().ByAim() {
		cover.Jobs = append(cover.Jobs, scene.Offer{Name: j.Title, Detail: words.Say("cover.job_minutes", "minutes", j.Minutes),
			Open: func(a *scene.App) (scene.Scene, error) { return begin(a, j.ID, nil) }})
	}
	if _, err := record.List(dir); err != nil {
		return cover, unkept(dir, err)
	}
	cover.Resume = func() *scene.Offer {
		list, err := record.List(dir)
		last, over := lastLeft(list, read)
		if err != nil || last == "" {
			return nil
		}
		name := last
		for _, e := range list {
			if e.Name == last {
				name = desk.Title(e.Job)
			}
		}
		if over {
			name = words.Say("cover.its_debrief", "job", name)
		}
		return &scene.Offer{Name: name, Open: func(a *scene.App) (scene.Scene, error) {
			k, err := desk.Resume(dir, last)
			if err != nil {
				return nil, err
			}
			return show(a, k), nil
		}}
	}
	return cover, nil
}

// lastLeft is the session last written to that can be gone on with, and whether
// only its debrief is left, because it was handed over; read are those whose
// debrief has been looked at. A self-check goes on with its own cars. Empty: none.
func lastLeft(list []record.Entry, read map[string]bool) (name string, over bool) {
	var last record.Entry
	for _, e := range list {
		var act play.Act
		if e.Err != nil || e.Acts == 0 || e.For != nil && e.For.Check != "" || json.Unmarshal(e.Last, &act) != nil {
			continue
		}
		done := act.Do == play.HandOver
		if done && read[e.Name] {
			continue
		}
		if last.Name == "" || e.Changed.After(last.Changed) {
			last, over = e, done
		}
	}
	return last.Name, over
}
