package play

import (
	"cmp"
	"context"
	"math"
	"runtime"
	"slices"
	"sync"

	"evenwear/scoring"
)

// A considered is a set of remedies as the best is looked for: what it costs is
// known at once, what becomes of the car only after it has been driven on.
type considered struct {
	set   []string
	again float64 // [min worth] of the work it leaves for another visit
	least float64 // it cannot lose less
	look  *scoring.Outlook
}

// consider works the outlooks of sets out, cheapest first and on every core, until
// none that is left can lose less than the best found. What is passed over could
// never be chosen, so the choice does not hang on who was faster. A set that cannot
// be done on this car has no outlook, as one passed over. Those not done leave work.
func (s *Session) consider(ctx context.Context, all *outlooks, sets [][]string, done []bool, work float64, sound bool) ([]considered, error) {
	most := math.Inf(1) // lost by the best found
	list := make([]considered, len(sets))
	order := make([]*considered, len(sets))
	for i, set := range sets {
		c := &list[i]
		c.set, order[i] = set, c
		if !done[i] {
			c.again = work
		}
		perfect := scoring.Choice{Release: scoring.ReleaseUse, Lasts: math.Inf(1), Again: c.again}
		perfect.Minutes, perfect.Parts, perfect.Refers = s.price(set)
		c.least = perfect.Loss() // whatever else a choice may lose is not below zero
	}
	slices.SortStableFunc(order, func(a, b *considered) int { return cmp.Compare(a.least, b.least) })
	var mu sync.Mutex
	var wait sync.WaitGroup
	take := func() *considered {
		mu.Lock()
		defer mu.Unlock()
		if len(order) == 0 || order[0].least > most || ctx.Err() != nil {
			return nil
		}
		c := order[0]
		order = order[1:]
		return c
	}
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for c := take(); c != nil; c = take() {
				look, err := all.of(c.set)
				if err != nil {
					continue
				}
				c.look = &look
				mu.Lock()
				for _, choice := range s.choices(c, sound) {
					most = min(most, choice.Loss())
				}
				mu.Unlock()
			}
		})
	}
	wait.Wait()
	return list, ctx.Err()
}

// choices are a considered set with every release.
func (s *Session) choices(c *considered, sound bool) []scoring.Choice {
	var list []scoring.Choice
	for _, r := range releases {
		choice := s.choice(c.set, r, c.look, sound, true)
		choice.Again = c.again
		list = append(list, choice)
	}
	return list
}
