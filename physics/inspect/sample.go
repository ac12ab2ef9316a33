package inspect

import (
	"math"

	"evenwear/physics/exact"
)

// Sample is one look at the meter before a true value [SI]. Luck is an
// argument: bias and z are standard normals (bias the same for every look
// through one instrument), slip and slipAt are uniform on [0, 1).
//
// value is what is drawn [unit], never rounded, kept within Lo and Hi; display
// is what a faultless eye writes down.
func (m *Meter) Sample(truth, bias, z, slip, slipAt float64) (value float64, display int64) {
	if slip < m.Slip {
		lo, hi := m.steps()
		n := min(lo+int64(math.Floor(slipAt*float64(m.Cells()))), hi)
		return m.Value(n), n
	}
	v := truth/m.PerUnit + float64(m.Bias*bias) + float64(m.Sigma*z)
	v = min(max(v, m.Lo), m.Hi)
	return v, m.Show(v)
}

// Prob is the probability that the meter shows a display before a true value
// [SI] when the instrument reads beta [unit] too high and the truth itself is
// uncertain with variance extraVar [unit²]. It is the exact counterpart of
// [Meter.Sample]: over all displays it sums to 1.
func (m *Meter) Prob(display int64, truth, beta, extraVar float64) float64 {
	if !m.Has(display) {
		return 0
	}
	from, to := m.Edges(display)
	mean := truth/m.PerUnit + beta
	spread := math.Sqrt(float64(m.Sigma*m.Sigma) + max(0, extraVar))
	p := between(from-mean, to-mean, spread)
	return float64((1-m.Slip)*p) + m.Slip/float64(m.Cells())
}

// between is the probability that a normal of mean 0 and this spread falls in
// [from, to). It works in the nearer tail, where differences of erfc keep their
// digits.
func between(from, to, spread float64) float64 {
	if spread == 0 {
		if from <= 0 && 0 < to {
			return 1
		}
		return 0
	}
	if from+to < 0 || math.IsInf(from, -1) {
		from, to = -to, -from // mirror, so that the interval lies to the right
	}
	a, b := from/(spread*math.Sqrt2), to/(spread*math.Sqrt2)
	return max(0, (tail(a)-tail(b))/2)
}

// tail is erfc with its limits, so that the open ends of a scale need no care.
func tail(x float64) float64 {
	switch {
	case math.IsInf(x, 1):
		return 0
	case math.IsInf(x, -1):
		return 2
	}
	return exact.Erfc(x)
}
