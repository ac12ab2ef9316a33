package inspect

import (
	"sync"

	"evenwear/physics"
)

// A Memo makes many worlds of one car and lets those that are braked alike share
// their experiments: an empty washer bottle or a cracked disc changes nothing
// that a foot feels. It may be used by several goroutines. What a check answers
// does not hang on what has been made before: the shared experiments read the
// same numbers and so give the same bits.
type Memo struct {
	spec *physics.Spec

	mu         sync.Mutex
	young, old map[physics.Condition]*stood // by what brakes; see remember
}

// A stood is a car at rest and what has been tried with it.
type stood struct {
	once  sync.Once
	rest  physics.State
	err   error
	cache worldCache
}

// generation is how many cars a Memo keeps, twice at most: some 15 kB each.
const generation = 512

// NewMemo prepares a memo without any worlds.
func NewMemo(spec *physics.Spec) *Memo {
	return &Memo{spec: spec, young: map[physics.Condition]*stood{}}
}

// NewWorld is [NewWorld] of the memo's car, to the bit.
func (m *Memo) NewWorld(cond physics.Condition) (*World, error) {
	model, err := physics.New(m.spec, cond)
	if err != nil {
		return nil, err
	}
	s := m.remember(braked(cond))
	s.once.Do(func() { s.rest, s.err = model.Rest() })
	if s.err != nil {
		return nil, s.err
	}
	return &World{Model: model, Rest: s.rest, cache: &s.cache}, nil
}

// remember returns the entry of a car, new if need be. When a generation is full
// it becomes the old one, and what of the one before was not asked for since is
// forgotten.
func (m *Memo) remember(key physics.Condition) *stood {
	m.mu.Lock()
	defer m.mu.Unlock()
	s := m.young[key]
	if s != nil {
		return s
	}
	if s = m.old[key]; s == nil {
		s = &stood{}
	}
	if len(m.young) >= generation {
		m.old, m.young = m.young, map[physics.Condition]*stood{}
	}
	m.young[key] = s
	return s
}

// braked is what of a condition the shared experiments read: all but what only
// an eye finds, what comes with the months, and the vessels beside the brake's.
// What is not left out here is told apart, so that nothing goes wrong with a
// number that is new.
func braked(c physics.Condition) physics.Condition {
	c.Vessels = physics.VesselsCondition{}
	c.WaterUptake, c.MineralOil, c.RubberSwollen = 0, 0, 0
	c.LampLost, c.FloatHigh = 0, 0
	for i := range c.Wheels {
		w := &c.Wheels[i]
		w.PinSwelling, w.PinSoaked, w.PinRusting = [2]float64{}, [2]float64{}, [2]float64{}
		w.SealSwelling, w.SealRusting = 0, 0
		w.RimRust, w.DiscCrack = 0, 0
	}
	return c
}
