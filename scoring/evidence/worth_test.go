package evidence

import (
	"math"
	"testing"
)

// TestOC126: information of no use. Howard, IEEE Trans. SSC-2 (1966) 22: a check
// none of whose outcomes changes the best act is worth exactly 0 although it
// tells something.
func TestOC126(t *testing.T) {
	toy := newToy(0, 0.9, 0.1)
	weak := toy.add(words(2, 1), func(h int, _ []float64) float64 { return float64(h) })
	sure := toy.add(words(2, 1e-3), func(h int, _ []float64) float64 { return float64(h) })
	p, err := toy.filled(t).Posterior(nil)
	if err != nil {
		t.Fatal(err)
	}
	loss := [][]float64{{0, 10}, {10, 0}} // act as if h0; act as if h1
	gain, err := p.DecisionGain(weak, loss)
	if err != nil {
		t.Fatal(err)
	}
	if info, _ := p.RowBits(weak); gain != 0 || info.Bits < 0.01 {
		t.Errorf("OC-126: worth %g, want exactly 0; it tells %g bits", gain, info.Bits)
	}
	if gain, _ = p.DecisionGain(sure, loss); math.Abs(gain-1) > 1e-9 {
		t.Errorf("a certain answer is worth %g, want 0.1·10", gain)
	}
	if _, err := p.DecisionGain(sure, [][]float64{{1}}); err == nil {
		t.Error("losses for too few rows were taken")
	}
}
