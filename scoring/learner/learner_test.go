package learner

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenwear/physics/inspect"
	"evenwear/scoring/evidence"
)

// TestSameLuckSameActs: a learner is a pure function of table, readings, luck.
func TestSameLuckSameActs(t *testing.T) {
	table, prices := toyTable(t)
	for _, k := range Kinds {
		l := &Learner{Kind: k, Skill: 0.5, Exponent: 1.3, Stop: 0.1}
		r1, c1 := play(t, l, table, table, prices, 2, rand.New(rand.NewPCG(1, 2)))
		r2, c2 := play(t, l, table, table, prices, 2, rand.New(rand.NewPCG(1, 2)))
		if !slices.Equal(r1, r2) || !slices.Equal(c1, c2) {
			t.Errorf("%s played twice alike read %v and %v, said %v and %v", k, r1, r2, c1, c2)
		}
	}
}

// TestKinds: each kind does what it is called for.
func TestKinds(t *testing.T) {
	table, prices := toyTable(t)
	luck := rand.New(rand.NewPCG(3, 3))
	for _, c := range []struct {
		kind        Kind
		looks, most int
		said        int
		act         Act
	}{
		{Nothing, 0, 0, 0, Leave}, {Refers, 0, 0, 0, Refer}, {Guesser, 0, 0, 20, Treat}, {Clicks, 3, 5, 0, Leave}, {Checklist, 3, 5, 20, Refer}, {Jumper, 1, 5, 20, Treat}, {Inspector, 1, 5, 20, Treat},
	} {
		l := &Learner{Kind: c.kind, Skill: 1, Exponent: 1}
		readings, counters := play(t, l, table, table, prices, 2, luck)
		sum := 0
		for _, n := range counters {
			sum += n
		}
		if len(readings) < c.looks || len(readings) > c.most || sum != c.said {
			t.Errorf("%s looks %d times and places %d counters", c.kind, len(readings), sum)
		}
		var belief []float64
		if sum > 0 {
			for _, n := range counters {
				belief = append(belief, float64(n)/20)
			}
		}
		if act, _ := l.Decide(belief); act != c.act && c.kind != Checklist {
			t.Errorf("%s decides %d, want %d", c.kind, act, c.act)
		}
	}
}

// TestSkill: more skill puts more on the truth; none of it is the prior.
func TestSkill(t *testing.T) {
	table, prices := toyTable(t)
	mean := func(s float64) float64 {
		luck, sum := rand.New(rand.NewPCG(5, 5)), 0.0
		for i := range 300 {
			h := 1 + i%4
			_, counters := play(t, &Learner{Kind: Reasoner, Skill: s, Exponent: 1}, table, table, prices, h, luck)
			sum += float64(counters[h]) / 20 / 300
		}
		return sum
	}
	last := 0.0
	for _, s := range []float64{0.1, 0.4, 0.7, 1} {
		m := mean(s)
		t.Logf("skill %.1f: %.3f on the truth", s, m)
		if m < last+0.05 {
			t.Errorf("skill %.1f puts %.3f on the truth, less skill %.3f", s, m, last)
		}
		last = m
	}
	flat := mixed([]float64{1, 0}, []float64{0.3, 0.7}, 0, 1)
	if flat[0] != 0.3 || flat[1] != 0.7 {
		t.Errorf("without skill the belief is %v, want the prior", flat)
	}
}

func TestSharpen(t *testing.T) {
	p := []float64{0.6, 0.3, 0.1, 0}
	if q := sharpen(p, 1); math.Abs(q[0]-0.6) > 1e-12 || q[3] != 0 {
		t.Errorf("the first power is %v", q)
	}
	if q := sharpen(p, 2); math.Abs(q[0]-0.36/0.46) > 1e-12 {
		t.Errorf("the second power puts %.6f first, want %.6f", q[0], 0.36/0.46)
	}
	if q := sharpen(p, 0.5); q[0] >= 0.6 || q[0] <= q[1] {
		t.Errorf("the root is %v", q)
	}
}

func TestReference(t *testing.T) {
	all := Reference(2000, rand.New(rand.NewPCG(1, 1)))
	skill, half, stop := 0.0, 0, 0.0
	for _, l := range all {
		if l.Skill < 0.2 || l.Skill > 0.9 || l.Exponent < 0.5 || l.Exponent > 2 || l.Stop < 0 || l.Stop > 0.4 {
			t.Fatalf("out of range: %+v", l)
		}
		skill, stop = skill+l.Skill/2000, stop+l.Stop/2000
		if l.Exponent < 1 { // log-uniform: half of them
			half++
		}
	}
	if math.Abs(skill-0.55) > 0.02 || math.Abs(stop-0.2) > 0.01 || half < 900 || half > 1100 {
		t.Errorf("mean skill %.3f, mean stop %.3f, %d of 2000 exponents below 1", skill, stop, half)
	}
}

// TestOC127: repair order, P .5 .3 .2 and cost 10 3 4: by falling P/C the second
// part first costs 10.8; the other orders 11.4, 12.3, 12.9. Kadane & Simon;
// Heckerman, Breese & Rommelse, CACM 38(3) (1995) 49.
func TestOC127(t *testing.T) {
	p, c := []float64{.5, .3, .2}, []float64{10, 3, 4}
	expected := func(order []int) float64 {
		sum, spent := 0.0, 0.0
		for _, i := range order {
			spent += c[i]
			sum += p[i] * spent
		}
		return sum
	}
	order := ByRate(p, c)
	if order[0] != 1 {
		t.Errorf("OC-127: part %d first, want the second", order[0]+1)
	}
	if got := expected(order); math.Abs(got-10.8) > 1e-12 {
		t.Errorf("OC-127: %v costs %.12g, want 10.8", order, got)
	}
	seen := map[int]bool{}
	for _, o := range [][]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} {
		e := expected(o)
		seen[int(math.Round(e*10))] = true
		if e < 10.8-1e-12 {
			t.Errorf("OC-127: %v costs %.3f, less than by P/C", o, e)
		}
	}
	for _, want := range []int{108, 114, 123, 129} {
		if !seen[want] {
			t.Errorf("OC-127: no order costs %.1f", float64(want)/10)
		}
	}
}

