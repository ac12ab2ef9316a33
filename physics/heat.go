package physics

// DiscCells is the number of finite volumes across half a disc's thickness.
const DiscCells = 8

// HeatState is the temperatures of one wheel's brake [°C].
type HeatState struct {
	Disc   [DiscCells]float64 // from the friction face to the mid-plane
	Hat    float64
	Pad    [2]float64 // inner, outer: lining and backing plate
	Piston float64
	Fluid  float64 // in the caliper
}
