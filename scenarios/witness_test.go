package scenarios

import (
	"math"
	"slices"
	"testing"

	"evenwear/physics"
)

// fresh is lining [m] left before steel rubs at wheels with nothing to hear.
var fresh = [physics.NumWheels]float64{8e-3, 8e-3, 8e-3, 8e-3}

// TestToldSumsToOne: over everything an owner can tell of one car the probabilities
// sum to 1, whether little or much is there to be noticed.
func TestToldSumsToOne(t *testing.T) {
	all := everyClaim()
	if len(all) != 20 {
		t.Fatalf("%d claims; the sum over all sets of them is meant for 20", len(all))
	}
	im := &Impression{impression{ride: ride{pull: 0.12, drag: 80, pulse: 0.31e-3, hard: 1.1}, long: 2e-3, level: 0.1, washer: 1}}
	im.im.hub[0], im.im.wet[2] = 33, 0.08e-6
	im.im.steel, im.im.film[3] = fresh, 0.4
	sum := 0.0
	for set := range 1 << len(all) {
		var claims []Claim
		for i := range all {
			if set>>i&1 == 1 {
				claims = append(claims, all[i])
			}
		}
		sum += math.Exp(im.LogLikelihood(claims))
	}
	if math.Abs(sum-1) > 1e-9 {
		t.Errorf("the probabilities of all that can be told sum to %.12f, want 1", sum)
	}
}

// TestToldAsDrawn: a fair car's owner tells two of three plain things as often as
// [told] does, and nothing only where there is nothing.
func TestToldAsDrawn(t *testing.T) {
	plain := Impression{impression{ride: ride{pull: 10, drag: 1e5, hard: 1}, lamp: 1, level: -5, washer: 1, steel: fresh}}
	p := func(claims ...string) float64 {
		var list []Claim
		for _, c := range everyClaim() {
			if slices.Contains(claims, c.ID+"."+c.Value) {
				list = append(list, c)
			}
		}
		return math.Exp(plain.LogLikelihood(list))
	}
	sure := math.Pow(1-noticeOdd, 20) // that they notice these three and nothing else
	for _, row := range []struct {
		got, want float64
		what      string
	}{
		{p("pull.right", "rolls.badly"), tellsMost[1] / 3, "two of three"},
		{p("pull.right"), tellsMost[0] / 3, "one of three"},
		{p("pull.right", "rolls.badly", "lamp.level"), 1 - tellsMost[0] - tellsMost[1], "all three"},
	} {
		if math.Abs(row.got-row.want) > 1-sure {
			t.Errorf("%s is told with %.4f, want %.4f within %.3f", row.what, row.got, row.want, 1-sure)
		}
	}
	if got := p(); got > 1e-7 {
		t.Errorf("nothing is told with %.2g of a car with three plain things", got)
	}
}

// TestChanceAgreesWithJudge: what is noticed for sure is likelier noticed than not.
func TestChanceAgreesWithJudge(t *testing.T) {
	lib := library(t)
	lit := 0
	for _, j := range lib.Jobs[:min(len(lib.Jobs), 12)] {
		cond, err := Build(&j.Car.Spec, j.Driven, j.Faults)
		if err != nil {
			t.Fatal(err)
		}
		im, err := look(&j.Car.Spec, cond, j.Driven.Duty())
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range everyClaim() {
			yes, why := im.judge(c.ID, c.Value)
			if p := im.chance(c.ID, c.Value); yes != (p >= 0.5) {
				t.Errorf("%s: %s %s: %t with a chance of %.3f: %s", j.ID, c.ID, c.Value, yes, p, why)
			}
			if yes {
				lit++
			}
		}
	}
	if lit == 0 {
		t.Error("no job's owner notices anything: the test shows nothing")
	}
}
