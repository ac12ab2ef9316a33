package learner

import (
	"math"
	"math/rand/v2"
	"slices"

	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// The belief [1] in a row at which looking on is given up: the model inspector's, and
// that of those who have minutes left. Of people who stopped at the former one in
// twenty would be sure of what is not so, which is luck and no lack of skill.
const (
	surely = 0.95
	beyond = 0.99
)

// odd is how many times as likely a row must have become by one reading for a
// jumper to jump.
const odd = 5

// Next is the check a learner makes next, given the posterior of what was read
// so far on their own table and the minutes [min] the job allows; false when they
// have seen enough. prices are those of the table's problem.
func (l *Learner) Next(p *evidence.Posterior, t *evidence.Table, prices *evidence.Prices, minutes float64, luck *rand.Rand) (inspect.Instance, bool) {
	c := counter{t.Problem(), prices, p.Readings()}
	left := float64((1-l.Stop)*minutes) - c.spent()
	switch l.Kind {
	case Clicks:
		return c.first(left, nil)
	case Checklist:
		return c.first(left, t)
	case Jumper:
		if _, jumped := jump(p, t); jumped {
			return inspect.Instance{}, false
		}
		return next(p, prices, left)
	case Reasoner, Inspector:
		if inst, ok := c.own(p, left, l.Holds); ok {
			return inst, true
		}
		enough := beyond
		if l.Kind == Inspector {
			enough = surely
		}
		if p.Top().P > enough {
			return inspect.Instance{}, false
		}
		if l.Kind == Reasoner && luck.Float64() >= l.Skill {
			return c.first(left, t)
		}
		return next(p, prices, left)
	}
	return inspect.Instance{}, false
}

func next(p *evidence.Posterior, prices *evidence.Prices, left float64) (inspect.Instance, bool) {
	inst, _, ok := p.Next(prices, left)
	return inst, ok
}

// Write is what a learner writes down of what the meter shows.
func (l *Learner) Write(m *inspect.Meter, shown int64, luck *rand.Rand) int64 {
	if l.Kind == Inspector || !l.slips(misread, luck) {
		return shown
	}
	step := int64(1)
	if len(m.Words) == 0 {
		step = max(1, int64(math.Floor(m.Division/m.Resolution+0.5)))
	}
	if luck.IntN(2) == 0 {
		step = -step
	}
	return min(max(shown+step, m.First()), m.First()+int64(m.Cells())-1)
}

// A counter reckons what is left to be looked at and what it costs.
type counter struct {
	problem  *evidence.Problem
	prices   *evidence.Prices
	readings []evidence.Reading
}

func (c *counter) made() []inspect.Instance {
	all := make([]inspect.Instance, len(c.readings), len(c.readings)+1)
	for i, r := range c.readings {
		all[i] = r.Check
	}
	return all
}

func (c *counter) spent() float64 { return c.prices.Minutes(c.problem, c.made()) }

// fit lists the checks that were not made and fit into the minutes left [min], with
// what each costs.
func (c *counter) fit(left float64) (checks []int, cost []float64) {
	made := c.made()
	was := c.prices.Minutes(c.problem, made)
	for i, inst := range c.problem.Checks {
		if c.has(i) {
			continue
		}
		if m := c.prices.Minutes(c.problem, append(made, inst)) - was; m <= left {
			checks, cost = append(checks, i), append(cost, m)
		}
	}
	return checks, cost
}

// open is what fits and for which all that must come before has been done.
func (c *counter) open(left float64) (checks []int, cost []float64) {
	all, costs := c.fit(left)
	for k, i := range all {
		if c.ready(i) {
			checks, cost = append(checks, i), append(cost, costs[k])
		}
	}
	return checks, cost
}

func (c *counter) has(check int) bool {
	for _, r := range c.readings {
		if r.Check == c.problem.Checks[check] {
			return true
		}
	}
	return false
}

// ready tells that of each group that must come before a check one was made.
func (c *counter) ready(check int) bool {
	for _, group := range c.prices.Checks[check].After {
		if !c.any(group) {
			return false
		}
	}
	return true
}

// any tells that one of these checks was made.
func (c *counter) any(group []int) bool {
	for _, g := range group {
		if c.has(g) {
			return true
		}
	}
	return false
}

// ownLooks is how many checks somebody makes first of those that their idea is
// about; assumed.
const ownLooks = 3

// own is a check that somebody's idea is about, the one that tells them most a minute
// of those, or what must be made before it.
func (c *counter) own(p *evidence.Posterior, left float64, holds string) (inspect.Instance, bool) {
	idea, ok := Misconceived(holds)
	if !ok {
		return inspect.Instance{}, false
	}
	looks := 0
	for _, r := range slices.Concat(p.Given(), c.readings) {
		if idea.About(r.Check.Check) {
			looks++
		}
	}
	if looks >= ownLooks {
		return inspect.Instance{}, false
	}
	checks, costs := c.fit(left)
	var about []int
	var cost []float64
	for k, i := range checks {
		if idea.About(c.problem.Checks[i].Check) {
			about, cost = append(about, i), append(cost, costs[k])
		}
	}
	if len(about) == 0 {
		return inspect.Instance{}, false
	}
	told := make([]float64, len(about))
	for k, w := range p.Worths(about) {
		told[k] = w.Bits
	}
	i := about[ByRate(told, cost)[0]]
	for _, group := range c.prices.Checks[i].After {
		if c.any(group) {
			continue
		}
		for _, g := range group {
			if find(checks, g) >= 0 {
				return c.problem.Checks[g], true
			}
		}
		return inspect.Instance{}, false
	}
	return c.problem.Checks[i], true
}

// first is the first check of the list; with a table, the one that tells most a
// minute by itself, whatever was read.
func (c *counter) first(left float64, t *evidence.Table) (inspect.Instance, bool) {
	checks, cost := c.open(left)
	if len(checks) == 0 {
		return inspect.Instance{}, false
	}
	if t == nil {
		return c.problem.Checks[checks[0]], true
	}
	bits, err := t.AtFirst()
	if err != nil {
		return inspect.Instance{}, false
	}
	told := make([]float64, len(checks))
	for i, check := range checks {
		told[i] = bits[check].Bits
	}
	best := ByRate(told, cost)[0]
	return c.problem.Checks[checks[best]], told[best] > 0
}

// ByRate orders things by falling worth for their cost, equals as they stand:
// for parts to be tried one after the other until the fault is found, with worth
// the chance of each, the order of least expected cost. Kadane & Simon; Heckerman,
// Breese & Rommelse, CACM 38(3) (1995) 49.
func ByRate(worth, cost []float64) []int {
	order := make([]int, len(worth))
	for i := range order {
		at := i
		for at > 0 && worth[i]*max(cost[order[at-1]], leastCost) > worth[order[at-1]]*max(cost[i], leastCost) {
			order[at] = order[at-1]
			at--
		}
		order[at] = i
	}
	return order
}

// leastCost [min] keeps what costs nothing from an infinite rate.
const leastCost = 0.1
