package exact

import "math"

const (
	ln2Hi = 6.93147180369123816490e-01 // the first 33 bits of ln 2, so that k·ln2Hi is exact
	ln2Lo = 1.90821492927058770002e-10 // the rest
	invLn = 1.44269504088896338700e+00 // 1/ln 2
)

// inverse factorials 1/n!
var inverse = [...]float64{1, 1, 1.0 / 2, 1.0 / 6, 1.0 / 24, 1.0 / 120, 1.0 / 720, 1.0 / 5040, 1.0 / 40320, 1.0 / 362880,
	1.0 / 3628800, 1.0 / 39916800, 1.0 / 479001600, 1.0 / 6227020800, 1.0 / 87178291200, 1.0 / 1307674368000,
	1.0 / 20922789888000, 1.0 / 355687428096000}

// Exp returns e^x.
//
//	x = k·ln 2 + r, |r| ≤ ½ ln 2;  e^x = 2^k·Σ rⁿ/n!  to n = 13
//
// The series leaves 5e-18. Exp is 0 below −745.2 and +Inf above 709.78.
func Exp(x float64) float64 {
	switch {
	case x != x:
		return x
	case x > 709.782712893384:
		return math.Inf(1)
	case x < -745.1332191019412:
		return 0
	}
	k := math.Floor(float64(x*invLn) + 0.5)
	hi := x - float64(k*ln2Hi)
	lo := float64(k * ln2Lo)
	r := hi - lo
	tail := (hi - r) - lo // what rounding r lost
	s := inverse[13]
	for n := 12; n >= 2; n-- {
		s = float64(s*r) + inverse[n]
	}
	y := 1 + (r + (float64(s*r*r) + tail))
	return math.Ldexp(y, int(k))
}

// Log returns the natural logarithm of x; NaN below zero, −Inf at zero.
//
//	x = 2^k·m, √½ ≤ m < √2;  s = (m − 1)/(m + 1);  ln m = 2s·Σ s²ⁿ/(2n + 1)  to n = 11
func Log(x float64) float64 {
	k, hi, lo := logParts(x)
	if k != k {
		return hi
	}
	return float64(k*ln2Hi) + (hi + (lo + float64(k*ln2Lo)))
}

// logParts returns ln x = k·ln 2 + hi + lo; k is NaN when hi alone is the answer.
func logParts(x float64) (k, hi, lo float64) {
	switch {
	case x != x || x < 0:
		return math.NaN(), math.NaN(), 0
	case x == 0:
		return math.NaN(), math.Inf(-1), 0
	case x > math.MaxFloat64:
		return math.NaN(), x, 0
	}
	m, e := math.Frexp(x)
	if m < math.Sqrt2/2 {
		m *= 2
		e--
	}
	f := m - 1
	s := f / (2 + f)
	z := s * s
	sum := 1.0 / 23
	for n := 10; n >= 1; n-- {
		sum = float64(sum*z) + 1/float64(2*n+1)
	}
	// ln m = 2s + 2s·z·sum; 2s = f − s·f keeps the leading digits of f.
	return float64(e), f, float64(2*s*z*sum) - float64(s*f)
}

// Pow returns x^y for x ≥ 0; NaN for x < 0.
//
//	x^y = e^(y·ln x), the product carried in two parts
func Pow(x, y float64) float64 {
	switch {
	case y == 0 || x == 1:
		return 1
	case x == 0 && y > 0:
		return 0
	case x == 0:
		return math.Inf(1)
	case math.IsInf(x, 1) && y > 0:
		return x
	}
	k, hi, lo := logParts(x)
	if k != k {
		return math.NaN()
	}
	a := float64(k * ln2Hi)
	b := lo + float64(k*ln2Lo)
	sum := a + hi
	part := sum - a
	b += (a - (sum - part)) + (hi - part) // what rounding a + hi lost
	part = sum
	sum += b
	b -= sum - part
	// y·sum exactly, as two floats: split both into halves of 26 bits.
	p := float64(y * sum)
	if math.Abs(p) > 800 {
		return Exp(p)
	}
	yh, yl := split(y)
	sh, sl := split(sum)
	low := ((float64(yh*sh) - p) + float64(yh*sl) + float64(yl*sh)) + float64(yl*sl)
	low += float64(y * b)
	e := Exp(p)
	return e + float64(e*low)
}

// split returns x = hi + lo with at most 26 bits each.
func split(x float64) (hi, lo float64) {
	c := float64(134217729 * x)
	hi = c - (c - x)
	return hi, x - hi
}
