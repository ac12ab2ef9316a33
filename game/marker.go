package main

import (
	"context"
	"errors"
	"math"
	"sync/atomic"
	"time"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/practice"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// A marker works out the debriefs of a self-check one after the other, as cars are
// handed over, and keeps what they come to.
type marker struct {
	cancel context.CancelFunc
	share  atomic.Uint64 // bits of a float64 [1], of the cars handed over
	done   chan struct{}
	err    error // read it when done
}

// mark begins, and ends when every car is marked that has been handed over by then.
func mark(lib *scenarios.Library, words *assets.Words, dir string, check record.Check) *marker {
	ctx, cancel := context.WithCancel(context.Background())
	m := &marker{cancel: cancel, done: make(chan struct{})}
	go func() {
		defer close(m.done)
		failed := map[string]bool{}
		for ctx.Err() == nil {
			session, marked, handed, err := nextToMark(dir, check, failed)
			if err != nil || session == "" {
				m.err = errors.Join(m.err, err)
				return
			}
			// A desk keeps the tables of its cars, so that each car has its own.
			err = markOne(ctx, newDesk(lib, words), dir, session, func(share float64) {
				m.share.Store(math.Float64bits((float64(marked) + share) / float64(handed)))
			})
			if ctx.Err() == nil && err != nil {
				m.err = errors.Join(m.err, err) // the others are worked out all the same
				failed[session] = true
			}
		}
	}()
	return m
}

// nextToMark is the session of the first car of a self-check that is handed over
// and not marked, but for those that failed, with how many are marked and how many
// handed over; empty: none.
func nextToMark(dir string, check record.Check, failed map[string]bool) (session string, marked, handed int, err error) {
	sessions, err := record.List(dir)
	if err != nil {
		return "", 0, 0, err
	}
	kept, _, err := record.Results(dir)
	if err != nil {
		return "", 0, 0, err
	}
	r := practice.Follow(check, sessions, kept)
	for i := range r.Cars {
		if car := &r.Cars[i]; car.Stage == practice.Handed && !failed[car.Session] {
			return car.Session, r.Count(practice.Marked), r.Count(practice.Handed), nil
		}
	}
	return "", 0, 0, nil
}

func markOne(ctx context.Context, desk *play.Desk, dir, session string, progress func(float64)) error {
	k, err := desk.Resume(dir, session)
	if err != nil {
		return err
	}
	defer k.Close()
	if err := k.SettleOn(ctx, workers, progress); err != nil {
		return err
	}
	return k.KeepResult(time.Now())
}

// running tells whether it works; there may be none.
func (m *marker) running() bool {
	if m == nil {
		return false
	}
	select {
	case <-m.done:
		return false
	default:
		return true
	}
}

// stop ends it and waits until it has ended.
func (m *marker) stop() {
	if m != nil {
		m.cancel()
		<-m.done
	}
}

// view is how far it is.
func (m *marker) view(words *assets.Words) *play.WaitView {
	w := &play.WaitView{Share: math.Float64frombits(m.share.Load()), Going: m.running(), Text: words.Say("check.marking")}
	if !w.Going {
		w.Text = words.Say("debrief.stopped")
		if m.err != nil {
			w.Error = m.err.Error()
		}
	}
	return w
}
