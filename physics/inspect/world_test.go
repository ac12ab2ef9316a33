package inspect

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

func world(t testing.TB, cond physics.Condition) *World {
	t.Helper()
	w, err := NewWorld(physicstest.Hatchback(), cond)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func measure(t testing.TB, w *World, name string) float64 {
	t.Helper()
	i, err := ParseInstance(name)
	if err != nil {
		t.Fatal(err)
	}
	v, err := w.Measure(i)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestReducedAgree: every reduced experiment agrees with the same experiment in
// steps of 1 ms within a third of a division (for words: no word's probability
// differs by more than 0.05).
func TestReducedAgree(t *testing.T) {
	if testing.Short() {
		t.Skip("a minute of car in steps of 1 ms")
	}
	conds := conditions()
	for _, name := range []string{"healthy", "dry", "corroded", "leak", "air", "thickness", "hose_holds", "no_vacuum", "oily", "seized", "loose", "port", "ear_rusted"} {
		coarse, fine := world(t, conds[name]), world(t, conds[name])
		fine.fine = true
		for _, i := range Instances() {
			if i.PerWheel && i.Wheel != physics.FrontLeft || i.Check == "temperature" {
				continue
			}
			c, _ := Find(i.Check)
			m := &c.Meter
			a, b := measure(t, coarse, i.String()), measure(t, fine, i.String())
			if len(m.Words) > 0 {
				for d := range int64(m.Cells()) {
					if p, q := m.Prob(d, a, 0, 0), m.Prob(d, b, 0, 0); math.Abs(p-q) > 0.05 {
						t.Errorf("%s: %s is %q with %.3f in long steps, %.3f in steps of 1 ms (%.4g, %.4g)", name, i, m.Words[d], p, q, a/m.PerUnit, b/m.PerUnit)
					}
				}
				continue
			}
			if bound := m.Division / 3; math.Abs(a-b)/m.PerUnit > bound {
				t.Errorf("%s: %s is %.4f in long steps, %.4f %s in steps of 1 ms; want within %.3g", name, i, a/m.PerUnit, b/m.PerUnit, m.Unit, bound)
			}
		}
	}
}

// TestMeasureLooksOnly: no check changes the world, and the order of checks
// changes no answer.
func TestMeasureLooksOnly(t *testing.T) {
	w := world(t, conditions()["dry"])
	before := w.Rest
	list := Instances()
	first := map[Instance]float64{}
	for _, i := range list {
		first[i] = measure(t, w, i.String())
	}
	if w.Rest != before {
		t.Error("the checks moved the car")
	}
	again := world(t, conditions()["dry"])
	for k := len(list) - 1; k >= 0; k-- {
		if got := measure(t, again, list[k].String()); got != first[list[k]] {
			t.Errorf("%s: %v alone, %v after others", list[k], got, first[list[k]])
		}
	}
	c := w.Clone()
	if c.Rest != w.Rest || measure(t, c, "pull") != first[Instance{Check: "pull"}] {
		t.Error("a clone answers otherwise")
	}
}

// TestAnyCarAnswers: sixty random cars, many of them wrecks, answer every
// check with a number or a typed error; none panics.
func TestAnyCarAnswers(t *testing.T) {
	cars := 60
	if testing.Short() {
		cars = 20
	}
	rng := rand.New(rand.NewPCG(20, 26))
	some := func(hi float64) float64 {
		if rng.IntN(3) > 0 {
			return 0
		}
		return hi * rng.Float64()
	}
	failed := 0
	for range cars {
		var cond physics.Condition
		cond.Fluid, cond.Water = some(80e-6)-some(200e-6), some(0.06)
		cond.BoosterLoss, cond.VacuumLeak = some(1), some(0.2)
		cond.CupBypass = [2]float64{some(1e-13), some(1e-13)}
		for i := range cond.Wheels {
			c := &cond.Wheels[i]
			for pad := range 2 {
				c.PinFriction[pad], c.EarFriction[pad] = some(6000), some(500)
				c.DiscWear[pad] = some(0.5e-3)
				for half := range 2 {
					c.Wear[pad][half], c.MuLoss[pad][half] = some(7e-3), some(0.8)
				}
			}
			c.SealFriction, c.SealRate = some(3000), some(20e6)
			c.Runout, c.Thickness = some(0.3e-3), some(0.06e-3)
			c.Leak, c.Air = some(1e-8), some(6e-6)
			c.SealLeak, c.ScrewLeak = some(1e-9), some(1e-9)
			if !physics.Wheel(i).Front() {
				c.ValveStuck = some(1) - some(1)
			}
			c.Groove, c.DiscFilm, c.PlateProud = [2]float64{some(0.6e-3), some(0.6e-3)}, some(1), [2]float64{some(0.4e-3), some(0.4e-3)}
			c.HoseSwell, c.HoseHold, c.BearingPlay = some(1e-13), some(2e6), some(0.5e-3)
		}
		w, err := NewWorld(physicstest.Hatchback(), cond)
		if err != nil {
			failed++
			t.Logf("%v", err)
			continue
		}
		for _, i := range Instances() {
			if _, err := w.Measure(i); err != nil {
				failed++
				t.Logf("%v", err)
			}
		}
	}
	if failed > 0 {
		t.Errorf("%d checks of %d cars failed", failed, cars)
	}
}

// TestBadInstance: what no catalogue holds is an error, not a panic.
func TestBadInstance(t *testing.T) {
	w := world(t, physics.Condition{})
	for _, i := range []Instance{{}, {Check: "nothing"}, {Check: "spin"}, {Check: "spin", PerWheel: true, Wheel: 4}, {Check: "spin", PerWheel: true, Wheel: -1}, {Check: "pull", PerWheel: true}} {
		if _, err := w.Measure(i); err == nil {
			t.Errorf("%+v: no error", i)
		}
	}
}

// BenchmarkWorld is one hypothesis at one background: a new world and every
// instance of every check.
func BenchmarkWorld(b *testing.B) {
	list := Instances()
	cond := conditions()["dry"]
	spec := physicstest.Hatchback()
	for b.Loop() {
		w, err := NewWorld(spec, cond)
		if err != nil {
			b.Fatal(err)
		}
		for _, i := range list {
			if _, err := w.Measure(i); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// BenchmarkCheck is each check alone in a new world.
func BenchmarkCheck(b *testing.B) {
	rest := world(b, conditions()["dry"])
	for i := range all {
		c := &all[i]
		b.Run(string(c.ID), func(b *testing.B) {
			for b.Loop() {
				w := World{Model: rest.Model, Rest: rest.Rest, cache: &worldCache{}}
				if _, err := c.Measure(&w, physics.FrontLeft); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
