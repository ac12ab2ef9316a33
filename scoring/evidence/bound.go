package evidence

import "math"

// crowdCells is into how many cells means are sorted for a bound.
const crowdCells = 64

// slack [bit] is more than the tables of [cumulative] and [quickLog2] make of information.
const slack = 1e-5

// most is a bound [bit] on what the check aimed at can tell, of hypotheses or of
// anything they are sorted into. A reading tells no more than what stands before
// the meter. Of all densities of one variance the normal one has the most entropy,
// so hypotheses k of weight w, mean m and deviation d are told apart by at most
//
//	½·log₂ V − Σ w·log₂ d          V variance of all of them together
//
// Few far-off hypotheses make V great. So it is told first, and for nothing, near
// which of a row of cells the mean lies:
//
//	H(cell) + Σ P(cell)·(½·log₂ V(cell)) − Σ w·log₂ d
func (v *view) most() float64 {
	low, high, noise, answered, silent := math.Inf(1), math.Inf(-1), 0.0, 0.0, 0.0
	for i := range v.outlook {
		o := &v.outlook[i]
		if math.IsNaN(o.mean) {
			silent += o.share
			continue
		}
		low, high = min(low, o.mean), max(high, o.mean)
		noise += float64(o.share * o.variance)
		answered += o.share
	}
	if answered == 0 {
		return 0
	}
	width := max(float64(cellDeviations*math.Sqrt(noise/answered)), (high-low)/(crowdCells-1))
	var all crowd
	var cell [crowdCells]crowd
	known := 0.0 // what stands before the meter when the hypothesis is known
	for i := range v.outlook {
		o := &v.outlook[i]
		if math.IsNaN(o.mean) {
			continue
		}
		at := o.mean - low
		known += float64(0.5 * o.share * quickLog2(o.variance))
		all.join(o.share, at, o.variance)
		n := min(int(at/width), crowdCells-1)
		cell[n].join(o.share, at-float64(float64(n)*width), o.variance)
	}
	apart := 0.0
	for n := range cell {
		if c := &cell[n]; c.share > 0 {
			apart += c.spread() - float64(c.share*quickLog2(c.share/answered))
		}
	}
	told := max(0, min(all.spread(), apart)-known)
	if silent > 0 {
		told += float64(-silent*quickLog2(silent)) - float64(answered*quickLog2(answered))
	}
	return told + slack
}

// cellDeviations is how wide a cell is, in deviations.
const cellDeviations = 3

// A crowd is some hypotheses together: what stands before the meter under any of them.
type crowd struct{ share, first, second float64 }

func (c *crowd) join(share, mean, variance float64) {
	c.share += share
	c.first += float64(share * mean)
	c.second += float64(share * (float64(mean*mean) + variance))
}

// crowdError [1] is more than sums of 256 squares err by.
const crowdError = 1e-13

// spread is ½·log₂ of the variance times the share.
func (c *crowd) spread() float64 {
	mean := c.first / c.share
	square := c.second / c.share
	v := max(0, square-float64(mean*mean)) + float64(crowdError*square)
	return float64(0.5 * c.share * quickLog2(v))
}
