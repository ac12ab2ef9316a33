package evidence

import (
	"context"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"evenwear/physics/inspect"
)

// TestFitQuadratic: for a quadratic with products the line's error variance
// under b ~ N(0, I) is known: 2·Σ c² + Σ d².
func TestFitQuadratic(t *testing.T) {
	for k := 1; k <= 4; k++ {
		c, d, want := 0.07, 0.05, 0.0
		f := func(_ int, b []float64) float64 {
			y := 3.0
			for i := range b {
				y += 0.5*float64(i+1)*b[i] + c*b[i]*b[i]
				for j := range i {
					if j == 0 { // with all pairs alike, halves of the corners would mix them
						y += d * b[i] * b[j]
					}
				}
			}
			return y
		}
		want = 2*c*c*float64(k) + d*d*float64(k-1)
		toy := newToy(k, 1)
		toy.p.Thorough = true
		inst := toy.add(gauge("g", 1, 1, 0, 0), f)
		got, ok := toy.filled(t).Fit(0, inst)
		if !ok || !got.OK {
			t.Fatal("no fit")
		}
		if math.Abs(got.Mean-(3+c*float64(k))) > 1e-12 {
			t.Errorf("k=%d: mean %g, want %g", k, got.Mean, 3+c*float64(k))
		}
		for i, s := range got.Slope {
			if math.Abs(s-0.5*float64(i+1)) > 1e-12 {
				t.Errorf("k=%d: slope %d is %g", k, i, s)
			}
		}
		if math.Abs(got.Residual-want) > 1e-12 {
			t.Errorf("k=%d: residual variance %g, want %g", k, got.Residual, want)
		}
	}
}

// TestFitPullsIn: a car that cannot exist far out is computed nearer.
func TestFitPullsIn(t *testing.T) {
	toy := newToy(2, 1)
	inst := toy.add(gauge("g", 1, 1, 0, 0), func(_ int, b []float64) float64 { return 5 + b[0] - 2*b[1] + 0.3*b[0]*b[1] })
	inner := toy.p.Build
	toy.p.Build = func(h int, b []float64) (*inspect.World, error) {
		if b[0] > 0.9 {
			return nil, errors.New("lining gone")
		}
		return inner(h, b)
	}
	got, _ := toy.filled(t).Fit(0, inst)
	if math.Abs(got.Slope[0]-1) > 1e-12 || math.Abs(got.Slope[1]+2) > 1e-12 || math.Abs(got.Residual-0.09) > 1e-12 {
		t.Errorf("fit %+v, want slopes 1 and −2, residual 0.09", got)
	}
}

// TestWorkers: the same table for any number of workers, and for Ensure check by check.
func TestWorkers(t *testing.T) {
	make1 := func() *toy {
		toy := newToy(3, 0.1, 0.4, 0.2, 0.3)
		for c := range 5 {
			toy.add(gauge("g", 1, 1, 0, 0), func(h int, b []float64) float64 {
				return float64(c) + math.Sqrt(1+float64(h)+b[0]*b[0]) + b[1]*b[2]
			})
		}
		return toy
	}
	var first []Fit
	for _, workers := range []int{1, 2, 7} {
		toy := make1()
		table, _ := NewTable(&toy.p)
		if workers == 7 { // in another order, one check at a time
			for c := len(toy.p.Checks) - 1; c >= 0; c-- {
				if err := table.Ensure(t.Context(), toy.p.Checks[c:c+1]); err != nil {
					t.Fatal(err)
				}
			}
		} else if err := table.Fill(t.Context(), workers, nil); err != nil {
			t.Fatal(err)
		}
		var all []Fit
		for h := range toy.p.Hypotheses {
			for _, inst := range toy.p.Checks {
				f, ok := table.Fit(h, inst)
				if !ok {
					t.Fatal("missing fit")
				}
				all = append(all, f)
			}
		}
		if first == nil {
			first = all
		} else if !reflect.DeepEqual(first, all) {
			t.Errorf("%d workers made another table", workers)
		}
	}
}

