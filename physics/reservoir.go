package physics

// brim is the fluid the reservoir holds before it spills [m³].
func (r *ReservoirSpec) brim() float64 { return r.AtMin + r.MinToMax + r.MaxToBrim }

// Level is the fluid's height in the reservoir as a share of the way from MIN
// (0) to MAX (1). It follows from the fluid that stands there and is nowhere
// stored beside it.
func (m *Model) Level(s *State) float64 {
	r := &m.spec.Reservoir
	return (s.Standing - r.AtMin) / r.MinToMax
}
