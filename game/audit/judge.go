package audit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"evenwear/scoring/learner"
)

// A Line is one line of the table: what was measured, what is aimed at.
type Line struct {
	What, Measured, Aim string
	Verdict             Verdict
}

// A Verdict says whether an aim was reached.
type Verdict string

// The verdicts.
const (
	Reached Verdict = "reached"
	Missed  Verdict = "MISSED"
	Open    Verdict = "not tested"
	Noted   Verdict = "" // a figure without an aim
)

func verdict(ok bool) Verdict {
	if ok {
		return Reached
	}
	return Missed
}

// A Report is the table of an audit.
type Report struct {
	Lines []Line
	Jobs  []Line // one for each job of the bank
	Twins []Pair // causes that cannot be told apart
}

// Failing is how many jobs fail.
func (r *Report) Failing() int {
	n := 0
	for _, l := range r.Jobs {
		if l.Verdict == Missed {
			n++
		}
	}
	return n
}

// What is aimed at.
const (
	aimSolved  = 0.80
	aimAlpha   = 0.85
	goalAlpha  = 0.90
	aimFive    = 0.80
	aimSkill   = 0.95
	aimGuess   = 0.02
	aimNamed   = 0.95
	aimWrongly = 0.02
	aimApart   = 0.99
	aimTrue    = 0.90
	aimRegret  = 0.02
	aimFlat    = 0.01 // probability of ranks as uneven, below which they are not flat
	ranksLeast = 50   // cars: five in each tenth, for chi-square to hold
	skillBins  = 7    // of a tenth, over the reference population
)

func (r *Report) add(what, measured, aim string, v Verdict) {
	r.Lines = append(r.Lines, Line{what, measured, aim, v})
}

// judge makes the table of what was worked out.
func (a *Audit) judge(units []*Unit) *Report {
	r := &Report{}
	var all, unseen, shown []*Played
	var proper Proper
	var bands Bands
	var ranks Ranks
	var pairs []Pair
	var regrets []Regret
	thrown := 0
	for _, u := range units {
		r.Jobs = append(r.Jobs, judgeJob(u))
		if u.Failed != "" {
			continue
		}
		all = append(all, &u.Bank)
		for i := range u.Unseen {
			all = append(all, &u.Unseen[i])
			unseen = append(unseen, &u.Unseen[i])
		}
		for i := range u.Shown {
			shown = append(shown, &u.Shown[i])
		}
		proper.add(u.Proper)
		for i := range bands {
			bands[i].N += u.Bands[i].N
			bands[i].Stated += u.Bands[i].Stated
			bands[i].True += u.Bands[i].True
		}
		thrown += u.Thrown
		ranks.add(&u.Ranks)
		pairs = append(pairs, u.Pairs...)
		regrets = append(regrets, u.Regrets...)
	}
	if len(all) == 0 {
		return r
	}
	r.add("honesty", fmt.Sprintf("of %d other spreads %d expect more, %d as much; the next loses %.2g", proper.Tried, proper.Beaten, proper.Even, proper.Margin),
		"none expects more or as much", verdict(proper.Tried > 0 && proper.Beaten == 0 && proper.Even == 0))
	a.judgeSkill(r, all)
	r.add("unseen jobs", fmt.Sprintf("%d; %d more could not be solved in their minutes and were made up anew", len(unseen), thrown), "", Noted)
	a.judgeReliability(r, unseen)
	if len(all) > len(unseen) {
		s, skill := a.referenceScores(all)
		c := Pearson(s.totals(-1), skill)
		r.add(fmt.Sprintf("correlation with true skill, all %d jobs", len(all)), fmt.Sprintf("%.3f, of ranks %.3f", c, Spearman(s.totals(-1), skill)), fmt.Sprintf("≥ %.2f", aimSkill), verdict(c >= aimSkill))
	}
	a.judgeGuesser(r, unseen)
	a.judgeNaming(r, shown)
	judgeBands(r, &bands)
	judgeRanks(r, &ranks)
	judgeRegret(r, regrets)
	a.judgePairs(r, pairs)
	return r
}

func judgeJob(u *Unit) Line {
	l := Line{What: u.Job, Aim: fmt.Sprintf("≥ %.2f on the truth", aimSolved), Verdict: Missed}
	if u.Failed != "" {
		l.Measured = u.Failed
		return l
	}
	s := &u.Solved
	l.Measured = fmt.Sprintf("%.3f (%.3f to %.3f) in %.0f min; next %s %.3f, told by %s, %.2f bit", s.Middle(), s.Belief[0], s.Belief[len(s.Belief)-1], s.Minutes, s.RunnerUp, s.Doubt, s.Check, s.Bits)
	l.Verdict = verdict(s.Middle() >= aimSolved)
	return l
}

