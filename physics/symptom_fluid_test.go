package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// everywhere puts the same condition on all four wheels of a car.
func everywhere(c physics.WheelCondition, car physics.Condition) physics.Condition {
	for w := range car.Wheels {
		car.Wheels[w] = c
	}
	return car
}

// TestPistonBootTorn: under a torn dust boot a piston goes from free to rubbing within
// months, both pads alike, and two spans of months make what one long one does.
func TestPistonBootTorn(t *testing.T) {
	for name, c := range map[string]physics.WheelCondition{"rust": {SealRusting: 100}, "oil": {SealSwelling: 900}} {
		last := -1.0
		for months := 0.0; months <= 6; months += 2 {
			cond, parts := at(physics.FrontLeft, c), at(physics.FrontLeft, c)
			cond.Age(months)
			for range 8 {
				parts.Age(months / 8)
			}
			a, b := &cond.Wheels[physics.FrontLeft], &parts.Wheels[physics.FrontLeft]
			if math.Abs(a.SealFriction-b.SealFriction) > 1e-9 || math.Abs(a.SealRate-b.SealRate) > 1e-5 || a.PinFriction != [2]float64{} {
				t.Errorf("%s, %.0f months: %.9g N at once, %.9g in eight parts", name, months, a.SealFriction, b.SealFriction)
			}
			_, free, _ := rubbed(t, cond)
			f := &free.Forces[physics.FrontLeft]
			t.Logf("%s, %.0f months: %+.0f N, rubs inner %.0f outer %.0f N", name, months, a.SealFriction, f.Inner(), f.Outer())
			if f.Inner() <= last+10 && months > 0 || math.Abs(f.Inner()-f.Outer()) > 0.2*f.Inner()+50 || free.Forces[physics.FrontRight].Inner() > 5 {
				t.Errorf("%s, %.0f months: rubs inner %.1f (before: %.1f) outer %.1f N", name, months, f.Inner(), last, f.Outer())
			}
			last = f.Inner()
		}
	}
}

// TestMineralOil: a little mineral oil in the fluid swells all rubber within months:
// every wheel rubs, cold, and as the fluid warms the ports stay covered and pressure
// grows. Clean fluid does nothing of it however long, a trace does less.
func TestMineralOil(t *testing.T) {
	drags := func(share, months float64) (cold, hot float64, swollen float64) {
		cond := physics.Condition{MineralOil: share}
		cond.Age(months)
		m, s := model(t, physicstest.Hatchback(), cond)
		s = press(t, m, s, physics.Input{Foot: 150, Engine: true}, 1, 20)
		s = run(t, m, s, physics.Input{Engine: true}, 2, 20)
		cold = math.Inf(1)
		for w := range s.Forces {
			cold = min(cold, s.Forces[w].Inner())
		}
		for w := range s.Heat {
			s.Heat[w].CoolTo(60)
		}
		s = run(t, m, s, physics.Input{Engine: true}, 2, 20)
		return cold, s.Pressure[physics.FrontLeft], cond.RubberSwollen
	}
	cold, hot, none := drags(0, 24)
	if cold > 60 || hot > 0.02*mpa || none != 0 {
		t.Errorf("clean: rubs with %.1f N, %.3f MPa when warm", cold, hot/mpa)
	}
	day, _, _ := drags(0.1, 0.03)
	trace, _, _ := drags(0.01, 3)
	full, pressure, swollen := drags(0.1, 3)
	t.Logf("after a day %.0f N, a trace %.0f N, three months %.0f N and %.2f MPa when warm, swollen %.2f", day, trace, full, pressure/mpa, swollen)
	if day > 150 || full < 300 || pressure < 0.3*mpa || swollen < 0.9 || !(trace >= cold && trace < full/2) {
		t.Errorf("after a day %.1f N, a trace %.1f N, three months %.1f N, %.3f MPa, swollen %.3f", day, trace, full, pressure/mpa, swollen)
	}
	once, twice := physics.Condition{MineralOil: 0.04}, physics.Condition{MineralOil: 0.04}
	once.Age(2)
	twice.Age(1.5)
	twice.Age(0.5)
	if math.Abs(once.RubberSwollen-twice.RubberSwollen) > 1e-12 || math.Abs(once.PortCover[1]-twice.PortCover[1]) > 1e-12 {
		t.Errorf("two spans swell %.12g, one %.12g", twice.RubberSwollen, once.RubberSwollen)
	}
	driven, err := physics.Drive(physicstest.Hatchback(), physics.Condition{MineralOil: 0.1}, physics.MixedDuty(), 3000)
	if err != nil || math.Abs(driven.RubberSwollen-swollen) > 1e-9 {
		t.Errorf("driven for three months it swells %.6f, standing %.6f: %v", driven.RubberSwollen, swollen, err)
	}
}

