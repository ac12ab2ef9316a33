package inspect

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// TestProbSums: over all displays of every meter the probabilities are a
// distribution, for truths inside, at the ends of and far outside the scale.
func TestProbSums(t *testing.T) {
	for i := range all {
		m := &all[i].Meter
		mid := (m.Lo + m.Hi) / 2
		for _, unit := range []float64{m.Lo - 1000, m.Lo, mid, m.Hi, m.Hi + 1000} {
			for _, extra := range []float64{0, m.Sigma * m.Sigma, 1e4} {
				sum := 0.0
				for d := m.First(); d < m.First()+int64(m.Cells()); d++ {
					p := m.Prob(d, unit*m.PerUnit, 0.3*m.Bias, extra)
					if p < m.Slip/float64(m.Cells())*0.999 || p > 1 {
						t.Fatalf("%s: P(%d | %g) = %g, want between slip/cells and 1", all[i].ID, d, unit, p)
					}
					sum += p
				}
				if math.Abs(sum-1) > 1e-9 {
					t.Errorf("%s: probabilities before %g sum to 1%+.2g", all[i].ID, unit, sum-1)
				}
			}
		}
		if p := m.Prob(m.First()-1, mid*m.PerUnit, 0, 0) + m.Prob(m.First()+int64(m.Cells()), mid*m.PerUnit, 0, 0); p != 0 {
			t.Errorf("%s: a display outside the scale has probability %g", all[i].ID, p)
		}
	}
}

// TestSampleFollowsProb draws 200 000 samples before each kind of meter and
// compares them with Prob by chi-square. With n cells the statistic has mean
// n − 1 and variance 2(n − 1); the bound is five standard deviations, so one
// false alarm in about a million.
func TestSampleFollowsProb(t *testing.T) {
	const draws = 200_000
	for _, row := range []struct {
		check ID
		unit  float64 // truth
	}{
		{"lining_outer_upper", 7.05}, {"lining_outer_upper", 1.1}, {"lining_outer_upper", 11.95},
		{"reservoir_level", 41}, {"reservoir_level", -29}, {"runout", 0.123}, {"runout", 0.002},
		{"pedal_travel", 53.4}, {"wetness", 0.008}, {"spin", 3.2}, {"slow_stop", -0.05}, {"slide_body", 498},
	} {
		c, _ := Find(row.check)
		m := &c.Meter
		// The bias drawn anew each time is one more source of variance.
		rng := rand.New(rand.NewPCG(7, uint64(len(row.check))))
		count := make([]float64, m.Cells())
		for range draws {
			_, d := m.Sample(row.unit*m.PerUnit, rng.NormFloat64(), rng.NormFloat64(), rng.Float64(), rng.Float64())
			count[d-m.First()]++
		}
		stat, cells, rest, restWant := 0.0, 0, 0.0, 0.0
		for i, n := range count {
			want := draws * m.Prob(m.First()+int64(i), row.unit*m.PerUnit, 0, m.Bias*m.Bias)
			if want < 10 { // too few for a chi-square: together
				rest, restWant = rest+n, restWant+want
				continue
			}
			stat += (n - want) * (n - want) / want
			cells++
		}
		if restWant > 0 {
			stat += (rest - restWant) * (rest - restWant) / restWant
			cells++
		}
		free := float64(cells - 1)
		if bound := free + 5*math.Sqrt(2*free); stat > bound {
			t.Errorf("%s before %g: chi-square %.1f over %d cells, want below %.1f", row.check, row.unit, stat, cells, bound)
		}
		// The bound must bite: the same draws against a truth half a spread away.
		off := 0.0
		wrong := row.unit + 0.5*math.Hypot(m.Sigma, m.Bias)
		for i, n := range count {
			if want := draws * m.Prob(m.First()+int64(i), wrong*m.PerUnit, 0, m.Bias*m.Bias); want >= 10 {
				off += (n - want) * (n - want) / want
			}
		}
		if off < free+5*math.Sqrt(2*free) {
			t.Errorf("%s: the bound would also pass a truth half a spread off", row.check)
		}
	}
}

// TestSampleShowsItsValue: without a slip the display is what the value drawn
// rounds to, and the value stays on the scale.
func TestSampleShowsItsValue(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for i := range all {
		m := &all[i].Meter
		for range 500 {
			truth := (m.Lo + (m.Hi-m.Lo)*(rng.Float64()*1.4-0.2)) * m.PerUnit
			v, d := m.Sample(truth, rng.NormFloat64(), rng.NormFloat64(), rng.Float64(), rng.Float64())
			if v < m.Lo || v > m.Hi || !m.Has(d) || m.Show(v) != d {
				t.Fatalf("%s: value %g, display %d, Show %d", all[i].ID, v, d, m.Show(v))
			}
		}
	}
}

