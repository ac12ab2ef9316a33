package evidence

import (
	"math"
	"testing"

	"evenwear/physics/inspect"
)

// quadrature is ln P(readings | h) by a dense grid over one background
// coordinate and one instrument's bias.
func quadrature(m *inspect.Meter, mean, slope, residual float64, shows []int64, nodes func(int) (x, w []float64)) float64 {
	bx, bw := nodes(0)
	sum := 0.0
	for i, b := range gridX {
		inner := 0.0
		for j, bias := range bx {
			l := 1.0
			for _, n := range shows {
				p, _, _ := chance(m, n, mean+slope*b+m.Bias*bias, m.Sigma*m.Sigma+residual)
				l *= (1-m.Slip)*p + m.Slip/float64(m.Cells())
			}
			inner += bw[j] * l
		}
		sum += gridW[i] * inner
	}
	return math.Log(sum)
}

var gridX, gridW = func() (x, w []float64) {
	const n = 161
	for i := range n {
		v := -8 + 16*float64(i)/(n-1)
		x, w = append(x, v), append(w, math.Exp(-v*v/2)/math.Sqrt(2*math.Pi)*16/(n-1))
	}
	return x, w
}()

func dense(int) (x, w []float64) { return gridX, gridW }

// hermite5 are the nodes and weights of 5-point Gauss–Hermite for a standard
// normal: 0, ±√(5 − √10), ±√(5 + √10) with 8/15, (7 ± 2√10)/60.
func hermite5(int) (x, w []float64) {
	r := math.Sqrt(10)
	a, b := math.Sqrt(5-r), math.Sqrt(5+r)
	wa, wb := (7+2*r)/60, (7-2*r)/60
	return []float64{-b, -a, 0, a, b}, []float64{wb, wa, 8.0 / 15, wa, wb}
}

// TestAgainstQuadrature compares the posterior's evidence with integrals on a
// dense grid, and shows why the bias is a coordinate rather than five nodes.
func TestAgainstQuadrature(t *testing.T) {
	worstADF, worstGH := 0.0, 0.0
	l := newLuck(7)
	for _, m := range []inspect.Meter{
		gauge("coarse", 1, 0.2, 0.3, 0.01),  // rounding swallows the noise
		gauge("fine", 0.05, 0.1, 0.5, 0.01), // repeats better than it is true
		gauge("plain", 0.5, 0.5, 0.5, 0.02),
	} {
		for trial := range 20 {
			toy := newToy(1, 0.5, 0.5)
			shift := float64(trial%5) * 0.7
			inst := toy.add(m, func(h int, b []float64) float64 { return 10 + float64(h)*shift + 0.8*b[0] })
			table := toy.filled(t)
			truth, bias := 10+0.8*l.r.NormFloat64(), l.r.NormFloat64()
			var shows []int64
			var readings []Reading
			for range 4 {
				shows = append(shows, m.Show(truth+m.Bias*bias+m.Sigma*l.r.NormFloat64()))
				readings = append(readings, Reading{inst, shows[len(shows)-1]})
			}
			p, err := table.Posterior(readings)
			if err != nil {
				t.Fatal(err)
			}
			for h := range 2 {
				exact := quadrature(&m, 10+float64(h)*shift, 0.8, 0, shows, dense)
				worstADF = max(worstADF, math.Abs(p.LogLikelihood(h)-exact))
				worstGH = max(worstGH, math.Abs(quadrature(&m, 10+float64(h)*shift, 0.8, 0, shows, hermite5)-exact))
			}
		}
	}
	t.Logf("worst error of ln P: moment matching %.4f, five nodes for the bias %.4f", worstADF, worstGH)
	if worstADF > 0.35 {
		t.Errorf("moment matching is off by %.3f in ln P", worstADF)
	}
}

// TestOutlier: one worthless reading among good ones does not overturn them, in
// either order, and the evidence stays near the dense grid's.
func TestOutlier(t *testing.T) {
	m := gauge("g", 0.5, 0.3, 0.2, 0.02)
	toy := newToy(1, 0.5, 0.5)
	inst := toy.add(m, func(h int, b []float64) float64 { return 8 + float64(h)*3 + 0.5*b[0] })
	table := toy.filled(t)
	for _, shows := range [][]int64{{16, 16, 16, 38}, {38, 16, 16, 16}} {
		var readings []Reading
		for _, n := range shows {
			readings = append(readings, Reading{inst, n})
		}
		p, err := table.Posterior(readings)
		if err != nil {
			t.Fatal(err)
		}
		exact := 1 / (1 + math.Exp(quadrature(&m, 11, 0.5, 0, shows, dense)-quadrature(&m, 8, 0.5, 0, shows, dense)))
		if got := p.Row("h0"); math.Abs(got-exact) > 0.01 {
			t.Errorf("%v: belief %.4f, by quadrature %.4f", shows, got, exact)
		}
	}
}

// TestRepeatsAreNotCertainty: with a bias of σ = 0.5 a hundred equal readings
// cannot separate two hypotheses that lie 0.5 apart.
func TestRepeatsAreNotCertainty(t *testing.T) {
	separate := func(bias float64) float64 {
		toy := newToy(0, 0.5, 0.5)
		inst := toy.add(gauge("g", 0.1, 0.5, bias, 0), func(h int, _ []float64) float64 { return 10 + 0.5*float64(h) })
		var readings []Reading
		for range 100 {
			readings = append(readings, Reading{inst, 100})
		}
		p, err := toy.filled(t).Posterior(readings)
		if err != nil {
			t.Fatal(err)
		}
		return p.Row("h0")
	}
	// ln odds = 0.5²/2/(0.5² + 0.5²/100) with bias, 100·0.5²/2/0.5² without.
	want := 1 / (1 + math.Exp(-0.125/(0.25+0.0025)))
	if got := separate(0.5); math.Abs(got-want) > 2e-3 {
		t.Errorf("with bias: %.4f, want %.4f", got, want)
	}
	if got := separate(0); got < 0.999999 {
		t.Errorf("without bias: %.6f; the repeats must decide", got)
	}
}

// TestSharedFitError: the error of a fit is one unknown for a check, so repeats do not average it out.
func TestSharedFitError(t *testing.T) {
	toy := newToy(1, 0.5, 0.5)
	inst := toy.add(gauge("g", 0.1, 0.1, 0, 0), func(h int, b []float64) float64 {
		return 10 + 0.5*float64(h) + 0.5*(b[0]*b[0]-1)/math.Sqrt2 // residual variance 0.25, slope 0
	})
	var readings []Reading
	for range 50 {
		readings = append(readings, Reading{inst, 100})
	}
	p, err := toy.filled(t).Posterior(readings)
	if err != nil {
		t.Fatal(err)
	}
	want := 1 / (1 + math.Exp(-0.125/0.25))
	if got := p.Row("h0"); math.Abs(got-want) > 5e-3 {
		t.Errorf("belief %.4f after 50 repeats, want %.4f", got, want)
	}
}
