package audit

import (
	"context"
	"runtime"
	"testing"

	"evenwear/game/play/playtest"
	"evenwear/physics/inspect"
	"evenwear/scoring/learner"
)

// BenchmarkPlay is what an audit is made of, on a whole job: a learner of the
// reference population who plays and is marked, as the audit has it, with all that
// those before have left to be remembered; the model inspector's whole trail with
// nothing remembered; and how well every idea explains what a learner said.
func BenchmarkPlay(b *testing.B) {
	desk, _ := playtest.Desk(b)
	c, err := desk.Case(desk.Library().Job("warm_wheel"))
	if err != nil {
		b.Fatal(err)
	}
	if err := c.Table().Fill(b.Context(), runtime.GOMAXPROCS(0), nil); err != nil {
		b.Fatal(err)
	}
	s, err := newStage(b.Context(), c, 1, nil)
	if err != nil {
		b.Fatal(err)
	}
	crowd := (&Options{Seed: 1, Learners: learner.ReferenceSize}).crowd()
	var results []Result
	b.Run("learner", func(b *testing.B) {
		looks := 0
		for n := 0; b.Loop(); n++ {
			i := n % learner.ReferenceSize
			r, err := s.play(b.Context(), &crowd.all[i], crowd.index[i])
			if err != nil {
				b.Fatal(err)
			}
			results, looks = append(results, r), looks+len(r.readings)
		}
		b.ReportMetric(float64(looks)/float64(len(results)), "readings")
	})
	b.Run("inspector", func(b *testing.B) {
		seed, looks, trails := uint64(0), 0, 0
		for b.Loop() {
			seed++
			t, err := c.Table().Inspect(context.Background(), s.prices, c.Minutes(), func(i inspect.Instance) (int64, error) { return s.Show(seed, i) })
			if err != nil {
				b.Fatal(err)
			}
			looks, trails = looks+len(t.Looks), trails+1
		}
		b.ReportMetric(float64(looks)/float64(trails), "readings")
	})
	b.Run("explain", func(b *testing.B) {
		for n := 0; b.Loop(); n++ {
			if _, err := s.explain(&results[n%len(results)]); err != nil {
				b.Fatal(err)
			}
		}
	})
}
