package physics

// A Condition says how far a car's parts are from new, and what has been taken
// from or added to it. The zero Condition is a healthy new car, filled to MAX.
type Condition struct {
	Wheels [NumWheels]WheelCondition

	Fluid       float64    // [m³] fluid in the whole system beyond the filling when new (topped up > 0, leaked < 0)
	Water       float64    // [1] water in the fluid by mass
	WaterUptake float64    // [1/month] by which that grows
	BoosterLoss float64    // [1] share of the booster's vacuum that never arrives
	VacuumLeak  float64    // [1/s] rate at which held vacuum decays with the engine off
	CupBypass   [2]float64 // [m³/(s·Pa)] past a worn cup back to the reservoir
	PortCover   [2]float64 // [m] play lost, so that a compensating port stays covered

	Vessels VesselsCondition
}

// WheelCondition is one corner's share of a [Condition].
type WheelCondition struct {
	PinFriction  [2]float64    // [N] added sliding force, upper and lower pin
	PinSwelling  [2]float64    // [N] sliding force still to come of rubber that the wrong grease swells
	PinRusting   [2]float64    // [N/month] growth of the sliding force under a torn boot
	PinAnchorSet [2]bool       // the pin keeps the anchor below instead of the one it has when released
	PinAnchor    [2]float64    // [m] where it seized
	SealFriction float64       // [N] added sliding force of the piston at no pressure
	SealRate     float64       // [N/m] added stiffness of seal or rust before the piston slides
	EarFriction  [2]float64    // [N] added, inner and outer pad
	Wear         [2][2]float64 // [m] lining lost: pad, half
	PlateProud   [2]float64    // [m] extra thickness of a pad, taken from its gap
	DiscWear     [2]float64    // [m] inner and outer face
	Runout       float64       // [m] added total run-out, face to face
	Thickness    float64       // [m] thickness variation, greatest less least over a turn
	MuLoss       [2][2]float64 // [1] share of μ lost by contamination or glaze: pad, half
	Leak         float64       // [m²] orifice area at the wheel's pipe joint
	Air          float64       // [m³] free gas in the cavity at one atmosphere
	HoseSwell    float64       // [m³/Pa] added
	HoseHold     float64       // [Pa] pressure a collapsed hose keeps back
	HoseReturn   float64       // [1] factor − 1 on the return resistance
	BearingPlay  float64       // [m] axial movement of the disc at the pads as its hub tips from end to end
}
