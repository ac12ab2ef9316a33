package scoring

import "evenwear/physics/exact"

// log2 is the binary logarithm.
func log2(x float64) float64 { return exact.Log(x) / 0.693147180559945309417232121458176568 }
