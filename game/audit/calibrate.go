package audit

import (
	"context"
	"strings"

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

// calibrate makes cars up that no point of the table's design has and states what
// the model inspector believes of them, half way and at the end.
func (r *run) calibrate(ctx context.Context, desk *play.Desk, job *scenarios.Job) (Bands, error) {
	type stated struct {
		belief float64
		true   bool
	}
	all := make([][]stated, r.opt.Fresh)
	err := r.each(ctx, job.ID, "calibration", r.opt.Fresh, func(i int) error {
		c, err := r.fresh(desk, job, 1000+i, "")
		if err != nil {
			return err
		}
		t, err := c.Table().Inspect(ctx, c.Prices(), c.Minutes(), func(inst inspect.Instance) (int64, error) { return c.Show(r.opt.Seed+uint64(i), inst) })
		if err != nil {
			return err
		}
		top, truth := t.Final.Top(), strings.Join(c.Truth(), evidence.And)
		if n := len(t.Looks); n > 1 {
			half := t.Looks[n/2-1].Top
			all[i] = append(all[i], stated{half.P, half.ID == truth})
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
	return b, err
}
