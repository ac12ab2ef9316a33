package audit

import (
	"testing"
	"time"
)

func TestZZRegret(t *testing.T) {
	a := zzRun(t, Options{Seed: uint64(zzInt("ZZSEED", 1)), Workers: 2})
	r := &a.run
	for _, id := range zzJobs() {
		zzTable(t, r, id)
		c, err := r.at(r.lib.Job(id)).Case(r.lib.Job(id))
		if err != nil {
			t.Fatal(err)
		}
		s := &stage{Case: c, seed: 1, prices: c.Prices()}
		t0 := time.Now()
		all, err := r.regrets(t.Context(), s, zzInt("ZZN", 6))
		t.Log(id, time.Since(t0), err)
		for _, g := range all {
			t.Logf("%+v missed %.4f", g, g.Missed())
		}
	}
}
