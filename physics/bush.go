package physics

// The rubber bush in which a guide pin slides, of usual size. Those without a
// source are assumed.
const (
	bushPin    = 10 * Millimetre // [m] diameter of the pin
	bushLength = 20 * Millimetre // [m]
	bushWall   = 2 * Millimetre  // [m] between pin and bore
	bushRubber = 4e6             // [Pa] Young's modulus of rubber of 60 IRHD; Lindley's table gives 4.45 MPa, from memory
	bushSlip   = 0.2             // [1] friction of steel on greased rubber
	pinchMost  = 1e-3            // [m] interference with which a pin can still be pushed in
)

// BushGrip is the force [N] at which a pin slides that is thicker, by over [m] on
// the diameter, than the hole of its rubber bush:
//
//	E_a = 4/3·E·(1 + (l/4t)²)     wall of length l, thickness t: held by its bore, sliding on the pin  [Pa]
//	p   = E_a·(over/2)/t          radial pressure                                                       [Pa]
//	F   = μ·p·π·d·l               grease is in μ: no cleaning makes the bush wider
//
// E_a is the strip of rubber of Gent & Lindley (Proc. IMechE 173, 1959, 111, from
// memory) between two plates it is bonded to, 4/3·E·(1 + (l/2h)²), of twice the
// height: half of it ends where nothing drags on it. About 1.2 kN a millimetre.
// Error: the wall is straight, not round (t/d 0.2), so a fifth. How far the pin
// gives before it slides is its rate, as in a bush that fits.
func BushGrip(over float64) float64 {
	const shape = bushLength / (4 * bushWall)
	const modulus = 4.0 / 3 * bushRubber * (1 + shape*shape)
	const perMetre = bushSlip * modulus / (2 * bushWall) * pi * bushPin * bushLength
	return float64(perMetre * max(0, over)) // it is added where it is inlined
}

// PinGrip is what a pin's sliding force has grown by since it was new [N], upper or
// lower: what lies on the pin, and what its bush squeezes it with.
func (c *WheelCondition) PinGrip(pin int) float64 {
	return c.PinFriction[pin] + BushGrip(c.PinPinch[pin])
}
