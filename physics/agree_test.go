package physics_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// TestStepsAgree: steps of 1 ms, 20 ms and 1 s tell one story of every kind of
// fault within a third of a meter division: 1 mm of pedal, 0.1 MPa, 5 cm³ of
// level. A hold of 20 s, a release and a second press.
func TestStepsAgree(t *testing.T) {
	cases := map[string]physics.Condition{
		"sound": {}, "no vacuum": {BoosterLoss: 1}, "bypass": {CupBypass: [2]float64{1e-14, 0}}, "covered": {PortCover: [2]float64{2 * mm, 0}},
		"air":  at(physics.FrontRight, physics.WheelCondition{Air: 2 * cm3}),
		"leak": at(physics.RearLeft, physics.WheelCondition{Leak: 1e-9}),
		"hose": at(physics.FrontLeft, physics.WheelCondition{HoseHold: 0.8 * mpa, HoseReturn: 300}),
		"pins": at(physics.FrontLeft, physics.WheelCondition{PinFriction: [2]float64{300, 300}}),
		"rust": at(physics.FrontLeft, physics.WheelCondition{SealFriction: 2380, SealRate: 19.1e6}),
	}
	type sight struct{ travel, front, rear, level float64 }
	see := func(m *physics.Model, s *physics.State) sight {
		return sight{m.PedalTravel(s), s.Pressure[physics.FrontLeft], s.Pressure[physics.RearLeft], s.Standing}
	}
	for name, cond := range cases {
		look := func(ms int64) (held, free, again sight) {
			m, s := model(t, physicstest.Hatchback(), cond)
			s = run(t, m, s, physics.Input{Foot: 150}, 20, ms)
			held = see(m, &s)
			s = run(t, m, s, physics.Input{}, 4, ms)
			free = see(m, &s)
			s = run(t, m, s, physics.Input{Foot: 250}, 3, ms)
			return held, free, see(m, &s)
		}
		h1, f1, a1 := look(1)
		for _, ms := range []int64{20, 1000} {
			h, f, a := look(ms)
			for i, pair := range [][2]sight{{h, h1}, {f, f1}, {a, a1}} {
				g, w := pair[0], pair[1]
				when := [...]string{"held", "released", "pressed again"}[i]
				if math.Abs(g.travel-w.travel) > mm/3 || math.Abs(g.front-w.front) > 0.1*mpa/3 || math.Abs(g.rear-w.rear) > 0.1*mpa/3 || math.Abs(g.level-w.level) > 5*cm3/3 {
					t.Errorf("%s, %s, steps of %d ms: pedal %.2f mm, %.3f and %.3f MPa, level %.2f cm³; steps of 1 ms: %.2f, %.3f, %.3f, %.2f",
						name, when, ms, g.travel/mm, g.front/mpa, g.rear/mpa, g.level/cm3, w.travel/mm, w.front/mpa, w.rear/mpa, w.level/cm3)
				}
			}
		}
	}
}

// TestStepRefuses: what no driver can do is refused in a sentence, and the state
// comes back as it was.
func TestStepRefuses(t *testing.T) {
	m, s := model(t, physicstest.Hatchback(), physics.Condition{})
	s = run(t, m, s, physics.Input{Foot: 80}, 0.1, 20)
	bleed := physics.Input{}
	bleed.Bleed[physics.RearLeft] = -1
	rows := []struct {
		in   physics.Input
		ms   int64
		says string
	}{
		{physics.Input{Foot: -1}, 1, "pedal force in N is -1, want 0 to 5000"},
		{physics.Input{Foot: 5001}, 1, "pedal force"},
		{physics.Input{Foot: math.NaN()}, 1, "pedal force in N is NaN"},
		{physics.Input{Foot: math.Inf(1)}, 1, "pedal force in N is +Inf"},
		{physics.Input{}, 0, "length of the step in ms is 0, want 1 to 1000"},
		{physics.Input{}, 5000, "length of the step"},
		{physics.Input{Ambient: math.NaN()}, 1, "change of the air"},
		{bleed, 1, "bleed screw rear_left"},
	}
	for _, r := range rows {
		next, err := m.Step(s, r.in, r.ms)
		var in *physics.InputError
		if !errors.As(err, &in) || !strings.Contains(err.Error(), r.says) {
			t.Errorf("%+v: %v, want %q", r.in, err, r.says)
		}
		if next != s {
			t.Errorf("%+v: the state was changed", r.in)
		}
	}
}

