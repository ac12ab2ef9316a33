package play

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"

	"evenwear/physics"
	"evenwear/scoring"
)

// outlooks are what becomes of one job's car after sets of remedies. Sets that
// leave the same car share one outlook. It may be used by several goroutines.
type outlooks struct {
	s     *Session
	mu    sync.Mutex
	known map[physics.Condition]*outlook
}

// An outlook is worked out at most once.
type outlook struct {
	once sync.Once
	look scoring.Outlook
	err  error
}

func (s *Session) outlooks() *outlooks {
	return &outlooks{s: s, known: map[physics.Condition]*outlook{}}
}

// of is what becomes of the car after these remedies.
func (o *outlooks) of(chosen []string) (scoring.Outlook, error) {
	cond, err := o.s.after(chosen)
	if err != nil {
		return scoring.Outlook{}, err
	}
	o.mu.Lock()
	l := o.known[cond]
	if l == nil {
		l = &outlook{}
		o.known[cond] = l
	}
	o.mu.Unlock()
	l.once.Do(func() { l.look, l.err = scoring.Look(&o.s.job.Car.Spec, cond, o.s.job.Driven.Duty()) })
	return l.look, l.err
}

// prepare works the outlooks of many sets out on every core. What cannot be
// done on this car is told when it is asked for.
func (o *outlooks) prepare(ctx context.Context, sets [][]string) error {
	var next atomic.Int64
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(sets) || ctx.Err() != nil {
					return
				}
				o.of(sets[i])
			}
		})
	}
	wait.Wait()
	return ctx.Err()
}
