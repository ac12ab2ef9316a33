package physics

// DiscCells is the number of finite volumes across half a disc's thickness. With
// sixteen the rubbed face is met within 0.5 % of a stop's rise from its first
// tenth of a second on; with eight it is 2 % low there.
const DiscCells = 16

// HeatState is the temperatures of one wheel's brake [°C]: the disc's half thickness
// in cells, the other parts as lumps in a row from pad to fluid. The equations stand
// in the package document; the heat paths' constants are assumed, at the middle of
// what is usual, but for the films of air (McPhee & Johnson 2008, Topouris et al. 2020).
type HeatState struct {
	Disc   [DiscCells]float64 // [°C] from the friction face to the mid-plane
	Hat    float64            // [°C]
	Pad    [2]float64         // [°C] inner, outer: lining and backing plate
	Piston float64            // [°C]
	Fluid  float64            // [°C] in the caliper, with the iron of the body around it
}

// Face is the temperature of the disc's friction faces, which lining faces share [°C].
func (h *HeatState) Face() float64 { return surface(h.Disc[:]) }

// Mean is the mean temperature of the disc's ring [°C].
func (h *HeatState) Mean() float64 {
	sum := 0.0
	for _, t := range h.Disc {
		sum += t
	}
	return sum / DiscCells
}

// CoolTo sets every part to one temperature [°C].
func (h *HeatState) CoolTo(t float64) {
	for i := range h.Disc {
		h.Disc[i] = t
	}
	h.Hat, h.Pad, h.Piston, h.Fluid = t, [2]float64{t, t}, t, t
}
