package play

import (
	"sync"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring/evidence"
)

// ears are what the owner of each possible car would notice of it, so that any
// owner's words can be weighed. Impressions are kept: to look is dear, to weigh
// other words is not. They may be used by several goroutines.
type ears struct {
	witness *scenarios.Witness
	used    scenarios.Driven // as far as it is known

	first    []int  // by hypothesis: the first of its kin, which is always heard before it
	mirrored []bool // by hypothesis: left and right are changed from there

	mu   sync.Mutex
	seen []*scenarios.Impression // by hypothesis; nil: not yet looked at
}

func newEars(car *scenarios.Car, known scenarios.Driven, p *evidence.Problem) *ears {
	n := len(p.Hypotheses)
	e := &ears{witness: scenarios.NewWitness(&car.Spec), used: scenarios.Vary(known, nil),
		first: make([]int, n), mirrored: make([]bool, n), seen: make([]*scenarios.Impression, n)}
	kin := map[string]int{} // only looked up
	for h := range p.Hypotheses {
		name := p.Hypotheses[h].Kin
		if _, has := kin[name]; !has {
			kin[name] = h
		}
		e.first[h] = kin[name]
		at, _ := p.Mirror(h, kin[name], inspect.Instance{Check: "spin", PerWheel: true})
		e.mirrored[h] = at.Wheel != 0
	}
	return e
}

// told weighs what an owner told, under each hypothesis [nat]. The car at its
// centre is needed only where it has not been looked at.
func (e *ears) told(claims []scenarios.Claim) func(h int, centre *inspect.World) (float64, error) {
	return func(h int, centre *inspect.World) (float64, error) {
		e.mu.Lock()
		im, like := e.seen[h], e.seen[e.first[h]]
		e.mu.Unlock()
		if im == nil {
			var err error
			if like == nil {
				im, err = e.witness.Look(centre.Model, e.used.Duty())
			} else {
				im, err = e.witness.LookLike(centre.Model, like, e.mirrored[h])
			}
			if err != nil {
				return 0, err
			}
			e.mu.Lock()
			e.seen[h] = im
			e.mu.Unlock()
		}
		return im.LogLikelihood(claims), nil
	}
}
