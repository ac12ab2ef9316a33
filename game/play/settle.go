package play

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"sync/atomic"

	"evenwear/physics/inspect"
	"evenwear/scoring"
	"evenwear/scoring/evidence"
	"evenwear/scoring/record"
)

// An outcome is what the end of a job is: marks, what was known, what becomes
// of the car.
type outcome struct {
	scoring.Debrief
	said   []record.Figure // belief by cause [1], in the table's order
	ideas  []record.Idea
	faults []FaultView
	gentle [2]scoring.Road // as found and as it leaves
}

// A settling is an outcome being worked out in the background.
type settling struct {
	cancel  context.CancelFunc
	share   atomic.Uint64 // bits of a float64 [1]
	done    chan struct{}
	outcome *outcome
	err     error
}

// tableShare is the share of the work that fills the table [1], about.
const tableShare = 0.9

// handOver ends the job. What it comes to is worked out by Settle or Await.
func (s *Session) handOver() (string, no) {
	s.stage = Debriefed
	return s.say("play.handed_over"), no{}
}

// FillTable begins to work out, in the background on this many goroutines, what
// every possible fault would show at every check. Sessions of the same car
// share it. A debrief needs all of it.
func (s *Session) FillTable(workers int) { s.table.fill(workers) }

// Await begins to work the debrief out in the background; views show how far it
// is. It does nothing when it runs, is done, or the job is not over.
func (s *Session) Await() {
	s.collect(false)
	if s.stage != Debriefed || s.settled != nil || s.await != nil && !s.await.failed() {
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	w := &settling{cancel: cancel, done: make(chan struct{})}
	s.await = w
	go func() {
		defer close(w.done)
		w.outcome, w.err = s.settle(ctx, runtime.GOMAXPROCS(0), func(share float64) { w.share.Store(math.Float64bits(share)) })
	}()
}

// failed tells that it ended without an outcome.
func (w *settling) failed() bool {
	select {
	case <-w.done:
		return w.err != nil
	default:
		return false
	}
}

// Cancel stops the working out of the debrief. Await begins it again, where it
// was left.
func (s *Session) Cancel() {
	if s.await != nil {
		s.await.cancel()
		s.collect(true)
		s.await = nil
	}
}

// Settle works the debrief out and returns when it is done.
func (s *Session) Settle(ctx context.Context, progress func(share float64)) error {
	return s.SettleOn(ctx, runtime.GOMAXPROCS(0), progress)
}

// SettleOn is Settle that fills the table on so many goroutines, for work beside
// which somebody plays.
func (s *Session) SettleOn(ctx context.Context, workers int, progress func(share float64)) error {
	if s.stage != Debriefed {
		return errors.New("play: the job is not over")
	}
	if s.settled != nil {
		return nil
	}
	o, err := s.settle(ctx, workers, progress)
	if err != nil {
		return err
	}
	s.settled = o
	return nil
}

// collect takes over what the background has finished.
func (s *Session) collect(wait bool) {
	w := s.await
	if w == nil {
		return
	}
	if wait {
		<-w.done
	}
	select {
	case <-w.done:
		if w.err == nil {
			s.settled, s.await = w.outcome, nil
		}
	default:
	}
}

// settle works the outcome out from what no act changes any more, so it may run
// beside views.
func (s *Session) settle(ctx context.Context, workers int, progress func(float64)) (*outcome, error) {
	if progress == nil {
		progress = func(float64) {}
	}
	if err := s.table.await(ctx, workers, func(p evidence.Progress) {
		progress(tableShare * float64(p.Done+p.Failed) / float64(p.Total))
	}); err != nil {
		return nil, err
	}
	if err := s.table.Failed(); err != nil {
		return nil, fmt.Errorf("a car of the catalogue cannot be computed: %w", err)
	}
	o := &outcome{}
	p, err := s.marked(ctx, o)
	if err != nil {
		return nil, err
	}
	progress(0.93)
	if err := s.weigh(ctx, p, o); err != nil {
		return nil, err
	}
	progress(0.98)
	if o.Marks, err = scoring.MarkPlay(p); err != nil {
		return nil, err
	}
	o.Rows, o.Unsafe = scoring.Beliefs(p, 0.01), p.Unsafe
	o.said = saidByCause(p)
	if s.desk.Explain != nil {
		if o.ideas, err = s.desk.Explain(Said{p.Counters, s.table.Table, s.readings()}); err != nil {
			return nil, err
		}
	}
	prices := evidence.InspectPricesOf(s.table.Problem(), s.arrived())
	if o.Worth, err = scoring.MostWorth(s.table.Table, &prices, s.readings()); err != nil {
		return nil, err
	}
	for i, w := range [2]*inspect.World{s.found, s.repaired} {
		if w == nil {
			w = s.found
		}
		if o.gentle[i], err = gentleStop(w.Model); err != nil {
			return nil, err
		}
	}
	if o.faults, err = s.faults(&o.Found); err != nil {
		return nil, err
	}
	progress(1)
	return o, nil
}

// readings are the learner's own, before the belief was sealed.
func (s *Session) readings() []evidence.Reading {
	var list []evidence.Reading
	for _, n := range s.notes {
		if !n.skipped && !n.struck && !n.again {
			list = append(list, evidence.Reading{Check: n.made, Display: n.written})
		}
	}
	return list
}

// trueRows are the rows of what was put into the car; "nothing wrong" is one.
func (s *Session) trueRows() []string {
	var rows []string
	for _, f := range s.job.Faults {
		rows = append(rows, rowID(f.Cause, f.Place))
	}
	if len(rows) == 0 {
		if c := s.desk.lib.Worn(); c != nil {
			rows = []string{rowID(c, c.Places[0])}
		}
	}
	return rows
}

// marked gathers what is marked, but for the decision.
func (s *Session) marked(ctx context.Context, o *outcome) (*scoring.Play, error) {
	prior := s.table.PriorRows()
	truth := s.trueRows()
	p := &scoring.Play{Spent: s.sealedAt, Release: s.release, Cautions: s.due, Harms: s.harmful}
	for i, b := range prior {
		p.Rows, p.Prior = append(p.Rows, b.ID), append(p.Prior, b.P)
		n := 0
		if r := s.row(b.ID); r != nil {
			n = r.counters
		}
		p.Counters = append(p.Counters, n)
		for _, t := range truth {
			if t == b.ID {
				p.True = append(p.True, i)
			}
		}
	}
	own, err := s.table.Posterior(s.readings())
	if err != nil {
		return nil, err
	}
	p.Began = evidence.Probabilities(own.BeganRows())
	p.Support = evidence.Probabilities(own.Rows())
	show := func(inst inspect.Instance) (int64, error) {
		v, err := s.found.Measure(inst)
		if err != nil {
			return 0, err
		}
		c, _ := inspect.Find(inst.Check)
		return look(s.seed, s.job.ID, inst, c, v, 0), nil
	}
	var all []evidence.Reading
	for _, inst := range s.table.Problem().Checks {
		if inst.Proper() != inst {
			continue
		}
		d, err := show(inst)
		if err != nil {
			return nil, err
		}
		all = append(all, evidence.Reading{Check: inst, Display: d})
	}
	every, err := s.table.Posterior(all)
	if err != nil {
		return nil, err
	}
	p.Every = evidence.Probabilities(every.Rows())
	prices := evidence.InspectPricesOf(s.table.Problem(), s.arrived())
	if o.Best, err = s.table.Inspect(ctx, &prices, s.job.Minutes, show); err != nil {
		return nil, err
	}
	p.Best, p.ModelBits = o.Best.Minutes, o.Best.Final.Bits(truth...)
	if s.sealedAt < o.Best.Minutes {
		short, err := s.table.Inspect(ctx, &prices, s.sealedAt, show)
		if err != nil {
			return nil, err
		}
		p.ModelBits = short.Final.Bits(truth...)
	}
	for _, n := range s.notes {
		if !n.skipped && !n.struck {
			p.Readings = append(p.Readings, scoring.Read{Check: n.inst.String(), Divisions: n.check.Meter.Apart(n.written, n.display)})
		}
	}
	p.OnPaper = s.away()
	p.Proof, err = s.proof(truth)
	return p, err
}

// proof is what was made sure of after the work: pedal, level, leak, the reading
// that first showed the fault, a slow stop.
func (s *Session) proof(truth []string) ([]scoring.Proof, error) {
	again := func(match func(inspect.Instance) bool) bool {
		for _, n := range s.notes {
			if n.again && !n.skipped && !n.struck && match(n.inst) {
				return true
			}
		}
		return false
	}
	var list []scoring.Proof
	for _, id := range alwaysLooked {
		list = append(list, scoring.Proof{ID: "proof." + string(id), Done: again(func(i inspect.Instance) bool { return i.Check == id })})
	}
	// The reading that tells most of the truth by itself showed the fault; one
	// that tells half as much shows it too, and may be quicker to look at again.
	readings := s.readings()
	bits := make([]float64, len(readings))
	best := -1
	for i, r := range readings {
		one, err := s.table.Posterior([]evidence.Reading{r})
		if err != nil {
			return nil, err
		}
		bits[i] = one.Bits(truth...)
		if best < 0 || bits[i] > bits[best]+1e-9 {
			best = i
		}
	}
	showed := scoring.Proof{ID: showedPrefix}
	if best >= 0 && bits[best] > 0 {
		showed.ID += readings[best].Check.Proper().String()
		showed.Done = again(func(inst inspect.Instance) bool {
			for i, r := range readings {
				if r.Check.Proper() == inst && bits[i] >= bits[best]/2 {
					return true
				}
			}
			return false
		})
	}
	return append(list, showed), nil
}
