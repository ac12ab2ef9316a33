package physics

// A Model is a car with its condition worked in, ready to be stepped. It is
// immutable and may be shared by goroutines.
type Model struct {
	spec    *Spec
	cond    Condition
	corners [NumWheels]Corner
	heat    [NumWheels]brakeHeat
	pipes   [NumWheels]pipe
	master  cylinder
	boil    float64 // [K] boiling point of this fluid at one atmosphere
	filling float64 // [m³] fluid that stands in reservoir and cavities together, cavities without air
}

// Spec returns the car when new. It must not be changed.
func (m *Model) Spec() *Spec { return m.spec }

// Condition returns how far the car is from new.
func (m *Model) Condition() Condition { return m.cond }

// Corner returns one wheel's caliper.
func (m *Model) Corner(w Wheel) *Corner { return &m.corners[w] }

// State is everything one Step hands to the next, and nothing else: to copy it
// is to fork the world, to compare two is to check a replay.
type State struct {
	Millis   int64   // [ms] since rest, exact; never a running sum of floats
	Speed    float64 // [m/s]
	Distance float64 // [m] since rest
	Decel    float64 // [m/s²] of the last step, braking positive
	Locked   [NumWheels]bool
	Turn     [NumWheels]float64 // [1] share of a disc's turn, 0 ≤ Turn < 1
	Film     [NumWheels]float64 // [1] rust film left on a disc's faces

	Corners  [NumWheels]CornerState
	Forces   [NumWheels]CornerForces
	Pressure [NumWheels]float64 // [Pa] in each caliper
	Cavity   [NumWheels]float64 // [m³] fluid in each wheel's cavity beyond what a piston home at 20 °C leaves room for
	Air      [NumWheels]float64 // [m³] gas in each cavity, as its volume at one atmosphere and 20 °C
	AirWarm  [NumWheels]float64 // [1] how much warmer that gas is for having just been squeezed, over its temperature
	Master   MasterState
	Vacuum   float64 // [Pa] in the booster, below atmosphere
	Standing float64 // [m³] fluid standing in the reservoir
	Lost     float64 // [m³] fluid that has left through leaks, bleed screws or over the brim

	Heat [NumWheels]HeatState
}

// MasterState is the tandem master cylinder. Index 0 is the primary chamber.
type MasterState struct {
	Stroke   [2]float64 // [m] s1 relative to the secondary piston, s2
	Pressure [2]float64 // [Pa]
	Fluid    [2]float64 // [m³] fluid in each chamber beyond what it holds with its piston home
	Air      [2]float64 // [m³] gas drawn in, as its volume at one atmosphere
	Anchor   float64    // [m] of the sliding friction felt on reversal
	Rod      float64    // [N] rod and booster force of the last step
	Foot     float64    // [N] on the pedal in the last step
}

// Input is what the driver, the mechanic and the road do during one step.
type Input struct {
	Foot   float64            // [N] on the pedal
	Engine bool               // running: restores vacuum
	Bleed  [NumWheels]float64 // [m²] open area of each bleed screw
	Piston [NumWheels]float64 // [N] a tool on the piston, outwards positive
	Body   [NumWheels]float64 // [N] a hand on the body, inboard positive

	Drive   float64            // [N] force of the engine on the car, forwards
	Side    float64            // [m/s²] sideways acceleration of a bend, right positive; it tips a loose hub
	Hold    bool               // speed is held whatever the brakes do (descent, roller)
	Grade   float64            // [1] tangent of the slope, downhill positive
	Surface [NumWheels]float64 // [1] share of dry adhesion that is missing, 0 = dry
	Ambient float64            // [°C] change of the air from 20 °C
}
