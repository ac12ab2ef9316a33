package play

import (
	"math/rand/v2"
	"slices"
	"sync/atomic"
	"testing"

	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// TestBeliefsOfRealCars draws cars with a fault and a use that no point of the
// table's design has, and reads a handful of checks on each: of beliefs stated
// 0.9 to 1, 90–100 % must be true. The table is the short way, as play has it.
func TestBeliefsOfRealCars(t *testing.T) {
	if testing.Short() {
		t.Skip("some hundred cars with many checks")
	}
	var built atomic.Int64
	ids := []string{
		"honestly_worn@car#sound", "fluid_low_wear@car#worn", "pins_dry@front_left#slight", "pins_dry@front_left#clear",
		"pin_seized@front_left.upper_pin#stiff", "pins_seized@front_left#stiff", "piston_corroded@front_left#rough",
		"joint_weeping@front_left#damp", "air_in_caliper@front_left#bubble", "disc_runout@front_left#slight", "pins_dry@rear_right#slight",
	}
	p := only(jobProblem(t, "warm_wheel", &built), ids...)
	p.Told = nil // these cars come by their weights, not after a complaint
	table := filled(t, p, 2)
	const cars, looks = 240, 8
	rng := rand.New(rand.NewPCG(13, 9))
	n, right, stated := 0, 0, 0.0
	for range cars {
		truth := rng.IntN(len(p.Hypotheses))
		b := make([]float64, len(p.Background))
		for i := range b {
			b[i] = rng.NormFloat64()
		}
		world, err := p.Build(truth, b)
		if err != nil {
			continue // no such car
		}
		bias := map[string]float64{} // one for each instrument
		var readings []evidence.Reading
		for _, i := range rng.Perm(len(p.Checks))[:looks] {
			inst := p.Checks[i]
			v, err := world.Measure(inst)
			if err != nil {
				t.Fatal(err)
			}
			c, _ := inspect.Find(inst.Check)
			if _, has := bias[c.Meter.Instrument]; !has {
				bias[c.Meter.Instrument] = rng.NormFloat64()
			}
			_, display := c.Meter.Sample(v, bias[c.Meter.Instrument], rng.NormFloat64(), rng.Float64(), rng.Float64())
			readings = append(readings, evidence.Reading{Check: inst, Display: display})
		}
		post, err := table.Posterior(readings)
		if err != nil {
			t.Fatal(err)
		}
		rows := post.Hypotheses()
		top := slices.IndexFunc(rows, func(r evidence.Belief) bool { return r.P >= 0.9 })
		if top < 0 {
			continue
		}
		n++
		stated += rows[top].P
		if top == truth {
			right++
		}
	}
	t.Logf("beliefs of 0.9–1: %d of %d cars, mean %.3f, true %.3f", n, cars, stated/float64(n), float64(right)/float64(n))
	if n < 40 {
		t.Fatalf("only %d beliefs of 0.9–1; the test needs 40", n)
	}
	if rate := float64(right) / float64(n); rate < 0.9 {
		t.Errorf("of beliefs of 0.9–1 only %.3f are true", rate)
	}
}
