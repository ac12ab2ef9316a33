package evidence

import (
	"math"
	"sort"
)

// liveMass is the posterior mass whose hypotheses are looked at when a check
// is judged beforehand; at most liveMost of them. A hypothesis left out of mass
// δ changes an information by at most δ·log₂(rows) + the entropy of (δ, 1 − δ) bits.
const (
	liveMass = 0.999
	liveMost = 256
)

// live returns the fewest hypotheses that hold liveMass of what is computed,
// likeliest first, ties in the order of the problem, with their probabilities
// scaled to sum to 1, and the mass left out.
func (p *Posterior) live() (hyps []int, prob []float64, left float64) {
	for h, row := range p.rows {
		if row != nil && p.prob[h] > 0 {
			hyps = append(hyps, h)
		}
	}
	sort.SliceStable(hyps, func(a, b int) bool { return p.prob[hyps[a]] > p.prob[hyps[b]] })
	total := 1 - p.missing
	sum := 0.0
	for n, h := range hyps {
		if n == liveMost || sum >= liveMass*total {
			hyps = hyps[:n]
			break
		}
		sum += p.prob[h]
	}
	prob = make([]float64, len(hyps))
	for n, h := range hyps {
		prob[n] = p.prob[h] / sum
	}
	return hyps, prob, max(0, total-sum)
}

// maxBins is the greatest number of bins a meter's displays are gathered into
// before they are summed over. Gathering can only hide information, never make it.
const maxBins = 40

// A forecast is what one check would show: for each live hypothesis the
// probability of each bin of displays.
type forecast struct {
	bins int
	p    []float64 // [hypothesis][bin], row by row
}

// forecast fills f for check c. It returns false when the check has no computed
// answer for a live hypothesis.
func (p *Posterior) forecast(c int, hyps []int, f *forecast) bool {
	m := &p.t.checks[c].Meter
	n := len(hyps)
	var room [2 * liveMost]float64
	mean, dev := room[:n], room[liveMost:liveMost+n]
	low, high := math.Inf(1), math.Inf(-1)
	p.aimAt(c, m)
	if p.columns == nil {
		p.columns = p.t.columnsOf(p.rows)
	}
	col, k := &p.columns.check[c], len(p.t.problem.Background)
	for i, h := range hyps {
		if !col.have[h] {
			return false
		}
		if !col.ok[h] {
			mean[i], dev[i] = math.NaN(), 0
			continue
		}
		mu, v := p.aimed.along(p.whole(h), col.slope[h*k:(h+1)*k])
		extra := p.aimed.extra
		if p.aimed.fitAt < 0 {
			extra += col.residual[h]
		}
		mean[i], dev[i] = mu+col.mean[h], math.Sqrt(max(v+extra, leastVariance))
		low, high = min(low, mean[i]-float64(4*dev[i])), max(high, mean[i]+float64(4*dev[i]))
	}
	first := m.First()
	last := first + int64(m.Cells()) - 1
	if low > high { // nobody has an answer
		f.bins, f.p = 0, f.p[:0]
		return true
	}
	from, to := m.Show(low), m.Show(high)
	per := max(1, (to-from+maxBins)/maxBins)
	f.bins = int((to-from)/per) + 1
	if cap(f.p) < n*f.bins {
		f.p = make([]float64, n*f.bins)
	}
	f.p = f.p[:n*f.bins]
	var edge [maxBins + 1]float64
	for b := range f.bins + 1 {
		at := from + int64(b)*per
		switch {
		case b == 0:
			edge[b] = math.Inf(-1)
		case b == f.bins || at > last:
			edge[b] = math.Inf(1)
		default:
			edge[b], _ = m.Edges(max(at, first))
		}
	}
	slip := m.Slip / float64(f.bins) // a slip tells nothing wherever it lands
	for i := range n {
		row := f.p[i*f.bins : (i+1)*f.bins]
		if math.IsNaN(mean[i]) {
			for b := range row {
				row[b] = 1 / float64(f.bins)
			}
			continue
		}
		if i > 0 && mean[i] == mean[i-1] && dev[i] == dev[i-1] {
			copy(row, f.p[(i-1)*f.bins:])
			continue
		}
		below := 0.0
		for b := range row {
			if below == 1 { // nothing is left
				row[b] = slip
				continue
			}
			upTo := 1.0
			if b < f.bins-1 {
				upTo = cumulative((edge[b+1] - mean[i]) / dev[i])
			}
			row[b] = float64((1-m.Slip)*max(0, upTo-below)) + slip
			below = upTo
		}
	}
	return true
}

// cumulative is Φ(x) from a table with straight lines between its entries:
// off by at most 2e-6, for forecasts only.
func cumulative(x float64) float64 {
	switch {
	case x <= -tableReach:
		return 0
	case x >= tableReach:
		return 1
	}
	at := float64((x + tableReach) * tableSteps)
	i := int(at)
	return phi[i] + float64((at-float64(i))*(phi[i+1]-phi[i]))
}

const (
	tableReach = 6
	tableSteps = 128 // entries a unit: error h²/8·max|Φ''| = 1.9e-6
)

var phi = func() (t [2*tableReach*tableSteps + 2]float64) {
	for i := range t {
		t[i] = 0.5 * erfc(-(float64(float64(i)/tableSteps)-tableReach)/sqrt2)
	}
	return t
}()

// quickLog2 is log₂ x of a positive normal number, from a table with straight
// lines between its entries: off by at most 5e-8, for forecasts only.
func quickLog2(x float64) float64 {
	bits := math.Float64bits(x)
	e := int(bits>>52) - 1022
	f := math.Float64frombits(bits&(1<<52-1) | 1022<<52) // in [½, 1)
	at := float64((f - 0.5) * (2 * logSteps))
	i := int(at)
	return float64(e) + logs[i] + float64((at-float64(i))*(logs[i+1]-logs[i]))
}

const logSteps = 2048 // entries an octave

var logs = func() (t [logSteps + 2]float64) {
	for i := range t {
		t[i] = log2(0.5 + float64(float64(i)/(2*logSteps)))
	}
	t[logSteps] = 0 // exactly, so that equal answers tell nothing
	return t
}()
