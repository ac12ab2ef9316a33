package inspect

import "math"

// A Meter turns a true value into a display and knows how likely each display
// is. A display is a whole number of steps, so that records compare exactly;
// for a meter with Words it is the index of the word.
//
// What the eye sees before a display of true value t [SI] is
//
//	v = t/PerUnit + Bias·b + Sigma·z    [unit]   b once for an instrument, z every time
//
// rounded to the nearest step (Floor: down; Words: sorted between the Cuts) and
// kept within Lo and Hi. With probability Slip the reading is worthless: any
// display, all alike. [Meter.Sample] and [Meter.Prob] are the two sides of this.
type Meter struct {
	Instrument string  // id shared by checks made with one instrument: they share its bias
	Unit       string  // id of the unit shown: "mm", "degC", "word"
	PerUnit    float64 // [SI per unit]
	Resolution float64 // [unit] one display step
	Division   float64 // [unit] the smallest division drawn, for marking a reading
	Floor      bool    // the display is the last step not above the value (a stepped feeler)
	Sigma      float64 // [unit] repeatability, one standard deviation
	Bias       float64 // [unit] standard deviation of this instrument's constant error
	Slip       float64 // [1] chance of a worthless reading
	Lo, Hi     float64 // [unit] what can be displayed
	// Words are the ids a learner chooses from, in rising order of the value;
	// Cuts are the len(Words)−1 values [unit] between them.
	Words []string
	Cuts  []float64
}

// DefaultSlip is the chance of a worthless reading (gauge askew, wrong wheel,
// figure misheard). Assumed: no study of inspectors' slips has been found.
const DefaultSlip = 0.01

// LookSlip is the same where nothing is set up or held: a level behind a wall, a
// lamp, a figure. Assumed.
const LookSlip = 0.0005

// steps is the least and the greatest display.
func (m *Meter) steps() (lo, hi int64) {
	if len(m.Words) > 0 {
		return 0, int64(len(m.Words)) - 1
	}
	// Lo and Hi are multiples of Resolution up to rounding.
	return int64(math.Floor(m.Lo/m.Resolution + 0.5)), int64(math.Floor(m.Hi/m.Resolution + 0.5))
}

// Cells is the number of different displays.
func (m *Meter) Cells() int {
	lo, hi := m.steps()
	return int(hi-lo) + 1
}

// First is the least display; displays run from First to First + Cells − 1.
func (m *Meter) First() int64 {
	lo, _ := m.steps()
	return lo
}

// Has reports whether the meter can show this display.
func (m *Meter) Has(display int64) bool {
	lo, hi := m.steps()
	return lo <= display && display <= hi
}

// Value is the figure a display stands for [unit]. For a word it is the middle
// of what the word covers.
func (m *Meter) Value(display int64) float64 {
	if len(m.Words) == 0 {
		return float64(display) * m.Resolution
	}
	lo, hi := m.Lo, m.Hi
	i := min(max(int(display), 0), len(m.Cuts))
	if i > 0 {
		lo = m.Cuts[i-1]
	}
	if i < len(m.Cuts) {
		hi = m.Cuts[i]
	}
	return (lo + hi) / 2
}

// Show is the display of what the eye sees [unit].
func (m *Meter) Show(value float64) int64 {
	if len(m.Words) > 0 {
		n := int64(0)
		for _, c := range m.Cuts {
			if value >= c {
				n++
			}
		}
		return n
	}
	lo, hi := m.steps()
	// Clamp as a float: a conversion of a huge float to an integer is undefined.
	n := min(max(m.nearest(value), float64(lo)), float64(hi))
	return int64(n)
}

// floorSlack [1 of a step] keeps a figure typed as a whole step on that step
// although its binary quotient falls short of it.
const floorSlack = 1e-9

func (m *Meter) nearest(value float64) float64 {
	if m.Floor {
		return math.Floor(value/m.Resolution + floorSlack)
	}
	return math.Floor(value/m.Resolution + 0.5)
}

// Edges are the values [unit] between which a display is shown; the least and
// the greatest display reach to −∞ and +∞, because the ends of a scale absorb.
func (m *Meter) Edges(display int64) (from, to float64) {
	lo, hi := m.steps()
	switch {
	case len(m.Words) > 0:
		i := int(display)
		if display > lo && display <= hi {
			from = m.Cuts[i-1]
		}
		if display >= lo && display < hi {
			to = m.Cuts[i]
		}
	case m.Floor:
		from, to = (float64(display)-floorSlack)*m.Resolution, (float64(display)+1-floorSlack)*m.Resolution
	default:
		from, to = (float64(display)-0.5)*m.Resolution, (float64(display)+0.5)*m.Resolution
	}
	if display <= lo {
		from = math.Inf(-1)
	}
	if display >= hi {
		to = math.Inf(1)
	}
	return from, to
}

// Apart is how far two displays are from each other in divisions of the
// instrument; for words, in words.
func (m *Meter) Apart(a, b int64) float64 {
	d := math.Abs(float64(a) - float64(b))
	if len(m.Words) > 0 {
		return d
	}
	return d * m.Resolution / m.Division
}
