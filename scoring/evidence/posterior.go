package evidence

import (
	"fmt"

	"evenwear/physics/inspect"
)

// A Posterior is what a run of readings proves. For each hypothesis it carries
// ln P(readings | h) and a normal density over
//
//	background b, one bias for each instrument used, one fit error for each check repeated
//
// and takes a reading by matching the moments of that density times the
// probability of the display's cell (assumed-density filtering; exact where
// nothing is rounded), once as a true reading and once as a slip: see [mixture].
// The background ties instruments together, so nodes for their biases would
// multiply, 5 for each instrument used; TestAgainstQuadrature has the errors.
type Posterior struct {
	t        *Table
	rows     []*tableRow // as the table stood when the posterior was begun
	missing  float64     // [1] prior mass of hypotheses not computed: it stays as it is
	logL     []float64
	group    []int     // by hypothesis: those that have seen every reading alike share a state; −1: not computed
	state    []mixture // by group
	first    []int     // by group: the first of its hypotheses
	coords   int       // coordinates of a state
	biasOf   []string  // instruments with a bias coordinate
	biasAt   []int
	fitOf    []int // checks that were repeated: their fit error has a coordinate
	fitAt    []int
	readings []Reading // those given first
	given    int
	from     []float64 // [nat] by hypothesis: ln of the prior times the chance of what was told
	began    []float64 // by hypothesis: probability before any reading
	prob     []float64 // by hypothesis
	memory   *Memory   // of what is to be read next; may be nil
	at       *node     // after these readings; nil without a memory
	unknown  int       // readings a live hypothesis has no answer for

	aimed   aimed
	columns *columns    // of rows, made when first wanted
	joint   []*gaussian // by group: what is known of it by its moments, made when first wanted; see whole
	room    []gaussian  // by group: of joint
	lesson  lesson
	views   []view // room of a scout
}

// Posterior begins with the prior over what the table holds now, what the owner told
// and what was given, and takes the readings in their order.
func (t *Table) Posterior(readings []Reading) (*Posterior, error) {
	n := len(t.rows)
	p := &Posterior{t: t, rows: make([]*tableRow, n), logL: make([]float64, n), group: make([]int, n), from: make([]float64, n), prob: make([]float64, n)}
	for h := range n {
		p.from[h] = log(t.problem.Hypotheses[h].Prior)
		p.rows[h] = t.rows[h].Load()
		if p.rows[h] == nil || p.rows[h].err != nil {
			p.rows[h] = nil
			p.missing += t.problem.Hypotheses[h].Prior
		} else if t.problem.Told != nil {
			p.from[h] += p.rows[h].told
		}
	}
	p.begin()
	p.normalise()
	p.began = append([]float64(nil), p.prob...)
	if t.problem.Told == nil {
		for h := range p.began {
			p.began[h] = t.problem.Hypotheses[h].Prior // to the last bit
		}
	}
	for _, r := range t.given {
		if err := p.Add(r); err != nil {
			return nil, err
		}
	}
	p.given = len(t.given)
	for _, r := range readings {
		if err := p.Add(r); err != nil {
			return nil, err
		}
	}
	return p, nil
}

// begin forgets every reading but not which checks were repeated.
func (p *Posterior) begin() {
	p.coords = len(p.t.problem.Background)
	p.biasOf, p.biasAt, p.fitAt, p.unknown = nil, nil, nil, 0
	p.state, p.first = nil, nil
	for h, row := range p.rows {
		p.logL[h] = 0
		switch {
		case row == nil:
			p.group[h] = -1
			continue
		case len(p.state) == 0:
			p.state, p.first = []mixture{{part: make([]part, 1)}}, []int{h}
		}
		p.group[h] = 0
	}
	for range p.coords {
		for g := range p.state {
			p.state[g].grow(1)
		}
	}
	for _, c := range p.fitOf {
		p.part(p.column(c))
	}
	for _, c := range p.fitOf {
		p.fitAt = append(p.fitAt, p.coords)
		p.grow(func(h int) float64 { return p.rows[h].fits[c].Residual })
	}
}

// Clone returns a posterior that can be added to on its own.
func (p *Posterior) Clone() *Posterior {
	q := *p
	q.logL = append([]float64(nil), p.logL...)
	q.prob = append([]float64(nil), p.prob...)
	q.readings = append([]Reading(nil), p.readings...)
	q.biasOf, q.biasAt = append([]string(nil), p.biasOf...), append([]int(nil), p.biasAt...)
	q.fitOf, q.fitAt = append([]int(nil), p.fitOf...), append([]int(nil), p.fitAt...)
	q.group, q.first = append([]int(nil), p.group...), append([]int(nil), p.first...)
	q.state = make([]mixture, len(p.state))
	for g := range p.state {
		q.state[g] = p.state[g].clone()
	}
	q.tidy()
	return &q
}

// tidy lets go of what is only room, of a posterior that is to be kept.
func (p *Posterior) tidy() { p.joint, p.room, p.lesson, p.views = nil, nil, lesson{}, nil }

// Add takes one more reading. It refuses a check that is not in the problem or
// a display that the check's meter does not have.
func (p *Posterior) Add(r Reading) error {
	c, err := p.t.index(r.Check)
	if err != nil {
		return err
	}
	m := &p.t.checks[c].Meter
	if !m.Has(r.Display) {
		return fmt.Errorf("evidence: display %d of %s; its meter shows %d to %d", r.Display, r.Check, m.First(), m.First()+int64(m.Cells())-1)
	}
	for h, row := range p.rows {
		if row != nil && !row.have[c] {
			return fmt.Errorf("evidence: check %s has not been computed for %s; call Ensure", r.Check, p.t.problem.Hypotheses[h].ID)
		}
	}
	again := false
	for _, old := range p.readings {
		again = again || old.Check == r.Check
	}
	p.readings = append(p.readings, r)
	p.follow(r)
	if again && find(p.fitOf, c) < 0 {
		// Until now the fit's error stood among the noise of one reading.
		p.fitOf = append(p.fitOf, c)
		p.begin()
		for _, old := range p.readings {
			p.take(old)
		}
	} else {
		p.take(r)
	}
	p.normalise()
	return nil
}

