package physics

import (
	"math"

	"evenwear/physics/exact"
)

const (
	gasConstant   = 8.314462 // [J/(mol·K)] exact to the digits shown; 26th CGPM (2018)
	steamLatent   = 2.26e6   // [J/kg] what boils is mostly water
	steamMolar    = 0.018    // [kg/mol]
	wetPoint      = 0.037    // [1] water by mass of the stated wet boiling point; 49 CFR 571.116 S6.2
	waterScale    = 0.03     // [1] water over which the fall flattens; assumed
	softening     = 0.004    // [1/K] growth of compressibility with temperature; assumed
	steamStart    = 1 / (steamLatent * steamMolar / gasConstant)
	leastAbsolute = 500.0 // [Pa] below which no tension is followed: the fluid has long boiled
)

// BoilingPoint is where the fluid boils [°C] with water w [1] by mass at gauge
// pressure p [Pa].
//
//	T(w)   = dry − (dry − wet)·(1 − e^(−w/w₀))/(1 − e^(−3.7 %/w₀))   steep first
//	1/T(p) = 1/T − R/(L·M)·ln((p + p_atm)/p_atm)                     Clausius–Clapeyron, T in kelvin
//
// w₀ 3 % (assumed); L 2.26 MJ/kg and M 0.018 kg/mol of water. Both ends are the stated
// values; between them it errs by up to 8 K at 1 % of water against the trade's figures
// (OC-M9, from memory).
func (f *FluidSpec) BoilingPoint(w, p float64) float64 {
	share := (1 - exact.Exp(-w/waterScale)) / (1 - exact.Exp(-wetPoint/waterScale))
	t := f.DryBoil - float64((f.DryBoil-f.WetBoil)*share) + freezing
	return boilAt(t, p) - freezing
}

// Boiling points of the lowest grade still sold [°C]; 49 CFR 571.116 S5.1.1, S5.1.2: DOT 3.
const (
	lowestDry = 205
	lowestWet = 140
)

// Mixed is the fluid with a share of the lowest grade in it: the boiling points of
// glycol ethers mix in proportion (assumed), and mixing raises none.
func (f FluidSpec) Mixed(share float64) FluidSpec {
	f.DryBoil += float64(share * min(0, lowestDry-f.DryBoil))
	f.WetBoil += float64(share * min(0, lowestWet-f.WetBoil))
	return f
}

// boilAt raises a boiling point [K] at one atmosphere to gauge pressure p.
func boilAt(atm, p float64) float64 {
	return 1 / (1/atm - float64(steamStart*exact.Log(absolute(p)/Atmosphere)))
}

func absolute(p float64) float64 { return max(leastAbsolute, p+Atmosphere) }

// ViscosityAt is the kinematic viscosity [m²/s] at t [°C] through the two stated
// values, straight in ln ln(ν + 0.7 mm²/s) over ln T (Walther; ASTM D341).
func (f *FluidSpec) ViscosityAt(t float64) float64 {
	walther := func(nu float64) float64 { return exact.Log(exact.Log(float64(nu*1e6) + 0.7)) }
	at := func(c float64) float64 { return exact.Log((c + freezing) / (roomAir + freezing)) }
	room := walther(f.Viscosity)
	y := room + float64((walther(f.ViscosityC)-room)*(at(t)/at(-40)))
	return (exact.Exp(exact.Exp(y)) - 0.7) * 1e-6
}

