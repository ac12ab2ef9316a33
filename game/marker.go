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
)

// A marker works out debriefs one after the other and keeps what they come to.
type marker struct {
	cancel context.CancelFunc
	share  atomic.Uint64 // bits of a float64 [1]
	done   chan struct{}
	err    error // read it when done
}

// mark begins with these cars.
func mark(lib *scenarios.Library, words *assets.Words, dir string, cars []practice.RoundCar) *marker {
	ctx, cancel := context.WithCancel(context.Background())
	m := &marker{cancel: cancel, done: make(chan struct{})}
	go func() {
		defer close(m.done)
		for i := range cars {
			// A desk keeps the tables of its cars, so that each car has its own.
			err := markOne(ctx, play.NewDesk(lib, words), dir, cars[i].Session, func(share float64) {
				m.share.Store(math.Float64bits((float64(i) + share) / float64(len(cars))))
			})
			if ctx.Err() != nil {
				return
			}
			m.err = errors.Join(m.err, err) // the others are worked out all the same
		}
	}()
	return m
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
