package physics

const (
	warming     = -0.4 // [1] how much hotter a cycle makes itself per kelvin above the knee of wear; seen −1 to 0
	searchNoise = 3.0  // [K] a step from one repetition to the next, below which nothing is learned from it
	searchPivot = 0.2  // [1] the least of 1 − slope
	searchLeast = 0.1  // [1] of what repetition alone would change, a step at least
	searchMost  = 5.0  // [1] the same at most
)

// warms is how hot the disc of each distinct wheel is in a cycle [°C].
type warms [NumWheels]float64

// A search looks for the temperatures a cycle would make again. A hot brake is pressed
// harder and so gets hotter, and it sheds its drag sooner and so gets cooler.
//
// The rule is Newton's with slopes that every repetition mends along the way it took:
// Broyden's method. Source: C. G. Broyden, Math. Comp. 19 (1965) 577; from memory.
type search struct {
	slope      [NumWheels]warms // [1] how much hotter a cycle makes a wheel per kelvin of each
	known      bool             // used and made are those of the repetition before
	used, made warms
}

// suppose is a first slope of a wheel: above the knee of wear a hotter lining sheds its
// drag sooner.
func (s *search) suppose(i int, used, made float64) {
	if s.slope[i] == (warms{}) && max(used, made) > wearKnee {
		s.slope[i][i] = warming
	}
}

// next is what to use after used has made made.
func (s *search) next(used, made *warms) (next warms) {
	if s.known {
		s.learn(used, made)
	}
	s.known, s.used, s.made = true, *used, *made
	off := *made
	for i := range off {
		off[i] -= used[i]
	}
	for i, by := range s.newton(off) {
		low, high := searchLeast*off[i], searchMost*off[i]
		next[i] = max(roomAir, used[i]+max(min(low, high), min(max(low, high), by)))
	}
	return next
}

// learn mends the slopes by what became of the latest step.
func (s *search) learn(used, made *warms) {
	var step warms
	square := 0.0
	for i := range step {
		step[i] = used[i] - s.used[i]
		square += float64(step[i] * step[i])
	}
	if square <= searchNoise*searchNoise {
		return
	}
	for i := range s.slope {
		wrong := made[i] - s.made[i]
		for k, by := range step {
			wrong -= float64(s.slope[i][k] * by)
		}
		for k, by := range step {
			s.slope[i][k] += float64(wrong * by / square)
		}
	}
}

// newton solves (1 − slope)·step = off by Gauss's elimination with pivots on the
// diagonal: every wheel warms itself more than the others.
func (s *search) newton(off warms) warms {
	var a [NumWheels]warms
	for i := range a {
		for k := range a {
			a[i][k] = -s.slope[i][k]
		}
		a[i][i]++
	}
	for i := range a {
		a[i][i] = max(searchPivot, a[i][i])
		for j := i + 1; j < len(a); j++ {
			share := a[j][i] / a[i][i]
			for k := i; k < len(a); k++ {
				a[j][k] -= float64(share * a[i][k])
			}
			off[j] -= float64(share * off[i])
		}
	}
	for i := len(a) - 1; i >= 0; i-- {
		for k := i + 1; k < len(a); k++ {
			off[i] -= float64(a[i][k] * off[k])
		}
		off[i] /= a[i][i]
	}
	return off
}
