package physics

// DiscCells is the number of finite volumes across half a disc's thickness. With
// sixteen the rubbed face is met within 0.5 % of a stop's rise from its first
// tenth of a second on; with eight it is 2 % low there.
const DiscCells = 16

// HeatState is the temperatures of one wheel's brake [°C]: the disc's half thickness
// in cells, the other parts as lumps in a row from pad to fluid. The equations stand
// in the package document; the heat paths' constants are assumed, at the middle of
// what is usual, but for the films of air (McPhee & Johnson 2008, Topouris et al. 2020):
//
//	C·dT/dt = Σ g·(T_other − T) + (1 − share)·power                       [W]
//	pad     C = A_pad·(18 kJ/m²K + ρ·c·lining); g to the face A_pad·k/(lining/2), off the disc across
//	        0.1 mm of air (300 W/m²K) besides; to the air A_pad·25 W/m²K; lining k 1, ρ 2500, c 1200
//	piston  C = 1.8 kJ/mK·D;  g to the inner pad 8 W/mK·D
//	fluid   with the body: C = 620 kJ/m²K·A + 2.4 MJ/m³K·V_f;  g to the piston 16 W/mK·D, to the outer
//	        pad 6 W/mK·D, to the air (0.4 + 0.11·v) W/K·D/54 mm
//	hat     C the disc's mass that is no ring (a quarter or more); g to the ring 5 W/K, to the air 1.2 W/K
//
// Wear thins ring and lining. Error of the lumps themselves: not known; of the steps,
// see the package document.
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
