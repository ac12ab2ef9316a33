package audit

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// A Regret is what the model inspector misses on a problem small enough to be
// solved: belief in what is likeliest at the end, expected, against the most that
// any plan can expect.
type Regret struct {
	Best float64 `json:"best"` // [1] of the best plan, by dynamic programming
	Got  float64 `json:"got"`  // of the model inspector's
	Trap float64 `json:"trap"` // [bit] the most that one check tells alone, where it is a trap; else 0
}

// Missed is the share of the best that is missed.
func (r *Regret) Missed() float64 { return 1 - r.Got/r.Best }

// How small the problems are.
const (
	smallRows   = 4    // causes, nothing wrong among them
	smallChecks = 4    // checks that may be made
	smallFrom   = 12   // of the so many that tell most
	smallCells  = 31   // displays a meter may have
	trapCells   = 101  // in the trap, where two checks are made
	smallPaid   = 3    // checks at most whose minutes are there
	unheard     = 1e-6 // [1] a display as likely as this is not looked into; the call stays what it was
	stopAt      = 0.95 // [1] belief at which a call is made, by the inspector and by any plan
	trapApart   = 0.02 // [bit] one check alone tells less than this in a trap
)

// A small is a problem small enough to be solved.
type small struct {
	*evidence.Table
	prices  evidence.Prices // infinite for checks that may not be made
	checks  []inspect.Instance
	minutes float64
}

// regrets solves n problems drawn from a job's table and the trap in it, if there
// is one.
func (r *run) regrets(ctx context.Context, s *stage, n int) ([]Regret, error) {
	all := make([]Regret, n+1)
	err := r.each(ctx, s.ID(), "regret", n+1, func(i int) error {
		luck := rand.New(rand.NewPCG(r.opt.Seed, 7777+uint64(i)))
		draw := s.smallDrawn
		if i == n {
			draw = s.trap
		}
		p, told, err := draw(luck)
		if err != nil || p == nil {
			return err
		}
		all[i], err = p.regret()
		all[i].Trap = told
		return err
	})
	return slices.DeleteFunc(all, func(g Regret) bool { return g.Best == 0 }), err
}

// smallDrawn is the question which of a few causes it is, with a few of the checks
// that tell most and minutes for two or three.
func (s *stage) smallDrawn(luck *rand.Rand) (*small, float64, error) {
	var rows []string
	hyps := s.Table().Problem().Hypotheses
	for i := range hyps {
		if h := &hyps[i]; h.Also.Row == "" && !slices.Contains(rows, h.Row) {
			rows = append(rows, h.Row)
		}
	}
	luck.Shuffle(len(rows), func(i, j int) { rows[i], rows[j] = rows[j], rows[i] })
	rows = rows[:min(smallRows, len(rows))]
	t, err := part(s.Table(), func(h *evidence.Hypothesis) int { return alone(h, rows) })
	if err != nil {
		return nil, 0, err
	}
	told, err := s.telling(t, smallCells)
	if err != nil {
		return nil, 0, err
	}
	told = told[:min(smallFrom, len(told))]
	luck.Shuffle(len(told), func(i, j int) { told[i], told[j] = told[j], told[i] })
	p := s.small(t, told[:min(smallChecks, len(told))])
	p.minutes = s.prices.Minutes(t.Problem(), p.checks[:min(len(p.checks), 2+luck.IntN(smallPaid-1))])
	return p, 0, nil
}

// trap is the question whether a car has one of two faults and not the other, each
// of four cars as likely: a check that shows one of them tells nothing of that by
// itself, two checks tell it all. There is none (nil) where no two faults of the
// catalogue come together in a car, or no two checks tell them.
func (s *stage) trap(*rand.Rand) (*small, float64, error) {
	hyps := s.Table().Problem().Hypotheses
	find := func(id string) int {
		return slices.IndexFunc(hyps, func(h evidence.Hypothesis) bool { return h.ID == id })
	}
	sound := slices.IndexFunc(hyps, func(h evidence.Hypothesis) bool { return h.Cause == "honestly_worn" })
	for both := range hyps {
		if hyps[both].Also.Row == "" || sound < 0 {
			continue
		}
		first, second, _ := strings.Cut(hyps[both].ID, evidence.And)
		four := []int{sound, find(first), find(second), both}
		if slices.Contains(four, -1) {
			continue
		}
		t, err := s.Table().Part(four, []float64{0.25, 0.25, 0.25, 0.25})
		if err != nil {
			return nil, 0, err
		}
		if t, err = t.Asked(func(h *evidence.Hypothesis) string {
			return map[bool]string{true: "one", false: "none_or_both"}[h.ID == first || h.ID == second]
		}); err != nil {
			return nil, 0, err
		}
		var pair []inspect.Instance
		for _, one := range four[1:3] { // the check that tells this fault best
			two, err := s.Table().Part([]int{sound, one}, []float64{0.5, 0.5})
			if err != nil {
				return nil, 0, err
			}
			told, err := s.telling(two, trapCells)
			if err != nil {
				return nil, 0, err
			}
			if len(told) > 0 {
				pair = append(pair, told[0])
			}
		}
		if len(pair) < 2 || pair[0] == pair[1] {
			continue
		}
		alone, together, err := trapped(t, pair)
		if err != nil {
			return nil, 0, err
		}
		if alone < trapApart && together > 0.8 {
			p := s.small(t, pair)
			p.minutes = s.prices.Minutes(t.Problem(), pair)
			return p, max(alone, math.SmallestNonzeroFloat64), nil
		}
	}
	return nil, 0, nil
}

