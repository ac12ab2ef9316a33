package golden

import (
	"context"
	"math/rand/v2"
	"slices"

	"evenwear/physics"
	"evenwear/physics/exact"
	"evenwear/physics/inspect"
	"evenwear/physics/physicstest"
	"evenwear/scenarios"
	"evenwear/scoring"
	"evenwear/scoring/evidence"
)

// luck is what a look needs of chance, from a seed and a count: normals by the
// quantile, because the standard library's own are not promised to stay.
type luck struct{ r *rand.PCG }

func newLuck(seed, n uint64) luck { return luck{rand.NewPCG(seed, n)} }
func (l luck) uniform() float64   { return (float64(l.r.Uint64()>>11) + 0.5) / (1 << 53) }
func (l luck) normal() float64    { return exact.NormalQuantile(l.uniform()) }

func (l luck) sample(m *inspect.Meter, truth float64) (float64, int64) {
	return m.Sample(truth, l.normal(), l.normal(), l.uniform(), l.uniform())
}

// checks is one stage for each check: what it finds at every place on five cars,
// what its meter shows of it by fixed luck and how likely that display was.
func checks() []stage {
	var worlds []*inspect.World
	makeWorlds := func(s *sum) {
		if worlds != nil {
			return
		}
		for _, cond := range []func() physics.Condition{healthy, worn, airy, leaking, hosed} {
			worlds = append(worlds, must[*inspect.World](s)(inspect.NewWorld(physicstest.Hatchback(), cond())))
		}
	}
	var list []stage
	for i := range inspect.All() {
		c := &inspect.All()[i]
		list = append(list, stage{"check " + string(c.ID), func(s *sum) {
			makeWorlds(s)
			for n, w := range worlds {
				for _, inst := range slices.Concat(inspect.Instances(), inspect.FormInstances()) {
					if inst.Proper().Check != c.ID {
						continue
					}
					form, _ := inspect.Find(inst.Check)
					truth := must[float64](s)(w.Measure(inst))
					s.put(truth)
					name := newSum(s.t) // a check added elsewhere must not change this one's luck
					name.text(inst.String())
					l := newLuck(name.h.Sum64(), uint64(n))
					for range 20 {
						v, display := l.sample(&form.Meter, truth)
						s.put(v, display, form.Meter.Prob(display, truth, 0.1*form.Meter.Bias, 0.2))
					}
				}
			}
		}})
	}
	return list
}

// jobs builds the car of every job of the library, as it is and as an inspector
// could imagine it.
func jobs(s *sum) {
	lib := must[*scenarios.Library](s)(scenarios.Embedded())
	for _, j := range lib.Jobs {
		s.text(j.ID)
		s.put(must[physics.Condition](s)(scenarios.Build(&j.Car.Spec, j.Driven, j.Faults)))
		imagined := scenarios.Vary(j.Driven, []float64{0.5, -0.5, 1, -1})
		s.put(must[physics.Condition](s)(scenarios.Build(&j.Car.Spec, imagined, j.Faults)))
	}
}

// problem is four conditions and one thing unknown, how far all linings have worn.
func problem() *evidence.Problem {
	cars := []func() physics.Condition{healthy, worn, leaking, hosed}
	p := &evidence.Problem{Background: make([]evidence.Background, 1), Checks: inspect.Instances()}
	for i, prior := range []float64{0.4, 0.3, 0.2, 0.1} {
		id := string(rune('a' + i))
		p.Hypotheses = append(p.Hypotheses, evidence.Hypothesis{ID: id, Row: id, Cause: id, Place: "car", Prior: prior})
	}
	p.Build = func(h int, b []float64) (*inspect.World, error) {
		c := cars[h]()
		for w := range c.Wheels {
			for pad := range 2 {
				for half := range 2 {
					c.Wheels[w].Wear[pad][half] += 2e-3 + float64(0.4e-3*b[0])
				}
			}
		}
		return inspect.NewWorld(physicstest.Hatchback(), c)
	}
	return p
}

// table is filled once: posterior and marks both use it.
var table *evidence.Table

