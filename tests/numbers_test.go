package tests

import (
	"math"
	"strings"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
	"evenwear/scenarios"
)

// behaviour is what a car does and shows, number by number; wheels holds what each wheel
// does by itself with the foot off.
type behaviour struct {
	all    []float64
	wheels [physics.NumWheels][]float64
}

// behave presses a car, lets it go, rolls, stops, waits a quarter of a year and looks.
func behave(t *testing.T, spec *physics.Spec, cond physics.Condition) (b behaviour) {
	t.Helper()
	must := func(s physics.State, err error) physics.State {
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	m, err := physics.New(spec, cond)
	if err != nil {
		t.Fatal(err)
	}
	rest := must(m.Rest())
	s := rest
	for i := range 60 { // pressed to 200 N, then released with the engine off
		in := physics.Input{Foot: 200 * min(1, float64(i)/10), Engine: true}
		if i >= 40 {
			in = physics.Input{}
		}
		s = must(m.Step(s, in, 20))
		b.all = append(b.all, m.PedalTravel(&s), s.Vacuum, s.Lost, s.Standing, m.Lamp(&s), s.Pressure[0], s.Pressure[2])
	}
	s = must(m.Step(s, physics.Input{}, 1000))
	b.all = append(b.all, s.Vacuum)
	s.Speed = 3
	for range 600 {
		s = must(m.Step(s, physics.Input{Engine: true, Hold: true}, 1))
	}
	bend := s
	for _, side := range []float64{3, -3, 0} {
		bend = must(m.Step(bend, physics.Input{Engine: true, Hold: true, Side: side}, 1000))
	}
	r, err := m.Stop(rest, physics.StopPlan{Speed: 14, Foot: 200, Millis: 1})
	if err != nil {
		t.Fatal(err)
	}
	b.all = append(b.all, m.BoilingPoint(), m.LampTest(), m.OilLayer(), m.OilLevel(physics.Cold), m.CoolantLevel(physics.Cold), m.SteeringLevel(physics.Cold), m.WasherLevel(physics.Cold), r.Distance)
	for w := range physics.Wheel(physics.NumWheels) {
		f := &s.Forces[w]
		b.wheels[w] = []float64{f.Inner(), f.Outer(), f.Half[0][0], f.Half[1][0], bend.Forces[w].Inner(), s.Corners[w].X, s.Corners[w].Tilt, r.Pulsation[w], r.Force[w], r.Pressure[w],
			m.DiscThickness(w), m.LandThickness(w), m.RimThickness(w), m.PinBootSwollen(w, 0), m.PinBootSwollen(w, 1)}
		b.all = append(b.all, b.wheels[w]...)
	}
	later, err := physics.Drive(spec, cond, physics.MixedDuty(), 3000)
	if err != nil {
		t.Fatal(err)
	}
	for w := range later.Wheels {
		v := &later.Wheels[w]
		worn := v.Wear[0][0] + v.Wear[1][0] + v.Wear[0][1] + v.Wear[1][1] - cond.Wheels[w].Wear[0][0] - cond.Wheels[w].Wear[1][0] - cond.Wheels[w].Wear[0][1] - cond.Wheels[w].Wear[1][1]
		b.all = append(b.all, worn, v.PinFriction[0]-cond.Wheels[w].PinFriction[0], v.PinFriction[1]-cond.Wheels[w].PinFriction[1], v.SealFriction-cond.Wheels[w].SealFriction)
	}
	b.all = append(b.all, later.Water-cond.Water, later.RubberSwollen-cond.RubberSwollen, later.Vessels.Coolant-cond.Vessels.Coolant)
	return b
}

// onlySeen are the numbers that an eye finds and nothing else; see physics.Condition.
var onlySeen = []string{"disc_crack_mm"}

// withOthers are numbers that tell only beside another one.
var withOthers = map[string]struct {
	path string
	v    float64
}{
	"float_high_cm3": {"fluid_added_cm3", -125}, "lamp_lost_share": {"fluid_added_cm3", -125}, "vent_shut_share": {"fluid_added_cm3", -20},
	"rubber_swollen_share":   {"mineral_oil_share", 0.05}, // what is swollen swells no more
	"pin_upper_seized_at_mm": {"wheel.rear_left.pin_upper_friction_n", 3000}, "pin_lower_seized_at_mm": {"wheel.rear_left.pin_lower_friction_n", 3000},
	"pin_upper_bend_mm_per_kn": {"wheel.rear_left.pin_upper_friction_n", 300}, "pin_lower_bend_mm_per_kn": {"wheel.rear_left.pin_lower_friction_n", 300},
	"hose_return_ratio": {"wheel.rear_left.hose_hold_mpa", 0.1},
}

// TestEveryNumberActs: each number of a condition, alone and small, moves something that
// a check or the road can find, but those that are only seen; a wheel's number leaves
// the free running of the wheels across and of the other circuit as it was.
func TestEveryNumberActs(t *testing.T) {
	if testing.Short() {
		t.Skip("seventy cars, driven")
	}
	spec := physicstest.Hatchback()
	set := func(c *physics.Condition, path string, v float64) *scenarios.Field {
		fs, err := scenarios.FindFields(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := fs[0].Set(nil, c, v); err != nil {
			t.Fatal(err)
		}
		return fs[0]
	}
	sound := behave(t, spec, physics.Condition{})
	tried := 0
	for _, f := range scenarios.Fields() {
		if f.OfCar() || strings.HasPrefix(f.Path, "wheel.") && !strings.HasPrefix(f.Path, "wheel.rear_left.") {
			continue
		}
		key := strings.TrimPrefix(f.Path, "wheel.rear_left.")
		v := f.Hi / 50
		switch key {
		case "fluid_added_cm3", "oil_added_cm3", "coolant_added_cm3", "steering_added_cm3", "washer_added_cm3":
			v = -20
		case "lamp_lost_share", "rubber_swollen_share", "vent_shut_share", "valve_stuck_share", "disc_film_share", "low_grade_share":
			v = 0.5
		}
		before, was := physics.Condition{}, sound
		if with, ok := withOthers[key]; ok {
			set(&before, with.path, with.v)
			was = behave(t, spec, before)
		}
		cond := before
		set(&cond, f.Path, v)
		got := behave(t, spec, cond)
		tried++
		moved := 0.0
		for i, x := range got.all {
			moved = max(moved, math.Abs(x-was.all[i])/max(math.Abs(x), math.Abs(was.all[i]), 1e-9))
		}
		seen := false
		for _, name := range onlySeen {
			seen = seen || name == key
		}
		if seen != (moved == 0) || !seen && moved < 1e-4 {
			t.Errorf("%s = %g %s moves nothing by more than %.2g of itself; only seen: %t", f.Path, v, f.Unit, moved, seen)
		}
		if !strings.HasPrefix(f.Path, "wheel.") {
			continue
		}
		for _, w := range []physics.Wheel{physics.FrontLeft, physics.RearRight} { // the other circuit's
			for i, x := range got.wheels[w][:4] {
				if math.Abs(x-was.wheels[w][i]) > 1 {
					t.Errorf("%s = %g %s: force %d at %v is %.2f N, was %.2f", f.Path, v, f.Unit, i, w, x, was.wheels[w][i])
				}
			}
		}
	}
	if tried < 65 {
		t.Errorf("only %d numbers were tried", tried)
	}
}
