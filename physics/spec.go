package physics

// A Spec is a car when new. It is immutable and may be shared.
type Spec struct {
	Body        BodySpec
	Pedal       PedalSpec
	Booster     BoosterSpec
	Master      MasterSpec
	Valve       ValveSpec
	Fluid       FluidSpec
	Reservoir   ReservoirSpec
	Vessels     VesselsSpec
	Circuit     [NumWheels]int // which chamber serves each wheel: 0 primary, 1 secondary
	Front, Rear CornerSpec
}

// Corner returns the design of one wheel's brake.
func (s *Spec) Corner(w Wheel) *CornerSpec {
	if w.Front() {
		return &s.Front
	}
	return &s.Rear
}

// BodySpec is the car as a mass on four tyres, seen from the side: axle loads, but
// no roll, no suspension. Error of that: the inner wheels of a bend are too heavy.
type BodySpec struct {
	Mass          float64 // [kg] ready to drive, driver included
	Wheelbase     float64 // [m]
	CentreHeight  float64 // [m] centre of gravity above the road
	FrontShare    float64 // [1] share of the static load on the front axle
	Track         float64 // [m] distance between left and right wheels
	TyreRadius    float64 // [m] rolling radius
	PeakAdhesion  float64 // [1] greatest force over load, dry
	SlideAdhesion float64 // [1] the same with the wheel locked, dry
	DragArea      float64 // [m²] drag coefficient times frontal area
	Rolling       float64 // [1] rolling resistance over weight
	WheelInertia  float64 // [kg·m²] one wheel with tyre, for coast-down of a spun wheel
	AntiLock      bool    // wheels are kept at peak adhesion instead of locking
}

// PedalSpec is the lever.
type PedalSpec struct {
	Ratio   float64 // [1] rod force over foot force
	Free    float64 // [m] rod travel before either chamber closes
	Reserve float64 // [m] pedal travel from rest to the floor
}

// BoosterSpec is the vacuum booster; see [Model.BoosterForce].
//
//	V ← V·(1 − vent)^Δd                  a release, Δd the fall of the demand d = g·max(0, F_rod − F₀)/B_max
//	V ← V_e + (V − V_e)·e^(−t/τ)         engine running [Pa]; V_e = (1 − loss)·V_full·τ/restore
//	V ← V·e^(−(leak + ℓ·d)·t)            engine off; leak past the check valve, ℓ through a torn diaphragm
//	1/τ = 1/restore + ℓ·d                [1/s]
//
// Exact for a foot that holds still during a step.
type BoosterSpec struct {
	Gain      float64 // [1] force added per newton of rod force above the threshold
	Threshold float64 // [N] rod force below which nothing is added
	Ceiling   float64 // [N] greatest force added at full vacuum
	Vacuum    float64 // [Pa] full vacuum, below atmosphere, engine idling
	Vent      float64 // [1] share of the vacuum lost by a full release with the engine off
	Restore   float64 // [s] time constant with which the engine restores the vacuum
}

// MasterSpec is the tandem master cylinder. Index 0 is the primary chamber. Both
// chambers carry the whole force F of rod and booster:
//
//	p·A = η·F + f_r − f − (preload + k·s)           [N] s the travel against the next piston, or at a stop
//	f   = clamp(k_f·(s1 + s2 − anchor), −f_r, +f_r),  f_r = friction + share·F
//
// A rising foot slides, so that η alone counts; f is felt where it turns back.
type MasterSpec struct {
	Bore          float64    // [m] diameter
	Efficiency    float64    // [1] share of rod and booster force that makes pressure, foot rising
	Stroke        [2]float64 // [m] travel to the stop
	SpringPreload [2]float64 // [N]
	SpringRate    [2]float64 // [N/m]
	Port          [2]float64 // [m] stroke at which the compensating port is covered
	PortArea      [2]float64 // [m²] compensating port, open
	CupResistance float64    // [Pa·s/m³] past the cup from the reservoir on a fast return
	Friction      float64    // [N] sliding friction of seals and booster, felt on reversal
	FrictionShare float64    // [1] further sliding friction per newton of rod force
	FrictionRate  float64    // [N/m] stiffness of that friction before it slides
}

// ValveSpec is the rear pressure-reducing valve: one a rear wheel on a diagonal
// car, one for both on a car split front and rear.
//
//	p_out = p                            p ≤ knee
//	p_out = knee + slope·(p − knee)      above [Pa]
//	p_out = p − p_front                  once that is more: with the front lost it opens
//
// Stuck open by a share u the slope is slope + u·(1 − slope); stuck shut by it knee and
// slope are (1 − u) times as great. A stuck one does not open for a lost front.
type ValveSpec struct {
	Knee  float64 // [Pa] pressure above which the rear is reduced; 0 means no valve
	Slope float64 // [1] rear pressure per front pressure above the knee
}

