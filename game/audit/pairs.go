package audit

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// A Pair is two causes and how surely they can be told apart.
type Pair struct {
	A, B string  // rows
	Sure float64 // [1] mean belief in the likelier at the end
}

// apart is the belief [1] at which two causes count as told apart and no further
// check is made.
const apart = 0.998

// pairs tells every two causes of the catalogue apart, at one place where both can
// be, or where each stands first: readings are drawn from the table, checks chosen
// by bits a minute until [affordable] minutes are spent, on the car as it comes or,
// where that does not do, one that has stood overnight.
func (r *run) pairs(ctx context.Context, s *stage) ([]Pair, error) {
	problem := s.Table().Problem()
	places := map[string][]string{}
	var causes []string
	for i := range problem.Hypotheses {
		h := &problem.Hypotheses[i]
		if !slices.Contains(causes, h.Cause) {
			causes = append(causes, h.Cause)
		}
		if !slices.Contains(places[h.Cause], h.Place) {
			places[h.Cause] = append(places[h.Cause], h.Place)
		}
	}
	var all []Pair
	for i, a := range causes {
		for _, b := range causes[i+1:] {
			p, q := places[a][0], places[b][0]
			for _, x := range places[a] {
				if slices.Contains(places[b], x) {
					p, q = x, x
					break
				}
			}
			all = append(all, Pair{A: a + "@" + p, B: b + "@" + q})
		}
	}
	stood := evidence.InspectPricesOf(problem, inspect.StoodOvernight())
	err := r.each(ctx, s.ID(), "pairs", len(all), func(i int) error {
		for _, prices := range []*evidence.Prices{s.Prices(), &stood} {
			sure, err := r.between(s.Table(), prices, all[i].A, all[i].B, uint64(i))
			if err != nil {
				return err
			}
			if all[i].Sure = max(all[i].Sure, sure); all[i].Sure >= aimApart {
				break
			}
		}
		return nil
	})
	return all, err
}

// affordable is what a home inspector has for two causes [min]: the longest that
// a job of the program allows. Assumed.
const affordable = 90

// between is the mean belief in the likelier of two rows after all that can be afforded.
func (r *run) between(t *evidence.Table, prices *evidence.Prices, a, b string, number uint64) (float64, error) {
	two, err := part(t, func(h *evidence.Hypothesis) int { return alone(h, []string{a, b}) })
	if err != nil {
		return 0, fmt.Errorf("%s and %s: %w", a, b, err)
	}
	luck := rand.New(rand.NewPCG(r.opt.Seed, 99+number))
	memory := two.Remember(prices)
	sum := 0.0
	for range r.opt.Draws {
		hyps := two.Problem().Hypotheses
		h, left := 0, luck.Float64()
		for h < len(hyps)-1 && left >= hyps[h].Prior {
			left -= hyps[h].Prior
			h++
		}
		top, err := drawn(two, memory, prices, affordable, h, luck)
		if err != nil {
			return 0, err
		}
		sum += top
	}
	return sum / float64(r.opt.Draws), nil
}

// drawn plays a car drawn from what the table holds of hypothesis h.
func drawn(t *evidence.Table, memory *evidence.Memory, prices *evidence.Prices, minutes float64, h int, luck *rand.Rand) (float64, error) {
	p, err := memory.Posterior()
	if err != nil {
		return 0, err
	}
	back := make([]float64, len(t.Problem().Background))
	for i := range back {
		back[i] = luck.NormFloat64()
	}
	bias := map[string]float64{}
	var made []inspect.Instance
	for p.Top().P < apart {
		inst, _, ok := p.Next(prices, minutes-prices.Minutes(t.Problem(), made))
		if !ok {
			break
		}
		made = append(made, inst)
		c, _ := inspect.Find(inst.Check)
		m := &c.Meter
		f, ok := t.Fit(h, inst)
		v := (m.Lo + m.Hi) / 2
		if ok && f.OK {
			v = f.Mean + math.Sqrt(f.Residual)*luck.NormFloat64()
			for k, s := range f.Slope {
				v += s * back[k]
			}
		}
		if _, has := bias[m.Instrument]; !has {
			bias[m.Instrument] = luck.NormFloat64()
		}
		_, shown := m.Sample(v*m.PerUnit, bias[m.Instrument], luck.NormFloat64(), luck.Float64(), luck.Float64())
		if err := p.Add(evidence.Reading{Check: inst, Display: shown}); err != nil {
			return 0, err
		}
	}
	return p.Top().P, nil
}
