package main

import (
	"crypto/rand"
	"encoding/binary"
	"errors"
	"time"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/practice"
	"evenwear/game/scene"
	"evenwear/scoring/record"
)

// practiseWord is what stands for the car that a learner needs next.
const practiseWord = "practise"

// A practiser is a learner who wants to practise: what their kept cars say, and the
// next car.
type practiser struct {
	desk   *play.Desk
	words  *assets.Words
	dir    string
	kept   []record.Result
	notice string // what is damaged
}

// readPractice reads what is kept in a folder.
func readPractice(desk *play.Desk, words *assets.Words, dir string) (*practiser, error) {
	p := &practiser{desk: desk, words: words, dir: dir}
	var damaged error
	var err error
	p.kept, err = results(dir, func(e error) { damaged = errors.Join(damaged, e) })
	if damaged != nil {
		p.notice = damaged.Error()
	}
	return p, err
}

// View is what the kept cars say.
func (p *practiser) View() *play.PractiseView {
	v := practice.View(p.desk.Library(), p.kept, p.desk.Title, p.words)
	v.Notice = p.notice
	return v
}

// next chooses the next car.
func (p *practiser) next() (practice.Choice, error) {
	var damaged error
	played, err := playedHere(p.dir, func(e error) { damaged = errors.Join(damaged, e) })
	if err = errors.Join(err, damaged); err != nil {
		return practice.Choice{}, err // what is damaged is told once: the next time it goes on
	}
	return practice.Next(p.desk.Library(), p.kept, played, time.Now(), luck())
}

// windowPractice is a practiser in a window.
type windowPractice struct {
	*practiser
	lesson func(a *scene.App, id string) (scene.Scene, error)
	begin  func(a *scene.App, job string, drawn *record.Purpose) (scene.Scene, error)
}

func (w windowPractice) Lesson(a *scene.App, id string) (scene.Scene, error) { return w.lesson(a, id) }

func (w windowPractice) Begin(a *scene.App) (scene.Scene, error) {
	c, err := w.next()
	if err != nil {
		return nil, err
	}
	return w.begin(a, c.Job, &c.For)
}

// playedHere are the jobs that were met in a folder and must not be drawn again:
// those of its sessions, of its results, whose sessions may be forgotten, and of its
// self-checks, whose cars may not have been begun. tell is told what is damaged.
func playedHere(dir string, tell func(error)) (map[string]bool, error) {
	list, err := record.List(dir)
	if err != nil {
		return nil, unkept(dir, err)
	}
	kept, err := results(dir, tell)
	if err != nil {
		return nil, err
	}
	checks, damaged, err := record.Checks(dir)
	if err != nil {
		return nil, unkept(dir, err)
	}
	for _, d := range damaged {
		tell(d)
	}
	played := map[string]bool{}
	for i := range list {
		played[list[i].Job] = true
	}
	for i := range kept {
		played[kept[i].Job] = true
	}
	for i := range checks {
		for _, car := range checks[i].Cars {
			played[car.Job] = true
		}
	}
	return played, nil
}

// luck is any number.
func luck() uint64 {
	var b [8]byte
	rand.Read(b[:])
	return binary.LittleEndian.Uint64(b[:])
}

// anySeed is the luck of a session, small enough to be read out loud.
func anySeed() uint64 { return luck()%practice.Seeds + practice.SeedLeast }
