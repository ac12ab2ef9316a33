package evidence

import (
	"math"
	"testing"
)

// TestCalibration draws true backgrounds from the continuous prior, never from
// the design, and readings with one luck of each instrument: of beliefs stated
// 0.9 to 1, 90–100 % must be true, and beliefs in every band within four
// standard errors of what they state. The truths bend and multiply, so the
// fit's error counts.
func TestCalibration(t *testing.T) {
	bands := calibrate(t, 4000, true)
	high := bands[9]
	t.Logf("beliefs 0.9–1: %d stated, mean %.3f, true %.3f", high.n, high.stated/float64(high.n), high.true/float64(high.n))
	if high.n < 2000 {
		t.Errorf("only %d beliefs of 0.9–1; the test needs 2000", high.n)
	}
	if rate := high.true / float64(high.n); rate < 0.9 {
		t.Errorf("of beliefs 0.9–1 only %.3f are true", rate)
	}
	for i, b := range bands {
		if b.n < 200 {
			continue
		}
		n := float64(b.n)
		stated, rate := b.stated/n, b.true/n
		if se := math.Sqrt(max(stated*(1-stated), 1e-3) / n); math.Abs(rate-stated) > 4*se+0.02 {
			t.Errorf("band %d: stated %.3f, true %.3f (n %d)", i, stated, rate, b.n)
		}
	}
	// The test can fail: without the fit's error the same readings give false certainty.
	blind := calibrate(t, 1500, false)[9]
	if rate, stated := blind.true/float64(blind.n), blind.stated/float64(blind.n); rate > stated-0.02 {
		t.Errorf("without the fit's error beliefs stated %.3f are true in %.3f: the test does not bite", stated, rate)
	}
}

type band struct {
	n            int
	stated, true float64
}

func calibrate(t *testing.T, jobs int, fitError bool) [10]band {
	toy := newToy(3, 0.3, 0.25, 0.2, 0.15, 0.1)
	for c := range 6 {
		m := gauge([]string{"feeler", "fine", "dial"}[c%3], []float64{0.5, 0.02, 0.1}[c%3], []float64{0.3, 0.03, 0.1}[c%3], []float64{0.2, 0.05, 0.2}[c%3], 0.01)
		toy.add(m, func(h int, b []float64) float64 {
			shape := math.Sin(float64(3*h*h + 5*c)) // where hypotheses lie for this check
			return 9 + 0.8*shape + (0.5+0.1*float64(h%2))*b[c%3] + 0.25*b[(c+1)%3] + 0.25*math.Cos(float64(c))*b[0]*b[1] + 0.2*math.Sin(float64(2*c))*(b[2]*b[2]-1)
		})
	}
	table := toy.filled(t)
	if !fitError {
		for h := range table.rows {
			for c := range table.checks {
				table.rows[h].Load().fits[c].Residual = 0
			}
		}
	}
	var bands [10]band
	l := newLuck(2024)
	for range jobs {
		h, u := 0, l.r.Float64()
		for u > toy.p.Hypotheses[h].Prior && h < 4 {
			u -= toy.p.Hypotheses[h].Prior
			h++
		}
		b := []float64{l.r.NormFloat64(), l.r.NormFloat64(), l.r.NormFloat64()}
		l.biasOf, l.bias = nil, nil
		w, err := toy.p.Build(h, b)
		if err != nil {
			t.Fatal(err)
		}
		var readings []Reading
		for c, inst := range toy.p.Checks {
			v, _ := toy.checks[c].Measure(w, 0)
			for range 1 + c%2 {
				readings = append(readings, Reading{inst, l.show(&toy.checks[c].Meter, v)})
			}
		}
		p, err := table.Posterior(readings)
		if err != nil {
			t.Fatal(err)
		}
		for g, belief := range p.Hypotheses() {
			i := min(9, int(belief.P*10))
			bands[i].n++
			bands[i].stated += belief.P
			if g == h {
				bands[i].true++
			}
		}
	}
	return bands
}