// trapped is how much [bit] two checks tell at most alone, and the belief [1]
// that is to be expected after both.
func trapped(t *evidence.Table, pair []inspect.Instance) (alone, together float64, err error) {
	p, err := t.Posterior(nil)
	if err != nil {
		return 0, 0, err
	}
	for _, inst := range pair {
		told, err := p.RowBits(inst)
		if err != nil {
			return 0, 0, err
		}
		alone = max(alone, told.Bits)
	}
	together, err = expected(p, pair[0], func(q *evidence.Posterior) (float64, error) {
		return expected(q, pair[1], func(q *evidence.Posterior) (float64, error) { return q.Top().P, nil })
	})
	return alone, together, err
}

// telling lists the checks that tell something of a question, most first, of those
// that can be made before any other and have few displays.
func (s *stage) telling(t *evidence.Table, cells int) ([]inspect.Instance, error) {
	worths, err := t.AtFirst()
	if err != nil {
		return nil, err
	}
	var all []evidence.Worth
	for c, w := range worths {
		price := &s.prices.Checks[c]
		check, _ := inspect.Find(w.Check.Check)
		if w.Bits > 0.01 && check.Meter.Cells() <= cells && len(price.After) == 0 && !math.IsInf(price.Minutes, 1) {
			all = append(all, w)
		}
	}
	slices.SortStableFunc(all, func(a, b evidence.Worth) int { return cmp.Compare(b.Bits, a.Bits) })
	var out []inspect.Instance
	for _, w := range all {
		out = append(out, w.Check)
	}
	return out, nil
}

// small prices all checks but these out.
func (s *stage) small(t *evidence.Table, checks []inspect.Instance) *small {
	p := &small{Table: t, prices: *s.prices, checks: checks}
	p.prices.Checks = slices.Clone(s.prices.Checks)
	for c, inst := range t.Problem().Checks {
		if !slices.Contains(checks, inst) {
			p.prices.Checks[c].Minutes = math.Inf(1)
		}
	}
	return p
}

// regret plays every branch of the best plan and of the model inspector's.
func (p *small) regret() (r Regret, err error) {
	start, err := p.Posterior(nil)
	if err != nil {
		return r, err
	}
	if r.Best, err = p.best(start, nil); err != nil {
		return r, err
	}
	r.Got, err = p.got(start, nil)
	if r.Got > r.Best+1e-9 {
		return r, fmt.Errorf("the model inspector expects %.9f where the best plan expects %.9f", r.Got, r.Best)
	}
	return r, err
}

// best is the belief in what is likeliest at the end that the best plan expects
// after these checks were made.
func (p *small) best(now *evidence.Posterior, made []inspect.Instance) (float64, error) {
	most := now.Top().P
	if most > stopAt {
		return most, nil
	}
	for _, inst := range p.checks {
		if next := append(slices.Clone(made), inst); !slices.Contains(made, inst) && p.prices.Minutes(p.Problem(), next) <= p.minutes+1e-6 {
			v, err := expected(now, inst, func(q *evidence.Posterior) (float64, error) { return p.best(q, next) })
			if err != nil {
				return 0, err
			}
			most = max(most, v)
		}
	}
	return most, nil
}

// got is what the model inspector expects.
func (p *small) got(now *evidence.Posterior, made []inspect.Instance) (float64, error) {
	top := now.Top().P
	if top > stopAt {
		return top, nil
	}
	inst, _, ok := now.Next(&p.prices, p.minutes-p.prices.Minutes(p.Problem(), made))
	if !ok {
		return top, nil
	}
	next := append(slices.Clone(made), inst)
	return expected(now, inst, func(q *evidence.Posterior) (float64, error) { return p.got(q, next) })
}

// expected is the mean of what is made of every display that a check may show.
func expected(now *evidence.Posterior, inst inspect.Instance, then func(*evidence.Posterior) (float64, error)) (float64, error) {
	check, ok := inspect.Find(inst.Check)
	if !ok {
		return 0, fmt.Errorf("there is no check %s", inst.Check)
	}
	sum, left := 0.0, 1.0
	was := now.Hypotheses()
	for d := range int64(check.Meter.Cells()) {
		q := now.Clone()
		if err := q.Add(evidence.Reading{Check: inst, Display: check.Meter.First() + d}); err != nil {
			return 0, err
		}
		chance := 0.0
		for h, b := range was {
			chance += b.P * math.Exp(q.LogLikelihood(h)-now.LogLikelihood(h))
		}
		if chance < unheard {
			continue
		}
		v, err := then(q)
		if err != nil {
			return 0, err
		}
		sum += chance * v
		left -= chance
	}
	return sum + left*now.Top().P, nil
}
