package evidence

import (
	"fmt"
	"math"
	"reflect"
	"testing"
)

// TestSharedPreparation: two checks behind one wheel beat a single one that is
// better alone, because the wheel comes off once.
func TestSharedPreparation(t *testing.T) {
	toy := newToy(0, 0.25, 0.25, 0.25, 0.25)
	low := toy.add(words(2, 1e-3), func(h int, _ []float64) float64 { return float64(h % 2) })
	high := toy.add(words(2, 1e-3), func(h int, _ []float64) float64 { return float64(h / 2) })
	toy.add(words(2, 1e-3), func(h int, _ []float64) float64 { return float64(h % 2) })
	prices := &Prices{
		Preparations: []Preparation{{ID: "wheel_off", Minutes: 6}},
		Checks:       []Price{{Minutes: 1, Needs: []int{0}}, {Minutes: 1, Needs: []int{0}}, {Minutes: 6}},
	}
	trail, err := toy.filled(t).Inspect(t.Context(), prices, 60, toy.reader(2))
	if err != nil {
		t.Fatal(err)
	}
	if len(trail.Looks) != 2 || trail.Looks[0].Reading.Check != low || trail.Looks[1].Reading.Check != high || trail.Minutes != 8 {
		t.Errorf("trail %+v in %g minutes, want the two checks behind the wheel in 8", trail.Looks, trail.Minutes)
	}
	if trail.Final.Top() != (Belief{"h2", trail.Final.Row("h2")}) || trail.Final.Row("h2") < 0.999 {
		t.Errorf("top %+v", trail.Final.Top())
	}
}

// TestTrap: two checks of which neither tells anything alone and both together
// everything (exclusive or); one look ahead is worth nothing.
func TestTrap(t *testing.T) {
	toy := newToy(0, 0.25, 0.25, 0.25, 0.25)
	for h := range toy.p.Hypotheses {
		toy.p.Hypotheses[h].Row = fmt.Sprint("row", (h%2)^(h/2))
	}
	toy.add(words(2, 1e-3), func(h int, _ []float64) float64 { return float64(h % 2) })
	toy.add(words(2, 1e-3), func(h int, _ []float64) float64 { return float64(h / 2) })
	prices := &Prices{Checks: []Price{{Minutes: 1}, {Minutes: 1}}}
	for truth := range 4 {
		trail, err := toy.filled(t).Inspect(t.Context(), prices, 5, toy.reader(truth))
		if err != nil {
			t.Fatal(err)
		}
		if len(trail.Looks) != 2 || trail.Final.Row(fmt.Sprint("row", (truth%2)^(truth/2))) < 0.99 {
			t.Errorf("truth %d: %d looks, top %+v", truth, len(trail.Looks), trail.Final.Top())
		}
	}
}

// TestStops: within the minutes, and a road check only after those it needs.
func TestStops(t *testing.T) {
	toy := newToy(0, 0.5, 0.5)
	toy.add(words(2, 1), func(h int, _ []float64) float64 { return 0.5 + 0.01*float64(h) })
	road := toy.add(words(2, 0.1), func(h int, _ []float64) float64 { return float64(h) })
	prices := &Prices{Checks: []Price{{Minutes: 2}, {Minutes: 3, After: [][]int{{0}}}}}
	table := toy.filled(t)
	trail, err := table.Inspect(t.Context(), prices, 5, toy.reader(1))
	if err != nil {
		t.Fatal(err)
	}
	if len(trail.Looks) != 2 || trail.Looks[1].Reading.Check != road || trail.Minutes != 5 {
		t.Errorf("trail %+v, want the pedal, then the road, in 5 minutes", trail.Looks)
	}
	if trail, _ = table.Inspect(t.Context(), prices, 4.9, toy.reader(1)); trail.Minutes > 4.9 {
		t.Errorf("spent %g of 4.9 minutes", trail.Minutes)
	}
	if _, err := table.Inspect(t.Context(), &Prices{}, 5, toy.reader(1)); err == nil {
		t.Error("prices for no check were taken")
	}
}

