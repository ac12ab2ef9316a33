package physics

const (
	guessUnit     = 5e3            // [Pa] of line pressure that matters about as much as a kelvin
	guessPressure = int(NumWheels) // where the pressures begin in a [guess]
)

// A guess is how hot the disc of each distinct wheel is in a cycle [°C] and how hard
// each class presses [guessUnit].
type guess [guessPressure + 4]float64

func (d *trip) guess() (g guess) {
	for i := range d.count {
		g[i] = d.wheels[i].mean
	}
	for class, p := range d.pressure {
		g[guessPressure+class] = p / guessUnit
	}
	return g
}

// A secant looks for the guess a cycle would make again. A hot brake is pressed
// harder and so gets hotter, which repetition alone follows in small steps.
//
// The rule is the secant's along the latest two repetitions: Anderson's acceleration
// of depth one. Source: D. G. Anderson, J. ACM 12 (1965) 547; from memory.
type secant struct {
	known     bool
	off, made guess
}

// next is what to use after used has made made. Where the cycle was not taken as
// before (unless same), the two tell nothing of one another.
func (s *secant) next(used *guess, made guess, same bool) guess {
	var off guess
	along, square := 0.0, 0.0
	for k := range off {
		off[k] = made[k] - used[k]
		by := off[k] - s.off[k]
		along += float64(off[k] * by)
		square += float64(by * by)
	}
	next := made
	if s.known && same && square > 0 {
		// What is off is believed to fall to between −4 and 0.9 of it at a repetition.
		share := max(-9, min(0.8, along/square))
		for k := range next {
			next[k] -= float64(share * (made[k] - s.made[k]))
		}
	}
	*s = secant{known: same, off: off, made: made}
	return next
}
