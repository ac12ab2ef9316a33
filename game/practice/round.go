package practice

import (
	"encoding/json"
	"math/rand/v2"
	"time"

	"gonum.org/v1/gonum/stat"

	"evenwear/game/play"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// RoundCars is how many cars a self-check is of.
const RoundCars = 10

// SelfCheck is why a car of a self-check was drawn.
const SelfCheck = "selfcheck"

// Draw makes a self-check up: fair cars that were never played here, each once.
// hash is the library's. The same arguments give the same cars.
func Draw(hash string, played map[string]bool, now time.Time, luck uint64) (record.Check, error) {
	rng := rand.New(rand.NewPCG(luck, RoundCars))
	c := record.Check{Began: now.UTC().Truncate(time.Second), Library: hash}
	taken := map[string]bool{}
	for range mostSeeds {
		id := scenarios.DrawnID(SeedLeast+rng.Uint64N(Seeds), scenarios.Fair)
		if played[id] || taken[id] {
			continue
		}
		taken[id] = true
		c.Cars = append(c.Cars, record.CheckCar{Job: id, Seed: SeedLeast + rng.Uint64N(Seeds)})
		if len(c.Cars) == RoundCars {
			return c, nil
		}
	}
	return c, ErrNoCar
}

// A Stage is how far a car of a self-check is.
type Stage int

// The stages.
const (
	Waits  Stage = iota // not begun
	Going               // begun, not handed over
	Handed              // handed over, not marked
	Marked
)

// A Round is a self-check with how far each of its cars is.
type Round struct {
	record.Check
	Cars []RoundCar
}

// A RoundCar is one car of it.
type RoundCar struct {
	record.CheckCar
	Stage   Stage
	Session string // name of its record; empty: not begun
	Lost    string // why a session of it cannot be read; it begins anew
	Kept    bool   // the record is still there
	Result  record.Result
}

// Follow works out how far a self-check is from what is kept. A session that
// cannot be read counts as not begun; a result stays though its session is gone.
func Follow(c record.Check, sessions []record.Entry, results []record.Result) *Round {
	r := &Round{Check: c, Cars: make([]RoundCar, len(c.Cars))}
	of := func(p *record.Purpose, job string, seed uint64) *RoundCar {
		if p == nil || p.Check != c.Name || p.Car < 1 || p.Car > len(c.Cars) || c.Cars[p.Car-1] != (record.CheckCar{Job: job, Seed: seed}) {
			return nil
		}
		return &r.Cars[p.Car-1]
	}
	for i := range r.Cars {
		r.Cars[i].CheckCar = c.Cars[i]
	}
	for i := range sessions {
		e := &sessions[i]
		car := of(e.For, e.Job, e.Seed)
		if car == nil {
			continue
		}
		if e.Err != nil {
			car.Lost = e.Err.Error()
			continue
		}
		stage := Going
		var last play.Act
		if json.Unmarshal(e.Last, &last) == nil && last.Do == play.HandOver {
			stage = Handed
		}
		if stage >= car.Stage { // of two the further one
			car.Stage, car.Session, car.Kept = stage, e.Name, true
		}
	}
	for i := range results {
		if car := of(results[i].For, results[i].Job, results[i].Seed); car != nil && car.Stage != Marked {
			car.Kept = car.Kept && car.Session == results[i].Session
			car.Stage, car.Session, car.Result = Marked, results[i].Session, results[i]
		}
	}
	return r
}

// Count is how many cars are at least as far as a stage.
func (r *Round) Count(s Stage) int {
	n := 0
	for i := range r.Cars {
		if r.Cars[i].Stage >= s {
			n++
		}
	}
	return n
}

// Over tells that every car is handed over; Complete that every one is marked.
func (r *Round) Over() bool     { return r.Count(Handed) == len(r.Cars) }
func (r *Round) Complete() bool { return r.Count(Marked) == len(r.Cars) }

// Next is the index of the car to be played next: one that was begun before one
// that was not. It is -1 when all are handed over.
func (r *Round) Next() int {
	next := -1
	for i := range r.Cars {
		switch r.Cars[i].Stage {
		case Going:
			return i
		case Waits:
			if next < 0 {
				next = i
			}
		}
	}
	return next
}

// Marks are the mean of the totals that are marked and their standard deviation.
func (r *Round) Marks() (mean, spread float64) {
	var totals []float64
	for i := range r.Cars {
		if r.Cars[i].Stage == Marked {
			totals = append(totals, r.Cars[i].Result.Total)
		}
	}
	switch len(totals) {
	case 0:
		return 0, 0
	case 1:
		return totals[0], 0
	}
	return stat.MeanStdDev(totals, nil)
}

// Begin is the purpose that car number n, from 1, of a self-check is kept for.
func (r *Round) Begin(n int) *record.Purpose {
	return &record.Purpose{Why: SelfCheck, Check: r.Name, Car: n}
}
