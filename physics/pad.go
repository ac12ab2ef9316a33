package physics

// An AnnularPad is a pad cut from a ring, pressed on one face of a disc. Its
// centre of pressure depends on how it is bedded:
//
//	uniform pressure (new)   p constant     F = θ·p·(r_o² − r_i²)/2     r_e = ⅔·(r_o³ − r_i³)/(r_o² − r_i²)
//	uniform wear (bedded)    p·r constant   F = θ·p_a·r_i·(r_o − r_i)   r_e = (r_o + r_i)/2
//
// Either way one face gives T = μ·F·r_e. A bedded pad is the default of a car.
// Source: annular-pad mathematics, found in any machine-design text.
type AnnularPad struct {
	Angle        float64 // [rad] seen from the wheel axis, at most π
	Inner, Outer float64 // [m] radii
}

// WornRadius is r_e [m] of a pad that wears evenly.
func (a AnnularPad) WornRadius() float64 { return (a.Outer + a.Inner) / 2 }

// NewRadius is r_e [m] of a pad that presses evenly.
func (a AnnularPad) NewRadius() float64 {
	o2, i2 := float64(a.Outer*a.Outer), float64(a.Inner*a.Inner)
	return 2.0 / 3 * (float64(o2*a.Outer) - float64(i2*a.Inner)) / (o2 - i2)
}

// WornForce is the clamp force [N] whose greatest pressure is peak [Pa], at
// the inner edge of a pad that wears evenly.
func (a AnnularPad) WornForce(peak float64) float64 {
	return a.Angle * peak * a.Inner * (a.Outer - a.Inner)
}

// NewForce is the clamp force [N] of an even pressure [Pa].
func (a AnnularPad) NewForce(pressure float64) float64 {
	return a.Angle * pressure * (float64(a.Outer*a.Outer) - float64(a.Inner*a.Inner)) / 2
}

// PistonRadius is how far from the wheel axis [m] the piston must push so that
// the pad does not tip: r_e·sin(θ/2)/(θ/2), the centroid of the pressure.
func (a AnnularPad) PistonRadius(effective float64) float64 {
	return effective * sinc(a.Angle/2)
}

// sinc is sin(x)/x for |x| ≤ π/2 by its series; the last term is below 1e-16.
func sinc(x float64) float64 {
	x2 := x * x
	sum := 1.0
	for k := 20; k >= 2; k -= 2 {
		sum = 1 - float64(x2*sum/float64(k*(k+1)))
	}
	return sum
}
