package evidence

import "evenwear/physics/inspect"

// A Preparation is set-up work that several checks share; done once, it stays.
type Preparation struct {
	ID      string  // "lift_front", "wheel_off@front_left"
	Minutes float64 // [min]
}

// A Price is what a check costs: its own minutes and the preparations it needs.
type Price struct {
	Minutes float64 // [min]
	Needs   []int   // indices into Prices.Preparations
}

// Prices are the costs of the checks of a problem, in its order.
type Prices struct {
	Preparations []Preparation
	Checks       []Price
}

// cost is the minutes of a check with the preparations that are not done yet.
func (p *Prices) cost(c int, done []bool) float64 {
	m := p.Checks[c].Minutes
	for _, n := range p.Checks[c].Needs {
		if !done[n] {
			m += p.Preparations[n].Minutes
		}
	}
	return m
}

// do marks the preparations of a check as done.
func (p *Prices) do(c int, done []bool) {
	for _, n := range p.Checks[c].Needs {
		done[n] = true
	}
}

// both is the minutes of two checks made one after the other.
func (p *Prices) both(a, b int, done []bool) float64 {
	after := append([]bool(nil), done...)
	m := p.cost(a, after)
	p.do(a, after)
	return m + p.cost(b, after)
}

// Minutes is what these checks cost together in any order, preparations that
// they share counted once [min].
func (p *Prices) Minutes(problem *Problem, checks []inspect.Instance) float64 {
	done := make([]bool, len(p.Preparations))
	sum := 0.0
	for _, inst := range checks {
		if c := find(problem.Checks, inst); c >= 0 {
			sum += p.cost(c, done)
			p.do(c, done)
		}
	}
	return sum
}
