package learner

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// A toy car with checks and causes of the catalogue's names, whose answers are
// known in closed form: a level that sinks by wear or by a leak, which wets the
// wheel, and a warm wheel by a piston or by dry pins.
var toyCauses = []string{"honestly_worn", "fluid_low_wear", "joint_weeping", "piston_corroded", "pins_dry"}

type toyCheck struct {
	id    inspect.ID
	show  [5]float64 // by cause
	sigma float64
}

var toyChecks = []toyCheck{
	{"reservoir_level", [5]float64{60, 10, 10, 60, 60}, 8},
	{"wetness", [5]float64{0, 0, 10, 0, 0}, 4},
	{"temperature", [5]float64{40, 40, 40, 120, 120}, 15},
	{"push_piston", [5]float64{30, 30, 30, 80, 30}, 12},
	{"lining_outer_upper", [5]float64{70, 30, 60, 60, 40}, 9},
}

func toyTable(tb testing.TB) (*evidence.Table, *evidence.Prices) {
	tb.Helper()
	checks := make([]inspect.Check, len(toyChecks))
	p := &evidence.Problem{Background: make([]evidence.Background, 1)}
	for i, c := range toyCauses {
		p.Hypotheses = append(p.Hypotheses, evidence.Hypothesis{ID: c, Row: c + "@front_left", Cause: c, Place: "front_left", Prior: []float64{0.4, 0.15, 0.15, 0.15, 0.15}[i]})
	}
	for i, c := range toyChecks {
		m := inspect.Meter{Instrument: fmt.Sprint("i", i), PerUnit: 1, Resolution: 1, Division: 1, Sigma: c.sigma, Slip: 0.01, Lo: -50, Hi: 200}
		checks[i] = inspect.Check{ID: c.id, Minutes: 3, Meter: m, Measure: func(w *inspect.World, _ physics.Wheel) (float64, error) {
			return c.show[w.Rest.Millis] + float64(2*w.Rest.Pressure[0]), nil
		}}
		p.Checks = append(p.Checks, inspect.Instance{Check: c.id})
	}
	p.Find = func(id inspect.ID) (*inspect.Check, bool) {
		for i := range checks {
			if checks[i].ID == id {
				return &checks[i], true
			}
		}
		return nil, false
	}
	p.Build = func(h int, b []float64) (*inspect.World, error) {
		w := &inspect.World{Rest: physics.State{Millis: int64(h)}}
		w.Rest.Pressure[0] = b[0]
		return w, nil
	}
	t, err := evidence.NewTable(p)
	if err != nil {
		tb.Fatal(err)
	}
	if err := t.Fill(tb.Context(), 1, nil); err != nil {
		tb.Fatal(err)
	}
	prices := &evidence.Prices{}
	for i := range p.Checks {
		prices.Checks = append(prices.Checks, evidence.Price{Minutes: float64(2 + i)})
	}
	return t, prices
}

// play lets a learner play the toy with truth h: their readings, the posterior
// on their own table and their counters.
func play(tb testing.TB, l *Learner, t, own *evidence.Table, prices *evidence.Prices, h int, luck *rand.Rand) ([]evidence.Reading, []int) {
	tb.Helper()
	p, err := own.Posterior(nil)
	if err != nil {
		tb.Fatal(err)
	}
	b := luck.NormFloat64()
	for {
		inst, ok := l.Next(p, own, prices, 14, luck)
		if !ok {
			break
		}
		c, _ := t.Problem().Find(inst.Check)
		w, _ := t.Problem().Build(h, []float64{b})
		v, _ := c.Measure(w, 0)
		_, shown := c.Meter.Sample(v, 0, luck.NormFloat64(), luck.Float64(), luck.Float64())
		if err := p.Add(evidence.Reading{Check: inst, Display: l.Write(&c.Meter, shown, luck)}); err != nil {
			tb.Fatal(err)
		}
	}
	belief, err := l.Believe(p, own, luck)
	if err != nil {
		tb.Fatal(err)
	}
	counters := make([]int, len(toyCauses))
	if belief != nil {
		left := 20
		for i, q := range belief {
			counters[i] = int(20 * q)
			left -= counters[i]
		}
		counters[greatest(belief)] += left
		l.Misplace(counters, luck)
	}
	return p.Readings(), counters
}
