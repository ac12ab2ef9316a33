package tests

import (
	"errors"
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// dice turns a fuzzer's bytes into choices; after the last byte it gives zeros.
type dice []byte

func (d *dice) byte() int {
	if len(*d) == 0 {
		return 0
	}
	b := (*d)[0]
	*d = (*d)[1:]
	return int(b)
}

// share is from 0 to 1, near nothing more often than near everything.
func (d *dice) share() float64 { return math.Pow(float64(d.byte())/255, 4) }

// condition sets up to seven numbers of a condition anywhere in their stated ranges.
func (d *dice) condition(t testing.TB) (cond physics.Condition) {
	all := scenarios.Fields()
	for len(all) > 0 && all[0].OfCar() {
		all = all[1:]
	}
	for range d.byte() % 8 {
		f := &all[(d.byte()<<8|d.byte())%len(all)]
		v := f.Lo * d.share()
		if f.Lo >= 0 || d.byte()%2 == 0 {
			v = f.Lo + (f.Hi-f.Lo)*d.share()
		}
		if err := f.Set(nil, &cond, v); err != nil {
			t.Fatal(err)
		}
	}
	return cond
}

// specs are the cars that a fuzzer drives: the library's three.
func specs(t testing.TB) []*physics.Spec {
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	var all []*physics.Spec
	for _, c := range lib.Cars {
		all = append(all, &c.Spec)
	}
	return all
}

// typed tells whether an error is one that the physics promise.
func typed(err error) bool {
	return errors.As(err, new(*physics.SpecError)) || errors.As(err, new(*physics.CornerError)) || errors.As(err, new(*physics.DivergedError))
}

// seeds are sound cars, one fault of each kind and heaps of them; the first byte
// picks the car.
func seeds(f *testing.F) {
	f.Add([]byte{})
	for i := range 48 {
		f.Add([]byte{byte(i), 1, 0, byte(i), 200, 1, 120, byte(i), 90, byte(3 * i), 7, 200, 5, 0, byte(i)})
		f.Add([]byte{byte(i + 1), 7, 0, byte(i), 150, 1, 0, byte(3 * i), 99, 0, 0, byte(5 * i), 140, 1, 0, byte(7 * i), 170, 0, 0, byte(11 * i), 80, 1, byte(i), 255, 3, 90, 60, 30})
	}
}

// FuzzStep: any of the three cars with anything in its stated range is refused in a typed error
// or, driven anyhow, finds the balance of every step; its numbers stay numbers,
// its fluid stays, its pistons stay between their stops.
func FuzzStep(f *testing.F) {
	seeds(f)
	cars := specs(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		d := dice(data)
		spec := cars[d.byte()%len(cars)]
		m, err := physics.New(spec, d.condition(t))
		if err != nil {
			if !typed(err) {
				t.Fatalf("New: %T %v", err, err)
			}
			return
		}
		s, err := m.Rest()
		if err != nil {
			if !typed(err) {
				t.Fatalf("Rest: %T %v", err, err)
			}
			return
		}
		fluid := func(s *physics.State) float64 {
			sum := s.Standing + s.Lost + s.Master.Fluid[0] + s.Master.Fluid[1]
			for _, v := range s.Cavity {
				sum += v
			}
			return sum
		}
		all := fluid(&s)
		in := physics.Input{Engine: true}
		for range 60 {
			w := d.byte() % physics.NumWheels
			switch d.byte() % 8 {
			case 0:
				in.Foot = 5000 * d.share()
			case 1:
				in.Foot = 0
			case 2:
				in.Bleed[w] = 1e-5 * d.share()
			case 3:
				in.Piston[w] = -2000 * d.share()
			case 4:
				s.Speed, in.Hold = 60*d.share(), d.byte()%2 == 0
				in.Side = 15 * (d.share() - d.share())
			case 5:
				s.Heat[w].Fluid = 20 + 300*d.share()
			case 6:
				in.Engine, in.Ambient = !in.Engine, -60*d.share()
			case 7:
				in.Surface[w], in.Grade = d.share(), 0.3*d.share()
			}
			next, err := m.Step(s, in, [...]int64{1, 1, 20, 1000}[d.byte()%4])
			if err != nil {
				t.Fatalf("from %d ms: %T %v; state unchanged: %t", s.Millis, err, err, next == s)
			}
			s = next
			if miss := fluid(&s) - all; !(math.Abs(miss) <= 1e-12) {
				t.Fatalf("at %d ms: %g m³ of fluid gone astray", s.Millis, miss)
			}
			for i, x := range s.Master.Stroke {
				if !(x >= 0 && x <= spec.Master.Stroke[i]) {
					t.Fatalf("at %d ms: stroke %d at %g m", s.Millis, i, x)
				}
			}
			for w := range s.Pressure {
				sum := s.Pressure[w] + s.Corners[w].X + s.Corners[w].Y + s.Corners[w].Tilt + s.Forces[w].Inner() + s.Forces[w].Outer() + s.Heat[w].Face() + s.Heat[w].Fluid + s.Air[w] + s.Speed
				if math.IsNaN(sum) || math.IsInf(sum, 0) || s.Pressure[w] < -1.25*physics.Atmosphere { // the dice chill 60 cm³ by 300 K at once: a void of 15 cm³
					t.Fatalf("at %d ms: %v at %g Pa, sum %g", s.Millis, physics.Wheel(w), s.Pressure[w], sum)
				}
			}
		}
	})
}

// FuzzChecks: every check of any of the three cars with anything in its stated range gives a
// number that its meter can show with a probability.
func FuzzChecks(f *testing.F) {
	seeds(f)
	cars := specs(f)
	list := inspect.Instances()
	f.Fuzz(func(t *testing.T, data []byte) {
		d := dice(data)
		spec := cars[d.byte()%len(cars)]
		w, err := inspect.NewWorld(spec, d.condition(t))
		if err != nil {
			if !typed(err) {
				t.Fatalf("NewWorld: %T %v", err, err)
			}
			return
		}
		for range 6 {
			inst := list[(d.byte()<<8|d.byte())%len(list)]
			v, err := w.Measure(inst)
			if err != nil {
				t.Fatalf("%v: %T %v", inst, err, err)
			}
			c, _ := inspect.Find(inst.Check)
			display := c.Meter.Show(v / c.Meter.PerUnit)
			p := c.Meter.Prob(display, v, 0, 0)
			if !c.Meter.Has(display) || math.IsNaN(v) || math.IsInf(v, 0) || !(p > 0 && p <= 1) {
				t.Fatalf("%v: %g shows %d with probability %g", inst, v, display, p)
			}
		}
	})
}
