package evidence

import (
	"math"
	"testing"

	"evenwear/physics/inspect"
)

// TestInformationLaws: never negative, never more than what is unknown, zero
// for a check that all hypotheses answer alike, one bit for a decisive check on
// a coin toss.
func TestInformationLaws(t *testing.T) {
	coin := newToy(1, 0.5, 0.5)
	decisive := coin.add(gauge("a", 0.5, 0.3, 0.1, 0), func(h int, b []float64) float64 { return 2 + 14*float64(h) + 0.2*b[0] })
	alike := coin.add(gauge("b", 0.5, 0.3, 0.1, 0.01), func(_ int, b []float64) float64 { return 9 + b[0] })
	p, err := coin.filled(t).Posterior(nil)
	if err != nil {
		t.Fatal(err)
	}
	if w, _ := p.RowBits(decisive); math.Abs(w.Bits-1) > 1e-6 {
		t.Errorf("a decisive check on a coin toss tells %.7f bits, want 1", w.Bits)
	}
	if w, _ := p.RowBits(alike); w.Bits > 1e-9 {
		t.Errorf("a check that all answer alike tells %g bits", w.Bits)
	}

	l := newLuck(3)
	for range 60 {
		n := 2 + l.r.IntN(6)
		priors := make([]float64, n)
		sum := 0.0
		for i := range priors {
			priors[i] = 0.05 + l.r.Float64()
			sum += priors[i]
		}
		for i := range priors {
			priors[i] /= sum
		}
		toy := newToy(2, priors...)
		for range 4 {
			at, slope := make([]float64, n), l.r.NormFloat64()
			for i := range at {
				at[i] = 20 * l.r.Float64()
			}
			toy.add(gauge("g", []float64{0.05, 0.5, 4}[l.r.IntN(3)], 0.05+l.r.Float64(), l.r.Float64(), 0.05*l.r.Float64()),
				func(h int, b []float64) float64 { return at[h] + slope*b[0] + 0.3*b[0]*b[1] })
		}
		p, err := toy.filled(t).Posterior([]Reading{{toy.p.Checks[0], 2}})
		if err != nil {
			t.Fatal(err)
		}
		left := 0.0
		for _, b := range p.Rows() {
			left -= b.P * math.Log2(b.P)
		}
		for _, w := range p.All() {
			if w.Bits < 0 || w.Bits > left+1e-6 {
				t.Fatalf("%s tells %g bits; %g are unknown", w.Check, w.Bits, left)
			}
		}
	}
}

// TestOnReadingsAverage: information is the mean drop of entropy, so drawing
// readings from the model itself must give it.
func TestOnReadingsAverage(t *testing.T) {
	toy := newToy(1, 0.2, 0.5, 0.3)
	m := gauge("g", 0.5, 0.6, 0.4, 0.02)
	inst := toy.add(m, func(h int, b []float64) float64 { return 8 + 1.5*float64(h) + 0.7*b[0] })
	table := toy.filled(t)
	p, _ := table.Posterior(nil)
	info, _ := p.RowBits(inst)
	l := newLuck(11)
	const n = 20000
	sum, squares := 0.0, 0.0
	for range n {
		h, u := 0, l.r.Float64()
		for u > toy.p.Hypotheses[h].Prior && h < 2 {
			u -= toy.p.Hypotheses[h].Prior
			h++
		}
		l.biasOf = nil
		l.bias = nil
		q := p.Clone()
		if err := q.Add(Reading{inst, l.show(&m, 8+1.5*float64(h)+0.7*l.r.NormFloat64())}); err != nil {
			t.Fatal(err)
		}
		bits := math.Log2(q.Hypotheses()[h].P / toy.p.Hypotheses[h].Prior)
		sum += bits
		squares += bits * bits
	}
	mean := sum / n
	se := math.Sqrt((squares/n - mean*mean) / n)
	if math.Abs(mean-info.Bits) > 4*se {
		t.Errorf("readings told %.4f ± %.4f bits, forecast %.4f", mean, se, info.Bits)
	}
}

// TestProbAgrees: the likelihood of one reading is the meter's own Prob when
// everything unknown is normal.
func TestProbAgrees(t *testing.T) {
	for _, m := range []inspect.Meter{gauge("a", 0.5, 0.3, 0.4, 0.02), words(4, 0.3), {Instrument: "f", Resolution: 1, Division: 1, Floor: true, Sigma: 0.2, Bias: 0.1, Slip: 0.01, Lo: 1, Hi: 12}} {
		toy := newToy(1, 1)
		inst := toy.add(m, func(_ int, b []float64) float64 { return 2.3 + 0.6*b[0] })
		m = toy.checks[0].Meter
		table := toy.filled(t)
		for n := m.First(); m.Has(n); n++ {
			p, err := table.Posterior([]Reading{{inst, n}})
			if err != nil {
				t.Fatal(err)
			}
			want := m.Prob(n, 2.3, 0, 0.36+m.Bias*m.Bias)
			if got := math.Exp(p.LogLikelihood(0)); math.Abs(got-want) > 1e-12+1e-9*want {
				t.Errorf("%s display %d: %g, meter says %g", m.Instrument, n, got, want)
			}
		}
	}
}