func filled(s *sum) *evidence.Table {
	if table == nil {
		table = must[*evidence.Table](s)(evidence.NewTable(problem()))
		if err := table.Fill(context.Background(), 1, nil); err != nil {
			s.t.Fatal(err)
		}
		if err := table.Failed(); err != nil {
			s.t.Fatal(err)
		}
	}
	return table
}

// reader looks at the second car with fixed luck.
func reader(s *sum) func(inspect.Instance) (int64, error) {
	w := must[*inspect.World](s)(problem().Build(1, []float64{0.6}))
	l := newLuck(11, 12)
	return func(inst inspect.Instance) (int64, error) {
		v, err := w.Measure(inst)
		c, _ := inspect.Find(inst.Check)
		_, display := l.sample(&c.Meter, v)
		return display, err
	}
}

func posterior(s *sum) {
	t := filled(s)
	for h := range t.Problem().Hypotheses {
		for _, inst := range t.Problem().Checks {
			f, _ := t.Fit(h, inst)
			s.put(f.Mean, f.Slope, f.Residual)
		}
	}
	look := reader(s)
	post := must[*evidence.Posterior](s)(t.Posterior(nil))
	for i, inst := range t.Problem().Checks {
		if i%5 != 0 {
			continue
		}
		display := must[int64](s)(look(inst))
		if err := post.Add(evidence.Reading{Check: inst, Display: display}); err != nil {
			s.t.Fatal(err)
		}
		for h, b := range post.Hypotheses() {
			s.put(b.P, post.LogLikelihood(h))
		}
		s.put(post.Surprise(), post.Bits("b"))
	}
	for _, w := range must[*evidence.Posterior](s)(t.Posterior(nil)).All() {
		s.text(w.Check.String())
		s.put(w.Bits)
	}
}

// marks lets the model inspector play, and marks a learner who read the same.
func marks(s *sum) {
	t := filled(s)
	prices := evidence.InspectPrices(t.Problem())
	trail := must[evidence.Trail](s)(t.Inspect(context.Background(), &prices, 60, reader(s)))
	p := &scoring.Play{True: []int{1}, Counters: []int{3, 12, 4, 1}, ModelBits: trail.Final.Bits("b"), Spent: trail.Minutes + 7, Best: trail.Minutes,
		Cautions: []scoring.Caution{{ID: "a", Kept: true}, {ID: "b"}}, Harms: []string{"c"}, Proof: []scoring.Proof{{ID: "d", Done: true}, {ID: "e"}},
		Loss: 61.5, BestLoss: 33.25, Needless: 1, Release: scoring.ReleaseUse}
	for i, b := range trail.Final.Rows() {
		p.Rows, p.Prior, p.Support = append(p.Rows, b.ID), append(p.Prior, t.PriorRows()[i].P), append(p.Support, b.P)
	}
	for i, k := range trail.Looks {
		s.text(k.Reading.Check.String())
		s.put(k.Reading.Display, k.Bits, k.Top.P)
		p.Readings = append(p.Readings, scoring.Read{Check: k.Reading.Check.String(), Divisions: float64(i%4) / 2})
	}
	m := must[scoring.Marks](s)(scoring.MarkPlay(p))
	for _, k := range m.Marks {
		s.text(k.ID)
		s.put(k.Weight, k.Value, k.Scale)
	}
	s.put(m.Total, m.Uncapped)
}

func outlook(s *sum) {
	for _, cond := range []func() physics.Condition{worn, leaking} {
		o := must[scoring.Outlook](s)(scoring.Look(spec(), cond(), physics.MixedDuty()))
		for _, r := range o.Stops {
			s.put(r.Speed, r.Distance, r.MFDD, r.Pull, r.Foot)
		}
		s.put(o.Decel, o.Imbalance, o.Travel, o.Reserve, o.Sink, o.Level, o.Assist, o.Leak, o.Hose, o.Left, o.Lasts,
			o.DiscPeak, o.FluidPeak, o.DescentWay, o.DragPower, o.DragFuel, o.DescentFoot)
	}
}
