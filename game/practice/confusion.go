package practice

import (
	"slices"

	"evenwear/scoring/record"
)

// lately is how many of a cause's last cars count in the table of confusion, so
// that what was mended is forgotten.
const lately = 3

// mixedAt is the mean belief on a wrong cause [1] from which two causes count as
// mixed up: three of twenty counters.
const mixedAt = 0.15

// A Confusion is what a learner says of each cause when another is true.
type Confusion struct {
	Causes []string    // of rows and columns, in their own order
	Mean   [][]float64 // [1] belief on the column's cause when the row's was true, over its last cars
	Cars   []int       // of a row that Mean is over
}

// A Pair is two causes of which one is said when the other is true.
type Pair struct {
	True, Said string
	Belief     float64 // [1] mean
}

// Confused is a learner's table of confusion. Of a car with two faults, belief on
// one of them is none in a wrong cause.
func Confused(history []record.Result) Confusion {
	var c Confusion
	for i := range history {
		c.Causes = append(c.Causes, history[i].Truth...)
		for _, s := range history[i].Said {
			c.Causes = append(c.Causes, s.ID)
		}
	}
	slices.Sort(c.Causes)
	c.Causes = slices.Compact(c.Causes)
	c.Mean, c.Cars = make([][]float64, len(c.Causes)), make([]int, len(c.Causes))
	for i := range c.Mean {
		c.Mean[i] = make([]float64, len(c.Causes))
	}
	order := inTime(history)
	for n := len(order) - 1; n >= 0; n-- { // the last first
		r := &order[n]
		for _, truth := range r.Truth {
			i, _ := slices.BinarySearch(c.Causes, truth)
			if c.Cars[i] == lately {
				continue
			}
			c.Cars[i]++
			for _, s := range r.Said {
				if s.ID == truth || !slices.Contains(r.Truth, s.ID) {
					j, _ := slices.BinarySearch(c.Causes, s.ID)
					c.Mean[i][j] += s.N
				}
			}
		}
	}
	for i := range c.Mean {
		for j := range c.Mean[i] {
			if c.Cars[i] > 0 {
				c.Mean[i][j] /= float64(c.Cars[i])
			}
		}
	}
	return c
}

// Worst is the pair that is mixed up most among causes that are known; of equal
// ones the first. ok tells that any is mixed up.
func (c *Confusion) Worst(known func(cause string) bool) (p Pair, ok bool) {
	p.Belief = mixedAt
	for i, truth := range c.Causes {
		for j, said := range c.Causes {
			if i == j || !known(truth) || !known(said) {
				continue
			}
			if m := c.Mean[i][j]; m > p.Belief || m == p.Belief && !ok {
				p, ok = Pair{truth, said, m}, true
			}
		}
	}
	return p, ok
}

// inTime is results in the order they came in.
func inTime(history []record.Result) []record.Result {
	list := slices.Clone(history)
	slices.SortStableFunc(list, func(a, b record.Result) int { return a.When.Compare(b.When) })
	return list
}
