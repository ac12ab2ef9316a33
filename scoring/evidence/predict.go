package evidence

import (
	"math"

	"evenwear/physics/inspect"
)

// maxBins is the greatest number of bins a meter's displays are gathered into
// before they are summed over. Gathering can only hide information, never make it.
const maxBins = 40

// A view is what one check would show: live hypotheses under which it looks alike
// share an outlook.
type view struct {
	of      []int32 // by live hypothesis: its outlook
	outlook []outlook
}

// An outlook is what a check would show under some hypotheses.
type outlook struct {
	mean, variance float64 // [unit, unit²] of what stands before the meter; mean NaN: no answer
	share          float64 // [1] probability of the hypotheses
	from, to       int16   // bins that no slip is needed for
}

// A forecast is a view by bins of displays.
type forecast struct {
	*view
	bins int
	slip float64   // [1] chance that a slip lands in a bin
	p    []float64 // [outlook][bin], row by row
}

// A seen is the outlook of one kind of fit in one group.
type seen struct {
	kind, group int32 // −1: the group does not matter
	next        int32 // another of the same kind, or group; −1: none
}

// aim looks at check c. It returns false when the check has no computed answer for
// a live hypothesis.
func (s *scout) aim(c int) (*view, bool) {
	p := s.p
	col := p.column(c)
	p.aimAt(c, &p.t.checks[c].Meter)
	// Outlooks of one kind, or of one group, whichever are more, are a list.
	byKind := len(p.state) <= len(col.kind)
	s.head = append(s.head[:0], make([]int32, max(len(p.state), len(col.kind)))...) // 1 + where it begins
	s.sort = s.sort[:0]
	v := &s.views[c]
	if most := min(len(s.hyps), len(p.state)*len(col.kind)); cap(v.outlook) < most {
		v.of, v.outlook = make([]int32, 0, len(s.hyps)), make([]outlook, 0, most)
	}
	v.of, v.outlook = v.of[:0], v.outlook[:0]
	loose := p.aimed.biasAt < 0 && p.aimed.fitAt < 0 // of all coordinates but the background
	for i, h := range s.hyps {
		k, g := col.of[h], s.group[i]
		if k < 0 {
			return v, false
		}
		fit := &col.kind[k]
		if loose && fit.steady || !fit.ok {
			g = -1
		}
		head := &s.head[k]
		if !byKind && g >= 0 {
			head = &s.head[g]
		}
		at := *head - 1
		for at >= 0 && (s.sort[at].kind != k || s.sort[at].group != g) {
			at = s.sort[at].next
		}
		if at < 0 {
			at = int32(len(v.outlook))
			s.sort = append(s.sort, seen{kind: k, group: g, next: *head - 1})
			*head = at + 1
			mean, variance := s.look(fit, g)
			v.outlook = append(v.outlook, outlook{mean: mean, variance: variance})
		}
		v.outlook[at].share += s.prob[i]
		v.of = append(v.of, at)
	}
	return v, true
}

// look is mean and variance [unit, unit²] of what stands before the meter of the
// check aimed at.
func (s *scout) look(fit *kind, group int32) (mean, variance float64) {
	if !fit.ok {
		return math.NaN(), 0
	}
	a := &s.p.aimed
	extra := a.extra
	if a.fitAt < 0 {
		extra += fit.residual
	}
	if group >= 0 {
		g := s.p.whole(int(group))
		if fit.steady && a.fitAt < 0 { // what is left of the sums of along
			mean, variance = float64(a.bias*g.mean[a.biasAt]), max(0, float64(a.bias*a.bias*g.at(a.biasAt, a.biasAt)))
		} else {
			mean, variance = a.along(g, fit.slope[:s.back])
		}
	}
	return mean + fit.mean, max(variance+extra, leastVariance)
}

// bin spreads the outlooks over bins of the meter's displays.
func (f *forecast) bin(m *inspect.Meter) {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range f.outlook {
		if o := &f.outlook[i]; !math.IsNaN(o.mean) {
			far := float64(4 * math.Sqrt(o.variance))
			low, high = min(low, o.mean-far), max(high, o.mean+far)
		}
	}
	f.bins, f.p = 0, f.p[:0]
	if low > high { // nobody has an answer
		return
	}
	first := m.First()
	last := first + int64(m.Cells()) - 1
	from, to := m.Show(low), m.Show(high)
	per := max(1, (to-from+maxBins)/maxBins)
	f.bins = int((to-from)/per) + 1
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
	f.slip = m.Slip / float64(f.bins) // a slip tells nothing wherever it lands
	if n := len(f.outlook) * f.bins; cap(f.p) < n {
		f.p = make([]float64, n)
	} else {
		f.p = f.p[:n]
	}
	for i := range f.outlook {
		f.outlook[i].spread(edge[:f.bins+1], 1-m.Slip, f.slip, f.p[i*f.bins:(i+1)*f.bins])
	}
}

// spread fills row with the chance of each bin, sure of which is no slip.
func (o *outlook) spread(edge []float64, sure, slip float64, row []float64) {
	if math.IsNaN(o.mean) {
		for b := range row {
			row[b] = 1 / float64(len(row))
		}
		o.from, o.to = 0, int16(len(row))
		return
	}
	b, below, dev := 0, 0.0, math.Sqrt(o.variance)
	for start := o.mean - float64(tableReach*dev); b < len(row)-1 && edge[b+1] <= start; b++ {
		row[b] = slip
	}
	for o.from = int16(b); b < len(row) && below < 1; b++ {
		upTo := 1.0
		if b < len(row)-1 {
			upTo = cumulative((edge[b+1] - o.mean) / dev)
		}
		row[b] = slip
		if more := upTo - below; more > 0 {
			row[b] += float64(sure * more)
		}
		below = upTo
	}
	for o.to = int16(b); b < len(row); b++ { // nothing is left
		row[b] = slip
	}
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
