package inspect

import "math"

func erfc(x float64) float64 { return math.Erfc(x) }
