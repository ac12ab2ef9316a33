package audit

import (
	"context"
	"math/rand/v2"
	"strings"

	"gonum.org/v1/gonum/stat/distuv"

	"evenwear/game/play"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring/evidence"
)

// Bands are beliefs by the tenth they were stated in.
type Bands [10]struct {
	N      int     `json:"n"`
	Stated float64 `json:"stated"` // sum
	True   int     `json:"true"`
}

func (b *Bands) put(belief float64, true bool) {
	i := min(9, int(10*belief))
	b[i].N++
	b[i].Stated += belief
	if true {
		b[i].True++
	}
}

// Ranks are cars by the tenth in which the truth ranks: the belief in what was
// believed more, and a part of what was believed as much drawn by luck. Whatever was
// read, it is uniform on 0 to 1 when beliefs are what they should be; it piles up at
// the right when they are too sure and at the left when too little. Randomised
// probability integral transform: Dawid, J. R. Stat. Soc. A 147 (1984) 278; flat in
// a rank histogram: Talts et al., arXiv:1804.06788. From memory.
type Ranks [10]int

// put ranks the truth among all classes that are believed in.
func (r *Ranks) put(classes []evidence.Belief, truth string, luck *rand.Rand) {
	its := 0.0
	for _, c := range classes {
		if c.ID == truth {
			its = c.P
		}
	}
	more, as := 0.0, 0.0 // believed more than the truth, and as much
	for _, c := range classes {
		switch {
		case c.P > its:
			more += c.P
		case c.P == its:
			as += c.P
		}
	}
	r[min(9, int(10*(more+as*luck.Float64())))]++
}

func (r *Ranks) add(o *Ranks) {
	for i, k := range o {
		r[i] += k
	}
}

// Flat is how likely ranks as uneven as these are if they are uniform:
// Pearson's chi-square on nine degrees of freedom.
func (r *Ranks) Flat() (n int, square, p float64) {
	for _, k := range r {
		n += k
	}
	each := float64(n) / float64(len(r))
	for _, k := range r {
		square += (float64(k) - each) * (float64(k) - each) / each
	}
	return n, square, distuv.ChiSquared{K: float64(len(r) - 1)}.Survival(square)
}

// earlyLooks is after how many looks a belief is stated beside that at the end. Half
// way would hang on how the session ended: a sound car takes the longest, so that what
// is half believed half way is hardly ever so.
const earlyLooks = 3

// calibrate makes cars up that no point of the table's design has and states what
// the model inspector believes of them, early and at the end.
func (r *run) calibrate(ctx context.Context, desk *play.Desk, job *scenarios.Job) (Bands, Ranks, error) {
	type stated struct {
		belief float64
		true   bool
	}
	all := make([][]stated, r.opt.Fresh)
	ranks := make([]Ranks, r.opt.Fresh)
	err := r.each(ctx, job.ID, "calibration", r.opt.Fresh, func(i int) error {
		c, err := r.fresh(desk, job, 1000+i, nil)
		if err != nil {
			return err
		}
		t, err := c.Table().Inspect(ctx, c.Prices(), c.Minutes(), func(inst inspect.Instance) (int64, error) { return c.Show(r.opt.Seed+uint64(i), inst) })
		if err != nil {
			return err
		}
		top, truth := t.Final.Top(), strings.Join(c.Truth(), evidence.And)
		ranks[i].put(t.Final.Classes(), truth, r.luckOf(job, 0x3c6ef372fe94f82b, i))
		if len(t.Looks) > earlyLooks {
			early := t.Looks[earlyLooks-1].Top
			all[i] = append(all[i], stated{early.P, early.ID == truth})
		}
		all[i] = append(all[i], stated{top.P, top.ID == truth})
		return nil
	})
	var b Bands
	for _, list := range all {
		for _, s := range list {
			b.put(s.belief, s.true)
		}
	}
	var sum Ranks
	for i := range ranks {
		sum.add(&ranks[i])
	}
	return b, sum, err
}
