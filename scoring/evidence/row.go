package evidence

import (
	"context"
	"fmt"
	"math"

	"evenwear/physics/inspect"
)

// pulls is how often a point is brought half way to the centre before it is given up.
const pulls = 4

// A rowWork is one hypothesis being worked out. Worlds are made when a check
// first asks for them: most checks need few.
type rowWork struct {
	t      *Table
	ctx    context.Context
	h      int
	pull   []float64 // [1] share of its way out at which a point was computed
	worlds []*inspect.World
	made   []bool
	values []float64 // of the check at hand, by point; NaN: no answer
	have   []bool
	elder  *tableRow // the first of its kin; nil: none, or it is the first
	eldest int       // the first of its kin
}

// computeRow works the wanted checks of one hypothesis, with what the first of
// its kin has shown where it is another. It returns an error only when cancelled.
func (t *Table) computeRow(ctx context.Context, h, eldest int, want []int) (*tableRow, error) {
	n := len(t.checks)
	row := &tableRow{have: make([]bool, n), fits: make([]Fit, n), seen: make([]sight, n)}
	if old := t.rows[h].Load(); old != nil {
		if old.err != nil {
			return old, nil
		}
		copy(row.have, old.have)
		copy(row.fits, old.fits)
		copy(row.seen, old.seen)
		row.told = old.told
	}
	n = len(t.points)
	w := &rowWork{t: t, ctx: ctx, h: h, pull: make([]float64, n), worlds: make([]*inspect.World, n), made: make([]bool, n),
		values: make([]float64, n), have: make([]bool, n), eldest: eldest}
	if h != eldest {
		w.elder = t.rows[eldest].Load()
	}
	if t.problem.Told != nil && t.rows[h].Load() == nil {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if row.err = w.hear(row); row.err != nil {
			return row, nil
		}
	}
	for _, c := range want {
		if row.have[c] {
			continue
		}
		if !w.made[0] {
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			if row.err = w.make(0); row.err != nil {
				return row, nil
			}
		}
		clear(w.have)
		f, ok, err := w.alike(c)
		if err == nil && !ok {
			f, err = w.fit(c)
		}
		if err != nil {
			return nil, err
		}
		row.have[c], row.fits[c], row.seen[c] = true, f, w.sight(f)
	}
	return row, nil
}

// hear works out how likely the owner of such a car tells what was told.
func (w *rowWork) hear(row *tableRow) (err error) {
	if err := w.make(0); err != nil {
		return err
	}
	if row.told, err = w.t.problem.Told(w.h, w.worlds[0]); err == nil && !finite(row.told) {
		err = fmt.Errorf("evidence: ln P of what the owner told is %g; wanted a finite number", row.told)
	}
	return err
}

// fit is the line of one check, from as few points as tell it.
//
// What a check shows often hangs on the fault alone. So the centre and two far
// corners come first: when they agree within [still] the check is a constant.
// When the axes foretell those two corners the others are left out: they would
// only tell the error of the line. The tolerance is a quarter of what a reduced
// experiment may err, and for what the axes foretell no less than what adds a
// sixteenth to the variance of one reading: the two corners tell that well enough.
// So a check that is told from fewer points is told as well as it is measured (a
// test holds it against all points).
func (w *rowWork) fit(c int) (Fit, error) {
	pts := w.t.points
	centre, err := w.value(c, 0)
	if err != nil || !finite(centre) {
		return Fit{}, err
	}
	tolerance := still(&w.t.checks[c].Meter)
	probes := w.t.probes
	if w.t.problem.Thorough {
		probes = nil
	}
	steady := len(probes) > 0
	square := 0.0
	for _, i := range probes {
		v, err := w.value(c, i)
		if err != nil {
			return Fit{}, err
		}
		d := v - centre
		steady = steady && w.pull[i] == 1 && math.Abs(d) <= tolerance // NaN is not
		square += float64(d * d)
	}
	if steady {
		return Fit{Mean: centre, Slope: make([]float64, len(pts[0].b)), Residual: square / float64(len(probes)), OK: true}, nil
	}
	m := &w.t.checks[c].Meter
	unseen := max(tolerance, math.Sqrt(float64(m.Sigma*m.Sigma)+float64(m.Bias*m.Bias))/4)
	for i := 1; i < len(pts); i++ {
		if i == w.corners() && w.foretold(probes, unseen) {
			break
		}
		if _, err := w.value(c, i); err != nil {
			return Fit{}, err
		}
	}
	for i := range pts {
		if !w.have[i] {
			w.values[i] = math.NaN()
		}
	}
	return fit(pts, w.pull, w.values), nil
}

