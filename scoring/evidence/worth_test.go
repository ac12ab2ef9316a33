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

// TestOC113: the certainty-based marks of OC-112 (right 1 2 3, wrong 0 −2 −6;
// Gardner-Medwin, doi 10.4324/9780429506857-13): by what a certain answer would
// add to the best level now, 3p − max(p, 4p − 2, 9p − 6), the best level changes
// at 2/3 and 4/5.
func TestOC113(t *testing.T) {
	loss := [][]float64{{-1, 0}, {-2, 2}, {-3, 6}} // low, mid, high; right, wrong
	worth := func(p float64, levels [][]float64) float64 {
		toy := newToy(0, p, 1-p)
		sure := toy.add(words(2, 1e-3), func(h int, _ []float64) float64 { return float64(h) })
		now, err := toy.filled(t).Posterior(nil)
		if err != nil {
			t.Fatal(err)
		}
		gain, err := now.DecisionGain(sure, levels)
		if err != nil {
			t.Fatal(err)
		}
		return gain
	}
	for _, c := range []struct{ p, best float64 }{{0.5, 0.5}, {2. / 3, 2. / 3}, {0.7, 0.8}, {0.8, 1.2}, {0.9, 2.1}} {
		near(t, "OC-113 worth of certainty at p", worth(c.p, loss), 3*c.p-c.best, 1e-8, 3*c.p-c.best+0.1)
	}
	// At a switching point the level below does as well; beyond it, it does not.
	near(t, "OC-113 without high at 4/5", worth(0.8, loss[:2]), 2*0.8-1.2, 1e-8, 3*0.8-1.2)
	near(t, "OC-113 without mid at 2/3", worth(2./3, [][]float64{loss[0], loss[2]}), 3*2./3-2./3, 1e-8, 1)
}

// TestOC125: a bid without information, cost U(0, 1), rival's lowest bid U(0, 2):
// the best bid is 5/4 and expects 9/32. Howard, IEEE Trans. SSC-2 (1966) 22, base
// case. Rows are eighths of the rival's range; a bid on an edge wins in all above.
func TestOC125(t *testing.T) {
	eighths := []float64{.125, .125, .125, .125, .125, .125, .125, .125}
	toy := newToy(0, eighths...)
	sure := toy.add(words(8, 1e-4), func(h int, _ []float64) float64 { return float64(h) })
	p, err := toy.filled(t).Posterior(nil)
	if err != nil {
		t.Fatal(err)
	}
	bid := func(b float64) []float64 {
		loss := make([]float64, 8)
		for k := range loss {
			if b <= float64(k)/4 {
				loss[k] = -(b - 0.5) // less the mean cost
			}
		}
		return loss
	}
	// Told in which eighth the rival is, a bid of its lower edge wins: 15/32 with
	// the bids below. What is left of that without being told is the base case.
	base := func(bids ...float64) float64 {
		var loss [][]float64
		for k := range 8 {
			if b := float64(k) / 4; b != 1.25 {
				loss = append(loss, bid(b))
			}
		}
		told := 15. / 32
		for _, b := range bids {
			loss = append(loss, bid(b))
		}
		if len(bids) == 0 {
			told = 15./32 - 0.75/8 + 0.5/8 // in the eighth from 5/4 on a bid of 1 is the best left
		}
		gain, err := p.DecisionGain(sure, loss)
		if err != nil {
			t.Fatal(err)
		}
		return told - gain
	}
	near(t, "OC-125 profit of the best bid", base(1.25), 9./32, 1e-9, base())
}
