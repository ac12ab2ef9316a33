package audit

import (
	"cmp"
	"context"
	"math"
	"slices"

	"evenwear/game/play"
	"evenwear/scoring/evidence"
)

func hundredth(x float64) float64 { return math.Floor(100*x+0.5) / 100 }

// Solved says whether the model inspector can solve a job.
type Solved struct {
	Belief   []float64 `json:"belief"` // on the truth, by session, in rising order
	Minutes  float64   `json:"minutes"`
	RunnerUp string    `json:"runner_up"` // the likeliest wrong row in the middle session
	Doubt    float64   `json:"doubt"`     // what is left on it
	Check    string    `json:"check"`     // that separates the two best
	Bits     float64   `json:"bits"`      // it tells of the two
}

// inTruth is the belief in what is true of a car.
func inTruth(c *play.Case, p *evidence.Posterior) (belief float64) {
	for _, row := range c.Truth() {
		belief += p.Row(row)
	}
	return belief
}

// Middle is the belief on the truth in the middle session.
func (s *Solved) Middle() float64 { return s.Belief[(len(s.Belief)-1)/2] }

// solved plays a job as the model inspector in several sessions.
func (r *run) solved(ctx context.Context, s *stage) (Solved, error) {
	type session struct {
		trail  evidence.Trail
		belief float64
	}
	all := make([]session, r.opt.Sessions)
	for i := range all {
		t, err := s.inspect(ctx, s.seed+uint64(i%lucks), s.Minutes())
		if err != nil {
			return Solved{}, err
		}
		all[i].trail = t
		all[i].belief = inTruth(s.Case, t.Final)
	}
	slices.SortStableFunc(all, func(a, b session) int { return cmp.Compare(a.belief, b.belief) })
	out := Solved{}
	for i := range all {
		out.Belief = append(out.Belief, all[i].belief)
	}
	middle := all[(len(all)-1)/2]
	out.Minutes = middle.trail.Minutes
	for _, b := range middle.trail.Final.Rows() {
		if !slices.Contains(s.Truth(), b.ID) && b.P > out.Doubt {
			out.RunnerUp, out.Doubt = b.ID, b.P
		}
	}
	if out.RunnerUp == "" {
		return out, nil
	}
	two, err := part(s.Table(), func(h *evidence.Hypothesis) int { return alone(h, []string{s.Truth()[0], out.RunnerUp}) })
	if err != nil {
		return out, err
	}
	p, err := two.Posterior(nil)
	if err != nil {
		return out, err
	}
	for i, w := range p.All() {
		if w.Bits > out.Bits && !math.IsInf(s.Prices().Checks[i].Minutes, 1) {
			out.Check, out.Bits = w.Check.String(), w.Bits
		}
	}
	return out, nil
}

// alone is which of these rows a hypothesis of one fault is of; −1 for none.
func alone(h *evidence.Hypothesis, rows []string) int {
	if h.Also.Row != "" {
		return -1
	}
	return slices.Index(rows, h.Row)
}

// part is the question which of some sides it is, each as likely as another; side
// is −1 for hypotheses that are none of them.
func part(t *evidence.Table, side func(*evidence.Hypothesis) int) (*evidence.Table, error) {
	var hyps, sides []int
	var weight []float64
	sum := map[int]float64{}
	for h := range t.Problem().Hypotheses {
		x := &t.Problem().Hypotheses[h]
		if k := side(x); k >= 0 {
			hyps, sides, weight = append(hyps, h), append(sides, k), append(weight, x.Prior)
			sum[k] += x.Prior
		}
	}
	for i := range weight {
		weight[i] /= sum[sides[i]]
	}
	return t.Part(hyps, weight)
}