// corners is where the design's corners begin.
func (w *rowWork) corners() int { return 1 + 2*len(w.t.points[0].b) }

// foretold tells that centre and axes foretell the probes.
func (w *rowWork) foretold(probes []int, tolerance float64) bool {
	n := w.corners()
	for _, v := range w.values[:n] {
		if !finite(v) {
			return false
		}
	}
	a := newAxes(len(w.t.points[0].b), w.pull, w.values)
	for _, i := range probes {
		if !(math.Abs(a.miss(w.t.points[i].b, w.pull[i], w.values[i])) <= tolerance) {
			return false
		}
	}
	return len(probes) > 0
}

// still is by how much [unit of the meter] a check may move and count as not
// moving: a quarter of a third of a division, which is what a reduced experiment
// may err, and no less than a 16th of how far one reading lies off, which adds a
// 256th to its variance.
func still(m *inspect.Meter) float64 {
	off := math.Sqrt(float64(m.Sigma*m.Sigma)+float64(m.Bias*m.Bias)) / 16
	if len(m.Words) > 0 {
		return off
	}
	return max(m.Division/3/4, off)
}

// value is a check's answer at a point, made once. The error is only that it
// was cancelled.
func (w *rowWork) value(c, i int) (float64, error) {
	if w.have[i] {
		return w.values[i], nil
	}
	if !w.made[i] {
		if err := w.ctx.Err(); err != nil {
			return 0, err
		}
		w.make(i) // a car that cannot exist gives no answer
	}
	w.have[i], w.values[i] = true, math.NaN()
	if world := w.worlds[i]; world != nil {
		w.values[i] = measure(w.t.checks[c], world, w.t.problem.Checks[c])
	}
	return w.values[i], nil
}

// make builds the world of a point; both ends of an axis, which lie equally far out.
func (w *rowWork) make(i int) error {
	pts := w.t.points
	w.made[i], w.pull[i] = true, 1
	if pts[i].axis < 0 {
		var err error
		w.worlds[i], err = w.build(i)
		return err
	}
	plus, minus := i-(i+1)%2, i+i%2
	w.made[plus], w.made[minus] = true, true
	w.pull[plus] = 1
	w.worlds[plus], _ = w.build(plus)
	w.pull[minus] = w.pull[plus]
	w.worlds[minus], _ = w.build(minus)
	if w.pull[minus] < w.pull[plus] {
		w.pull[plus] = w.pull[minus]
		w.worlds[plus], _ = w.build(plus)
	}
	return nil
}

// build makes the world at pull·b and brings it nearer to the centre while the
// physics refuses the car there.
func (w *rowWork) build(i int) (*inspect.World, error) {
	b := w.t.points[i].b
	at := make([]float64, len(b))
	var err error
	for range pulls {
		for j := range b {
			at[j] = w.pull[i] * b[j]
		}
		var world *inspect.World
		if world, err = w.t.problem.Build(w.h, at); err == nil {
			return world, nil
		}
		w.pull[i] /= 2
	}
	return nil, err
}

// measure is a check's answer in its meter's unit, or NaN.
func measure(c *inspect.Check, w *inspect.World, inst inspect.Instance) float64 {
	v, err := c.Measure(w, inst.Wheel)
	if err != nil {
		return math.NaN()
	}
	if c.Meter.PerUnit > 0 {
		v /= c.Meter.PerUnit
	}
	return v
}
