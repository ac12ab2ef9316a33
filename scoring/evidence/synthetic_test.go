package evidence

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
)

// A toy car: the truth at a check is any function of hypothesis and background,
// so that everything about it is known in closed form. The world only carries
// the two to the check.
type toy struct {
	p      Problem
	checks []inspect.Check
}

func newToy(background int, priors ...float64) *toy {
	t := &toy{}
	for h, pr := range priors {
		id := fmt.Sprintf("h%d", h)
		t.p.Hypotheses = append(t.p.Hypotheses, Hypothesis{ID: id, Row: id, Cause: id, Place: "here", Prior: pr})
	}
	t.p.Background = make([]Background, background)
	t.p.Build = func(h int, b []float64) (*inspect.World, error) {
		w := &inspect.World{Rest: physics.State{Millis: int64(h)}}
		copy(w.Rest.Pressure[:], b)
		return w, nil
	}
	t.p.Find = func(id inspect.ID) (*inspect.Check, bool) {
		for i := range t.checks {
			if t.checks[i].ID == id {
				return &t.checks[i], true
			}
		}
		return nil, false
	}
	return t
}

// add makes a check whose truth is f; ids are c0, c1, …
func (t *toy) add(m inspect.Meter, f func(h int, b []float64) float64) inspect.Instance {
	id := inspect.ID(fmt.Sprintf("c%d", len(t.checks)))
	if m.PerUnit == 0 {
		m.PerUnit = 1
	}
	t.checks = append(t.checks, inspect.Check{ID: id, Minutes: 1, Meter: m,
		Measure: func(w *inspect.World, _ physics.Wheel) (float64, error) {
			return f(int(w.Rest.Millis), w.Rest.Pressure[:len(t.p.Background)]), nil
		}})
	inst := inspect.Instance{Check: id}
	t.p.Checks = append(t.p.Checks, inst)
	return inst
}

// filled is the toy's table, complete.
func (t *toy) filled(tb testing.TB) *Table {
	tb.Helper()
	table, err := NewTable(&t.p)
	if err != nil {
		tb.Fatal(err)
	}
	if err := table.Fill(tb.Context(), 2, nil); err != nil {
		tb.Fatal(err)
	}
	return table
}

// luck draws what a meter shows; biases are kept for each instrument.
type luck struct {
	r      *rand.Rand
	biasOf []string
	bias   []float64
}

func newLuck(seed uint64) *luck { return &luck{r: rand.New(rand.NewPCG(seed, 1))} }

func (l *luck) show(m *inspect.Meter, truth float64) int64 {
	i := find(l.biasOf, m.Instrument)
	if i < 0 {
		i = len(l.bias)
		l.biasOf, l.bias = append(l.biasOf, m.Instrument), append(l.bias, l.r.NormFloat64())
	}
	if l.r.Float64() < m.Slip {
		return m.First() + l.r.Int64N(int64(m.Cells()))
	}
	return m.Show(truth + m.Bias*l.bias[i] + m.Sigma*l.r.NormFloat64())
}

// words is a meter with n words and cuts at ½, 1½, …
func words(n int, sigma float64) inspect.Meter {
	m := inspect.Meter{Instrument: "eye", Sigma: sigma, Lo: 0, Hi: float64(n - 1), Resolution: 1, Division: 1}
	for i := range n {
		m.Words = append(m.Words, fmt.Sprint("w", i))
		if i > 0 {
			m.Cuts = append(m.Cuts, float64(i)-0.5)
		}
	}
	return m
}

// gauge is a meter from 0 to 20 in steps of res.
func gauge(name string, res, sigma, bias, slip float64) inspect.Meter {
	return inspect.Meter{Instrument: name, Resolution: res, Division: res, Sigma: sigma, Bias: bias, Slip: slip, Lo: 0, Hi: 20}
}

// reader shows each check without luck, at the centre of the background.
func (t *toy) reader(truth int) func(inspect.Instance) (int64, error) {
	return func(inst inspect.Instance) (int64, error) {
		c, _ := t.p.Find(inst.Check)
		w, err := t.p.Build(truth, make([]float64, len(t.p.Background)))
		if err != nil {
			return 0, err
		}
		v, err := c.Measure(w, inst.Wheel)
		return c.Meter.Show(v), err
	}
}
