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
	group    []int32 // live hypothesis -> its group
	classOf  []int   // live hypothesis -> class among the live
	classes  int
	seen     []int     // class -> group
	class    []float64 // probability of each class
	member   []int     // live hypotheses, class by class
	ends     []int     // class -> where its members end
	unsure   float64   // [bit] entropy of the classes
	back     int       // coordinates of the background
	views    []view    // by check, room of the posterior
	head     []int32   // room: by kind or group
	sort     []seen    // room: by outlook
	f        forecast
	joint    []float64    // room: [class][bin]
	sum      []float64    // room: [bin]
	mix      []float64    // room: [bin]
	slips    []float64    // [bin] sum over the bins before of log₂ of a slip's chance over sum's
	alone    []float64    // room: by outlook
	coarse   []*roughcast // by check, made when first wanted
	pairBins int          // bins of the pair gathered last
}

// scout groups the live hypotheses by the given grouping of all hypotheses.
func (p *Posterior) scout(groupOf []int) *scout {
	if p.views == nil {
		p.views = make([]view, len(p.t.checks))
	}
	s := &scout{p: p, back: len(p.t.problem.Background), views: p.views}
	s.hyps, s.prob, s.left = p.live()
	for i, h := range s.hyps {
		s.group = append(s.group, int32(p.group[h]))
		c := find(s.seen, groupOf[h])
		if c < 0 {
			c = len(s.seen)
			s.seen = append(s.seen, groupOf[h])
			s.class = append(s.class, 0)
		}
		s.classOf = append(s.classOf, c)
		s.class[c] += s.prob[i]
	}
	s.classes = len(s.seen)
	for c := range s.classes {
		for i, of := range s.classOf {
			if of == c {
				s.member = append(s.member, i)
			}
		}
		s.ends = append(s.ends, len(s.member))
	}
	s.unsure = Entropy(s.class)
	return s
}

// forecast turns the scout to check c. It returns false when the check has no
// computed answer for a live hypothesis.
func (s *scout) forecast(c int) bool {
	v, ok := s.aim(c)
	if !ok {
		return false
	}
	s.bin(c, v)
	return true
}

// bin turns the scout to a check that was looked at.
func (s *scout) bin(c int, v *view) {
	s.f.view = v
	s.f.bin(&s.p.t.checks[c].Meter)
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

// gather sums the hypotheses of the forecast into joint[class][bin].
func (s *scout) gather() {
	f := &s.f
	s.room(f.bins)
	for i, c := range s.classOf {
		o := int(f.of[i])
		row, to := f.p[o*f.bins:(o+1)*f.bins], s.joint[c*f.bins:(c+1)*f.bins]
		for b, x := range row {
			to[b] += float64(s.prob[i] * x)
		}
	}
}

// empty returns room for n numbers, all 0.
func empty(room []float64, n int) []float64 {
	if cap(room) < n {
		return make([]float64, n)
	}
	room = room[:n]
	clear(room)
	return room
}

// bits is the mutual information of class and bin of the forecast.
//
//	Σ_class Σ_bin q·log₂(q/(P(class)·S(bin)))      q joint probability, S its sum over classes
//
// A class of one outlook has q = P(class)·p, so that it counts the outlook's
//
//	Σ_bin p·log₂(p/S)
//
// once for all such classes; and where only a slip is shown, p is the same.
func (s *scout) bits() float64 {
	f := &s.f
	s.sum = empty(s.sum, f.bins)
	total := 0.0
	for o := range f.outlook {
		x := &f.outlook[o]
		total += x.share
		for b, p := range f.p[o*f.bins+int(x.from) : o*f.bins+int(x.to)] {
			s.sum[int(x.from)+b] += float64(x.share * (p - f.slip))
		}
	}
	for b := range s.sum {
		if s.sum[b] += float64(total * f.slip); s.sum[b] > 0 {
			s.sum[b] = 1 / s.sum[b]
		}
	}
	if s.slips = append(s.slips[:0], 0); f.slip > 0 {
		for _, inverse := range s.sum {
			s.slips = append(s.slips, s.slips[len(s.slips)-1]+quickLog2(f.slip*inverse))
		}
	}
	s.alone = empty(s.alone, len(f.outlook))
	info, begin := 0.0, 0
	for c, end := range s.ends {
		if these := s.member[begin:end]; s.alike(these) {
			s.alone[f.of[these[0]]] += s.class[c]
		} else {
			info += float64(s.class[c] * s.told(s.mixed(these, s.class[c])))
		}
		begin = end
	}
	for o, share := range s.alone {
		if share > 0 {
			x := &f.outlook[o]
			info += float64(share * s.told(f.p[o*f.bins:(o+1)*f.bins], int(x.from), int(x.to)))
		}
	}
	return rounded(max(0, info))
}

// alike tells that these live hypotheses have one outlook.
func (s *scout) alike(these []int) bool {
	for _, i := range these[1:] {
		if s.f.of[i] != s.f.of[these[0]] {
			return false
		}
	}
	return true
}

// mixed is the chance of each bin under a class of several outlooks, and from
// where to where more than slips is shown.
func (s *scout) mixed(these []int, class float64) (row []float64, from, to int) {
	f := &s.f
	s.mix = empty(s.mix, f.bins)
	from = f.bins
	for _, i := range these {
		o := int(f.of[i])
		x := &f.outlook[o]
		share := s.prob[i] / class
		for b, p := range f.p[o*f.bins+int(x.from) : o*f.bins+int(x.to)] {
			s.mix[int(x.from)+b] += float64(share * (p - f.slip))
		}
		from, to = min(from, int(x.from)), max(to, int(x.to))
	}
	for b := range s.mix {
		s.mix[b] += f.slip
	}
	return s.mix, from, to
}

// told is Σ p·log₂(p/S) over the bins of a row, which shows slips only outside of
// from to to.
func (s *scout) told(row []float64, from, to int) float64 {
	sum := 0.0
	for b := from; b < to; b++ {
		if p := row[b]; p > 0 {
			sum += float64(p * quickLog2(p*s.sum[b]))
		}
	}
	if s.f.slip > 0 {
		sum += float64(s.f.slip * (s.slips[s.f.bins] - (s.slips[to] - s.slips[from])))
	}
	return sum
}

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
	if !s.forecast(c) {
		return Info{}, errNotComputed(inst)
	}
	return Info{Bits: s.bits(), Bound: s.bound(len(p.t.classIDs))}, nil
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
	checks := make([]int, len(p.t.checks))
	for c := range checks {
		checks[c] = c
	}
	return p.Worths(checks)
}

// Worths is [Posterior.All] of some checks, by their index in the problem.
func (p *Posterior) Worths(checks []int) []Worth {
	s := p.scout(p.t.classOf)
	all := make([]Worth, len(checks))
	for i, c := range checks {
		all[i].Check = p.t.problem.Checks[c]
		if s.forecast(c) {
			all[i].Bits = s.bits()
		}
	}
	return all
}