// TestLowGrade: fluid of the lowest grade boils lower, mixed in proportion between the
// two, and never raises a boiling point.
func TestLowGrade(t *testing.T) {
	boils := func(share, water float64) float64 {
		m, _ := model(t, physicstest.Hatchback(), physics.Condition{LowGrade: share, Water: water})
		return m.BoilingPoint()
	}
	for _, c := range []struct{ share, water, want float64 }{{0, 0, 240}, {1, 0, 205}, {0.5, 0, 222.5}, {1, 0.037, 140}, {0, 0.037, 160}} {
		if got := boils(c.share, c.water); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%.0f %% of it with %.1f %% of water boils at %.3f °C, want %.1f", 100*c.share, 100*c.water, got, c.want)
		}
	}
	low := physics.FluidSpec{DryBoil: 190, WetBoil: 130}
	if low.Mixed(0.7) != low {
		t.Error("a better fluid raised a poor one's boiling point")
	}
}

// TestBlockedVent: a cap that lets no air in draws on the ports as the level falls: the
// pads are drawn back and the pedal is longer, the more the lower the fluid, and a
// weeping joint draws air in. Filled up, the pedal is as new. A free vent does nothing.
func TestBlockedVent(t *testing.T) {
	pedal := func(wear, shut, poured float64) (travel, above, pressure float64) {
		cond := everywhere(worn(physics.WheelCondition{}, wear), physics.Condition{VentShut: shut, Fluid: poured})
		m, s := model(t, physicstest.Hatchback(), cond)
		above, pressure = m.Above(&s), s.Pressure[physics.FrontLeft]
		s = press(t, m, s, physics.Input{Foot: 150, Engine: true}, 1, 20)
		return m.PedalTravel(&s), above, pressure
	}
	last, _, _ := pedal(0, 1, 0)
	free, none, _ := pedal(2*mm, 0, 0)
	if none != 0 {
		t.Errorf("a cap that breathes holds %.0f Pa", none)
	}
	for _, wear := range []float64{0.4 * mm, 0.7 * mm, 1 * mm} {
		x, p, at := pedal(wear, 1, 0)
		t.Logf("worn %.1f mm: %.1f kPa, pedal %.2f mm", wear/mm, p/1e3, x/mm)
		if !(x > last+0.3*mm) || p > -5e3 || math.Abs(at-p) > 300 {
			t.Errorf("worn %.1f mm: pedal %.3f mm after %.3f, %.1f kPa above, %.1f at the wheel", wear/mm, x/mm, last/mm, p/1e3, at/1e3)
		}
		last = x
	}
	_, low, _ := pedal(2*mm, 1, 0)
	m, s := model(t, physicstest.Hatchback(), everywhere(worn(physics.WheelCondition{}, 2*mm), physics.Condition{}))
	full, p, _ := pedal(2*mm, 1, (1-m.Level(&s))*m.Spec().Reservoir.MinToMax)
	if math.Abs(low+30e3) > 1 || math.Abs(full-free) > 0.3*mm || math.Abs(p) > 3e3 {
		t.Errorf("low: %.1f kPa; filled up the pedal goes %.3f mm, with a free vent %.3f, at %.1f kPa", low/1e3, full/mm, free/mm, p/1e3)
	}

	weeps := everywhere(worn(physics.WheelCondition{}, 2*mm), physics.Condition{VentShut: 1})
	weeps.Wheels[physics.RearLeft].Leak = 1e-10
	m, s = model(t, physicstest.Hatchback(), weeps)
	from := s.Air[physics.RearLeft]
	s = run(t, m, s, physics.Input{Engine: true}, 600, 1000)
	weeps.VentShut = 0
	n, o := model(t, physicstest.Hatchback(), weeps)
	o = run(t, n, o, physics.Input{Engine: true}, 600, 1000)
	if in := s.Air[physics.RearLeft] - from; in < 0.05*cm3 || o.Air[physics.RearLeft] > 1e-12 {
		t.Errorf("a weeping joint draws %.4f cm³ of air in ten minutes, with a free vent %.4f", in/cm3, o.Air[physics.RearLeft]/cm3)
	}
}

