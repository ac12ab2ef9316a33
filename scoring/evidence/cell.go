package evidence

import (
	"math"

	"evenwear/physics/inspect"
)

// chance returns the probability that a normal value of mean mu and variance v
// is shown as display when it is no slip, with the first and second derivative
// of its logarithm by mu. Cancellation is avoided by taking the smaller tails.
func chance(m *inspect.Meter, display int64, mu, v float64) (p, d1, d2 float64) {
	lo, hi := m.Edges(display)
	s := math.Sqrt(max(v, leastVariance))
	a, b := (lo-mu)/s, (hi-mu)/s
	if p = between(a, b); p <= leastProb {
		return leastProb, 0, 0 // so far out that the digits are gone; a slip explains it better
	}
	pa, pb, apa, bpb := 0.0, 0.0, 0.0, 0.0
	if !math.IsInf(a, 0) {
		pa = density(a)
		apa = a * pa
	}
	if !math.IsInf(b, 0) {
		pb = density(b)
		bpb = b * pb
	}
	d1 = (pa - pb) / (s * p)
	d2 = (apa-bpb)/(s*s*p) - float64(d1*d1)
	// A cell is log-concave: the variance can only shrink, never below nothing.
	return p, d1, min(0, max(d2, -1/(s*s)))
}

// leastVariance [unit²] keeps a meter without any error from dividing by zero.
const leastVariance = 1e-18

// between is Φ(b) − Φ(a) for a ≤ b.
func between(a, b float64) float64 {
	if a > 0 {
		a, b = -b, -a
	}
	if b > 0 { // both tails are taken away from one
		return 1 - float64(0.5*erfc(-a/sqrt2)) - float64(0.5*erfc(b/sqrt2))
	}
	return float64(0.5*erfc(-b/sqrt2)) - float64(0.5*erfc(-a/sqrt2))
}
