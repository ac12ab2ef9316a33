package physics

// slab is a plate cut into equal finite volumes from its rubbed face to its
// mid-plane, one-dimensional.
type slab struct {
	k, rhoC float64 // [W/(m·K)], [J/(m³·K)]
	depth   float64 // [m] face to mid-plane
}

// slabEnds is what passes the two ends of a slab.
type slabEnds struct {
	face, mid         float64 // [W/m²] inwards
	faceLoss, midLoss float64 // [W/(m²·K)] to air
	air               float64 // [°C]
}

// conduct advances the cells by dt [s] with one implicit (backward Euler) step:
//
//	ρ·c·dx·(T' − T)/dt = k/dx·(T'_left − 2·T' + T'_right) + ends
//
// Stable for every dt; first order in time, second in space. Heat is conserved
// to rounding. Air is met through half a cell of iron in series with the film.
// upper is scratch as long as cells. Solved by elimination (Thomas).
func (p slab) conduct(cells, upper []float64, ends slabEnds, dt float64) {
	n := len(cells)
	dx := p.depth / float64(n)
	store := float64(p.rhoC*dx) / dt
	g := p.k / dx
	half := 2 * g
	uFace, uMid := series(ends.faceLoss, half), series(ends.midLoss, half)
	for i := range n {
		diag, right := store, float64(store*cells[i])
		if i > 0 {
			diag += g
		} else {
			diag += uFace
			right += ends.face + float64(uFace*ends.air)
		}
		if i < n-1 {
			diag += g
		} else {
			diag += uMid
			right += ends.mid + float64(uMid*ends.air)
		}
		if i > 0 { // eliminate the cell before
			diag -= float64(g * upper[i-1])
			right += float64(g * cells[i-1])
		}
		upper[i] = g / diag
		cells[i] = right / diag
	}
	for i := n - 2; i >= 0; i-- {
		cells[i] += float64(upper[i] * cells[i+1])
	}
}

// series is two conductances one after the other; none when either is none.
func series(a, b float64) float64 {
	if a <= 0 || b <= 0 {
		return 0
	}
	return a * b / (a + b)
}

// surface is the temperature of the rubbed face: the end of the parabola whose
// means are those of the three cells nearest to it. The first cell itself is
// low by q·dx/2k, 70 K in a hard stop.
func surface(cells []float64) float64 {
	return (float64(11*cells[0]) - float64(7*cells[1]) + float64(2*cells[2])) / 6
}

// fourier is the grid number α·dt/dx² [1] of a step; an explicit step would be
// unstable above ½.
func (p slab) fourier(dx, dt float64) float64 { return p.k / p.rhoC * dt / float64(dx*dx) }
