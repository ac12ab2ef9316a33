package evidence

// A gaussian is a normal density over the coordinates that the readings so far
// have made relevant. Its covariance is the packed lower triangle.
type gaussian struct {
	mean []float64
	cov  []float64
}

// roomFor is how many coordinates there is room for at first: those of an ordinary job.
const roomFor = 16

// roomy is a normal density of n coordinates, all 0, in one piece of memory with
// room for so many.
func roomy(n, room int) gaussian {
	room = max(roomFor, room)
	all := make([]float64, room+room*(room+1)/2)
	return gaussian{mean: all[:n:room], cov: all[room : room+n*(n+1)/2]}
}

// grow adds an independent coordinate of mean 0.
func (g *gaussian) grow(variance float64) {
	if n := len(g.mean); n == cap(g.mean) {
		more := roomy(n, n+4)
		copy(more.mean, g.mean)
		copy(more.cov, g.cov)
		*g = more
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
// g·L(a·x), a the ray, where d1 and d2 are the derivatives of ln ∫g·L by the mean of a·x:
//
//	mean' = mean + V·a·d1        V' = V + (V·a)(V·a)ᵀ·d2
//
// These moments are exact for any L. Most readings have to do with few coordinates:
// the others stay as they are.
func (l *lesson) learn(g *gaussian, d1, d2 float64) {
	a, n := &l.ray, len(g.mean)
	if cap(l.shift) < n {
		l.shift, l.moved = make([]float64, n+8), make([]int, n+8)
	}
	shift := l.shift[:n]
	clear(shift)
	for k, j := range a.at {
		coef, row := a.coef[k], g.cov[j*(j+1)/2:]
		for i := range j + 1 {
			shift[i] += float64(coef * row[i])
		}
		for i, at := j+1, (j+1)*(j+2)/2+j; i < n; i++ {
			shift[i] += float64(coef * g.cov[at])
			at += i + 1
		}
	}
	moved := l.moved[:0]
	for i, s := range shift {
		if s != 0 {
			moved = append(moved, i)
		}
	}
	for k, i := range moved {
		g.mean[i] += float64(shift[i] * d1)
		si, row := shift[i]*d2, g.cov[i*(i+1)/2:]
		for _, j := range moved[:k+1] {
			row[j] += float64(si * shift[j])
		}
	}
}

// cloneInto is a copy in the room of one that is spare, if there is any.
func (g *gaussian) cloneInto(spare *[]gaussian) gaussian {
	n, to := len(*spare), gaussian{}
	if n > 0 {
		to = (*spare)[n-1]
		*spare = (*spare)[:n-1]
	}
	if cap(to.mean) < len(g.mean) {
		to = roomy(len(g.mean), len(g.mean))
	}
	to.mean, to.cov = to.mean[:len(g.mean)], to.cov[:len(g.cov)]
	copy(to.mean, g.mean)
	copy(to.cov, g.cov)
	return to
}
