package audit

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"evenwear/physics/inspect"
)

func TestZZWhy(t *testing.T) {
	a := zzRun(t, Options{Seed: 1, Workers: 2})
	r := &a.run
	for _, id := range zzJobs() {
		zzTable(t, r, id)
		c, _ := r.at(r.lib.Job(id)).Case(r.lib.Job(id))
		s := &stage{Case: c, seed: 1, prices: c.Prices()}
		for i := range 40 {
			luck := rand.New(rand.NewPCG(1, 7777+uint64(i)))
			p, _, err := s.smallDrawn(luck)
			if err != nil {
				t.Fatal(err)
			}
			if zzInt("ZZI", -1) >= 0 && i != zzInt("ZZI", -1) {
				continue
			}
			g, _ := p.regret()
			if g.Missed() < 0.08 {
				continue
			}
			q, _ := p.Posterior(nil)
			fmt.Println(id, i, g, g.Missed(), "minutes", p.minutes)
			rows := map[string]bool{}
			for _, h := range p.Problem().Hypotheses {
				rows[h.Row] = true
			}
			fmt.Println("  ", rows)
			for _, inst := range p.checks {
				w, _ := q.RowBits(inst)
				fmt.Print("   ", inst, " bits ", w.Bits, " cost ")
				for _, o := range p.checks {
					fmt.Print(s.prices.Minutes(p.Problem(), []inspect.Instance{inst, o}), " ")
				}
				fmt.Println()
			}
			inst, bits, ok := q.Next(&p.prices, p.minutes)
			fmt.Println("   next", inst, bits, ok)
		}
	}
}
