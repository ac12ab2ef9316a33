package evidence

// A Belief is a probability on one row, cause, place or hypothesis.
type Belief struct {
	ID string
	P  float64 // [1]
}

// Probabilities are those of a list of beliefs.
func Probabilities(all []Belief) []float64 {
	p := make([]float64, len(all))
	for i, b := range all {
		p[i] = b.P
	}
	return p
}

// Hypotheses is the posterior over hypotheses in the order of the problem.
func (p *Posterior) Hypotheses() []Belief {
	all := make([]Belief, len(p.prob))
	for h := range p.prob {
		all[h] = Belief{p.t.problem.Hypotheses[h].ID, p.prob[h]}
	}
	return all
}

// Rows is the posterior over cause × place, in order of first appearance; of two
// faults each has half.
func (p *Posterior) Rows() []Belief { return p.t.names.rows(p.prob) }

// Causes is the posterior over causes.
func (p *Posterior) Causes() []Belief { return gathered(p.Rows(), p.t.causeOfRow, p.t.causeIDs) }

// Places is the posterior over places.
func (p *Posterior) Places() []Belief { return gathered(p.Rows(), p.t.placeOfRow, p.t.placeIDs) }

// BeganRows is what was believed of cause × place before any reading, when only the
// owner had been heard, in the same order as Rows.
func (p *Posterior) BeganRows() []Belief { return p.t.names.rows(p.began) }

// PriorRows is the prior over cause × place, in the same order as Rows; it is the
// catalogue's, whatever was told.
func (t *Table) PriorRows() []Belief {
	prior := make([]float64, len(t.problem.Hypotheses))
	for h := range prior {
		prior[h] = t.problem.Hypotheses[h].Prior
	}
	return t.names.rows(prior)
}

// Row is the posterior of one row; 0 when there is no such row.
func (p *Posterior) Row(id string) float64 {
	for _, b := range p.Rows() {
		if b.ID == id {
			return b.P
		}
	}
	return 0
}

// Classes is the posterior over what is wrong: one row, or two with [And] between.
func (p *Posterior) Classes() []Belief {
	all := beliefs(p.t.classIDs)
	for h, c := range p.t.classOf {
		all[c].P += p.prob[h]
	}
	return all
}

// Top is the likeliest of [Posterior.Classes]; of equals the first.
func (p *Posterior) Top() Belief {
	var top Belief
	for _, b := range p.Classes() {
		if b.P > top.P {
			top = b
		}
	}
	return top
}

// Readings are the readings taken in, without those that were given.
func (p *Posterior) Readings() []Reading { return p.readings[p.given:] }

// Given are the readings that somebody else took before.
func (p *Posterior) Given() []Reading { return p.readings[:p.given:p.given] }

// Missing is the prior mass [1] of hypotheses that the table did not hold; it
// is left where it was.
func (p *Posterior) Missing() float64 { return p.missing }

// Unanswered is how many of the readings at least one hypothesis had no answer for.
func (p *Posterior) Unanswered() int { return p.unknown }

// LogLikelihood is ln P(readings | h) of a hypothesis.
func (p *Posterior) LogLikelihood(h int) float64 { return p.logL[h] }

// Surprise is how well any hypothesis explains the readings: the sum over
// readings of the best hypothesis's ln P, less what the same displays would
// have by chance, ln 1/n [nats]. Near or below zero no cause of the catalogue fits.
func (p *Posterior) Surprise() float64 {
	best, any := 0.0, false
	for h, row := range p.rows {
		if row != nil && (!any || p.logL[h] > best) {
			best, any = p.logL[h], true
		}
	}
	for _, r := range p.readings {
		if c, err := p.t.index(r.Check); err == nil {
			best += log(float64(p.t.checks[c].Meter.Cells()))
		}
	}
	return best
}

// Bits is what the readings tell of one row being all that is wrong, or of two
// being wrong at once: log₂ of the posterior over what was believed before any
// reading, when only the owner had been heard.
func (p *Posterior) Bits(rows ...string) float64 {
	now, was := 0.0, 0.0
	for h, c := range p.t.classOf {
		if p.t.exactly(c, rows) {
			now += p.prob[h]
			was += p.began[h]
		}
	}
	if was <= 0 {
		return 0
	}
	return log2(max(now, leastProb) / was)
}
