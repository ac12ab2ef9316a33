package evidence

// surest is the expected belief in the likeliest class after the check gathered last.
func (s *scout) surest(bins int) float64 {
	sum := 0.0
	for b := range bins {
		top := 0.0
		for c := range s.classes {
			top = max(top, s.joint[c*bins+b])
		}
		sum += top
	}
	return sum
}

// pairBins is how coarsely two checks are judged together.
const pairBins = 8

// pair is what two checks tell together, taken as independent under each
// hypothesis: good enough to rank a bundle; the readings themselves are always
// judged with all they share.
func (s *scout) pair(a, b int) float64 {
	f, g := s.rough(a), s.rough(b)
	bins := f.bins * g.bins
	if s.pairBins = bins; bins == 0 {
		return 0
	}
	s.room(bins)
	for i, c := range s.classOf {
		at, also := f.row(i), g.row(i)
		to := s.joint[c*bins : (c+1)*bins]
		for x, p := range at {
			p *= s.prob[i]
			cell := to[x*g.bins:][:len(also)]
			for y, q := range also {
				cell[y] += float64(p * q)
			}
		}
	}
	return s.jointBits(bins)
}

// jointBits is the mutual information of class and bin of what was gathered last.
func (s *scout) jointBits(bins int) float64 {
	s.sum = empty(s.sum, bins)
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

// A roughcast is a forecast of few bins.
type roughcast struct {
	of   []int32 // by live hypothesis: its row
	bins int
	p    []float64 // [row][bin]
}

func (r *roughcast) row(i int) []float64 {
	at := int(r.of[i]) * r.bins
	return r.p[at : at+r.bins]
}

// rough is the coarse forecast of a check, kept; it has no bins when the check
// has not been computed.
func (s *scout) rough(c int) *roughcast {
	if s.coarse == nil {
		s.coarse = make([]*roughcast, len(s.p.t.checks))
	}
	if s.coarse[c] == nil {
		s.coarse[c] = &roughcast{}
		if s.forecast(c) {
			s.coarse[c] = s.f.coarse()
		}
	}
	return s.coarse[c]
}

// coarse gathers neighbouring bins until at most pairBins are left.
func (f *forecast) coarse() *roughcast {
	if f.bins == 0 {
		return &roughcast{}
	}
	per := (f.bins + pairBins - 1) / pairBins
	r := &roughcast{of: append([]int32(nil), f.of...), bins: (f.bins + per - 1) / per}
	r.p = make([]float64, len(f.outlook)*r.bins)
	for o := range f.outlook {
		for b, p := range f.p[o*f.bins : (o+1)*f.bins] {
			r.p[o*r.bins+b/per] += p
		}
	}
	return r
}
