package evidence

import (
	"math"

	"evenwear/physics/inspect"
)

// Entropy is −Σ p·log₂ p [bits].
func Entropy(p []float64) float64 {
	s := 0.0
	for _, x := range p {
		if x > 0 {
			s -= float64(x * log2(x))
		}
	}
	return max(0, s)
}

// A scout judges checks that have not been made yet. It holds the live
// hypotheses of one posterior and is good until that posterior takes a reading.
type scout struct {
	p        *Posterior
	hyps     []int
	prob     []float64
	left     float64
	classOf  []int // live hypothesis -> class among the live
	classes  int
	seen     []int     // class -> group
	class    []float64 // probability of each class
	joint    []float64 // room: [class][bin]
	sum      []float64 // room: [bin]
	f        forecast
	pairBins int         // bins of the pair gathered last
	coarse   []*forecast // by check, made when first wanted
}

// scout groups the live hypotheses by the given grouping of all hypotheses.
func (p *Posterior) scout(groupOf []int) *scout {
	s := &scout{p: p}
	s.hyps, s.prob, s.left = p.live()
	var seen []int
	for i, h := range s.hyps {
		c := find(seen, groupOf[h])
		if c < 0 {
			c = len(seen)
			seen = append(seen, groupOf[h])
			s.class = append(s.class, 0)
		}
		s.classOf = append(s.classOf, c)
		s.class[c] += s.prob[i]
	}
	s.classes, s.seen = len(seen), seen
	return s
}

// room empties joint for so many bins.
func (s *scout) room(bins int) {
	n := s.classes * bins
	if cap(s.joint) < n {
		s.joint = make([]float64, n)
	}
	s.joint = s.joint[:n]
	clear(s.joint)
}

// gather sums a forecast's hypotheses into joint[class][bin].
func (s *scout) gather(f *forecast) {
	s.room(f.bins)
	for i, c := range s.classOf {
		row, to := f.p[i*f.bins:(i+1)*f.bins], s.joint[c*f.bins:(c+1)*f.bins]
		for b, x := range row {
			to[b] += float64(s.prob[i] * x)
		}
	}
}

// bits is the mutual information of class and bin.
func (s *scout) bits(bins int) float64 {
	s.sum = append(s.sum[:0], make([]float64, bins)...)
	for c := range s.classes {
		for b, q := range s.joint[c*bins : (c+1)*bins] {
			s.sum[b] += q
		}
	}
	for b, q := range s.sum {
		if q > 0 {
			s.sum[b] = 1 / q
		}
	}
	info := 0.0
	for c := range s.classes {
		inverse := 1 / s.class[c]
		for b, q := range s.joint[c*bins : (c+1)*bins] {
			if q > negligible {
				info += float64(q * quickLog2(q*inverse*s.sum[b]))
			}
		}
	}
	return rounded(max(0, info))
}

// negligible joint probabilities are skipped: each could add at most 1e-11 bits.
const negligible = 1e-13

// rounded to 1e-9, so that comparing worths does not hang on last bits.
func rounded(x float64) float64 { return math.Floor(float64(x*1e9)+0.5) / 1e9 }

// An Info is what a check is expected to tell.
type Info struct {
	Bits  float64 // [bit] expected drop of entropy
	Bound float64 // [bit] how far off it may be because unlikely hypotheses were left out
}

// RowBits is what a check would tell about cause and place together, or about both of two.
func (p *Posterior) RowBits(inst inspect.Instance) (Info, error) { return p.info(inst, p.t.classOf) }

// CauseBits is what a check would tell about the cause.
func (p *Posterior) CauseBits(inst inspect.Instance) (Info, error) { return p.info(inst, p.t.causeOf) }

func (p *Posterior) info(inst inspect.Instance, groupOf []int) (Info, error) {
	c, err := p.t.index(inst)
	if err != nil {
		return Info{}, err
	}
	s := p.scout(groupOf)
	if !p.forecast(c, s.hyps, &s.f) {
		return Info{}, errNotComputed(inst)
	}
	s.gather(&s.f)
	return Info{Bits: s.bits(s.f.bins), Bound: s.bound(len(p.t.classIDs))}, nil
}

// bound is δ·log₂ n + H(δ).
func (s *scout) bound(n int) float64 {
	if s.left < leastProb {
		return 0
	}
	return float64(s.left*log2(float64(n))) + Entropy([]float64{s.left, 1 - s.left})
}

// A Worth is one check that has not been made, judged beforehand.
type Worth struct {
	Check inspect.Instance
	Bits  float64 // [bit] about cause × place
}

// All judges every check of the problem, in its order, by what it would tell
// about cause × place.
func (p *Posterior) All() []Worth {
	s := p.scout(p.t.classOf)
	all := make([]Worth, 0, len(p.t.checks))
	for c, inst := range p.t.problem.Checks {
		w := Worth{Check: inst}
		if p.forecast(c, s.hyps, &s.f) {
			s.gather(&s.f)
			w.Bits = s.bits(s.f.bins)
		}
		all = append(all, w)
	}
	return all
}