// means is each learner's mean total over jobs.
func means(jobs []*Played) []float64 {
	sum := make([]float64, len(jobs[0].Totals))
	for _, p := range jobs {
		for i, t := range p.Totals {
			sum[i] += t / float64(len(jobs))
		}
	}
	return sum
}

// judgeSkill asks whether more skill gets more marks.
func (a *Audit) judgeSkill(r *Report, all []*Played) {
	total := means(all)
	var sum, n [skillBins]float64
	half, halves := 0.0, 0.0
	group := func(name string) (mean float64) {
		count := 0.0
		for i, g := range a.crowd.group {
			if g == name {
				mean += total[i]
				count++
			}
		}
		return mean / count
	}
	for i, l := range a.crowd.all {
		if a.crowd.group[i] != string(learner.Reasoner) {
			continue
		}
		b := min(skillBins-1, max(0, int((l.Skill-0.2)*10)))
		sum[b] += total[i]
		n[b]++
		if math.Abs(l.Skill-0.5) <= 0.1 {
			half += total[i]
			halves++
		}
	}
	var said []string
	last, reversals, empty := math.Inf(-1), 0, 0
	for b := range sum {
		if n[b] == 0 {
			empty++
			continue
		}
		m := sum[b] / n[b]
		said = append(said, fmt.Sprintf("%.1f", m))
		if m < last {
			reversals++
		}
		last = m
	}
	v := verdict(reversals == 0)
	if empty > 0 {
		v = Open
	}
	r.add("mean total by skill, 0.2 to 0.9", fmt.Sprintf("%s; reversals %d", strings.Join(said, " "), reversals), "no reversal", v)
	if halves > 0 {
		half /= halves
		for _, k := range []learner.Kind{learner.Nothing, learner.Refers, learner.Clicks} {
			m := group(string(k))
			r.add(string(k), fmt.Sprintf("%.1f", m), fmt.Sprintf("below %.1f of skill 0.5", half), verdict(m < half))
		}
	}
	for _, k := range []learner.Kind{learner.Guesser, learner.Checklist, learner.Jumper, learner.Inspector} {
		r.add(string(k), fmt.Sprintf("%.1f", group(string(k))), "", Noted)
	}
}

// referenceScores are the reference population's scores in jobs, with their skills.
func (a *Audit) referenceScores(jobs []*Played) (s Scores, skill []float64) {
	for i, g := range a.crowd.group {
		if g != string(learner.Reasoner) {
			continue
		}
		var line []float64
		for _, p := range jobs {
			line = append(line, p.Totals[i])
		}
		s, skill = append(s, line), append(skill, a.crowd.all[i].Skill)
	}
	return s, skill
}

func (a *Audit) judgeReliability(r *Report, unseen []*Played) {
	const ten, five = 10, 5
	k := min(ten, len(unseen))
	s, skill := a.referenceScores(unseen[:k])
	whole, err := s.Alpha()
	if err != nil {
		r.add("Cronbach's alpha", err.Error(), fmt.Sprintf("≥ %.2f", aimAlpha), Open)
		return
	}
	lo, hi, _ := s.Interval(0.95)
	se, _ := s.AlphaError()
	said := fmt.Sprintf("%.3f, standard error %.3f, 95 %% %.3f to %.3f, of %d learners in %d jobs", whole, se, lo, hi, len(s), k)
	v := verdict(whole >= aimAlpha)
	if k < ten {
		said += fmt.Sprintf("; ten would have %.3f", SpearmanBrown(whole, ten/float64(k)))
		v = Open
	} else if whole < goalAlpha {
		said += fmt.Sprintf("; the goal needs %.2f times as many jobs", Longer(whole, goalAlpha))
	}
	r.add("Cronbach's alpha, ten unseen jobs", said, fmt.Sprintf("≥ %.2f, goal %.2f", aimAlpha, goalAlpha), v)
	if k >= five {
		each := SpearmanBrown(whole, five/float64(k))
		said := fmt.Sprintf("%.3f by Spearman and Brown", each)
		few, _ := a.referenceScores(unseen[:five])
		if alpha, err := few.Alpha(); err == nil {
			said += fmt.Sprintf("; %.3f of the first five", alpha)
		}
		r.add("Cronbach's alpha, any five of them", said, fmt.Sprintf("≥ %.2f", aimFive), verdict(each >= aimFive))
	}
	learners, jobs, left := s.Components()
	sum := learners + jobs + left
	r.add("  variance of one job's mark", fmt.Sprintf("%.0f %% of learners, %.0f %% of jobs, %.0f %% of both together and of luck", 100*learners/sum, 100*jobs/sum, 100*left/sum), "", Noted)
	rest, _ := s.ItemRest()
	least := 0
	for j := range rest {
		if rest[j] < rest[least] {
			least = j
		}
	}
	r.add("least item-rest correlation", fmt.Sprintf("%.3f, %s", rest[least], unseen[least].Job), "not negative", verdict(rest[least] >= 0))
	c := Pearson(s.totals(-1), skill)
	r.add("  correlation with true skill, ten unseen jobs", fmt.Sprintf("%.3f, of ranks %.3f; the root of alpha is %.3f", c, Spearman(s.totals(-1), skill), math.Sqrt(max(0, whole))), "", Noted)
}

