package evidence

import (
	"fmt"
	"math"
	"slices"
	"testing"
)

// anyToy draws a problem of any shape: faults that most checks do not show, coarse
// and fine meters, words, checks without an answer, preparations that are shared,
// checks that must come after others.
func anyToy(l *luck) (*toy, *Prices) {
	n, back := 2+l.r.IntN(24), l.r.IntN(4)
	priors, sum := make([]float64, n), 0.0
	for h := range priors {
		priors[h] = 0.02 + math.Pow(l.r.Float64(), 4)
		sum += priors[h]
	}
	for h := range priors {
		priors[h] /= sum
	}
	y := newToy(back, priors...)
	rows := 1 + l.r.IntN(n)
	for h := range priors {
		y.p.Hypotheses[h].Row = fmt.Sprint("row", h%rows)
	}
	prices := &Prices{Preparations: make([]Preparation, 3)}
	for i := range prices.Preparations {
		prices.Preparations[i].Minutes = 1 + 9*l.r.Float64()
	}
	var last func(h int, b []float64) float64
	behind := l.r.IntN(3) == 0 // one preparation
	for c := range 4 + l.r.IntN(16) {
		m := gauge(fmt.Sprint("g", c%4), []float64{0.02, 0.25, 2}[l.r.IntN(3)], []float64{0, 0.05, 0.5}[l.r.IntN(3)], []float64{0, 0.1, 0.4}[l.r.IntN(3)], []float64{0, 0.01}[l.r.IntN(2)])
		if l.r.IntN(3) == 0 {
			m = words(2+l.r.IntN(4), 0.1+0.4*l.r.Float64())
			m.Slip = 0.01
		}
		at, slope, bend := make([]float64, n), make([]float64, n), 0.0
		sound, moves := 10*l.r.Float64(), l.r.NormFloat64()*float64(l.r.IntN(2))
		for h := range at {
			at[h], slope[h] = sound, moves
			switch l.r.IntN(8) {
			case 0:
				at[h] += 3 * l.r.NormFloat64()
			case 1:
				slope[h] += l.r.NormFloat64()
			case 2:
				if l.r.IntN(8) == 0 {
					at[h] = math.NaN()
				}
			}
		}
		if l.r.IntN(3) == 0 {
			bend = 0.3
		}
		if c > 0 && l.r.IntN(4) == 0 { // as the check before, for ties
			y.add(y.checks[c-1].Meter, last)
			prices.Checks = append(prices.Checks, prices.Checks[c-1])
			continue
		}
		last = func(h int, b []float64) float64 {
			v := at[h]
			for k := range b {
				v += slope[h] * b[k] / float64(k+1)
			}
			if back > 1 {
				v += bend * b[0] * b[1]
			}
			return v
		}
		y.add(m, last)
		price := Price{Minutes: float64(l.r.IntN(5)) / 2}
		switch p := l.r.IntN(5); {
		case behind:
			price.Needs = []int{0}
		case p < 3:
			price.Needs = []int{p}
		}
		if c > 2 && l.r.IntN(6) == 0 {
			price.After = [][]int{{l.r.IntN(c)}}
		}
		prices.Checks = append(prices.Checks, price)
	}
	return y, prices
}