// FluidSpec is the brake fluid when fresh. Grades: 49 CFR 571.116 (dry and wet
// boiling point, viscosity at −40 and 100 °C); see [FluidSpec.BoilingPoint] and
// [FluidSpec.ViscosityAt].
type FluidSpec struct {
	BulkModulus float64 // [Pa] at 20 °C
	Expansion   float64 // [1/K] by volume
	Density     float64 // [kg/m³] at 20 °C
	Heat        float64 // [J/(kg·K)] specific heat
	Viscosity   float64 // [m²/s] kinematic, at 20 °C
	ViscosityC  float64 // [m²/s] kinematic, at −40 °C
	DryBoil     float64 // [°C] at one atmosphere, no water
	WetBoil     float64 // [°C] at one atmosphere, 3.7 % water by mass
}

// ReservoirSpec is the fluid reservoir. Volumes are fluid standing in it.
type ReservoirSpec struct {
	AtMin     float64    // [m³] fluid in the reservoir at the MIN mark
	MinToMax  float64    // [m³] between the marks
	MaxToBrim float64    // [m³] above MAX, beyond which it spills
	Port      [2]float64 // [m³] fluid at which a chamber's feed is uncovered
	Height    float64    // [m] between the marks, for drawing and for rules
}

// CornerSpec is one wheel's floating-caliper brake when new.
type CornerSpec struct {
	PistonDiameter float64    // [m]
	K1             float64    // [N/m] pad stiffness, linear part (both halves)
	K3             float64    // [N/m³] pad stiffness, cubic part (both halves)
	Bridge         float64    // [N/m] stiffness of bridge and fingers
	SealRate       float64    // [N/m] seal before it slides
	SealFriction   float64    // [N] seal sliding force at no pressure
	SealGrip       float64    // [N/Pa] growth of that force with pressure
	PinRate        float64    // [N/m] a pin before it slides
	PinFriction    float64    // [N] sliding force of one pin, greased
	PinOffset      float64    // [m] each pin from the piston axis
	PadOffset      float64    // [m] centre of a half pad from the piston axis
	TiltShare      float64    // [1] share of body tilt that reaches the inner pad
	Boot           float64    // [N/m] boots and bushes, per pin
	TiltRate       float64    // [N·m/rad] other stiffness against tilt
	Gap            [2]float64 // [m] clearance of inner and outer pad with everything at zero
	Grease         float64    // [N·s/m] viscous drag of both pins
	EarRate        float64    // [N/m] a pad's ears before they slide in the carrier
	EarFriction    float64    // [N] sliding force of one pad's ears
	Home           float64    // [m] how far behind its place with new linings the piston meets the bottom of its bore
	Runout         float64    // [m] total run-out of a new disc as fitted, face to face

	DiscDiameter    float64 // [m]
	DiscThickness   float64 // [m] new
	DiscMinimum     float64 // [m] thickness stamped on the disc
	DiscMass        float64 // [kg]
	DiscVented      bool
	DiscConduction  float64 // [W/(m·K)]
	DiscDensity     float64 // [kg/m³]
	DiscHeat        float64 // [J/(kg·K)]
	EffectiveRadius float64 // [m] wheel axis to the pad's centre of pressure
	LiningNew       float64 // [m] thickness of a new lining
	Tongue          float64 // [m] of lining left at which a steel tongue of the inner pad touches the disc; 0: it has none
	LiningArea      float64 // [m²] one pad
	Mu              float64 // [1] cold lining on clean iron
	FadeKnee        float64 // [°C] lining face temperature above which μ falls
	FadeSlope       float64 // [1/K] share of μ lost per kelvin above the knee
	WearRate        float64 // [m²/N] volume worn per newton and metre slid, cold lining
	DiscWearRate    float64 // [m²/N] the same for one disc face
	HoseSwell       float64 // [m³/Pa]
	FluidVolume     float64 // [m³] in caliper, hose and pipe with the piston home
	LineResistance  float64 // [Pa·s/m³] chamber to wheel with fluid at 20 °C
}

// PistonArea is π/4·D² [m²].
func (c *CornerSpec) PistonArea() float64 {
	return float64(0.25 * pi * c.PistonDiameter * c.PistonDiameter)
}

const pi = 3.14159265358979323846264338327950288