// TestBlockedVentPresses: warm fluid that cannot rise against free air presses on the
// pistons; when it has cooled, so has it.
func TestBlockedVentPresses(t *testing.T) {
	warm := func(shut float64) (hot, cold float64) {
		m, s := model(t, physicstest.Hatchback(), physics.Condition{VentShut: shut})
		for w := range s.Heat {
			s.Heat[w].CoolTo(80)
		}
		s = run(t, m, s, physics.Input{Engine: true}, 60, 1000)
		hot = s.Pressure[physics.FrontLeft]
		for w := range s.Heat {
			s.Heat[w].CoolTo(20)
		}
		s = run(t, m, s, physics.Input{Engine: true}, 60, 1000)
		return hot, s.Pressure[physics.FrontLeft]
	}
	hot, cold := warm(1)
	free, _ := warm(0)
	if math.Abs(hot-30e3) > 300 || math.Abs(free) > 300 || math.Abs(cold) > 2e3 {
		t.Errorf("warm %.1f kPa, cooled %.1f; with a free vent %.1f", hot/1e3, cold/1e3, free/1e3)
	}
}

// TestChamberAir: air in a chamber of the master cylinder lengthens the pedal as air at
// a wheel does, in that circuit, and raises no level.
func TestChamberAir(t *testing.T) {
	sound, soft := pump(t, physics.Condition{}, true, 1), pump(t, physics.Condition{ChamberAir: [2]float64{2 * cm3, 0}}, true, 3)
	t.Logf("sound %.2f, air %.2f mm", sound, soft)
	if soft[0] < sound[0]+10 {
		t.Errorf("2 cm³ in the primary chamber lengthen the pedal by %.1f mm only", soft[0]-sound[0])
	}
	m, s := model(t, physicstest.Hatchback(), physics.Condition{ChamberAir: [2]float64{0, 2 * cm3}})
	n, o := model(t, physicstest.Hatchback(), physics.Condition{})
	if l := m.Level(&s); math.Abs(l-n.Level(&o)) > 1e-9 || math.Abs(s.Master.Air[1]-2*cm3) > 1e-12 {
		t.Errorf("level %.6f, air %.3f cm³", l, s.Master.Air[1]/cm3)
	}
}

// TestTornDiaphragm: a torn diaphragm lets the assistance down while the foot is on the
// pedal, engine on or off, and lets it come back when the foot is off; the check valve's
// leak needs the engine off.
func TestTornDiaphragm(t *testing.T) {
	held := func(cond physics.Condition, engine bool) (pressure, after float64) {
		m, s := model(t, physicstest.Hatchback(), cond)
		s = press(t, m, s, physics.Input{Foot: 200, Engine: engine}, 10, 20)
		pressure = s.Pressure[physics.FrontLeft]
		s = run(t, m, s, physics.Input{Engine: true}, 5, 20)
		return pressure, s.Vacuum
	}
	sound, full := held(physics.Condition{}, true)
	torn, back := held(physics.Condition{DiaphragmLeak: 2}, true)
	off, _ := held(physics.Condition{DiaphragmLeak: 2}, false)
	valve, _ := held(physics.Condition{VacuumLeak: 2}, true)
	t.Logf("200 N held: sound %.2f, torn %.2f, engine off %.2f MPa", sound/mpa, torn/mpa, off/mpa)
	if !(torn < 0.8*sound && off < 0.5*torn) || math.Abs(back-full) > 10 || math.Abs(valve-sound) > 1 {
		t.Errorf("sound %.3f, torn %.3f, engine off %.3f, check valve %.3f MPa; vacuum comes back to %.0f of %.0f Pa", sound/mpa, torn/mpa, off/mpa, valve/mpa, back, full)
	}
}

// TestLamp: the warning lamp is lit by a level at MIN and by a lost circuit under the
// foot; a sticking float, a dead lamp and a sound car leave it dark.
func TestLamp(t *testing.T) {
	lit := func(cond physics.Condition, foot float64) float64 {
		m, s := model(t, physicstest.Hatchback(), cond)
		s = press(t, m, s, physics.Input{Foot: foot, Engine: true}, 2, 20)
		return m.Lamp(&s)
	}
	lost := at(physics.FrontLeft, physics.WheelCondition{Leak: 5e-6})
	for name, c := range map[string]struct {
		cond physics.Condition
		foot float64
		want float64
	}{
		"sound": {want: 0}, "sound, hard": {foot: 500, want: 0}, "low": {cond: physics.Condition{Fluid: -130 * cm3}, want: 1},
		"above MIN": {cond: physics.Condition{Fluid: -110 * cm3}, want: 0}, "float": {cond: physics.Condition{Fluid: -130 * cm3, FloatHigh: 20 * cm3}, want: 0},
		"float, lower": {cond: physics.Condition{Fluid: -150 * cm3, FloatHigh: 20 * cm3}, want: 1}, "dead": {cond: physics.Condition{Fluid: -130 * cm3, LampLost: 1}, want: 0},
		"circuit, foot off": {cond: lost, want: 0}, "circuit": {cond: lost, foot: 300, want: 1},
	} {
		if got := lit(c.cond, c.foot); got != c.want {
			t.Errorf("%s: the lamp gives %g, want %g", name, got, c.want)
		}
	}
	if m, _ := model(t, physicstest.Hatchback(), physics.Condition{LampLost: 1}); m.LampTest() != 0 {
		t.Error("a dead lamp glows when the key is turned")
	}
}

