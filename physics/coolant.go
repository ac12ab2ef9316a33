package physics

// CoolantDensity is the density [kg/m³] of ethylene glycol in water, share x [1]
// by mass, at t [°C]: a polynomial in T − 304.878 K and x − 0.308462, good to
// 0.1 % for −20 to 100 °C and x to 0.6.
//
// Source: Å. Melinder, "Properties of Secondary Working Fluids for Indirect
// Systems", IIR (2010); coefficients as kept in CoolProp, MEG.json.
func CoolantDensity(x, t float64) float64 { return mixture(&coolantDensity, x, t) }

// CoolantHeat is its specific heat [J/(kg·K)]; source as [CoolantDensity].
func CoolantHeat(x, t float64) float64 { return mixture(&coolantHeat, x, t) }

// CoolantFreezing is where it begins to freeze [°C]; source as [CoolantDensity].
func CoolantFreezing(x float64) float64 {
	return horner(coolantFreezing[:], x-glycolBase) - freezing
}

const (
	glycolBase = 0.308462 // [1] by mass
	kelvinBase = 304.878  // [K]
)

// Rows by power of T − kelvinBase, columns by power of x − glycolBase.
var (
	coolantDensity = [4][6]float64{
		{1034, 131.1, 0.749, -106.2, -96.23, 489.1},
		{-0.4781, -0.6876, 0.7855, 1.229, -7.211, 0},
		{-2.692e-3, 4.805e-3, -3.995e-3, -1.153e-2, 0, 0},
		{4.725e-6, 1.69e-6, 4.982e-5, 0, 0, 0},
	}
	coolantHeat = [4][6]float64{
		{3737, -1799, -993.3, 2610, 1537, -16180},
		{2.93, 10.46, 3.516, -1.189, -42.72, 0},
		{-4.675e-3, -4.147e-2, 5.109e-2, -0.1643, 0, 0},
		{-1.389e-5, 1.847e-5, -7.138e-4, 0, 0, 0},
	}
	coolantFreezing = [6]float64{257.9, -80.8, -133.4, -72.93, 100.6, 11.4}
)

func mixture(c *[4][6]float64, x, t float64) float64 {
	var byT [4]float64
	for i := range c {
		byT[i] = horner(c[i][:], x-glycolBase)
	}
	return horner(byT[:], t+freezing-kelvinBase)
}

// horner is c₀ + c₁·x + c₂·x² + …
func horner(c []float64, x float64) float64 {
	y := 0.0
	for i := len(c) - 1; i >= 0; i-- {
		y = float64(y*x) + c[i]
	}
	return y
}