// TestNewRefuses: a car that cannot be built is refused in a sentence.
func TestNewRefuses(t *testing.T) {
	rows := []struct {
		mend func(s *physics.Spec, c *physics.Condition)
		says string
	}{
		{func(s *physics.Spec, _ *physics.Condition) { s.Front.PistonDiameter = 0.3 }, "front.piston_diameter is 0.3: the piston is wider than the disc, want less than front.disc_diameter, 0.256"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Rear.PistonDiameter = 0.21 }, "rear.piston_diameter is 0.21: the piston reaches past the wheel's axis, want less than twice rear.effective_radius, 0.202"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Master.Bore = 0 }, "master.bore is 0, want more than 0 and at most 0.2"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Front.Gap[1] = -1e-4 }, "front.outer_gap is -0.0001, want 0 to 0.02"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Rear.DiscMinimum = 0.01 }, "rear.disc_minimum is 0.01: the disc is below its minimum when new, want at most rear.disc_thickness, 0.009"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Front.EffectiveRadius = 0.13 }, "front.effective_radius is 0.13: the pad stands outside the disc, want less than half of front.disc_diameter, 0.128"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Front.EffectiveRadius = 0.06 }, "front.effective_radius is 0.06: the pad would rub on the wheel's axis, want more than a quarter of front.disc_diameter, 0.064"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Front.DiscDiameter = 0.7 }, "front.disc_diameter is 0.7: the disc does not fit into the wheel, want less than twice tyre_radius, 0.6"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Rear.PadOffset = 0.06 }, "rear.pad_offset is 0.06: the middle of the pad's half stands outside the pins, want less than rear.pin_offset, 0.055"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Front.Tongue = 0.012 }, "front.tongue is 0.012: the tongue touches the disc when the pad is new, want less than front.lining_new, 0.011"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Front.LiningArea = 0.04 }, "front.lining_area is 0.04: the lining is larger than the face it rubs, want less than the ring that front.disc_diameter and front.effective_radius leave, 0.03"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Reservoir.MinToMax = -1e-5 }, "reservoir.min_to_max is -1e-05, want more than 0"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Reservoir.Port[1] = 1e-4 }, "reservoir.secondary_port is 0.0001: the port is bare at MIN, want at most reservoir.at_min, 9e-05"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Fluid.WetBoil = 250 }, "fluid.wet_boil is 250: water raises the boiling point, want at most fluid.dry_boil, 240"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Body.SlideAdhesion = 1 }, "slide_adhesion is 1: a sliding tyre holds better than a rolling one, want at most peak_adhesion, 0.95"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Body.CentreHeight = 2 }, "centre_height is 2: the car tips over its front wheels in a hard stop, want less than wheelbase, front_load and peak_adhesion allow, 1.07"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Rear.DiscHeat = math.NaN() }, "rear.disc_heat is NaN"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Front.WearRate = math.Inf(1) }, "front.lining_wear is +Inf"},
		{func(_ *physics.Spec, c *physics.Condition) { c.Wheels[3].PlateProud = [2]float64{1e-3, 1e-3} }, "rear_right.plate_proud is 0.002: the pads are thicker than the caliper opens, want at most 0.00124"},
		{func(_ *physics.Spec, c *physics.Condition) { c.Wheels[0].ValveStuck = 1 }, "front_left.valve_stuck is 1: no reducing valve serves this wheel, want 0"},
		{func(_ *physics.Spec, c *physics.Condition) { c.Wheels[0].BondLost[1] = math.NaN() }, "front_left.bond_lost is NaN, want 0 to 0.95"},
		{func(_ *physics.Spec, c *physics.Condition) { c.MineralOil = -0.1 }, "condition.mineral_oil is -0.1, want 0 to 1"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Rear.K1 = -1 }, "rear.pad_rate is -1, want more than 0"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Master.Bore = math.NaN() }, "master.bore is NaN"},
		{func(s *physics.Spec, _ *physics.Condition) { s.Circuit[2] = 3 }, "circuit.rear_left is 3, want 0 to 1"},
		{func(_ *physics.Spec, c *physics.Condition) { c.Wheels[1].Wear[0][1] = 0.02 }, "front_right.wear is 0.02, want 0 to 0.011"},
		{func(_ *physics.Spec, c *physics.Condition) { c.Wheels[1].PinFriction[0] = -20 }, "front_right.pin_friction is -20"},
		{func(_ *physics.Spec, c *physics.Condition) { c.Water = math.Inf(1) }, "condition.water is +Inf, want 0 to 0.2"},
	}
	for _, r := range rows {
		spec, cond := physicstest.Hatchback(), physics.Condition{}
		r.mend(spec, &cond)
		_, err := physics.New(spec, cond)
		var e *physics.SpecError
		if !errors.As(err, &e) || !strings.Contains(err.Error(), r.says) {
			t.Errorf("%v, want %q", err, r.says)
		}
	}
}

// TestRestIsBedded: halving the pressure step of the press every run starts from
// changes no force by more than 5 N and no travel by more than 3 µm.
func TestRestIsBedded(t *testing.T) {
	spec := physicstest.Hatchback()
	for _, cond := range []physics.WheelCondition{{}, {PinFriction: [2]float64{200, 200}}, {SealFriction: 2380, SealRate: 19.1e6}} {
		got, err := physics.Released(&spec.Front, &cond, "front_left")
		if err != nil {
			t.Fatal(err)
		}
		c := physics.NewCorner(&spec.Front, &cond, "front_left")
		press := func(steps int) (s physics.CornerState, f physics.CornerForces) {
			for n := 1; n <= 2*steps; n++ {
				if s, f, err = c.Settle(s, &physics.CornerLoad{Pressure: 8 * mpa / float64(steps) * float64(min(n, 2*steps-n))}); err != nil {
					t.Fatal(err)
				}
			}
			return s, f
		}
		once, f1 := press(16)
		twice, f2 := press(32)
		if once != got {
			t.Errorf("%+v: a press in sixteen steps ends at %+v, Released at %+v", cond, once, got)
		}
		if d := math.Abs(once.X - twice.X); d > 3e-6 {
			t.Errorf("%+v: halving the step moves the piston %.2f µm", cond, d*1e6)
		}
		if d := math.Abs(f1.Outer() - f2.Outer()); d > 5 {
			t.Errorf("%+v: halving the step changes the outer pad by %.1f N", cond, d)
		}
	}
}
