package evidence

import (
	"math"
	"strings"
	"testing"

	"evenwear/physics/inspect"
)

// toldToy is three hypotheses, what was told of which has these likelihoods.
func toldToy(t *testing.T, likelihood ...float64) (*toy, inspect.Instance) {
	t.Helper()
	toy := newToy(1, 0.5, 0.3, 0.2)
	toy.p.Told = func(h int, centre *inspect.World) (float64, error) {
		if int(centre.Rest.Millis) != h || centre.Rest.Pressure[0] != 0 {
			t.Errorf("hypothesis %d is heard in another's world, or off its centre", h)
		}
		return math.Log(likelihood[h]), nil
	}
	return toy, toy.add(gauge("rule", 1, 2, 1, 0.01), func(h int, b []float64) float64 { return 8 + float64(2*h) + b[0] })
}

func probs(t *testing.T, table *Table, readings ...Reading) (*Posterior, []float64) {
	t.Helper()
	p, err := table.Posterior(readings)
	if err != nil {
		t.Fatal(err)
	}
	var all []float64
	for _, b := range p.Hypotheses() {
		all = append(all, b.P)
	}
	return p, all
}

func nearly(t *testing.T, what string, got, want []float64) {
	t.Helper()
	for i := range want {
		if math.Abs(got[i]-want[i]) > 1e-12 {
			t.Errorf("%s: got %.6f, want %.6f", what, got, want)
			return
		}
	}
}

// TestToldByBayes: before any reading the posterior is prior times likelihood of
// what was told; a reading multiplies it by what it would say alone; what readings
// tell is reckoned from after the telling.
func TestToldByBayes(t *testing.T) {
	toy, inst := toldToy(t, 0.1, 0.6, 0.2)
	table := toy.filled(t)
	sum := 0.5*0.1 + 0.3*0.6 + 0.2*0.2
	began := []float64{0.05 / sum, 0.18 / sum, 0.04 / sum}
	none, p := probs(t, table)
	nearly(t, "nothing read", p, began)
	if got := none.Bits("h1"); got != 0 {
		t.Errorf("no reading tells %g bits", got)
	}
	r := Reading{inst, 11}
	deaf, _ := toldToy(t, 1, 1, 1)
	deaf.p.Told = nil
	_, alone := probs(t, deaf.filled(t), r)
	want, sum := make([]float64, 3), 0.0
	for h := range want {
		want[h] = alone[h] * began[h] / toy.p.Hypotheses[h].Prior
		sum += want[h]
	}
	for h := range want {
		want[h] /= sum
	}
	one, p := probs(t, table, r)
	nearly(t, "one reading", p, want)
	if got, want := one.Bits("h1"), math.Log2(want[1]/began[1]); math.Abs(got-want) > 1e-9 {
		t.Errorf("the reading tells %.6f bits, want %.6f", got, want)
	}
	for i, b := range one.BeganRows() {
		if math.Abs(b.P-began[i]) > 1e-12 {
			t.Errorf("began at %+v, want %.6f", b, began[i])
		}
	}
	if got := table.PriorRows()[1].P; got != 0.3 {
		t.Errorf("the catalogue's prior has become %g", got)
	}
}

// TestToldFromTheFirst: a table that holds one hypothesis knows what was told of it,
// and no check need be computed.
func TestToldFromTheFirst(t *testing.T) {
	toy, _ := toldToy(t, 0.1, 0.6, 0.2)
	table, err := NewTable(&toy.p)
	if err != nil {
		t.Fatal(err)
	}
	if err := table.Ensure(t.Context(), nil); err != nil {
		t.Fatal(err)
	}
	_, p := probs(t, table)
	nearly(t, "no check", p, []float64{0.05 / 0.27, 0.18 / 0.27, 0.04 / 0.27})
	table.rows[1].Store(nil)
	_, p = probs(t, table)
	nearly(t, "one not held", p, []float64{0.7 * 0.05 / 0.09, 0.3, 0.7 * 0.04 / 0.09})
}

