package scoring

import "slices"

// A Mark is one of the eight, 0 to 100 but for diagnosis, which may be negative.
type Mark struct {
	ID     string
	Weight float64 // [%] of the total
	Value  float64 // rounded to 0.01
	Scale  float64 // [1] what the evidence leaves of it in the total; 1 for most
	Reason Reason
}

// Marks are all eight with their total.
type Marks struct {
	Marks    []Mark
	Total    float64 // rounded to 0.01
	Uncapped float64 // what the total was before an unsafe release capped it
	Capped   bool
	Notes    []Reason // why the total is not the plain sum
}

// The marks in their order.
const (
	Diagnosis   = "diagnosis"
	Decision    = "decision"
	Evidence    = "evidence"
	Consistency = "consistency"
	Reading     = "reading"
	Safety      = "safety"
	ProofMark   = "proof"
	Minutes     = "minutes"
)

const (
	unsafeCap = 40  // the most a total may be when an unsafe car was released
	luckRoom  = 10  // how far diagnosis may lie above what the readings bear
	leastBits = 0.5 // [bit] over which what is missing is reckoned at least
	harmCost  = 25  // of the safety mark, each harmful act; common practice, no source
	fairShare = 0.1 // [1] two counters: nearer than this at the top is fair
)

// MarkPlay gives a play its eight marks and their total.
func MarkPlay(p *Play) (Marks, error) {
	if err := p.verify(); err != nil {
		return Marks{}, err
	}
	said := Spread(p.Counters, p.Prior)
	truth := truthOf(len(p.Rows), p.True)
	evidence := p.evidence()
	scale := round(evidence.Value) / 100
	m := Marks{Marks: []Mark{
		p.diagnosis(said, truth), p.decision(), evidence, p.consistency(said),
		p.reading(), p.safety(), p.proof(), p.minutes(),
	}}
	sum := 0.0
	for i := range m.Marks {
		k := &m.Marks[i]
		k.Value, k.Scale = round(k.Value), 1
		v := k.Value
		switch k.ID {
		case Diagnosis:
			if allowed := round(Proper(p.Support, truth, p.Prior) + luckRoom); v > allowed {
				m.Notes = append(m.Notes, Reason{TotalLucky, []Arg{number("diagnosis", v), number("readings", allowed-luckRoom), number("room", luckRoom), number("allowed", allowed)}})
				v = allowed
			}
		case Reading, Safety, Minutes:
			k.Scale = scale
		}
		sum += float64(k.Weight * v * k.Scale)
	}
	m.Uncapped = round(sum / 100)
	m.Total = m.Uncapped
	if len(p.Unsafe) > 0 {
		m.Total, m.Capped = min(m.Uncapped, unsafeCap), true
		id := TotalCapped
		if m.Uncapped <= unsafeCap {
			id = TotalUnsafeLow
		}
		m.Notes = append(m.Notes, Reason{id, []Arg{number("cap", unsafeCap), number("uncapped", m.Uncapped), text("dangers", dangers(p.Unsafe)...)}})
	}
	return m, nil
}

// dangers are the ids of findings, each once.
func dangers(list []Finding) (ids []string) {
	for _, f := range list {
		if !slices.Contains(ids, f.ID) {
			ids = append(ids, f.ID)
		}
	}
	return ids
}

func (p *Play) diagnosis(said, truth []float64) Mark {
	on, open, worst := 0.0, 1.0, -1
	for i := range said {
		open -= float64(p.Prior[i] * p.Prior[i])
		if truth[i] > 0 {
			on += said[i]
		} else if worst < 0 || said[i] > said[worst] {
			worst = i
		}
	}
	args := []Arg{number("said", 100*on), number("brier", Brier(said, truth)), number("prior", open)}
	id := DiagnosisSpread
	switch {
	case on >= 0.5:
		id = DiagnosisTrue
	case worst >= 0 && said[worst] > on:
		id = DiagnosisWrong
		args = append(args, text("worst", p.Rows[worst]), number("worst_said", 100*said[worst]))
	}
	return Mark{ID: Diagnosis, Weight: 25, Value: Proper(said, truth, p.Prior), Reason: Reason{id, args}}
}

func (p *Play) decision() Mark {
	over := max(0, p.Loss-p.BestLoss)
	args := []Arg{number("loss", over), number("best", p.BestLoss), number("chosen", p.Loss), text("what", p.BestChoice)}
	r := Reason{DecisionLoss, args}
	switch {
	case round(over) == 0:
		r = Reason{DecisionBest, args[:1]}
	case p.Needless > 0:
		r = Reason{DecisionNeedless, []Arg{args[0], number("needless", float64(p.Needless)), args[1], args[2], args[3]}}
	}
	return Mark{ID: Decision, Weight: 25, Value: clamp(100-over, 0, 100), Reason: r}
}

// bits is what the learner's own readings tell of the true rows: log₂ of what is
// believed after them over what was when only the owner had been heard.
func (p *Play) bits() (bits, support float64) {
	began, from := 0.0, p.Began
	if from == nil {
		from = p.Prior
	}
	for _, r := range p.True {
		support += p.Support[r]
		began += from[r]
	}
	if began <= 0 || support <= 0 {
		return 0, support
	}
	return log2(support / began), support
}

