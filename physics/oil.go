package physics

import (
	"math"

	"evenwear/physics/exact"
)

// OilShrink is the volume at 15 °C of what fills 1 at t [°C] [1]; rho is the
// oil's density [kg/m³] at 15 °C.
//
//	VCF = exp(−α·Δ·(1 + 0.8·α·Δ)),  α = 0.6278/ρ₁₅,  Δ = t − 15
//
// Source: ISO 91-1, ASTM D1250 table 54D (K₀ 0, K₁ 0.6278), lubricating oils.
func OilShrink(rho, t float64) float64 {
	a := float64(0.6278 / rho * (t - 15))
	return exact.Exp(-a - float64(0.8*a*a))
}

// oilViscosity is the kinematic viscosity [m²/s] at t [°C] through its values at
// 40 and 100 °C (Walther; ASTM D341).
func (o *OilSpec) oilViscosity(t float64) float64 {
	walther := func(nu float64) float64 { return exact.Log(exact.Log(float64(nu*1e6) + 0.7)) }
	at := func(c float64) float64 { return exact.Log((c + freezing) / (40 + freezing)) }
	warm := walther(o.Viscosity40)
	y := warm + float64((walther(o.Viscosity100)-warm)*(at(t)/at(100)))
	return (exact.Exp(exact.Exp(y)) - 0.7) * 1e-6
}

// aloft is the oil [m³] that still hangs in an engine s seconds after it
// stopped, at t [°C]: what the running pump held up, running down the walls as
// a film whose thickness a height z below its top is √(ν·z/(g·s)), over all of
// the wetted area and height
//
//	V = ⅔·S·√(ν·L/(g·s))
//
// never more than was held up. Source of the film: H. Jeffreys, "The draining of
// a vertical plate", Proc. Camb. Phil. Soc. 26 (1930) 204.
func (o *OilSpec) aloft(s, t float64) float64 {
	if s <= 0 {
		return o.Aloft
	}
	film := o.WettedArea * 2 / 3 * math.Sqrt(o.oilViscosity(t)*o.WettedHeight/(Gravity*s))
	return min(o.Aloft, film)
}
