package evidence

import "math"

// A Fit is how the truth at one check depends on the background under one
// hypothesis, in the unit of the check's meter:
//
//	m(b) ≈ Mean + Slope·b + error of variance Residual
//
// Mean, Slope and Residual are those of the least-squares line over b ~ N(0, I)
// for every m that is a polynomial of third degree along each axis with
// products of pairs.
type Fit struct {
	Mean     float64
	Slope    []float64
	Residual float64
	OK       bool // false: the check has no answer under this hypothesis
}

// A point is one place of the design.
type point struct {
	axis int       // the axis it lies on, −1 at the centre, −2 at a corner
	b    []float64 // coordinates before any pulling in
}

// design returns the points for k coordinates: the centre, ±√3 on each axis
// (three-point Gauss–Hermite, exact to degree five along an axis) and half of
// the corners at ±1, which show the products that no axis shows; of five
// coordinates a quarter, unless thorough. 3, 9, 11, 17, 19 points, thorough 27.
//
// Half the corners show every product of a pair by itself. In the quarter those
// of the last coordinate stand alone and the others fall two and two together,
// of the first four the first with the second and the third with the fourth and
// so on: their squares are taken for the square of their sum.
func design(k int, thorough bool) []point {
	pts := []point{{axis: -1, b: make([]float64, k)}}
	for i := range k {
		for _, s := range [2]float64{sqrt3, -sqrt3} {
			b := make([]float64, k)
			b[i] = s
			pts = append(pts, point{axis: i, b: b})
		}
	}
	if k < 2 {
		return pts
	}
	if k == 5 && !thorough {
		for bits := range 8 {
			sign := func(i int) float64 { return 1 - float64(2*(bits>>i&1)) }
			last, first, second := sign(0), sign(1), sign(2)
			pts = append(pts, point{axis: -2, b: []float64{first, second, float64(last * first), float64(last * second), last}})
		}
		return pts
	}
	for bits := range 1 << (k - 1) {
		b, product := make([]float64, k), 1.0
		for i := range k - 1 {
			b[i] = 1
			if bits>>i&1 == 1 {
				b[i] = -1
			}
			product *= b[i]
		}
		if b[k-1] = product; k == 2 {
			// For two coordinates half the corners would see b₁·b₂ as a constant.
			pts = append(pts, point{axis: -2, b: []float64{b[0], -product}})
		}
		pts = append(pts, point{axis: -2, b: b})
	}
	return pts
}

// probes are two points as far apart as the corners of a design allow: the one
// where every coordinate is +1 and, of those with most coordinates at −1, the
// first. A design without corners has none.
func probes(pts []point) []int {
	first, far, most := -1, -1, -1
	for i, p := range pts {
		if p.axis != -2 {
			continue
		}
		minus := 0
		for _, b := range p.b {
			if b < 0 {
				minus++
			}
		}
		if first < 0 && minus == 0 {
			first = i
		}
		if minus > most {
			far, most = i, minus
		}
	}
	if first < 0 {
		return nil
	}
	return []int{first, far}
}

// fit draws the line through values at the points of a design; pull[i] is the
// share of its way out at which point i was computed (1 unless the car there
// could not exist). A value that is not finite is missing.
//
//	c_k  = (m₊ + m₋ − 2·m_c)/(2s²)     curvature along an axis
//	J_k  = (m₊ − m₋)/(2s)
//	m₀   = m_c + Σ c_k                 E b² = 1
//	Res  = 2·Σ c_k² + mean over corners of the square of what the axes do not explain
func fit(pts []point, pull, value []float64) Fit {
	if !finite(value[0]) {
		return Fit{}
	}
	a := newAxes(len(pts[0].b), pull, value)
	f := Fit{Mean: a.centre, Slope: a.slope, OK: true}
	for _, c := range a.curve {
		f.Mean += c
		f.Residual += float64(2 * c * c)
	}
	sum, n := 0.0, 0
	for at := 1 + 2*len(a.slope); at < len(pts); at++ {
		if !finite(value[at]) {
			continue
		}
		e := a.miss(pts[at].b, pull[at], value[at]) / float64(pull[at]*pull[at]) // a product of two coordinates grows as their square
		sum += float64(e * e)
		n++
	}
	if n > 0 {
		f.Residual += sum / float64(n)
	}
	return f
}

// axes is what the centre and the axes tell: a parabola along each.
type axes struct {
	centre       float64
	slope, curve []float64
}

// newAxes reads k parabolas off the first 1 + 2k points of a design.
func newAxes(k int, pull, value []float64) axes {
	a := axes{centre: value[0], slope: make([]float64, k), curve: make([]float64, k)}
	for i := range k {
		at := 1 + 2*i
		s := float64(sqrt3 * min(pull[at], pull[at+1]))
		plus, minus := value[at], value[at+1]
		switch {
		case finite(plus) && finite(minus):
			a.slope[i] = (plus - minus) / (2 * s)
			a.curve[i] = (plus + minus - float64(2*a.centre)) / (2 * s * s)
		case finite(plus):
			a.slope[i] = (plus - a.centre) / s
		case finite(minus):
			a.slope[i] = (a.centre - minus) / s
		}
	}
	return a
}

// miss is by how much a value at pull·b is more than the axes foretell.
func (a *axes) miss(b []float64, pull, value float64) float64 {
	e := value - a.centre
	for i := range b {
		x := pull * b[i]
		e -= float64(a.slope[i]*x) + float64(a.curve[i]*x*x)
	}
	return e
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
