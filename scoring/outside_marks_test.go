package scoring

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenwear/tests/published"
)

// near fails when got is off want by more than tol, or when the tolerance would
// also pass wrong, a mistake worth catching.
func near(t *testing.T, what string, got, want, tol, wrong float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g ± %.2g", what, got, want, tol)
	}
	if math.Abs(wrong-want) <= tol {
		t.Errorf("%s: the tolerance %.2g would also pass %.6g", what, tol, wrong)
	}
}

// TestOC114: Brier score of two classes. scikit-learn documentation,
// brier_score_loss examples: the one-class form is half of the sum over rows.
func TestOC114(t *testing.T) {
	for last, want := range map[float64]float64{0.3: 0.0375, 0.4: 0.055} {
		sum := 0.0
		for i, p := range []float64{0.1, 0.9, 0.8, last} {
			y := []float64{0, 1, 1, 0}[i]
			sum += Brier([]float64{p, 1 - p}, []float64{y, 1 - y}) / 2
		}
		near(t, "OC-114 Brier", sum/4, want, 1e-12, sum/2)
	}
}

// TestOC115: log loss [nat] of the truths' probabilities (mean −ln p; derived).
func TestOC115(t *testing.T) {
	sum := 0.0
	for _, p := range []float64{0.9, 0.9, 0.8, 0.65} {
		sum -= log2(p) * math.Ln2
	}
	near(t, "OC-115 log loss", sum/4, 0.216162, 1e-6, 0.31186)
}

// TestOC116: three classes. Brier (1950); Gneiting & Raftery (2007).
func TestOC116(t *testing.T) {
	belief := []float64{0.7, 0.2, 0.1}
	for i, want := range []float64{0.14, 1.14, 1.34} {
		near(t, fmt.Sprint("OC-116 Brier, truth ", i), Brier(belief, truthOf(3, []int{i})), want, 1e-4, want/2)
		bits := []float64{0.5146, 2.3219, 3.3219}[i]
		near(t, fmt.Sprint("OC-116 bits, truth ", i), -log2(belief[i]), bits, 1e-4, bits*math.Ln2)
	}
}

// TestOC117: honesty pays; the loss of saying s for q is exactly Σ(s − q)² (algebra).
func TestOC117(t *testing.T) {
	q := []float64{0.7, 0.2, 0.1}
	expected := func(s []float64) float64 {
		e := 0.0
		for i := range q {
			e += q[i] * Brier(s, truthOf(3, []int{i}))
		}
		return e
	}
	near(t, "OC-117 honest", expected(q), 0.46, 1e-12, 0.475)
	for _, c := range []struct {
		say  []float64
		want float64
	}{{[]float64{1, 0, 0}, 0.60}, {[]float64{1. / 3, 1. / 3, 1. / 3}, 2. / 3}, {[]float64{0.8, 0.15, 0.05}, 0.475}} {
		near(t, fmt.Sprint("OC-117 say ", c.say), expected(c.say), c.want, 1e-12, 0.46)
		near(t, "OC-117 squared distance", expected(c.say)-0.46, Brier(c.say, q), 1e-12, Brier(c.say, q)/2)
	}
	r := rand.New(rand.NewPCG(117, 1))
	for range 20000 {
		a, b := r.Float64(), r.Float64()
		s := []float64{min(a, b), math.Abs(a - b), 1 - max(a, b)}
		if expected(s) < 0.46-1e-12 {
			t.Fatalf("OC-117: saying %v expects %g", s, expected(s))
		}
	}
}

// TestOC119: Jensen–Shannon distance, base 2. SciPy documentation example
// (0.46450 is the same in base e).
func TestOC119(t *testing.T) {
	d := Distance([]float64{1, 0}, []float64{0.5, 0.5})
	near(t, "OC-119 distance", d, 0.55792, 1e-5, 0.31128)
	near(t, "OC-119 divergence", d*d, 0.31128, 1e-5, 0.55792)
	near(t, "OC-119 base e", d*math.Sqrt(math.Ln2), 0.46450, 1e-5, 0.55792)
}

