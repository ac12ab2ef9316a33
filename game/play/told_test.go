package play

import (
	"flag"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"evenwear/physics/exact"
	"evenwear/scenarios"
	"evenwear/scoring/evidence"
)

var toldCars = flag.Int("told-cars", 160, "cars whose owners are heard; thousands take minutes")

// heardOnly is a case whose table holds what was told and not one check.
func heardOnly(t *testing.T, job string) (*Desk, *Case) {
	t.Helper()
	d, c := laidOut(t, job)
	if err := c.Table().Ensure(t.Context(), nil); err != nil {
		t.Fatal(err)
	}
	if err := c.Table().Failed(); err != nil {
		t.Fatal(err)
	}
	return d, c
}

// TestToldCalibrated: cars are made up by the catalogue's weights, with a use that
// no point of the table has, and their owners tell of them as those of drawn cars
// do. Of beliefs from the complaint alone, on rows, as many are true as they state,
// by tenths and within four standard errors of so many beliefs [binomial]; and the
// truth is believed more than before anybody spoke: ln P rises in the mean by more
// than four standard errors, which a complaint misheard would lose.
func TestToldCalibrated(t *testing.T) {
	if testing.Short() {
		t.Skip("hundreds of cars are driven")
	}
	d, c := heardOnly(t, "warm_wheel")
	job := d.lib.Job("warm_wheel")
	luck := rand.New(rand.NewPCG(8, 1))
	var n, stated, right, spread [10]float64
	var gain []float64
	prior := c.Table().PriorRows()
	for range *toldCars {
		f, err := d.Fresh(job, "x", nil, luck)
		if err != nil {
			continue // no such car
		}
		p, err := f.Table().Posterior(nil)
		if err != nil {
			t.Fatal(err)
		}
		truth := strings.Join(f.Truth(), evidence.And)
		for _, b := range p.Classes() {
			at := min(9, int(10*b.P))
			n[at]++
			stated[at] += b.P
			spread[at] += b.P * (1 - b.P)
			if b.ID == truth {
				right[at]++
			}
		}
		was, now := 0.0, 0.0
		for i, b := range p.Rows() {
			for _, row := range f.Truth() {
				if b.ID == row {
					was, now = was+prior[i].P, now+b.P
				}
			}
		}
		gain = append(gain, exact.Log(now/was))
	}
	for i := range n {
		if n[i] == 0 {
			continue
		}
		t.Logf("stated %.3f, true %.3f of %.0f", stated[i]/n[i], right[i]/n[i], n[i])
		if off, fair := math.Abs(right[i]-stated[i]), 4*math.Sqrt(spread[i])+1; off > fair {
			t.Errorf("of %.0f beliefs of %.3f, %.0f are true; want %.1f ± %.1f", n[i], stated[i]/n[i], right[i], stated[i], fair)
		}
	}
	mean, dev := 0.0, 0.0
	for _, g := range gain {
		mean += g / float64(len(gain))
	}
	for _, g := range gain {
		dev += (g - mean) * (g - mean) / float64(len(gain)-1)
	}
	err := math.Sqrt(dev / float64(len(gain)))
	t.Logf("ln P of the truth rises by %.3f ± %.3f nat", mean, err)
	if mean < 4*err {
		t.Errorf("ln P of the truth rises by %.3f ± %.3f nat", mean, err)
	}
}

// TestToldOfThisWheel: a hot wheel is told of that wheel, its mirror image of the
// other; who notices nothing drives no car with a hot wheel.
func TestToldOfThisWheel(t *testing.T) {
	_, c := heardOnly(t, "warm_wheel")
	rows := func(claims ...scenarios.Claim) map[string]float64 {
		p, err := c.s.table.retold(claims).Posterior(nil)
		if err != nil {
			t.Fatal(err)
		}
		out := map[string]float64{}
		for _, b := range p.Rows() {
			out[b.ID] = b.P
		}
		return out
	}
	left, right := rows(scenarios.Claim{ID: "hotter", Value: "front_left"}), rows(scenarios.Claim{ID: "hotter", Value: "front_right"})
	none, prior := rows(scenarios.Claim{ID: "none", Value: "service"}), map[string]float64{}
	for _, b := range c.Table().PriorRows() {
		prior[b.ID] = b.P
	}
	for _, cause := range []string{"pins_dry", "piston_corroded"} {
		l, r := cause+"@front_left", cause+"@front_right"
		if !(left[l] > 5*prior[l] && left[r] < prior[r]/5 && right[r] > 5*prior[r] && none[l] < prior[l]/2) {
			t.Errorf("%s: on the left %.4f, on the right %.4f when the left is hot, %.4f when the right is, %.4f on the left when nothing is; before %.4f",
				cause, left[l], left[r], right[r], none[l], prior[l])
		}
		if math.Abs(left[l]/right[r]-1) > 0.2 {
			t.Errorf("%s: %.4f on the hot left, %.4f on the hot right: want the same within a fifth, which the circuits move", cause, left[l], right[r])
		}
	}
}
