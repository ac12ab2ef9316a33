package main

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/practice"
	"evenwear/scoring/record"
)

// A selfCheck is a self-check being played: its cars in any number of sittings,
// their marks worked out behind them one after the other. It is for one goroutine.
type selfCheck struct {
	desk   *play.Desk
	words  *assets.Words
	dir    string
	round  *practice.Round
	marker *marker
	notice string
}

// openCheck goes on with the self-check that was begun last in a folder, or
// begins the first.
func openCheck(desk *play.Desk, words *assets.Words, dir string) (*selfCheck, error) {
	c := &selfCheck{desk: desk, words: words, dir: dir}
	list, damaged, err := record.Checks(dir)
	if err != nil {
		return nil, unkept(dir, err)
	}
	if len(list) == 0 {
		err = c.Renew()
	} else {
		c.round = &practice.Round{Check: list[len(list)-1]}
		err = c.follow()
	}
	if err != nil {
		return nil, err
	}
	if len(damaged) > 0 {
		c.notice = errors.Join(damaged...).Error()
	}
	return c, nil
}

// Renew begins another self-check.
func (c *selfCheck) Renew() error {
	c.notice = ""
	played, err := playedHere(c.dir, c.tell)
	if err != nil {
		return err
	}
	fresh, err := practice.Draw(c.desk.Library(), c.desk.Hash(), played, time.Now(), luck())
	if err != nil {
		return err
	}
	if fresh, err = record.CreateCheck(c.dir, fresh); err != nil {
		return unkept(c.dir, err)
	}
	c.round = &practice.Round{Check: fresh}
	return c.follow()
}

func (c *selfCheck) tell(err error) { c.notice = err.Error() }

// follow reads anew how far it is.
func (c *selfCheck) follow() error {
	sessions, err := record.List(c.dir)
	if err != nil {
		return unkept(c.dir, err)
	}
	list, err := results(c.dir, c.tell)
	if err != nil {
		return err
	}
	c.round = practice.Follow(c.round.Check, sessions, list)
	return nil
}

// Car begins a car, goes on with it, or opens it at its debrief when every car is
// handed over.
func (c *selfCheck) Car(n int) (*play.Kept, error) {
	c.notice = "" // it was told
	if err := c.follow(); err != nil {
		return nil, err
	}
	if n < 1 || n > len(c.round.Cars) {
		return nil, fmt.Errorf("there is no car %d; cars are 1 to %d", n, len(c.round.Cars))
	}
	car := &c.round.Cars[n-1]
	if car.Stage != practice.Waits {
		return c.desk.Resume(c.dir, car.Session)
	}
	s, err := c.desk.Open(car.Job, car.Seed)
	if err != nil {
		return nil, err
	}
	k, err := s.KeepFor(c.dir, c.round.Begin(n))
	if err != nil {
		return nil, unkept(c.dir, err)
	}
	return k, nil
}

// Await works out in the background the marks of the cars that are handed over.
// It does nothing while it runs, or when there are none.
func (c *selfCheck) Await() {
	if c.marker.running() || c.round.Library != c.desk.Hash() || c.follow() != nil {
		return
	}
	if c.round.Count(practice.Handed) > c.round.Count(practice.Marked) {
		c.marker = mark(c.desk.Library(), c.words, c.dir, c.round.Check)
	}
}

// Cancel stops that; what is worked out stays kept.
func (c *selfCheck) Cancel() {
	c.marker.stop()
	c.marker = nil
}

// View is the self-check as a face may show it.
func (c *selfCheck) View() *play.CheckView {
	if err := c.follow(); err != nil {
		c.notice = err.Error()
	}
	v := c.round.View(c.desk.Library(), c.desk.Hash(), c.words)
	if v.Over && !v.Complete && c.marker != nil {
		v.Waiting = c.marker.view(c.words)
	}
	v.Notice = c.notice
	return v
}

// checkOf is the self-check that a session belongs to, while its debriefs are not
// open; nil: none.
func checkOf(dir string, drawn *record.Purpose) *practice.Round {
	if drawn == nil || drawn.Check == "" {
		return nil
	}
	list, _, err := record.Checks(dir)
	at := slices.IndexFunc(list, func(c record.Check) bool { return c.Name == drawn.Check })
	if err != nil || at < 0 {
		return nil // it was forgotten: its cars are cars like others
	}
	sessions, _ := record.List(dir)
	kept, _, _ := record.Results(dir)
	if r := practice.Follow(list[at], sessions, kept); !r.Over() {
		return r
	}
	return nil
}
