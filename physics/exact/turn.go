package exact

import "math"

const twoPi = 6.28318530717958647692528676655900577

// CosTurn returns the cosine of t turns (2π·t radians). Quarter turns are exact.
func CosTurn(t float64) float64 {
	u := math.Abs(t - math.Floor(t+0.5)) // 0 … ½
	switch {
	case u <= 0.125:
		return cosine(u)
	case u < 0.375:
		return sine(0.25 - u)
	}
	return -cosine(0.5 - u)
}

// SinTurn returns the sine of t turns. Quarter turns are exact.
func SinTurn(t float64) float64 {
	u := t - math.Floor(t+0.5) // −½ … ½
	sign := 1.0
	if u < 0 {
		u, sign = -u, -1
	}
	switch {
	case u <= 0.125:
		return sign * sine(u)
	case u < 0.375:
		return sign * cosine(0.25-u)
	}
	return sign * sine(0.5-u)
}

// cosine and sine are the Taylor series for |t| ≤ 1/8 turn; the terms left out
// are below 1e-17.
func cosine(t float64) float64 {
	a := twoPi * t
	z := -float64(a * a)
	s := inverse[16]
	for n := 14; n >= 0; n -= 2 {
		s = float64(s*z) + inverse[n]
	}
	return s
}

func sine(t float64) float64 {
	a := twoPi * t
	z := -float64(a * a)
	s := inverse[17]
	for n := 15; n >= 1; n -= 2 {
		s = float64(s*z) + inverse[n]
	}
	return a * s
}
