package exact

import "math"

// Rational approximations of the error function by intervals. The coefficients
// are those published with the freely usable FreeBSD msun library, s_erf.c
// (© 1993 Sun Microsystems), stated there to err by less than 1 unit in the last
// place; index n belongs to the n-th power.
const erx = 8.45062911510467529297e-01 // erf(1) to single precision

var (
	erfP  = [...]float64{1.28379167095512558561e-01, -3.25042107247001499370e-01, -2.84817495755985104766e-02, -5.77027029648944159157e-03, -2.37630166566501626084e-05}
	erfQ  = [...]float64{1, 3.97917223959155352819e-01, 6.50222499887672944485e-02, 5.08130628187576562776e-03, 1.32494738004321644526e-04, -3.96022827877536812320e-06}
	erfPA = [...]float64{-2.36211856075265944077e-03, 4.14856118683748331666e-01, -3.72207876035701323847e-01, 3.18346619901161753674e-01, -1.10894694282396677476e-01, 3.54783043256182359371e-02, -2.16637559486879084300e-03}
	erfQA = [...]float64{1, 1.06420880400844228286e-01, 5.40397917702171048937e-01, 7.18286544141962662868e-02, 1.26171219808761642112e-01, 1.36370839120290507362e-02, 1.19844998467991074170e-02}
	erfRA = [...]float64{-9.86494403484714822705e-03, -6.93858572707181764372e-01, -1.05586262253232909814e+01, -6.23753324503260060396e+01, -1.62396669462573470355e+02, -1.84605092906711035994e+02, -8.12874355063065934246e+01, -9.81432934416914548592e+00}
	erfSA = [...]float64{1, 1.96512716674392571292e+01, 1.37657754143519042600e+02, 4.34565877475229228821e+02, 6.45387271733267880336e+02, 4.29008140027567833386e+02, 1.08635005541779435134e+02, 6.57024977031928170135e+00, -6.04244152148580987438e-02}
	erfRB = [...]float64{-9.86494292470009928597e-03, -7.99283237680523006574e-01, -1.77579549177547519889e+01, -1.60636384855821916062e+02, -6.37566443368389627722e+02, -1.02509513161107724954e+03, -4.83519191608651397019e+02}
	erfSB = [...]float64{1, 3.03380607434824582924e+01, 3.25792512996573918826e+02, 1.53672958608443695994e+03, 3.19985821950859553908e+03, 2.55305040643316442583e+03, 4.74528541206955367215e+02, -2.24409524465858183362e+01}
)

// poly is Horner's rule with every product wrapped.
func poly(c []float64, x float64) float64 {
	s := c[len(c)-1]
	for i := len(c) - 2; i >= 0; i-- {
		s = float64(s*x) + c[i]
	}
	return s
}

// tail is erfc(x) for x ≥ 1.25.
func tail(x float64) float64 {
	s := 1 / float64(x*x)
	var ratio float64
	if x < 1/0.35 {
		ratio = poly(erfRA[:], s) / poly(erfSA[:], s)
	} else {
		ratio = poly(erfRB[:], s) / poly(erfSB[:], s)
	}
	// x² is taken apart so that its rounding does not reach the exponent.
	z := math.Float64frombits(math.Float64bits(x) & 0xffffffff00000000)
	return Exp(-float64(z*z)-0.5625) * Exp(float64((z-x)*(z+x))+ratio) / x
}

// Erf returns the error function 2/√π·∫₀ˣ e^(−t²) dt.
func Erf(x float64) float64 {
	a := math.Abs(x)
	switch {
	case x != x:
		return x
	case a < 0.84375:
		z := float64(x * x)
		return x + float64(x*(poly(erfP[:], z)/poly(erfQ[:], z)))
	case a < 1.25:
		return math.Copysign(erx+poly(erfPA[:], a-1)/poly(erfQA[:], a-1), x)
	case a >= 6:
		return math.Copysign(1, x)
	}
	return math.Copysign(1-tail(a), x)
}

// Erfc returns 1 − erf(x) without loss in the right tail; it is 0 above 28.
func Erfc(x float64) float64 {
	a := math.Abs(x)
	switch {
	case x != x:
		return x
	case a < 0.25:
		return 1 - Erf(x)
	case x < 0:
		return 1 + Erf(a)
	case x < 0.84375:
		z := float64(x * x)
		y := poly(erfP[:], z) / poly(erfQ[:], z)
		return 0.5 - (x - 0.5 + float64(x*y))
	case x < 1.25:
		return 1 - erx - poly(erfPA[:], x-1)/poly(erfQA[:], x-1)
	case x > 28:
		return 0
	}
	return tail(x)
}