// judgeGuesser asks how likely a guesser passes where a reasoner of skill 0.8 passes
// nine times in ten: means over the unseen jobs, of guessers taken as normal.
func (a *Audit) judgeGuesser(r *Report, unseen []*Played) {
	if len(unseen) == 0 {
		return
	}
	total := means(unseen)
	var able, guess []float64
	for i, g := range a.crowd.group {
		switch {
		case g == string(learner.Guesser):
			guess = append(guess, total[i])
		case g == string(learner.Reasoner) && math.Abs(a.crowd.all[i].Skill-0.8) <= 0.1:
			able = append(able, total[i])
		}
	}
	const what = "a guesser passes where skill 0.8 does with 0.9"
	aim := fmt.Sprintf("below %.2f", aimGuess)
	if len(able) < 10 || len(guess) < 3 {
		r.add(what, fmt.Sprintf("%d of skill 0.8 and %d guessers are too few", len(able), len(guess)), aim, Open)
		return
	}
	slices.Sort(able)
	pass := stat.Quantile(0.1, stat.Empirical, able, nil)
	mean, dev := stat.MeanStdDev(guess, nil)
	p := distuv.Normal{Mu: mean, Sigma: max(dev, 1e-9)}.Survival(pass)
	r.add(what, fmt.Sprintf("%.2g: passed from %.1f, guessers %.1f ± %.1f", p, pass, mean, dev), aim, verdict(p < aimGuess))
}

// judgeNaming asks whose wrong ideas are named from the cars that confront them.
func (a *Audit) judgeNaming(r *Report, shown []*Played) {
	var ids []string
	for i := range learner.Misconceptions {
		ids = append(ids, learner.Misconceptions[i].ID)
	}
	held, named := make([]int, len(ids)), make([]int, len(ids))
	free, wrongly := 0, 0
	for i, l := range a.crowd.all {
		if l.Kind != learner.Reasoner {
			continue
		}
		n := naming(i, ids, shown)
		m := slices.Index(ids, l.Holds)
		switch {
		case m >= 0:
			if !slices.ContainsFunc(shown, func(p *Played) bool { return slices.Contains(p.Ideas, l.Holds) }) {
				continue // no table of this bank can show it
			}
			held[m]++
			if n.Idea == l.Holds {
				named[m]++
			}
		default:
			free++
			if n.Idea != "" {
				wrongly++
			}
		}
	}
	sumHeld, sumNamed, ideas := 0, 0, 0
	for m := range ids {
		sumHeld, sumNamed = sumHeld+held[m], sumNamed+named[m]
		if held[m] > 0 {
			ideas++
		}
	}
	share := func(n, of int) float64 { return float64(n) / float64(max(1, of)) }
	v := Open
	if sumHeld > 0 && len(shown) == 10 {
		v = verdict(share(sumNamed, sumHeld) >= aimNamed)
	}
	r.add(fmt.Sprintf("misconceptions named, %d of them from %d cars", ideas, len(shown)),
		fmt.Sprintf("%.1f %% of %d who hold one", 100*share(sumNamed, sumHeld), sumHeld), fmt.Sprintf("≥ %.0f %%", 100*aimNamed), v)
	v = Open
	if free > 0 {
		v = verdict(share(wrongly, free) <= aimWrongly)
	}
	r.add("misconceptions named wrongly", fmt.Sprintf("%.1f %% of %d who hold none", 100*share(wrongly, free), free), fmt.Sprintf("≤ %.0f %%", 100*aimWrongly), v)
	for m, id := range ids {
		if held[m] > 0 && share(named[m], held[m]) < aimNamed {
			r.add("  "+id, fmt.Sprintf("%d of %d", named[m], held[m]), "", Noted)
		}
	}
}

// naming is what a learner's jobs say of their ideas.
func naming(i int, ids []string, jobs []*Played) learner.Naming {
	explanation := func(line []int32) (x learner.Explanation) {
		for g := range line {
			x[g] = float64(line[g]) / 100
		}
		return x
	}
	var real []learner.Explanation
	ideas := make([][]learner.Explanation, len(ids))
	for _, p := range jobs {
		said, ok := p.Said[i]
		if !ok {
			continue
		}
		real = append(real, explanation(said[0]))
		for m, id := range ids {
			at := slices.Index(p.Ideas, id)
			ideas[m] = append(ideas[m], explanation(said[at+1])) // the real table where the idea shows nothing
		}
	}
	return learner.Name(real, ids, ideas)
}