// evidence is what is missing to the model inspector's bits over these, or over half
// a bit where they are fewer: then nearly all was told before anybody looked, and a
// small loss is no great one. Who looked at nothing has none.
func (p *Play) evidence() Mark {
	bits, support := p.bits()
	args := []Arg{number("bits", bits), number("model", p.ModelBits), number("support", 100*support)}
	value := 0.0
	if len(p.Readings) > 0 || p.OnPaper {
		value = 100 * clamp(1-(p.ModelBits-bits)/max(leastBits, p.ModelBits), 0, 1)
	}
	id := EvidenceBits
	if round(value) == 0 {
		id = EvidenceNone
	}
	return Mark{ID: Evidence, Weight: 10, Value: value, Reason: Reason{id, args}}
}

// consistency is 100·(1 − distance) from the projection of what the readings
// bear on the same 20 counters.
func (p *Play) consistency(said []float64) Mark {
	fair := Shares(Project(p.Support))
	d := Distance(said, fair)
	top := 0
	for i := range fair {
		if fair[i] > fair[top] {
			top = i
		}
	}
	most := 0
	for i := range said {
		if said[i] > said[most] {
			most = i
		}
	}
	id := ConsistencyFair
	switch over := said[most] - fair[top]; {
	case over >= fairShare-1e-9:
		id = ConsistencyOver
	case over <= -fairShare+1e-9:
		id = ConsistencyUnder
	}
	return Mark{ID: Consistency, Weight: 10, Value: 100 * (1 - d), Reason: Reason{id,
		[]Arg{number("distance", d), number("said_top", 100*said[most]), number("support_top", 100*fair[top])}}}
}

// reading is 100 when read to the division, 0 at two divisions off, a straight
// line between, mean over distinct checks; repeats of a check are averaged first.
func (p *Play) reading() Mark {
	sum, n, total := 0.0, 0, 0.0
	worst, far := "", -1.0
	for i, r := range p.Readings {
		first := true
		for _, old := range p.Readings[:i] {
			first = first && old.Check != r.Check
		}
		if !first {
			continue
		}
		off, times := 0.0, 0
		for _, again := range p.Readings[i:] {
			if again.Check == r.Check {
				off += max(again.Divisions, -again.Divisions)
				times++
			}
		}
		off /= float64(times)
		if off > far {
			worst, far = r.Check, off
		}
		sum += clamp(1-float64(off/2), 0, 1)
		total += off
		n++
	}
	switch {
	case n == 0 && p.OnPaper:
		return Mark{ID: Reading, Weight: 10, Value: 100, Reason: Reason{ID: ReadingOnPaper}}
	case n == 0:
		return Mark{ID: Reading, Weight: 10, Reason: Reason{ID: ReadingNone}}
	}
	return Mark{ID: Reading, Weight: 10, Value: 100 * sum / float64(n), Reason: Reason{ReadingMean, []Arg{
		number("mean", total/float64(n)), number("checks", float64(n)), text("worst", worst), number("worst_divisions", far)}}}
}

// safety is the share of due cautions that were kept, less 25 for each harmful act.
func (p *Play) safety() Mark {
	kept, missing := 0, []string(nil)
	for _, c := range p.Cautions {
		if c.Kept {
			kept++
		} else {
			missing = append(missing, c.ID)
		}
	}
	due := len(p.Cautions)
	value := 100.0
	if due > 0 {
		value = 100 * float64(kept) / float64(due)
	}
	value = max(0, value-float64(harmCost*float64(len(p.Harms))))
	args := []Arg{number("kept", float64(kept)), number("due", float64(due))}
	r := Reason{SafetyKept, args}
	switch {
	case len(p.Harms) > 0:
		r = Reason{SafetyHarm, append(args, number("harms", float64(len(p.Harms))), text("which", p.Harms...))}
		if missing != nil {
			r = Reason{SafetyBoth, append(r.Args, text("missing", missing...))}
		}
	case missing != nil:
		r = Reason{SafetyBroken, append(args, text("missing", missing...))}
	}
	return Mark{ID: Safety, Weight: 10, Value: value, Reason: r}
}

func (p *Play) proof() Mark {
	if p.OnPaper {
		return Mark{ID: ProofMark, Weight: 5, Value: 100, Reason: Reason{ID: ProofOnPaper}}
	}
	done, missing := 0, []string(nil)
	for _, x := range p.Proof {
		if x.Done {
			done++
		} else {
			missing = append(missing, x.ID)
		}
	}
	value := 0.0
	if len(p.Proof) > 0 {
		value = 100 * float64(done) / float64(len(p.Proof))
	}
	args := []Arg{number("done", float64(done)), number("due", float64(len(p.Proof)))}
	r := Reason{ProofDone, args}
	if missing != nil {
		r = Reason{ProofMissing, append(args, text("missing", missing...))}
	}
	return Mark{ID: ProofMark, Weight: 5, Value: value, Reason: r}
}

// minutes is the best plan's over the learner's, at most 100.
func (p *Play) minutes() Mark {
	value := 100.0
	if p.Spent > p.Best {
		value = 100 * max(0, p.Best) / p.Spent
	}
	id := MinutesBest
	if round(value) < 100 {
		id = MinutesOver
	}
	return Mark{ID: Minutes, Weight: 5, Value: value, Reason: Reason{id, []Arg{number("spent", p.Spent), number("best", p.Best)}}}
}
