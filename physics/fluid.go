package physics

import (
	"math"

	"evenwear/physics/exact"
)

// gasExponent of pVⁿ for free air in the fluid: between isothermal (1) and
// adiabatic (1.4), the same at every step length so that a 1 s step and a
// thousand 1 ms steps tell one story. Assumed.
const gasExponent = 1.2

// Discharge is the coefficient of an orifice with sharp edges [1].
const Discharge = 0.6

// vapourFloor is the absolute pressure a gas pocket never falls below [Pa].
const vapourFloor = 2000

// GasVolume is the volume [m³] of free gas that fills v0 at one atmosphere when
// its gauge pressure is p [Pa]: (p + p_atm)·Vⁿ = const.
func GasVolume(v0, p, n float64) float64 {
	if v0 == 0 {
		return 0
	}
	r := Atmosphere / max(vapourFloor, p+Atmosphere)
	if n == 1 {
		return v0 * r
	}
	return v0 * exact.Pow(r, 1/n)
}

// gas returns the volume given up by free gas since one atmosphere and how it grows with pressure.
func gas(v0, p float64) (given, slope float64) {
	if v0 == 0 {
		return 0, 0
	}
	v := GasVolume(v0, p, gasExponent)
	abs := max(vapourFloor, p+Atmosphere)
	return v0 - v, v / (gasExponent * abs)
}

// jet is the flow [m³/s] through an orifice of area a [m²] from gauge pressure p
// to air, C_d·A·√(2p/ρ), and its slope. Below softJet the root is made straight,
// so that its slope stays finite.
func jet(a, p, density float64) (flow, slope float64) {
	if a == 0 {
		return 0, 0
	}
	k := float64(Discharge * a * math.Sqrt(2/density))
	mag := math.Abs(p)
	if mag < softJet {
		s := k / math.Sqrt(softJet)
		return s * p, s
	}
	root := math.Sqrt(mag)
	return math.Copysign(k*root, p), k / (2 * root)
}

const softJet = 500 // [Pa]

// Viscosity of the fluid [m²/s] at t [°C]: log-linear in 1/T through the two
// given points (Andrade's law).
func (f *FluidSpec) kinematic(t float64) float64 {
	if f.Viscosity <= 0 || f.ViscosityC <= 0 {
		return f.Viscosity
	}
	const cold, warm = 1 / (273.15 - 40), 1 / (273.15 + 20)
	share := (1/(273.15+max(t, -60)) - warm) / (cold - warm)
	return f.Viscosity * exact.Exp(float64(share*exact.Log(f.ViscosityC/f.Viscosity)))
}
