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

// Draw makes a self-check up: fair cars that were never played here, each once,
// which together have the library's [Profile], in any order. hash is the library's.
// The same arguments give the same cars.
func Draw(lib *scenarios.Library, hash string, played map[string]bool, now time.Time, luck uint64) (record.Check, error) {
	rng := rand.New(rand.NewPCG(luck, RoundCars))
	c := record.Check{Began: now.UTC().Truncate(time.Second), Library: hash}
	wanted := plan(lib, rng)
	rng.Shuffle(len(wanted), func(a, b int) { wanted[a], wanted[b] = wanted[b], wanted[a] })
	c.Cars = make([]record.CheckCar, len(wanted))
	taken := map[string]bool{}
	for found, seeds := 0, 0; found < len(wanted); {
		if seeds++; seeds > mostSeeds*RoundCars {
			return c, ErrNoCar
		}
		seed := SeedLeast + rng.Uint64N(Seeds)
		id := scenarios.DrawnID(seed, scenarios.Fair)
		if played[id] || taken[id] {
			continue
		}
		taken[id] = true
		if at := seat(lib, lib.Sketch(seed, scenarios.Wish{}), wanted, c.Cars); at < 0 {
			continue
		}
		job, err := lib.Draw(seed, scenarios.Wish{})
		if err != nil {
			continue
		}
		if at := seat(lib, job, wanted, c.Cars); at >= 0 { // another, when the first car was thrown away
			c.Cars[at] = record.CheckCar{Job: id, Seed: SeedLeast + rng.Uint64N(Seeds)}
			found++
		}
	}
	return c, nil
}

// seat is the first place of a self-check that is free and wants a car of this
// kind; −1: none.
func seat(lib *scenarios.Library, j *scenarios.Job, wanted []kind, cars []record.CheckCar) int {
	for i := range wanted {
		if j != nil && cars[i].Job == "" && wanted[i].is(lib, j) {
			return i
		}
	}
	return -1
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

// Marks are the mean of the totals that are marked, their standard deviation, and
// the standard error of the mean, which of one car is not known and given as 0.
func (r *Round) Marks() (mean, spread, off float64) {
	var totals []float64
	for i := range r.Cars {
		if r.Cars[i].Stage == Marked {
			totals = append(totals, r.Cars[i].Result.Total)
		}
	}
	switch len(totals) {
	case 0:
		return 0, 0, 0
	case 1:
		return totals[0], 0, 0
	}
	mean, spread = stat.MeanStdDev(totals, nil)
	return mean, spread, stat.StdErr(spread, float64(len(totals)))
}

// Model is what the model inspector needed for all cars together; ok tells that it
// is kept of every one.
func (r *Round) Model() (sum record.Model, ok bool) {
	for i := range r.Cars {
		m := r.Cars[i].Result.Model
		if m == nil {
			return sum, false
		}
		sum.Minutes += m.Minutes
		sum.Bits += m.Bits
	}
	return sum, true
}

// Begin is the purpose that car number n, from 1, of a self-check is kept for.
func (r *Round) Begin(n int) *record.Purpose {
	return &record.Purpose{Why: SelfCheck, Check: r.Name, Car: n}
}
