package physics

// A Condition says how far a car's parts are from new, and what has been taken
// from or added to it. The zero Condition is a healthy new car, filled to MAX.
// A number marked "only seen" acts on nothing; an eye finds it.
type Condition struct {
	Wheels [NumWheels]WheelCondition

	Fluid         float64    // [m³] fluid in the whole system beyond the filling when new (topped up > 0, leaked < 0)
	Water         float64    // [1] water in the fluid by mass
	WaterUptake   float64    // [1/month] by which that grows
	LowGrade      float64    // [1] share of fluid of the lowest grade in it; see [FluidSpec.Mixed]
	MineralOil    float64    // [1] share of mineral oil in it; see [Condition.Age]
	RubberSwollen float64    // [1] how far that oil has swollen every cup, seal and the cap's diaphragm; the last is what is seen
	VentShut      float64    // [1] share of the pressure above the fluid that a blocked vent of the cap holds; see [Model.Above]
	BoosterLoss   float64    // [1] share of the booster's vacuum that never arrives
	VacuumLeak    float64    // [1/s] rate at which held vacuum decays with the engine off, past the check valve
	DiaphragmLeak float64    // [1/s] rate at which vacuum is lost through the diaphragm while the foot opens the booster fully
	CupBypass     [2]float64 // [m³/(s·Pa)] past a worn cup back to the reservoir
	PortCover     [2]float64 // [m] play lost, so that a compensating port stays covered
	ChamberAir    [2]float64 // [m³] free gas in a chamber of the master cylinder at one atmosphere
	LampLost      float64    // [1] share of the warning lamp's light that is gone; see [Model.Lamp]
	FloatHigh     float64    // [m³] that must still leave the reservoir below MIN before a sticking float tells

	Vessels VesselsCondition
}

// WheelCondition is one corner's share of a [Condition].
//
// A crack through a disc's face pulses, but below feeling: a crack of length l and
// width w bears no lining while a pad of area A is over it, which then gives as if
// w·l/A of it were gone. At the greatest width that workshop manuals let
// pass, 1.5 mm, and 25 mm long, the piston moves by less than 1 µm, and judder
// is felt from a thickness variation of 10 µm. So it has no term: it
// brakes as ever until it bursts, and the eye alone finds it. Friction asks for force,
// not for area (Amontons), so a parted lining brakes as ever too; it gives more, see
// [Corner]. A pad fitted proud loses its gap and rubs until that has worn off.
type WheelCondition struct {
	PinFriction  [2]float64    // [N] added sliding force, upper and lower pin
	PinBend      [2]float64    // [m/N] by which a bent pin gives as it binds; how hard it binds is PinFriction
	PinPinch     [2]float64    // [m] by which a pin is thicker than the hole of its bush, on the diameter; see [BushGrip]
	PinSwelling  [2]float64    // [N] sliding force still to come of rubber that the wrong grease swells
	PinSoaked    [2]float64    // [N] of it that has come; only seen, as a swollen boot
	PinRusting   [2]float64    // [N/month] growth of the sliding force under a torn boot
	PinAnchorSet [2]bool       // the pin keeps the anchor below instead of the one it has when released
	PinAnchor    [2]float64    // [m] where it seized
	SealFriction float64       // [N] added sliding force of the piston at no pressure
	SealRate     float64       // [N/m] added stiffness before the piston slides: rust, or a seal too hard to roll
	SealSwelling float64       // [N] sliding force still to come of a seal that oil swells
	SealRusting  float64       // [N/month] growth of the piston's sliding force under a torn dust boot
	EarFriction  [2]float64    // [N] added, inner and outer pad
	Wear         [2][2]float64 // [m] lining lost: pad, half
	BondLost     [2]float64    // [1] share of a pad's lining parted from its plate, inner and outer; its edge is cracked so far
	PlateProud   [2]float64    // [m] extra thickness of a pad, taken from its gap
	DiscWear     [2]float64    // [m] inner and outer face
	Groove       [2]float64    // [m] depth of scores in the inner and outer face
	RimRust      float64       // [m] rust on the disc's rim outside the pads' track, both faces together; see [Model.RimThickness]
	DiscCrack    float64       // [m] length of a heat crack from the rim; only seen, see above
	DiscFilm     float64       // [1] rust film of a wet night on the faces, 1 closed; see [State]
	Runout       float64       // [m] added total run-out, face to face
	Thickness    float64       // [m] thickness variation, greatest less least over a turn
	MuLoss       [2][2]float64 // [1] share of μ lost by contamination or glaze: pad, half
	Leak         float64       // [m²] orifice area at the wheel's pipe joint
	SealLeak     float64       // [m²] the same past the piston's seal
	ScrewLeak    float64       // [m²] the same at a shut bleed screw
	Air          float64       // [m³] free gas in the cavity at one atmosphere
	HoseSwell    float64       // [m³/Pa] added
	HoseHold     float64       // [Pa] pressure a collapsed hose keeps back
	HoseReturn   float64       // [1] factor − 1 on the return resistance
	ValveStuck   float64       // [1] rear only: reducing valve stuck open (towards 1) or shut (towards −1); see [ValveSpec]
	BearingPlay  float64       // [m] axial movement of the disc at the pads as its hub tips from end to end
}

// Holes is the whole area through which a wheel's fluid leaks [m²].
func (c *WheelCondition) Holes() float64 { return c.Leak + c.SealLeak + c.ScrewLeak }