// TestSearchLeavesNothingOut: on problems of any shape, after any readings and for
// any minutes, the choice is that of a search which works out every check and every
// pair; what a check tells is what the definition says, within what the tables err;
// the bound holds; and within the span of minutes the choice is the same.
func TestSearchLeavesNothingOut(t *testing.T) {
	l := newLuck(31)
	searches, checks, worked, pairs := 0, 0, 0, 0
	worst := 0.0
	for range 250 {
		toy, prices := anyToy(l)
		table := toy.filled(t)
		p, err := table.Posterior(nil)
		if err != nil {
			t.Fatal(err)
		}
		done, made := prices.begin(), make([]bool, len(table.checks))
		for range 6 {
			minutes := []float64{1, 4, 12, 40, 150}[l.r.IntN(5)] * (0.5 + l.r.Float64())
			q := p.search(prices, done, made, minutes)
			got, _ := q.choose()
			for c := range q.known {
				if checks++; q.known[c] {
					worked++
				}
			}
			searches++
			if want := plainNext(p, prices, done, made, minutes); got != want {
				t.Fatalf("search %d chose check %d, of all worked out it is %d; with %g minutes, %d readings", searches, got, want, minutes, len(p.readings))
			}
			if got >= 0 && q.rate > aMinute(q.tells(got), q.cost[got]) {
				pairs++
			}
			from, below := max(q.within.from, 0), min(q.within.below, 200)
			for range 3 {
				other := from + l.r.Float64()*(below-from)
				if again, _, _ := p.next(prices, done, made, other); again != got {
					t.Fatalf("with %g minutes the choice is %d, with %g it is %d; said to be the same from %g to %g", minutes, got, other, again, from, below)
				}
			}
			bounds := make([]float64, len(table.checks))
			for c := range table.checks {
				v, ok := q.aim(c)
				if !ok {
					t.Fatalf("check %d has not been computed", c)
				}
				bound, plain := v.most(), plainBits(q.scout, c)
				bounds[c] = bound
				q.forecast(c)
				told := q.bits()
				worst = max(worst, math.Abs(told-plain))
				if bound < max(told, plain) {
					t.Fatalf("check %d tells %.9f bits, by the definition %.9f; bound %.9f", c, told, plain, bound)
				}
			}
			for a := range table.checks {
				if b := l.r.IntN(len(table.checks)); b != a && q.pair(a, b) > min(bounds[a]+bounds[b], q.unsure+slack) {
					t.Fatalf("checks %d and %d tell %.9f bits together; bounds %.9f and %.9f, of %.9f", a, b, q.pair(a, b), bounds[a], bounds[b], q.unsure)
				}
			}
			next := l.r.IntN(len(table.checks)) // some are repeated
			m := &table.checks[next].Meter
			if err := p.Add(Reading{toy.p.Checks[next], m.First() + l.r.Int64N(int64(m.Cells()))}); err != nil {
				t.Fatal(err)
			}
			prices.do(next, done)
			made[next] = true
		}
	}
	t.Logf("%d searches, %d of them won by a pair, worked out %d of %d checks; what one tells is off by at most %.1e bits", searches, pairs, worked, checks, worst)
	if pairs < searches/50 {
		t.Errorf("%d of %d choices are of a pair: the test shows little", pairs, searches)
	}
	if worst > slack {
		t.Errorf("what a check tells is off by %g bits; wanted within %g", worst, slack)
	}
	if worked > checks/2 {
		t.Errorf("%d of %d checks were worked out: the bound saves little", worked, checks)
	}
}

// TestGroups: hypotheses that share a state have the likelihood, to the last bit,
// that each has alone.
func TestGroups(t *testing.T) {
	l := newLuck(32)
	fewer := false
	for range 60 {
		toy, _ := anyToy(l)
		table := toy.filled(t)
		var readings []Reading
		for range 5 {
			c := l.r.IntN(len(table.checks))
			m := &table.checks[c].Meter
			readings = append(readings, Reading{toy.p.Checks[c], m.First() + l.r.Int64N(int64(m.Cells()))})
		}
		p, err := table.Posterior(readings)
		if err != nil {
			t.Fatal(err)
		}
		fewer = fewer || len(p.state) < len(p.rows)
		for h := range p.rows {
			part, err := table.Part([]int{h}, nil)
			if err != nil {
				t.Fatal(err)
			}
			alone, err := part.Posterior(readings)
			if err != nil {
				t.Fatal(err)
			}
			if a, b := p.LogLikelihood(h), alone.LogLikelihood(0); a != b {
				t.Fatalf("hypothesis %d has ln P %v among others, %v alone", h, a, b)
			}
		}
	}
	if !fewer {
		t.Error("no two hypotheses shared a state: the test shows nothing")
	}
}

// TestSearchOnRealCar: the same on the physics, along the trails of three causes.
func TestSearchOnRealCar(t *testing.T) {
	table := realTable(t)
	p := table.problem
	prices := InspectPrices(p)
	for _, truth := range []int{1, 3, 5} {
		post, err := table.Posterior(nil)
		if err != nil {
			t.Fatal(err)
		}
		l := newLuck(uint64(truth))
		done, made := prices.begin(), make([]bool, len(table.checks))
		for left := 90.0; ; {
			c, _, _ := post.next(&prices, done, made, left)
			if want := plainNext(post, &prices, done, made, left); c != want {
				t.Fatalf("with %g minutes after %v: check %d, of all worked out %d", left, post.readings, c, want)
			}
			if c < 0 || len(post.readings) == 8 {
				break
			}
			left -= prices.cost(c, done)
			prices.do(c, done)
			made[c] = true
			f := post.rows[truth].fits[c]
			if err := post.Add(Reading{p.Checks[c], l.show(&table.checks[c].Meter, f.Mean)}); err != nil {
				t.Fatal(err)
			}
		}
	}
	if !slices.ContainsFunc(prices.Checks, func(p Price) bool { return len(p.After) > 0 }) {
		t.Error("no check must come after another: the test shows little")
	}
}