// vapour is the volume [m³] boiled off v of fluid at t [°C] and gauge pressure p,
// and its derivative by p. All heat above the boiling point has gone into it:
//
//	m_v = ρ·v·c·(T − T_b(p))/L,  V = m_v·R·T/(M·p_abs), at most v
//
// It is a function of the present state only, so it comes and goes.
func (m *Model) vapour(v, t, p float64) (vol, slope float64) {
	kelvin := t + freezing
	if kelvin <= m.boil && p >= 0 || kelvin < 280 && p > -90e3 {
		return 0, 0
	}
	f := &m.spec.Fluid
	tb := boilAt(m.boil, p)
	if kelvin <= tb {
		return 0, 0
	}
	abs := absolute(p)
	perKelvin := f.Density * v * f.Heat / steamLatent * gasConstant * kelvin / (steamMolar * abs)
	vol = perKelvin * (kelvin - tb)
	if vol >= v {
		return v, 0
	}
	if p+Atmosphere <= leastAbsolute {
		return vol, 0
	}
	return vol, -float64(perKelvin*tb*tb*steamStart/abs) - vol/abs
}

const (
	gasGamma = 1.4            // [1] air, squeezed faster than it can lose heat
	gasShare = 1 - 1/gasGamma // exponent of temperature over pressure
	gasCool  = 0.3            // [s] in which a bubble loses its heat to the fluid; assumed
)

// gas is the volume of air [m³ at one atmosphere] at gauge pressure p, dt after
// pressure was from, and its derivative. Squeezed at once it follows p·V^1.4;
// its heat then leaves within gasCool, so what is held follows p·V. warm is the
// excess of its absolute temperature, over room temperature.
//
//	1 + w' = (1 + w)·(P/P₀)^(1 − 1/1.4),  w = w'/(1 + dt/τ),  V = V_atm·(P_atm/P)·(1 + w)
func gas(air, warm, from, p, dt float64) (vol, slope, next float64) {
	if air <= 0 {
		return 0, 0, 0
	}
	abs := absolute(p)
	hot := float64((1 + warm) * exact.Pow(abs/absolute(from), gasShare))
	keep := 1 / (1 + dt/gasCool)
	next = float64((hot - 1) * keep)
	cold := air * Atmosphere / abs
	vol = cold * (1 + next)
	slope = -vol/abs + float64(cold*keep*hot*gasShare)/abs
	return vol, slope, next
}

// orifice returns the flow [m³/s] through an area [m²] at pressure p, C_d·A·√(2p/ρ),
// and its derivative. Below smooth [Pa] it is laminar, straight in p, as every
// real hole's is; above 1000·smooth the difference is below 0.05 %.
func orifice(area, p, density, smooth float64) (q, slope float64) {
	if area <= 0 {
		return 0, 0
	}
	a := math.Abs(p) + smooth
	c := dischargeCoefficient * area * math.Sqrt(2/density)
	root := math.Sqrt(a)
	return c * p / root, c * (1 - math.Abs(p)/(2*a)) / root
}

// throttled is an orifice [m²] with a laminar resistance [Pa·s/m³] in series: the
// flow, its derivative by p, and the share of p that the orifice itself takes.
func throttled(area, p, density, smooth, series float64) (q, slope, share float64) {
	if q, slope = orifice(area, p, density, smooth); series <= 0 || area <= 0 {
		return q, slope, 1
	}
	a := math.Abs(p) + smooth
	own := math.Sqrt(a*density/2) / (dischargeCoefficient * area)
	all := own + series
	return p / all, (1 - float64(math.Abs(p)*own/(2*a*all))) / all, own / all
}

// hollow is the void [m³] that opens where fluid is pulled below what it can
// bear, and its derivative: no tension, so the pressure stays within a few
// thousand pascal of vacuum however large the void.
func hollow(p float64) (vol, slope float64) {
	if d := voidPressure - p; d > 0 {
		return d * voidGrowth, -voidGrowth
	}
	return 0, 0
}

const (
	voidPressure = 3e3 - Atmosphere // [Pa]
	voidGrowth   = 1e-9             // [m³/Pa] 1 cm³ a kilopascal; no answer depends on it
)

const (
	dischargeCoefficient = 0.6 // [1] sharp-edged hole; common practice, no source
	leakSmooth           = 100 // [Pa]
	portSmooth           = 1e3 // [Pa]
)
