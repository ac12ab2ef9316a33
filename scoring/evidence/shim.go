package evidence

import (
	"math"

	"evenwear/physics/inspect"
)

func cells(m *inspect.Meter) int64 {
	lo, hi := ends(m)
	return hi - lo + 1
}

func ends(m *inspect.Meter) (lo, hi int64) {
	if len(m.Words) > 0 {
		return 0, int64(len(m.Words)) - 1
	}
	return int64(math.Floor(m.Lo/m.Resolution + 0.5)), int64(math.Floor(m.Hi/m.Resolution + 0.5))
}

func edges(m *inspect.Meter, display int64) (from, to float64) {
	lo, hi := ends(m)
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
		from, to = float64(display)*m.Resolution, (float64(display)+1)*m.Resolution
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

// shown is the display of a value.
func shown(m *inspect.Meter, value float64) int64 {
	if len(m.Words) > 0 {
		n := int64(0)
		for _, c := range m.Cuts {
			if value >= c {
				n++
			}
		}
		return n
	}
	lo, hi := ends(m)
	n := math.Floor(value/m.Resolution + 0.5)
	if m.Floor {
		n = math.Floor(value / m.Resolution)
	}
	return int64(min(max(n, float64(lo)), float64(hi)))
}
