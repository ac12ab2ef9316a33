package evidence

import (
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/physics/physicstest"
)

// realProblem is the hatchback with a few causes at the front left wheel; the
// background is how far its linings have worn and how fresh its grease is.
func realProblem() *Problem {
	ids := []string{"sound", "dry_pins", "seized_pin", "tight_piston", "leak", "contaminated"}
	p := &Problem{Background: make([]Background, 2), Checks: inspect.Instances()}
	for _, id := range ids {
		p.Hypotheses = append(p.Hypotheses, Hypothesis{ID: id, Row: id, Cause: id, Place: "front_left", Prior: 1 / float64(len(ids))})
	}
	p.Build = func(h int, b []float64) (*inspect.World, error) {
		var c physics.Condition
		for w := range c.Wheels {
			worn := 3e-3 + float64(0.5e-3*b[0])
			c.Wheels[w].Wear = [2][2]float64{{worn, worn}, {worn, worn}}
			c.Wheels[w].PinFriction = [2]float64{10 + float64(2*b[1]), 10 + float64(2*b[1])}
		}
		fl := &c.Wheels[physics.FrontLeft]
		switch h {
		case 1:
			fl.PinFriction = [2]float64{250 + float64(20*b[1]), 250 + float64(20*b[1])}
		case 2:
			fl.PinFriction[0] = 8000
		case 3:
			fl.SealFriction, fl.SealRate = 2000, 15e6
		case 4:
			fl.Leak = 2e-10
		case 5:
			fl.MuLoss = [2][2]float64{{0.4, 0.4}, {0.4, 0.4}}
		}
		return inspect.NewWorld(physicstest.Hatchback(), c)
	}
	return p
}

// realTable is what that car would show, complete.
func realTable(t *testing.T) *Table {
	t.Helper()
	table, err := NewTable(realProblem())
	if err != nil {
		t.Fatal(err)
	}
	if err := table.Fill(t.Context(), 2, nil); err != nil {
		t.Fatal(err)
	}
	if err := table.Failed(); err != nil {
		t.Fatal(err)
	}
	return table
}

// TestRealCar: on the physics themselves the model inspector names each cause.
func TestRealCar(t *testing.T) {
	table := realTable(t)
	p := table.problem
	prices := InspectPrices(p)
	for truth := range p.Hypotheses {
		world, err := p.Build(truth, []float64{0.6, -0.8})
		if err != nil {
			t.Fatal(err)
		}
		l := newLuck(uint64(truth) + 40)
		trail, err := table.Inspect(t.Context(), &prices, 90, func(inst inspect.Instance) (int64, error) {
			v, err := world.Measure(inst)
			if err != nil {
				return 0, err
			}
			c, _ := inspect.Find(inst.Check)
			return l.show(&c.Meter, v/c.Meter.PerUnit), nil
		})
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%s: %d looks, %.1f min, belief %.3f", p.Hypotheses[truth].ID, len(trail.Looks), trail.Minutes, trail.Final.Row(p.Hypotheses[truth].ID))
		if trail.Final.Row(p.Hypotheses[truth].ID) < 0.8 {
			t.Errorf("%s: believed %.3f after %d looks and %.1f minutes", p.Hypotheses[truth].ID, trail.Final.Row(p.Hypotheses[truth].ID), len(trail.Looks), trail.Minutes)
		}
	}
}

// BenchmarkRealWorld is one world with every check: a job's table is some 70
// hypotheses of up to 27 of them.
func BenchmarkRealWorld(b *testing.B) {
	p := realProblem()
	for b.Loop() {
		w, err := p.Build(1, []float64{0, 0})
		if err != nil {
			b.Fatal(err)
		}
		for _, inst := range p.Checks {
			if _, err := w.Measure(inst); err != nil {
				b.Fatal(err)
			}
		}
	}
}