// TestLostFront: on a car split front and rear the rear valve opens fully when the
// front's pressure is lost, unless it is stuck; with both it reduces.
func TestLostFront(t *testing.T) {
	rear := func(leak, stuck float64) float64 {
		spec := physicstest.Hatchback()
		spec.Circuit = [physics.NumWheels]int{0, 0, 1, 1}
		var cond physics.Condition
		cond.Wheels[physics.FrontLeft].Leak, cond.Wheels[physics.RearRight].ValveStuck = leak, stuck
		m, s := model(t, spec, cond)
		s = press(t, m, s, physics.Input{Foot: 300, Engine: true}, 3, 20)
		return s.Pressure[physics.RearRight] / s.Master.Pressure[1]
	}
	both, lost, shut := rear(0, 0), rear(5e-6, 0), rear(5e-6, -0.5)
	if both > 0.65 || math.Abs(lost-1) > 0.05 || shut > both {
		t.Errorf("rear pressure over its chamber's: %.3f with the front, %.3f without, %.3f stuck", both, lost, shut)
	}
}

// TestBlockedVentAgrees: a shut cap that warms and cools comes to the same pressures in
// steps of 20 ms and of a second, to 300 Pa, and level and pedal part no further than
// with a free vent, where the pistons creep by a hair more in long steps.
func TestBlockedVentAgrees(t *testing.T) {
	through := func(shut float64, ms int64) (states []physics.State, travel float64) {
		cond := everywhere(worn(physics.WheelCondition{}, 0.5*mm), physics.Condition{VentShut: shut})
		cond.Wheels[physics.RearLeft].Air = 1 * cm3
		m, s := model(t, physicstest.Hatchback(), cond)
		for _, celsius := range []float64{70, 20, 45} {
			for from, n := s.Heat[0].Fluid, 1.0; n <= 60; n++ { // a kelvin a second: fluid follows
				for w := range s.Heat {
					s.Heat[w].CoolTo(from + (celsius-from)*n/60)
				}
				s = run(t, m, s, physics.Input{Engine: true}, 1, ms)
			}
			s = run(t, m, s, physics.Input{Engine: true}, 5, ms)
			states = append(states, s)
		}
		s = press(t, m, s, physics.Input{Foot: 150, Engine: true}, 1, 20)
		return states, m.PedalTravel(&s)
	}
	apart := func(shut float64) (pressure, standing, pedal float64) {
		fine, x := through(shut, 20)
		coarse, y := through(shut, 1000)
		for i := range fine {
			for w := range fine[i].Pressure {
				pressure = max(pressure, math.Abs(fine[i].Pressure[w]-coarse[i].Pressure[w]))
			}
			standing = max(standing, math.Abs(fine[i].Standing-coarse[i].Standing))
		}
		if shut > 0 && (fine[0].Pressure[0] < 5e3 || fine[1].Pressure[0] > -1e4) {
			t.Errorf("%.1f kPa warm, %.1f cold", fine[0].Pressure[0]/1e3, fine[1].Pressure[0]/1e3)
		}
		return pressure, standing, math.Abs(x - y)
	}
	_, level, pedal := apart(0)
	pressure, levelShut, pedalShut := apart(1)
	t.Logf("free: %.4f cm³, %.3f mm; shut: %.0f Pa, %.4f cm³, %.3f mm", level/cm3, pedal/mm, pressure, levelShut/cm3, pedalShut/mm)
	if pressure > 300 || levelShut > level+0.02*cm3 || pedalShut > pedal+0.2*mm {
		t.Errorf("free: %.4f cm³, %.3f mm; shut: %.0f Pa, %.4f cm³, %.3f mm", level/cm3, pedal/mm, pressure, levelShut/cm3, pedalShut/mm)
	}
}
