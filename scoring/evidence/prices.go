package evidence

import (
	"fmt"

	"evenwear/physics/inspect"
)

// A Preparation is set-up work that several checks share: done once, it stands
// until something undoes it.
type Preparation struct {
	ID      string  // "lift_front", "wheel_off@front_left"
	Minutes float64 // [min] to do it, with taking it back where no car is handed over with it
	Back    float64 // [min] to take back, where a check must not find it standing, what may be left standing
	Undoes  []int   // preparations that do not stand after it
}

// A Price is what a check costs: its own minutes and the preparations it needs,
// in the order in which they are done.
type Price struct {
	Minutes float64 // [min]
	Needs   []int   // indices into Prices.Preparations
	Clears  []int   // preparations that must not stand
	After   [][]int // checks, one of each group of which must have been made before
	Undoes  []int   // preparations that do not stand after it
}

// Prices are the costs of the checks of a problem, in its order.
type Prices struct {
	Preparations []Preparation
	Standing     []bool // preparations that stand at the beginning; nil means none
	Checks       []Price
}

// verify refuses prices that do not belong to n checks.
func (p *Prices) verify(n int) error {
	if len(p.Checks) != n {
		return fmt.Errorf("evidence: %d prices for %d checks", len(p.Checks), n)
	}
	for c := range p.Checks {
		for _, list := range [][]int{p.Checks[c].Needs, p.Checks[c].Clears, p.Checks[c].Undoes} {
			for _, i := range list {
				if i < 0 || i >= len(p.Preparations) {
					return fmt.Errorf("evidence: price %d names preparation %d of %d", c, i, len(p.Preparations))
				}
			}
		}
		if !(p.Checks[c].Minutes >= 0) {
			return fmt.Errorf("evidence: check %d costs %g minutes", c, p.Checks[c].Minutes)
		}
	}
	return nil
}

// begin is what stands before anything has been done.
func (p *Prices) begin() []bool {
	done := make([]bool, len(p.Preparations))
	copy(done, p.Standing)
	return done
}

// cost is the minutes of a check with what must still be done or taken back.
func (p *Prices) cost(c int, done []bool) float64 {
	m := p.Checks[c].Minutes
	for _, n := range p.Checks[c].Needs {
		if !done[n] {
			m += p.Preparations[n].Minutes
		}
	}
	for _, n := range p.Checks[c].Clears {
		if done[n] {
			m += p.Preparations[n].Back
		}
	}
	return m
}

// do marks what stands after a check.
func (p *Prices) do(c int, done []bool) {
	for _, n := range p.Checks[c].Clears {
		done[n] = false
	}
	for _, n := range p.Checks[c].Needs {
		if !done[n] {
			for _, u := range p.Preparations[n].Undoes {
				done[u] = false
			}
			done[n] = true
		}
	}
	for _, n := range p.Checks[c].Undoes {
		done[n] = false
	}
}

// both is the minutes of two checks made one after the other.
func (p *Prices) both(a, b int, done []bool) float64 { return p.together(done, []int{a, b}) }

// together is the minutes of these checks one after the other.
func (p *Prices) together(done []bool, these []int) (m float64) {
	after := append([]bool(nil), done...)
	for _, c := range these {
		m += p.cost(c, after)
		p.do(c, after)
	}
	return m
}

// cheapest is the least cost of these checks [min].
func (p *Prices) cheapest(done []bool, these []int) float64 {
	least := p.cost(these[0], done)
	for _, c := range these[1:] {
		least = min(least, p.cost(c, done))
	}
	return least
}

// tight is below how many minutes the end is planned for, when these checks tell
// most, most first: few of the cheapest fit, or no more than the first two.
func (p *Prices) tight(done []bool, these []int) float64 {
	least := p.cheapest(done, these)
	if len(these) == 1 {
		return few * least
	}
	a, b := these[0], these[1]
	return max(few*least, least+min(p.both(a, b, done), p.both(b, a, done)))
}

// missing is a check that must be made before check c may be: the cheapest of
// the first group of which none has been made, or −1.
func (p *Prices) missing(c int, done, made []bool) int {
	for _, group := range p.Checks[c].After {
		best := -1
		for _, i := range group {
			if made[i] {
				best = -1
				break
			}
			if best < 0 || p.cost(i, done) < p.cost(best, done) {
				best = i
			}
		}
		if best >= 0 {
			return best
		}
	}
	return -1
}

// with is the minutes of check c with all that must be made before it, and the first
// of that.
func (p *Prices) with(c int, done, made []bool) (first int, minutes float64) {
	done, made = append([]bool(nil), done...), append([]bool(nil), made...)
	first = -1
	for {
		next := p.missing(c, done, made)
		if next < 0 {
			return first, minutes + p.cost(c, done)
		}
		if first < 0 {
			first = next
		}
		minutes += p.cost(next, done)
		p.do(next, done)
		made[next] = true
	}
}

// Minutes is what these checks cost in this order, preparations that they share
// counted once [min]. Checks that are not the problem's cost nothing.
func (p *Prices) Minutes(problem *Problem, checks []inspect.Instance) float64 {
	done := p.begin()
	sum := 0.0
	for _, inst := range checks {
		if c := find(problem.Checks, inst); c >= 0 {
			sum += p.cost(c, done)
			p.do(c, done)
		}
	}
	return sum
}