// TestBeyond: what tells much on the road is worth what must be made first, which
// tells nothing, before one that tells little here.
func TestBeyond(t *testing.T) {
	toy := newToy(0, 0.5, 0.5)
	little := toy.add(words(2, 0.8), func(h int, _ []float64) float64 { return float64(h) })
	pedal := toy.add(words(2, 1), func(h int, _ []float64) float64 { return 0.5 })
	road := toy.add(words(2, 0.1), func(h int, _ []float64) float64 { return float64(h) })
	prices := &Prices{Checks: []Price{{Minutes: 2}, {Minutes: 2}, {Minutes: 1, After: [][]int{{1}}}}}
	table := toy.filled(t)
	trail, err := table.Inspect(t.Context(), prices, 4, toy.reader(1))
	if err != nil {
		t.Fatal(err)
	}
	if len(trail.Looks) != 2 || trail.Looks[0].Reading.Check != pedal || trail.Looks[1].Reading.Check != road {
		t.Errorf("trail %+v, want the pedal, then the road", trail.Looks)
	}
	// Without the minutes for both it makes do with what there is.
	if trail, _ = table.Inspect(t.Context(), prices, 2.5, toy.reader(1)); len(trail.Looks) != 1 || trail.Looks[0].Reading.Check != little {
		t.Errorf("in 2.5 minutes: %+v, want the little", trail.Looks)
	}
}

// TestRegret: on small problems the inspector's expected probability of the
// truth is compared with the best any plan can reach (dynamic programming).
func TestRegret(t *testing.T) {
	l := newLuck(5)
	sum, worst := 0.0, 0.0
	const problems = 25
	for range problems {
		n, checks := 4, 5
		priors := []float64{0.4, 0.3, 0.2, 0.1}
		toy := newToy(0, priors...)
		prices := &Prices{Preparations: []Preparation{{Minutes: 2}}}
		like := make([][]float64, checks) // P(second word | h)
		for c := range checks {
			like[c] = make([]float64, n)
			for h := range n {
				like[c][h] = []float64{0.05, 0.5, 0.95}[l.r.IntN(3)]
			}
			toy.add(words(2, 1), func(h int, _ []float64) float64 { return 0.5 + quantile(like[c][h]) })
			price := Price{Minutes: 1 + float64(l.r.IntN(2))}
			if c < 2 {
				price.Needs = []int{0}
			}
			prices.Checks = append(prices.Checks, price)
		}
		table := toy.filled(t)
		const minutes = 5
		var best func(p []float64, made int, prep bool, left float64) float64
		best = func(p []float64, made int, prep bool, left float64) float64 {
			value := 0.0
			for _, x := range p {
				value = max(value, x)
			}
			total := 0.0
			for _, x := range p {
				total += x
			}
			if value > sureEnough*total {
				return value // the same rule for when a call is made
			}
			for c := range checks {
				cost := prices.cost(c, []bool{prep})
				if made>>c&1 == 1 || cost > left {
					continue
				}
				v := 0.0
				for o := range 2 {
					q := make([]float64, n)
					for h := range q {
						q[h] = p[h] * []float64{1 - like[c][h], like[c][h]}[o]
					}
					v += best(q, made|1<<c, prep || c < 2, left-cost)
				}
				value = max(value, v)
			}
			return value
		}
		optimum := best(priors, 0, false, minutes)
		// Play every branch of the inspector's own plan.
		var play func(p *Posterior, reach []float64, done, made []bool, left float64) float64
		play = func(p *Posterior, reach []float64, done, made []bool, left float64) float64 {
			top := 0.0
			for _, x := range reach {
				top = max(top, x)
			}
			if p.Top().P > sureEnough {
				return top
			}
			c, _, _ := p.next(prices, done, made, left)
			if c < 0 {
				return top
			}
			v := 0.0
			for o := range 2 {
				q := p.Clone()
				if err := q.Add(Reading{toy.p.Checks[c], int64(o)}); err != nil {
					t.Fatal(err)
				}
				r := make([]float64, n)
				for h := range r {
					r[h] = reach[h] * []float64{1 - like[c][h], like[c][h]}[o]
				}
				d, m := append([]bool(nil), done...), append([]bool(nil), made...)
				prices.do(c, d)
				m[c] = true
				v += play(q, r, d, m, left-prices.cost(c, done))
			}
			return v
		}
		p, _ := table.Posterior(nil)
		got := play(p, priors, make([]bool, 1), make([]bool, checks), minutes)
		if got > optimum+1e-9 {
			t.Fatalf("the inspector reaches %g, the optimum is %g", got, optimum)
		}
		sum += 1 - got/optimum
		worst = max(worst, 1-got/optimum)
	}
	t.Logf("regret: mean %.4f, worst %.4f", sum/problems, worst)
	if sum/problems > 0.02 {
		t.Errorf("mean regret %.4f, aim 0.02", sum/problems)
	}
}

// TestTrailRepeats: the same job gives the same trail.
func TestTrailRepeats(t *testing.T) {
	toy := big(12, 20)
	prices := &Prices{Checks: make([]Price, 20)}
	for i := range prices.Checks {
		prices.Checks[i].Minutes = 1 + float64(i%3)
	}
	a, err := toy.filled(t).Inspect(t.Context(), prices, 20, toy.reader(5))
	if err != nil {
		t.Fatal(err)
	}
	b, _ := toy.filled(t).Inspect(t.Context(), prices, 20, toy.reader(5))
	if !reflect.DeepEqual(a.Looks, b.Looks) || !reflect.DeepEqual(a.Final.Rows(), b.Final.Rows()) {
		t.Error("two trails of one job differ")
	}
	if len(a.Looks) == 0 {
		t.Error("the inspector looked at nothing")
	}
}

