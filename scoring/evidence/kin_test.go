package evidence

import (
	"math"
	"reflect"
	"sync/atomic"
	"testing"

	"evenwear/physics/inspect"
)

// pair is two hypotheses of one kin, h1 the mirror image of h0; asked counts what
// was asked of h1.
func pair(first, second func(b []float64) float64) (y *toy, inst inspect.Instance, asked *atomic.Int64) {
	y, asked = newToy(3, 0.6, 0.4), new(atomic.Int64)
	inst = y.add(gauge("g", 1, 1, 0, 0), func(h int, b []float64) float64 {
		if h == 0 {
			return first(b)
		}
		asked.Add(1)
		return second(b)
	})
	for h := range y.p.Hypotheses {
		y.p.Hypotheses[h].Kin = "kin"
	}
	y.p.Mirror = func(_, _ int, c inspect.Instance) (inspect.Instance, bool) { return c, true }
	return y, inst, asked
}

// TestKin: what a mirror image shows is told from its centre and one point more,
// or from its centre where the first stood still; where that point belies it, from
// its own points.
func TestKin(t *testing.T) {
	bent := func(b []float64) float64 { return 5 + 2*b[0] - b[1] + 0.5*b[0]*b[0] + 0.3*b[0]*b[2] }
	still := func(b []float64) float64 { return 7 + 0.01*b[0] }
	for _, c := range []struct {
		name          string
		first, second func(b []float64) float64
		asked         int64
	}{
		{"the same", bent, func(b []float64) float64 { return bent(b) + 4 }, 2},
		{"turned round", bent, func(b []float64) float64 { return -bent(b) }, 2},
		{"still", still, func(b []float64) float64 { return still(b) - 3 }, 1},
		{"another", bent, func(b []float64) float64 { return 5 + 2*b[0] - b[1] + 1.5*b[2] }, 9},
	} {
		y, inst, asked := pair(c.first, c.second)
		got, ok := y.filled(t).Fit(1, inst)
		if !ok || !got.OK {
			t.Fatalf("%s: no fit", c.name)
		}
		if n := asked.Load(); n != c.asked {
			t.Errorf("%s: the image was asked %d times, want %d", c.name, n, c.asked)
		}
		alone, inst, _ := pair(c.first, c.second)
		alone.p.Mirror = nil
		want, _ := alone.filled(t).Fit(1, inst)
		off := math.Abs(got.Mean-want.Mean) + math.Abs(got.Residual-want.Residual)
		for k := range want.Slope {
			off += math.Abs(got.Slope[k] - want.Slope[k])
		}
		if off > 1e-9 && c.name != "still" {
			t.Errorf("%s: told from its kin %+v, by itself %+v", c.name, got, want)
		}
	}
}

// TestKinInAnyOrder: a check of the image wanted alone, before anything of the
// first, comes out as in a table that is filled.
func TestKinInAnyOrder(t *testing.T) {
	make1 := func() *toy {
		y, _, _ := pair(func(b []float64) float64 { return 5 + b[0] }, func(b []float64) float64 { return 4 + b[0] })
		y.add(gauge("g", 1, 1, 0, 0), func(h int, b []float64) float64 { return 6 + 3*b[1]*b[2] + float64(h)*b[0] })
		y.p.Mirror = func(_, _ int, c inspect.Instance) (inspect.Instance, bool) { // the two checks change places
			for _, other := range y.p.Checks {
				if other != c {
					return other, true
				}
			}
			return c, false
		}
		return y
	}
	whole, y := make1().filled(t), make1()
	table, err := NewTable(&y.p)
	if err != nil {
		t.Fatal(err)
	}
	for _, inst := range y.p.Checks {
		if err := table.Ensure(t.Context(), []inspect.Instance{inst}); err != nil {
			t.Fatal(err)
		}
		for h := range y.p.Hypotheses {
			a, _ := whole.Fit(h, inst)
			if b, _ := table.Fit(h, inst); !reflect.DeepEqual(a, b) {
				t.Errorf("h%d at %s: %+v in a filled table, %+v alone", h, inst, a, b)
			}
		}
	}
}