// take works one reading into every hypothesis.
func (p *Posterior) take(r Reading) {
	c := find(p.t.problem.Checks, r.Check)
	m := &p.t.checks[c].Meter
	if m.Bias > 0 && find(p.biasOf, m.Instrument) < 0 {
		p.biasOf = append(p.biasOf, m.Instrument)
		p.biasAt = append(p.biasAt, p.coords)
		p.grow(func(int) float64 { return 1 })
	}
	p.joint = p.joint[:0]
	p.aimAt(c, m)
	col := p.column(c)
	p.part(col)
	p.lesson.open(m, r.Display)
	flat := log(1 / float64(m.Cells()))
	unknown := false
	for g := range p.state {
		fit, x := &col.kind[col.of[p.first[g]]], &p.state[g]
		if fit.ok {
			extra := p.aim(fit, &p.lesson.ray)
			x.learn(&p.lesson, fit.mean, extra)
		} else { // no answer to compare with: any display is as likely as another
			for i := range x.part {
				x.part[i].weight += flat
			}
			unknown = true
		}
		x.logL = x.evidence()
	}
	for h, g := range p.group {
		if g >= 0 {
			p.logL[h] = p.state[g].logL
		}
	}
	if unknown {
		p.unknown++
	}
}

// part splits the groups so that all of one have the same fit at a check.
func (p *Posterior) part(col *column) {
	type side struct {
		group int
		kind  int32
	}
	sides := map[side]int{}
	kept := make([]bool, len(p.state))
	for h, g := range p.group {
		if g < 0 {
			continue
		}
		s := side{g, col.of[h]}
		to, known := sides[s]
		if !known {
			to = g
			if kept[g] { // its first hypothesis keeps the state
				to = len(p.state)
				p.state = append(p.state, p.state[g].cloneInto(&p.lesson.spare))
				p.first = append(p.first, h)
			}
			kept[g], sides[s] = true, to
		}
		p.group[h] = to
	}
}

// grow adds a coordinate whose variance is told of a hypothesis of each group.
func (p *Posterior) grow(variance func(h int) float64) {
	p.coords++
	for g, h := range p.first {
		p.state[g].grow(variance(h))
	}
}

// aimed is what a check depends on under every hypothesis.
type aimed struct {
	extra  float64 // [unit²] variance that no coordinate carries, but for the fit's
	bias   float64 // [unit]
	biasAt int     // coordinate; −1: none yet
	fitAt  int     // coordinate of the fit's error; −1: it stands among the noise
}

// aimAt turns to a check.
func (p *Posterior) aimAt(c int, m *inspect.Meter) {
	a := aimed{extra: float64(m.Sigma * m.Sigma), bias: m.Bias, biasAt: -1, fitAt: -1}
	if m.Bias > 0 {
		if i := find(p.biasOf, m.Instrument); i >= 0 {
			a.biasAt = p.biasAt[i] // one standard normal for an instrument, on each meter's own scale
		} else {
			a.extra += float64(m.Bias * m.Bias)
		}
	}
	if i := find(p.fitOf, c); i >= 0 {
		a.fitAt = p.fitAt[i]
	}
	p.aimed = a
}

// aim sets the ray to how the check turned to depends on the coordinates and
// returns the variance [unit²] that no coordinate carries.
func (p *Posterior) aim(fit *kind, a *ray) (extra float64) {
	extra = p.aimed.extra
	a.reset()
	for k, s := range fit.slope {
		if s != 0 {
			a.add(k, s)
		}
	}
	if p.aimed.biasAt >= 0 {
		a.add(p.aimed.biasAt, p.aimed.bias)
	}
	if p.aimed.fitAt >= 0 {
		a.add(p.aimed.fitAt, 1)
	} else {
		extra += fit.residual
	}
	return extra
}

// whole is the density of a group by its mean and covariance: along any ray it
// has the moments of its mixture. It is good until the next reading.
func (p *Posterior) whole(group int) *gaussian {
	if n := len(p.state); len(p.joint) == 0 {
		p.joint = append(p.joint, make([]*gaussian, n)...)
		p.room = append(p.room, make([]gaussian, max(0, n-len(p.room)))...)
	}
	if p.joint[group] == nil {
		p.joint[group] = p.state[group].moments(&p.room[group])
	}
	return p.joint[group]
}

func find[T comparable](all []T, one T) int {
	for i, x := range all {
		if x == one {
			return i
		}
	}
	return -1
}

// normalise makes probabilities of where it began and the likelihoods.
func (p *Posterior) normalise() {
	best, any := 0.0, false
	for h, row := range p.rows {
		if row == nil {
			continue
		}
		if l := p.from[h] + p.logL[h]; !any || l > best {
			best, any = l, true
		}
	}
	sum := 0.0
	for h, row := range p.rows {
		p.prob[h] = p.t.problem.Hypotheses[h].Prior
		if row != nil {
			p.prob[h] = exp(p.from[h] + p.logL[h] - best)
			sum += p.prob[h]
		}
	}
	if !any {
		return
	}
	scale := (1 - p.missing) / sum
	for h, row := range p.rows {
		if row != nil {
			p.prob[h] *= scale
		}
	}
}
