package play

import (
	"sync"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// ears are what the owner of each possible car would notice of it, so that any
// owner's words can be weighed. Impressions are kept: to look is dear, to weigh
// other words is not. They may be used by several goroutines.
type ears struct {
	witness *scenarios.Witness
	used    scenarios.Driven // as far as it is known

	mu   sync.Mutex
	seen []*scenarios.Impression // by hypothesis; nil: not yet looked at
}

func newEars(car *scenarios.Car, known scenarios.Driven, hypotheses int) *ears {
	return &ears{witness: scenarios.NewWitness(&car.Spec), used: scenarios.Vary(known, nil), seen: make([]*scenarios.Impression, hypotheses)}
}

// told weighs what an owner told, under each hypothesis [nat]. The car at its
// centre is needed only where it has not been looked at.
func (e *ears) told(claims []scenarios.Claim) func(h int, centre *inspect.World) (float64, error) {
	return func(h int, centre *inspect.World) (float64, error) {
		e.mu.Lock()
		im := e.seen[h]
		e.mu.Unlock()
		if im == nil {
			var err error
			if im, err = e.witness.Look(centre.Model, e.used.Duty()); err != nil {
				return 0, err
			}
			e.mu.Lock()
			e.seen[h] = im
			e.mu.Unlock()
		}
		return im.LogLikelihood(claims), nil
	}
}