// TestMisreads: the perfect never misread, the unskilled do at their rate and by
// a division.
func TestMisreads(t *testing.T) {
	m := &inspect.Meter{Resolution: 0.5, Division: 1, Lo: 0, Hi: 100}
	luck := rand.New(rand.NewPCG(9, 9))
	for _, l := range []Learner{Perfect, {Kind: Reasoner, Skill: 0}} {
		off := 0
		for range 4000 {
			if d := l.Write(m, 50, luck); d != 50 {
				if off++; d != 48 && d != 52 {
					t.Fatalf("wrote %d for 50, want a division of two steps off", d)
				}
			}
		}
		if want := misread * (1 - l.Skill) * 4000; math.Abs(float64(off)-want) > 4*math.Sqrt(want)+1e-9 {
			t.Errorf("%s misread %d of 4000, want about %.0f", l.Kind, off, want)
		}
	}
}

// TestLowIsALeak: who holds it believes in a leak from a low level that wear
// explains as well, and in no leak from a full one.
func TestLowIsALeak(t *testing.T) {
	table, _ := toyTable(t)
	m, _ := Misconceived("low_is_a_leak")
	bent, ok := m.Bend(table)
	if !ok {
		t.Fatal("the idea changes nothing")
	}
	low := []evidence.Reading{{Check: inspect.Instance{Check: "reservoir_level"}, Display: 8}}
	for _, c := range []struct {
		t      *evidence.Table
		lo, hi float64
	}{{table, 0.4, 0.6}, {bent, 0.9, 1}} {
		p, err := c.t.Posterior(low)
		if err != nil {
			t.Fatal(err)
		}
		if b := p.Row("joint_weeping@front_left"); b < c.lo || b > c.hi {
			t.Errorf("a leak is believed %.3f, want %.1f to %.1f", b, c.lo, c.hi)
		}
	}
}

func TestIdeasAreDistinct(t *testing.T) {
	if len(Misconceptions) < 12 {
		t.Errorf("%d misconceptions, at least 12 are wanted", len(Misconceptions))
	}
	for i, m := range Misconceptions {
		if len(m.Rules) == 0 {
			t.Errorf("%s has no rule", m.ID)
		}
		for _, r := range m.Rules {
			for _, id := range r.Checks {
				if _, ok := inspect.Find(id); !ok {
					t.Errorf("%s: there is no check %s", m.ID, id)
				}
			}
			if r.Way == Swaps && len(r.Checks)%2 != 0 {
				t.Errorf("%s: %d checks do not stand in pairs", m.ID, len(r.Checks))
			}
			if (r.Way == Shows) != (r.By != 0) {
				t.Errorf("%s: shows by %g", m.ID, r.By)
			}
		}
		for _, other := range Misconceptions[:i] {
			if other.ID == m.ID {
				t.Errorf("%s stands twice", m.ID)
			}
		}
	}
	if _, ok := Misconceived("no_such"); ok {
		t.Error("an idea that is not there was found")
	}
}

// TestNaming: of sixty who hold an idea that the toy can show nearly all are
// named rightly, of sixty who hold none nearly none.
func TestNaming(t *testing.T) {
	table, prices := toyTable(t)
	var ids []string
	var tables []*evidence.Table
	for i := range Misconceptions {
		if bent, ok := Misconceptions[i].Bend(table); ok {
			ids, tables = append(ids, Misconceptions[i].ID), append(tables, bent)
		}
	}
	named := func(holds string, seed uint64) Naming {
		luck := rand.New(rand.NewPCG(seed, 77))
		l := &Reference(1, luck)[0]
		l.Holds, l.Skill = holds, max(l.Skill, 0.5)
		own := table
		if at := find(ids, holds); at >= 0 {
			own = tables[at]
		}
		const jobs = 10
		real, ideas := make([]Explanation, jobs), make([][]Explanation, len(ids))
		for m := range ideas {
			ideas[m] = make([]Explanation, jobs)
		}
		for j := range jobs {
			readings, counters := play(t, l, table, own, prices, luck.IntN(5), luck)
			var err error
			if real[j], err = Explain(counters, table, readings); err != nil {
				t.Fatal(err)
			}
			for m := range ideas {
				if ideas[m][j], err = Explain(counters, tables[m], readings); err != nil {
					t.Fatal(err)
				}
			}
		}
		return Name(real, ids, ideas)
	}
	right, wrong := 0, 0
	for i := range uint64(60) {
		if named("low_is_a_leak", i).Idea == "low_is_a_leak" {
			right++
		}
		if named("", 1000+i).Idea != "" {
			wrong++
		}
	}
	t.Logf("named rightly %d of 60 who hold it, %d of 60 who hold none", right, wrong)
	if right < 54 || wrong > 2 {
		t.Errorf("named %d of 60 who hold it and %d of 60 who hold none; want at least 54 and at most 2", right, wrong)
	}
}