// TestToldDerived: derived tables have heard the same, but for those asked anew.
func TestToldDerived(t *testing.T) {
	toy, inst := toldToy(t, 0.1, 0.6, 0.2)
	table := toy.filled(t)
	bent := table.Bent(func(_ int, _ inspect.Instance, f Fit) Fit { return f })
	_, want := probs(t, table, Reading{inst, 9})
	_, got := probs(t, bent, Reading{inst, 9})
	nearly(t, "bent", got, want)
	part, err := table.Part([]int{2, 0}, nil)
	if err != nil {
		t.Fatal(err)
	}
	_, got = probs(t, part)
	nearly(t, "part", got, []float64{4.0 / 9, 5.0 / 9})
	even, err := table.Part([]int{2, 0}, []float64{1, 1})
	if err != nil {
		t.Fatal(err)
	}
	_, got = probs(t, even)
	nearly(t, "part, beliefs given", got, []float64{0.5, 0.5})
	again := table.Retold(func(h int, centre *inspect.World) (float64, error) {
		if centre != nil {
			t.Error("a car that was heard before is looked at again")
		}
		return float64(-h), nil
	})
	_, got = probs(t, again)
	sum := 0.5 + 0.3*math.Exp(-1) + 0.2*math.Exp(-2)
	nearly(t, "retold", got, []float64{0.5 / sum, 0.3 * math.Exp(-1) / sum, 0.2 * math.Exp(-2) / sum})
	_, got = probs(t, table)
	nearly(t, "the table itself", got, []float64{0.05 / 0.27, 0.18 / 0.27, 0.04 / 0.27})
}

// TestToldNoNumber: a likelihood that is none is refused in a sentence.
func TestToldNoNumber(t *testing.T) {
	toy, _ := toldToy(t, 0.1, 0, 0.2) // ln 0
	if err := toy.filled(t).Failed(); err == nil || !strings.Contains(err.Error(), "h1: evidence: ln P of what the owner told is -Inf; wanted a finite number") {
		t.Errorf("got %v", err)
	}
}

// TestHandedOver: readings that somebody else took support what the same would as
// one's own, whatever is done to the table, but are no look of one's own; what they
// tell counts, and the model inspector begins from them and pays nothing for them.
func TestHandedOver(t *testing.T) {
	toy, inst := toldToy(t, 0.1, 0.6, 0.2)
	more := toy.add(gauge("second", 1, 2, 1, 0.01), func(h int, b []float64) float64 { return 8 - float64(2*h) + b[0] })
	table := toy.filled(t)
	first, second := Reading{inst, 11}, Reading{more, 6}
	handed := table.Handed([]Reading{first})
	own, want := probs(t, table, first, second)
	p, got := probs(t, handed, second)
	nearly(t, "one handed over, one read", got, want)
	if r := p.Readings(); len(r) != 1 || r[0] != second || len(p.Given()) != 1 {
		t.Errorf("own readings %v, given %v", r, p.Given())
	}
	if a, b := p.Bits("h1"), own.Bits("h1"); math.Abs(a-b) > 1e-12 {
		t.Errorf("they tell %g bits, as one's own %g", a, b)
	}
	same := func(_ int, _ inspect.Instance, f Fit) Fit { return f }
	_, bent := probs(t, handed.Bent(same), second)
	nearly(t, "of a bent table", bent, want)
	_, untold := probs(t, table.Retold(func(int, *inspect.World) (float64, error) { return 0, nil }), first)
	_, retold := probs(t, handed.Retold(func(int, *inspect.World) (float64, error) { return 0, nil }))
	nearly(t, "of a table that nobody told anything", retold, untold)
	prices := &Prices{Checks: []Price{{Minutes: 5}, {Minutes: 5}}}
	trail, err := handed.Inspect(t.Context(), prices, 0, func(i inspect.Instance) (int64, error) {
		t.Errorf("%s is read though no minutes are left", i)
		return 0, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	_, begun := probs(t, table, first)
	var final []float64
	for _, b := range trail.Final.Hypotheses() {
		final = append(final, b.P)
	}
	nearly(t, "the model inspector's without a look", final, begun)
	if trail.Minutes != 0 || trail.Heard.P != trail.Final.Top().P {
		t.Errorf("it spent %g min and began with %v", trail.Minutes, trail.Heard)
	}
}
