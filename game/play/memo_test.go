package play

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// TestMemoOfEveryCause: every cause of the catalogue answers every check to the
// bit as it does in a world that shares nothing, after all causes before it have
// been tried in the same memo.
func TestMemoOfEveryCause(t *testing.T) {
	if testing.Short() {
		t.Skip("two worlds a cause with every check")
	}
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	job := lib.Jobs[0]
	spec := &job.Car.Spec
	histories, memo := scenarios.NewHistories(spec), inspect.NewMemo(spec)
	alike, known := 0, map[physics.State]bool{}
	for _, c := range lib.Causes {
		f := scenarios.Fault{Cause: c, Place: c.Places[0], Severity: c.Severities[0], SinceKm: c.SinceKm[0]}
		cond, err := histories.Build(scenarios.Vary(job.Driven, nil), f)
		if err != nil {
			t.Fatal(err)
		}
		alone, err := inspect.NewWorld(spec, cond)
		if err != nil {
			t.Fatal(err)
		}
		shared, err := memo.NewWorld(cond)
		if err != nil {
			t.Fatal(err)
		}
		if shared.Rest != alone.Rest {
			t.Errorf("%s stands otherwise where worlds are shared", c.ID)
		}
		if known[shared.Rest] {
			alike++
		}
		known[shared.Rest] = true
		for _, i := range inspect.Instances() {
			a, errA := alone.Measure(i)
			b, errB := shared.Measure(i)
			if math.Float64bits(a) != math.Float64bits(b) || (errA == nil) != (errB == nil) {
				t.Errorf("%s: %s is %v alone, %v where experiments are shared", c.ID, i, a, b)
			}
		}
	}
	t.Logf("%d of %d causes stand as one before them", alike, len(lib.Causes))
}