func TestZeroSpread(t *testing.T) {
	m := Meter{PerUnit: 1, Resolution: 1, Lo: 0, Hi: 9}
	for d := range int64(10) {
		want := 0.0
		if d == 4 {
			want = 1
		}
		if got := m.Prob(d, 3.5, 0, 0); got != want {
			t.Errorf("P(%d | 3.5) = %g, want %g: half a step rounds up", d, got, want)
		}
	}
}

func TestParse(t *testing.T) {
	feeler, _ := Find("lining_outer_upper")
	level, _ := Find("reservoir_level")
	dial, _ := Find("runout")
	wet, _ := Find("wetness")
	good := []struct {
		m    *Meter
		text string
		want int64
	}{
		{&feeler.Meter, "8", 8}, {&feeler.Meter, " 8 mm ", 8},
		{&level.Meter, "40", 8}, {&level.Meter, "-10", -2}, {&level.Meter, "−10", -2}, {&level.Meter, "+40,0", 8},
		{&dial.Meter, "0.29", 29}, {&dial.Meter, "0,29", 29}, {&dial.Meter, ".07", 7},
		{&wet.Meter, "DAMP", 1}, {&wet.Meter, " wet ", 2},
	}
	for _, g := range good {
		if got, err := g.m.Parse(g.text); err != nil || got != g.want {
			t.Errorf("Parse(%q) = %d, %v; want %d", g.text, got, err, g.want)
		}
	}
	bad := []struct {
		m        *Meter
		text, id string
	}{
		{&dial.Meter, "", ReadingEmpty}, {&dial.Meter, "  ", ReadingEmpty}, {&wet.Meter, "", ReadingEmpty},
		{&dial.Meter, "about 0.2", ReadingNotNumber}, {&dial.Meter, "NaN", ReadingNotNumber}, {&dial.Meter, "Inf", ReadingNotNumber},
		{&dial.Meter, "1e-2", ReadingNotNumber}, {&dial.Meter, "0x1p-3", ReadingNotNumber}, {&dial.Meter, "--1", ReadingNotNumber},
		{&dial.Meter, "1_0", ReadingNotNumber}, {&dial.Meter, "1,2.3", ReadingNotNumber}, {&dial.Meter, "7,5,3-2", ReadingNotNumber}, {&dial.Meter, "0-.5", ReadingNotNumber}, {&dial.Meter, ".", ReadingNotNumber}, {&dial.Meter, "mm", ReadingNotNumber},
		{&dial.Meter, "000000000000000000000000000000.1", ReadingNotNumber}, {&dial.Meter, "\x00", ReadingNotNumber},
		{&dial.Meter, "1.01", ReadingOutside}, {&dial.Meter, "-0.01", ReadingOutside}, {&feeler.Meter, "13", ReadingOutside}, {&level.Meter, "999999999999999999999", ReadingOutside},
		{&feeler.Meter, "8.9", ReadingBetween}, {&level.Meter, "+41,9", ReadingBetween}, {&level.Meter, "-.9999999", ReadingBetween}, {&dial.Meter, "0.295", ReadingBetween},
		{&wet.Meter, "moist", ReadingNotWord}, {&wet.Meter, "1", ReadingNotWord},
	}
	for _, b := range bad {
		_, err := b.m.Parse(b.text)
		var re *ReadingError
		if !errors.As(err, &re) || re.ID != b.id {
			t.Errorf("Parse(%q) = %v, want %s", b.text, err, b.id)
		}
	}
	_, err := dial.Meter.Parse("1.01")
	if got, want := fmt.Sprint(err), "1.01 is outside the instrument: it shows 0 to 1 mm"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// FuzzParse: whatever is written is a display of the meter or a typed error.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"8", "-0", "1e9", "wet", "٣", "8\u00a0mm", "+.", "0,0,0"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for i := range all {
			m := &all[i].Meter
			d, err := m.Parse(s)
			var re *ReadingError
			if err == nil && !m.Has(d) || err != nil && !errors.As(err, &re) {
				t.Fatalf("%s: Parse(%q) = %d, %v", all[i].ID, s, d, err)
			}
		}
	})
}

// TestValueShows: the figure of every display, seen again, is that display.
func TestValueShows(t *testing.T) {
	for i := range all {
		m := &all[i].Meter
		for d := m.First(); d < m.First()+int64(m.Cells()); d++ {
			if got := m.Show(m.Value(d)); got != d {
				t.Fatalf("%s: display %d stands for %g, which shows %d", all[i].ID, d, m.Value(d), got)
			}
		}
	}
}
