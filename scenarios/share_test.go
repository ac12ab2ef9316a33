package scenarios

import (
	"math"
	"testing"
)

// TestShares: what is wrong with a car, and where, adds to all cars; the bits that
// tell it add to their entropy, which drawn cars come near to.
func TestShares(t *testing.T) {
	lib := library(t)
	sum, entropy := 0.0, 0.0
	add := func(p float64) {
		sum += p
		entropy -= p * math.Log2(p)
	}
	for _, c := range lib.Causes {
		for range c.Places {
			add(lib.Share(c))
		}
	}
	for _, c := range lib.Couples() {
		add(lib.PairShare * c.Share)
	}
	if math.Abs(sum-1) > 1e-12 {
		t.Errorf("shares add to %.15f", sum)
	}
	const cars = 4000
	mean, square := 0.0, 0.0
	for seed := range uint64(cars) {
		need := lib.Need(lib.Sketch(seed, Wish{}))
		mean += need / cars
		square += need * need / cars
	}
	off := math.Sqrt((square - mean*mean) / cars)
	t.Logf("entropy %.3f bits; drawn cars need %.3f, standard error %.3f", entropy, mean, off)
	if math.Abs(mean-entropy) > 4*off {
		t.Errorf("drawn cars need %.3f bits, the entropy is %.3f", mean, entropy)
	}
	if need := lib.Need(&Job{Faults: []Fault{{Cause: lib.Cause("lamp_dead"), Place: "car"}, {Cause: lib.Cause("washer_empty"), Place: "car"}}}); !math.IsInf(need, 1) {
		t.Errorf("two faults that cannot be together need %g bits", need)
	}
}
