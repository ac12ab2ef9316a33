package evidence

import (
	"math"
	"sync"
)

// A Memory keeps what the model inspector chose after readings, so that many who
// read the same from one table at the same prices think it through once. It may be
// used by several goroutines; what it gives does not hang on who came first.
type Memory struct {
	t      *Table
	prices *Prices
	mu     sync.Mutex
	start  node
}

// A node is where somebody stands after some readings in their order.
type node struct {
	chosen []choice
	then   map[Reading]*node // only looked up
}

// A choice is the check chosen while the minutes left [min] are within a span;
// −1: none.
type choice struct {
	within span
	check  int
	bits   float64 // [bit]
}

// Remember begins a memory of a table, which must be filled, and prices.
func (t *Table) Remember(prices *Prices) *Memory { return &Memory{t: t, prices: prices} }

// Posterior is the posterior of no reading, whose next checks are remembered.
func (m *Memory) Posterior() (*Posterior, error) {
	p, err := m.t.Posterior(nil)
	if err == nil {
		p.memory, p.at = m, &m.start
	}
	return p, err
}

// recall is [Posterior.next], asked of memory first.
func (p *Posterior) recall(prices *Prices, done, made []bool, minutes float64) (best int, bits float64) {
	m := p.memory
	if m == nil || m.prices != prices {
		best, bits, _ = p.next(prices, done, made, minutes)
		return best, bits
	}
	m.mu.Lock()
	for i := range p.at.chosen {
		if c := p.at.chosen[i]; c.within.holds(minutes) {
			m.mu.Unlock()
			return c.check, c.bits
		}
	}
	m.mu.Unlock()
	best, bits, within := p.next(prices, done, made, minutes)
	m.mu.Lock()
	p.at.chosen = append(p.at.chosen, choice{within, best, bits})
	m.mu.Unlock()
	return best, bits
}

// follow turns to what is remembered after one more reading.
func (p *Posterior) follow(r Reading) {
	if p.memory == nil {
		return
	}
	p.memory.mu.Lock()
	defer p.memory.mu.Unlock()
	then := p.at.then[r]
	if then == nil {
		then = &node{}
		if p.at.then == nil {
			p.at.then = map[Reading]*node{}
		}
		p.at.then[r] = then
	}
	p.at = then
}

// A span is the minutes left [min] for which a choice holds: from the first, below
// the second.
type span struct{ from, below float64 }

// anyMinutes is the span of a choice that asked for no price yet.
func anyMinutes() span { return span{math.Inf(-1), math.Inf(1)} }

func (s *span) holds(minutes float64) bool { return s.from <= minutes && minutes < s.below }

// afford tells that minutes left are as many as cost, and narrows the span to those
// of which that would be told alike.
func (s *span) afford(cost, minutes float64) bool {
	cost -= hair
	if cost <= minutes {
		s.from = max(s.from, cost)
		return true
	}
	s.below = min(s.below, cost)
	return false
}

// hair [min] is more than sums of minutes round off by: what is left when some are
// taken away is enough for what costs just that.
const hair = 1e-6