// big is a problem of the size of a job: hypotheses × checks over four backgrounds.
func big(hypotheses, checks int) *toy {
	priors := make([]float64, hypotheses)
	for h := range priors {
		priors[h] = 1 / float64(hypotheses)
	}
	toy := newToy(4, priors...)
	for c := range checks {
		m := gauge(fmt.Sprint("g", c%10), []float64{0.5, 0.05, 0.1}[c%3], 0.2, 0.1, 0.01)
		if c%4 == 3 {
			m = words(4, 0.3)
			m.Slip = 0.02
		}
		toy.add(m, func(h int, b []float64) float64 {
			at := 0.0
			if (h+c)%7 == 0 {
				at = 2 + float64(h%3)
			}
			return 1 + at + 0.3*b[0] + 0.2*b[1] + 0.1*b[2]*b[3]
		})
	}
	return toy
}

// jobSize is the shape of a whole job: 330 hypotheses, 150 checks. Twenty causes
// at each of four wheels and thirty of the car, three severities each; of 25 checks
// at a wheel one moves for a few causes of this wheel, the fifty of the car for a
// third of all causes.
func jobSize() (*toy, *Prices) {
	priors := make([]float64, 330)
	for h := range priors {
		priors[h] = 1.0 / 330
	}
	y := newToy(4, priors...)
	for h := range priors {
		cause := h / 3
		y.p.Hypotheses[h].Row = fmt.Sprint("row", cause)
		y.p.Hypotheses[h].Cause = fmt.Sprint("cause", cause)
		if cause < 80 {
			y.p.Hypotheses[h].Cause = fmt.Sprint("cause", cause/4)
		}
	}
	prices := &Prices{Preparations: make([]Preparation, 7)}
	for i := range prices.Preparations {
		prices.Preparations[i].Minutes = 6
	}
	for c := range 150 {
		m := gauge(fmt.Sprint("g", c%12), []float64{1, 0.1, 0.25}[c%3], 0.2, 0.1, 0.01)
		if c%3 == 2 {
			m = words(3, 0.3)
			m.Slip = 0.01
		}
		price := Price{Minutes: 1}
		if c < 100 && c%25 > 8 {
			price.Needs = []int{c / 25}
		} else if c%10 == 0 {
			price.Needs = []int{4 + c%3}
		}
		prices.Checks = append(prices.Checks, price)
		y.add(m, func(h int, b []float64) float64 {
			cause, severity := h/3, 1+h%3
			at := 0.002 * float64(h%17) // what every car differs in
			switch {
			case c < 100 && cause < 80 && cause%4 == c/25 && (cause/4+c)%4 == 0:
				at += 0.6 * float64(severity)
			case c >= 100 && (cause+c)%3 == 0:
				at += 0.3 * float64(severity)
			}
			return 1 + at + 0.2*b[0] + 0.1*b[1] + 0.1*b[2]*b[3]
		})
	}
	return y, prices
}

func BenchmarkOneMoreReading(b *testing.B) {
	toy, _ := jobSize()
	table := toy.filled(b)
	var readings []Reading
	for i := range 25 {
		readings = append(readings, Reading{toy.p.Checks[i*6], table.checks[i*6].Meter.First() + 1})
	}
	p, err := table.Posterior(readings)
	if err != nil {
		b.Fatal(err)
	}
	next := Reading{toy.p.Checks[2], table.checks[2].Meter.First() + 1}
	for b.Loop() {
		b.StopTimer()
		q := p.Clone()
		b.StartTimer()
		if err := q.Add(next); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBestNext(b *testing.B) {
	toy, prices := jobSize()
	table := toy.filled(b)
	for _, many := range []int{0, 6} {
		var readings []Reading
		for i := range many {
			readings = append(readings, Reading{toy.p.Checks[i*23], table.checks[i*23].Meter.First() + 1})
		}
		p, err := table.Posterior(readings)
		if err != nil {
			b.Fatal(err)
		}
		live, _, _ := p.live()
		b.Run(fmt.Sprint(many, "_readings"), func(b *testing.B) {
			b.ReportMetric(float64(len(live)), "live")
			for b.Loop() {
				if _, bits, ok := p.Next(prices, 60); !ok || math.IsNaN(bits) {
					b.Fatal("nothing to look at")
				}
			}
		})
	}
}
