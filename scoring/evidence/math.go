package evidence

import "evenwear/physics/exact"

func exp(x float64) float64  { return exact.Exp(x) }
func log(x float64) float64  { return exact.Log(x) }
func erfc(x float64) float64 { return exact.Erfc(x) }

const (
	ln2       = 0.693147180559945309417232121458176568
	sqrt2     = 1.41421356237309504880168872420969808
	sqrt2Pi   = 2.50662827463100050241576528481104525
	sqrt3     = 1.73205080756887729352744634150587237
	leastProb = 1e-300 // a likelihood never falls below it, so that logs stay finite
)

// log2 is the binary logarithm.
func log2(x float64) float64 { return log(x) / ln2 }

// density is the standard normal density.
func density(x float64) float64 { return exp(-0.5*x*x) / sqrt2Pi }