// TestOC98: pedal travel. 49 CFR 570.55(c): exactly 80 % passes.
func TestOC98(t *testing.T) {
	const rule = "49 CFR 570.55(c)"
	published.Row{ID: "OC-98 A 130, B 30, %", Source: rule, Got: Travel(130, 30), Want: 76.923, Tol: 1e-5, Wrong: 100 * 100. / 30}.Check(t)
	published.Row{ID: "OC-98 A 130, B 26, %", Source: rule, Got: Travel(130, 26), Want: 80, Tol: 1e-14, Wrong: 79.9}.Check(t)
	if _, bad := limitTravel.check(Travel(130, 26), ""); bad {
		t.Error("OC-98: exactly 80 % must pass")
	}
	if _, bad := limitTravel.check(Travel(130, 25.9), ""); !bad {
		t.Error("OC-98: 80.08 % must not pass")
	}
}

// TestOC101: imbalance. MOT inspection manual, cars, 1.2.1.
func TestOC101(t *testing.T) {
	for lower, want := range map[float64]float64{175: 30, 170: 32, 124: 50.4} {
		near(t, "OC-101 imbalance", Imbalance(250, lower), want, 1e-9, 100*(250-lower)/((250+lower)/2))
		if _, bad := limitImbalance.check(Imbalance(lower, 250), ""); bad != (lower < 175) {
			t.Errorf("OC-101: 250 and %g: unsafe %t", lower, bad)
		}
	}
}

// TestOC103: service efficiency. MOT inspection manual, cars, 1.2.2: 58 % of
// the weight is 5.69 m/s².
func TestOC103(t *testing.T) {
	weight := 1350 * 9.80665
	near(t, "OC-103 58 %", Efficiency(1350*limitDecel.value, weight), 58, 1e-9, 58.1)
	near(t, "OC-103 deceleration", limitDecel.value, 5.69, 0.005, 5.70)
	if _, bad := limitDecel.check(0.58*9.80665, ""); bad {
		t.Error("OC-103: exactly 58 % must pass")
	}
	if _, bad := limitDecel.check(0.579*9.80665, ""); !bad {
		t.Error("OC-103: 57.9 % must not pass")
	}
}

// TestOC87: lining. MOT inspection manual, cars, 1.1.13 (a): 1.50 passes, 1.49 fails.
func TestOC87(t *testing.T) {
	_, at := limitLining.check(1.50, "")
	_, under := limitLining.check(1.49, "")
	if at || !under {
		t.Errorf("OC-87: 1.50 unsafe %t, 1.49 unsafe %t", at, under)
	}
}

// TestPriorScoresNothing: the prior expects 0 and the truth scores 100.
func TestPriorScoresNothing(t *testing.T) {
	prior := []float64{0.5, 0.3, 0.15, 0.05}
	e := 0.0
	for i, p := range prior {
		e += p * Proper(prior, truthOf(4, []int{i}), prior)
	}
	near(t, "the prior's expectation", e, 0, 1e-9, 1)
	if v := Proper([]float64{0.5, 0.5, 0, 0}, truthOf(4, []int{0, 1}), prior); math.Abs(v-100) > 1e-12 {
		t.Errorf("ten and ten on two faults scores %g", v)
	}
	if v := Proper([]float64{0, 0, 0, 1}, truthOf(4, []int{0}), prior); v > -100 {
		t.Errorf("all on a wrong row scores %g; it must not be clipped", v)
	}
}

// TestProjectionIsBest: among all spreads of 20 counters none expects more than
// the projection of the belief, and a distortion that lands elsewhere loses.
func TestProjectionIsBest(t *testing.T) {
	r := rand.New(rand.NewPCG(20, 1))
	prior := []float64{0.4, 0.3, 0.2, 0.1}
	for range 200 {
		q, sum := make([]float64, 4), 0.0
		for i := range q {
			q[i] = r.ExpFloat64()
			sum += q[i]
		}
		for i := range q {
			q[i] /= sum
		}
		expected := func(n []int) float64 {
			e := 0.0
			for i := range q {
				e += q[i] * Proper(Shares(n), truthOf(4, []int{i}), prior)
			}
			return e
		}
		best := Project(q)
		if total := best[0] + best[1] + best[2] + best[3]; total != Counters {
			t.Fatalf("%v are %d counters", best, total)
		}
		most := expected(best)
		for a := 0; a <= 20; a++ {
			for b := 0; a+b <= 20; b++ {
				for c := 0; a+b+c <= 20; c++ {
					n := []int{a, b, c, 20 - a - b - c}
					if !slices.Equal(n, best) && expected(n) >= most {
						t.Fatalf("belief %.4f: %v expects %g, the projection %v %g", q, n, expected(n), best, most)
					}
				}
			}
		}
	}
}
