package evidence

// A gaussian is a normal density over the coordinates that the readings so far
// have made relevant. Its covariance is the packed lower triangle.
type gaussian struct {
	mean []float64
	cov  []float64
}

// roomFor is 16 coordinates.
const roomFor = 136

// grow adds an independent coordinate of mean 0.
func (g *gaussian) grow(variance float64) {
	if cap(g.cov) == len(g.cov) { // room for the instruments of an ordinary job
		g.cov = append(make([]float64, 0, len(g.cov)+roomFor), g.cov...)
	}
	for range g.mean {
		g.cov = append(g.cov, 0)
	}
	g.mean = append(g.mean, 0)
	g.cov = append(g.cov, variance)
}

func (g *gaussian) at(i, j int) float64 {
	if i < j {
		i, j = j, i
	}
	return g.cov[i*(i+1)/2+j]
}

// A ray is a linear form a over the coordinates of a gaussian: a few of them
// and their coefficients.
type ray struct {
	at   []int
	coef []float64
}

func (a *ray) reset() { a.at, a.coef = a.at[:0], a.coef[:0] }

func (a *ray) add(at int, coef float64) {
	a.at = append(a.at, at)
	a.coef = append(a.coef, coef)
}

// along returns mean and variance of a·x.
func (g *gaussian) along(a *ray) (mean, variance float64) {
	for n, i := range a.at {
		mean += float64(a.coef[n] * g.mean[i])
		for k, j := range a.at[:n] {
			variance += float64(2 * a.coef[n] * a.coef[k] * g.at(i, j))
		}
		variance += float64(a.coef[n] * a.coef[n] * g.at(i, i))
	}
	return mean, max(0, variance)
}

// learn replaces g by the normal density with the same mean and covariance as
// g·L(a·x), where d1 and d2 are the derivatives of ln ∫g·L by the mean of a·x:
//
//	mean' = mean + V·a·d1        V' = V + (V·a)(V·a)ᵀ·d2
//
// These moments are exact for any L. shift is room for one vector.
func (g *gaussian) learn(a *ray, d1, d2 float64, shift []float64) {
	n := len(g.mean)
	for i := range n {
		s := 0.0
		for k, j := range a.at {
			s += float64(a.coef[k] * g.at(i, j))
		}
		shift[i] = s
	}
	at := 0
	for i := range n {
		g.mean[i] += float64(shift[i] * d1)
		si := shift[i] * d2
		for j := range i + 1 {
			g.cov[at] += float64(si * shift[j])
			at++
		}
	}
}

// cloneInto is clone in the room of one that is spare, if there is any.
func (g *gaussian) cloneInto(spare *[]gaussian) gaussian {
	n := len(*spare)
	if n == 0 {
		return g.clone()
	}
	old := (*spare)[n-1]
	*spare = (*spare)[:n-1]
	return gaussian{mean: append(old.mean[:0], g.mean...), cov: append(old.cov[:0], g.cov...)}
}

func (g *gaussian) clone() gaussian {
	return gaussian{mean: append([]float64(nil), g.mean...), cov: append([]float64(nil), g.cov...)}
}
