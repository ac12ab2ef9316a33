package physics

// Multipliers at the edge of the package, as time.Second is.
const (
	Millimetre      = 1e-3    // [m]
	CubicCentimetre = 1e-6    // [m³]
	SquareCm        = 1e-4    // [m²]
	Megapascal      = 1e6     // [Pa]
	Bar             = 1e5     // [Pa] exact; NIST SP 811 (2008), app. B.8
	Litre           = 1e-3    // [m³]
	KmPerHour       = 1 / 3.6 // [m/s] exact
	Kilometre       = 1e3     // [m]
)

const (
	// Gravity is standard gravity [m/s²], exact; 3rd CGPM (1901).
	Gravity = 9.80665
	// Atmosphere is the standard atmosphere [Pa], exact; 10th CGPM (1954).
	Atmosphere = 101325
)

// A Wheel names one corner of the car and indexes every [4] of this package.
type Wheel int

// The wheels, in the order every array of this package uses.
const (
	FrontLeft Wheel = iota
	FrontRight
	RearLeft
	RearRight
)

// NumWheels is the number of wheels.
const NumWheels = 4

// Front reports whether the wheel is on the front axle.
func (w Wheel) Front() bool { return w < RearLeft }

// Left reports whether the wheel is on the left side.
func (w Wheel) Left() bool { return w == FrontLeft || w == RearLeft }

// Mate is the wheel at the other end of the same axle.
func (w Wheel) Mate() Wheel { return w ^ 1 }

// String is the wheel's name in paths and errors: "front_left".
func (w Wheel) String() string {
	return [NumWheels]string{"front_left", "front_right", "rear_left", "rear_right"}[w]
}

// Inner and Outer index pads; Upper and Lower index halves and pins.
const (
	Inner = 0
	Outer = 1
	Upper = 0
	Lower = 1
)