// TestPartial: cancelled after two hypotheses, the likeliest are there, the
// others keep their prior mass.
func TestPartial(t *testing.T) {
	toy := newToy(1, 0.1, 0.4, 0.2, 0.3)
	inst := toy.add(gauge("g", 1, 0.2, 0, 0), func(h int, b []float64) float64 { return float64(3*h) + 0.1*b[0] })
	table, _ := NewTable(&toy.p)
	ctx, cancel := context.WithCancel(t.Context())
	var seen []Progress
	err := table.Fill(ctx, 1, func(p Progress) {
		if seen = append(seen, p); p.Done == 2 {
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) {
		t.Fatalf("Fill returned %v, want context.Canceled", err)
	}
	if last := seen[len(seen)-1]; last.Done != 2 || last.Total != 4 || math.Abs(last.Mass-0.7) > 1e-12 {
		t.Errorf("progress %+v, want 2 of 4 with mass 0.7", last)
	}
	p, err := table.Posterior([]Reading{{inst, 3}})
	if err != nil {
		t.Fatal(err)
	}
	got := p.Hypotheses()
	if math.Abs(p.Missing()-0.3) > 1e-12 || math.Abs(got[0].P-0.1) > 1e-12 || math.Abs(got[2].P-0.2) > 1e-12 {
		t.Errorf("missing %g, posteriors %v: those not computed must keep 0.1 and 0.2", p.Missing(), got)
	}
	if got[1].P < 0.69 {
		t.Errorf("h1 explains the reading but has %g", got[1].P)
	}
	if err := table.Fill(t.Context(), 2, nil); err != nil {
		t.Fatal(err)
	}
	if p, _ = table.Posterior([]Reading{{inst, 3}}); p.Missing() != 0 || p.Row("h1") < 0.99 {
		t.Errorf("when complete: missing %g, h1 %g", p.Missing(), p.Row("h1"))
	}
}

// TestFailed: a hypothesis that cannot be built is told, not hidden.
func TestFailed(t *testing.T) {
	toy := newToy(1, 0.5, 0.5)
	toy.add(gauge("g", 1, 0.2, 0, 0), func(h int, b []float64) float64 { return 1 })
	inner := toy.p.Build
	toy.p.Build = func(h int, b []float64) (*inspect.World, error) {
		if h == 1 {
			return nil, errors.New("piston larger than the disc")
		}
		return inner(h, b)
	}
	table := toy.filled(t)
	if err := table.Failed(); err == nil || !strings.Contains(err.Error(), "h1: piston larger than the disc") {
		t.Errorf("Failed() is %v", err)
	}
	if p := table.Progress(); p.Failed != 1 || p.Done != 1 || p.Mass != 0.5 {
		t.Errorf("progress %+v", p)
	}
}

// TestBadProblem: every mistake is a sentence.
func TestBadProblem(t *testing.T) {
	for want, spoil := range map[string]func(*toy){
		"at least one hypothesis": func(y *toy) { y.p.Hypotheses = nil },
		"the priors sum to 0.9":   func(y *toy) { y.p.Hypotheses[0].Prior = 0.4 },
		"has prior NaN":           func(y *toy) { y.p.Hypotheses[0].Prior = math.NaN() },
		"h1 stands twice":         func(y *toy) { y.p.Hypotheses[0].ID = "h1" },
		"there is no check nope":  func(y *toy) { y.p.Checks[0].Check = "nope" },
		"check c0 stands twice":   func(y *toy) { y.p.Checks = append(y.p.Checks, y.p.Checks[0]) },
		"at most 5 are allowed":   func(y *toy) { y.p.Background = make([]Background, 6) },
		"way to build its worlds": func(y *toy) { y.p.Build = nil },
	} {
		y := newToy(1, 0.5, 0.5)
		y.add(gauge("g", 1, 1, 0, 0), func(int, []float64) float64 { return 0 })
		spoil(y)
		if _, err := NewTable(&y.p); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want it to say %q", err, want)
		}
	}
}

func TestBadReading(t *testing.T) {
	y := newToy(1, 0.5, 0.5)
	inst := y.add(gauge("g", 1, 1, 0, 0), func(int, []float64) float64 { return 0 })
	table, _ := NewTable(&y.p)
	if err := table.Ensure(t.Context(), nil); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		r    Reading
		want string
	}{
		{Reading{inspect.Instance{Check: "nope"}, 0}, "check nope is not one of this problem's checks"},
		{Reading{inst, 21}, "its meter shows 0 to 20"},
		{Reading{inst, -1}, "its meter shows 0 to 20"},
		{Reading{inst, 1}, "has not been computed for h0"},
	} {
		if _, err := table.Posterior([]Reading{c.r}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want %q", fmt.Sprint(c.r), err, c.want)
		}
	}
}
