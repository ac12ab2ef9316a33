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
