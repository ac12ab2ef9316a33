package physics

// This file is the agreed surface between rooms while they are being built.
// Move each item to the file that implements it; delete this file when empty.

// New works a condition into a car. It refuses numbers that cannot work
// (piston larger than the disc, lining gone, negative stiffness) in a sentence.
func New(spec *Spec, cond Condition) (*Model, error) { panic("physics: New is not built yet") }

// Rest is the released car at 20 °C, standing, engine idling, vacuum full: every
// wheel has been taken 0 → 8 → 0 MPa once from zero displacements and anchors.
func (m *Model) Rest() (State, error) { panic("physics: Rest is not built yet") }

// Step advances s by ms milliseconds (1, 20 or 1000).
func (m *Model) Step(s State, in Input, ms int64) (State, error) {
	panic("physics: Step is not built yet")
}

// PedalTravel is the pedal's travel from rest [m] (ratio × rod travel).
func (m *Model) PedalTravel(s *State) float64 { panic("physics: PedalTravel is not built yet") }

// BoosterForce is what the booster adds [N] to a rod force with this vacuum.
func (m *Model) BoosterForce(rod, vacuum float64) float64 {
	panic("physics: BoosterForce is not built yet")
}

// Level is the fluid's height in the reservoir as a share of the way from MIN (0) to MAX (1).
func (m *Model) Level(s *State) float64 { panic("physics: Level is not built yet") }

// A StopPlan is one stop on a straight road.
type StopPlan struct {
	Speed     float64            // [m/s] at first movement of the pedal
	Decel     float64            // [m/s²] wanted; the foot is solved for it, at most FootLimit; 0 = use Foot
	Foot      float64            // [N] reached in Rise
	FootLimit float64            // [N] 0 means 500
	Rise      float64            // [s] of the foot's ramp; 0 means 0.15
	Surface   [NumWheels]float64 // as Input.Surface
	EngineOff bool               // no vacuum is restored
	Grade     float64
	Millis    int64 // step; 0 means 1
}

// A StopResult is what the road and the instruments saw. SI.
type StopResult struct {
	Distance, Time float64
	MFDD           float64            // [m/s²] mean fully developed deceleration, UN R13-H: between 0.8 v and 0.1 v
	Foot           float64            // [N] greatest
	Travel         float64            // [m] greatest pedal travel
	Pressure       [NumWheels]float64 // [Pa] at the time of full braking (mean while 0.8 v to 0.1 v)
	Force          [NumWheels]float64 // [N] brake force at the tyre, mean over the same
	Locked         [NumWheels]bool
	DiscPeak       [NumWheels]float64 // [°C] face
	FluidPeak      [NumWheels]float64 // [°C]
	Imbalance      [2]float64         // [1] front and rear axle, 1 − smaller/larger force
	Yaw            float64            // [N·m] mean yaw moment, positive turns the car right
	Pull           float64            // [m/s²] sideways acceleration the driver must steer against, right positive
	Pulsation      [NumWheels]float64 // [1] half of (greatest − least torque over a turn) / mean
	PedalPulse     float64            // [m] pedal movement at wheel frequency, peak to peak
	End            State
}

// Stop brakes the car from plan.Speed to rest.
func (m *Model) Stop(s State, plan StopPlan) (StopResult, error) {
	panic("physics: Stop is not built yet")
}

// PedalFor solves the foot force [N] that gives a steady deceleration [m/s²]
// from speed, at most limit; it returns limit when the car cannot.
func (m *Model) PedalFor(s State, decel, speed, limit float64) (float64, error) {
	panic("physics: PedalFor is not built yet")
}

// Tour drives a fixed loop of dt = 1 s steps (km of duty with its stops and drag) and
// returns the state at its end, standing: what an inspector feels at four hubs.
func (m *Model) Tour(s State, duty Duty, km float64) (State, error) {
	panic("physics: Tour is not built yet")
}

// Descend holds a speed [m/s] down a grade [1] for a length [m] on the brakes.
func (m *Model) Descend(s State, grade, length, speed float64) (DescentResult, error) {
	panic("physics: Descend is not built yet")
}

// A DescentResult is what a long descent did.
type DescentResult struct {
	Foot      float64            // [N] greatest
	Travel    float64            // [m] pedal travel at the bottom
	DiscPeak  [NumWheels]float64 // [°C]
	FluidPeak [NumWheels]float64 // [°C]
	End       State
}
