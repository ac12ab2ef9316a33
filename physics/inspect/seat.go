package inspect

import "evenwear/physics"

const (
	pressForce = 150   // [N] the known force of travel, pumping and assist checks
	lightForce = 12.5  // [N] a foot that only rests on the pedal
	holdForce  = 556.0 // [N] 125 lbf, 49 CFR 570.55(b)(1)
	holdMillis = 10000 // [ms] the same
	pumps      = 3     // strokes with the engine running
	emptying   = 6     // strokes with the engine off that leave no assistance worth naming
	parked     = 60000 // [ms] engine off before the reserve is tried
	keptMillis = 30000 // [ms] engine off on a pressed pedal

	bracedForce = 100.0 // [N] without assistance: 0.8 MPa, which a hand can still overcome at the tyre
)

// rule is a rule held beside the pedal: 1 mm divisions, two readings of half a
// division each and a foot that keeps its force to about 3 % (a hand gauge on
// the pedal); Bias from a rule that does not stand square. Assumed.
func rule(lo, hi float64) Meter {
	return Meter{
		Instrument: "floor_rule", Unit: "mm", PerUnit: physics.Millimetre,
		Resolution: 1, Division: 1, Sigma: 0.8, Bias: 0.3, Slip: DefaultSlip, Lo: lo, Hi: hi,
	}
}

func seatChecks() []Check {
	return []Check{
		{
			ID: "pedal_travel", Station: Seat, Minutes: 2, Meter: rule(0, 160),
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				p, err := w.press()
				return p.travel, err
			},
		},
		{
			ID: "pedal_feel", Station: Seat, Minutes: 1,
			Meter: Meter{
				// Movement while a light force doubles, where gas gives way most: 13 mm
				// when new, as much again for each 2 cm³ of air. The cuts and what a
				// foot tells apart are assumed.
				Instrument: "foot", Unit: "word", PerUnit: physics.Millimetre, Resolution: 1, Division: 1,
				Sigma: 2, Bias: 1.5, Slip: DefaultSlip, Lo: 0, Hi: 100,
				Words: []string{"firm", "springy", "soft"}, Cuts: []float64{20, 36},
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				p, err := w.press()
				return p.light, err
			},
		},
		{
			ID: "hold_sink", Station: Seat, Minutes: 1, Meter: rule(0, 100),
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				h, err := w.hold()
				return h.sunk, err
			},
		},
		{
			ID: "pump_running", Station: Seat, Minutes: 1, Meter: rule(-10, 100),
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				return w.cache.pumped.get(func() (float64, error) {
					f := w.foot(true)
					first := f.stroke(pressForce)
					last := first
					for range pumps - 1 {
						last = f.stroke(pressForce)
					}
					return first - last, f.err
				})
			},
		},
		{
			ID: "pump_off", Station: Seat, Minutes: 1, Meter: rule(-10, 100),
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				e, err := w.empty()
				return e.first - e.last, err
			},
		},
		{
			ID: "assist", Station: Seat, Minutes: 1, Meter: rule(-10, 100),
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				e, err := w.empty()
				if err != nil {
					return 0, err
				}
				return w.cache.assisted.get(func() (float64, error) {
					f := w.foot(false)
					f.s = e.state
					f.to(pressForce, 400)
					f.rest(1000, long)
					before := f.travel()
					f.engine = true
					f.rest(10000, long)
					return f.travel() - before, f.err
				})
			},
		},
		{
			ID: "assist_reserve", Station: Seat, Minutes: 2, Meter: rule(0, 160),
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				return w.cache.reserve.get(func() (float64, error) {
					f := w.foot(false)
					f.rest(parked, long)
					f.to(pressForce, 400)
					f.rest(1000, long)
					return f.travel(), f.err
				})
			},
		},
		{
			ID: "warning_lamp", Station: Seat, Minutes: 0.2,
			Meter: Meter{
				// The key turned, then the engine started. A float switch at the MIN mark;
				// Sigma is its play. Assumed. No level is as high as the first cut: below
				// it stands a lamp that not even the key lights.
				Instrument: "lamp", Unit: "word", PerUnit: 0.01, Resolution: 1, Division: 1,
				Sigma: 2, Bias: 2, Slip: LookSlip, Lo: deadLamp, Hi: 50,
				Words: []string{"dead", "dark", "lit"}, Cuts: []float64{deadLamp / 2, 0},
			},
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				if w.Model.LampTest() < 0.5 {
					return deadLamp * 0.01, nil
				}
				low := w.Model.Condition().FloatHigh / w.Model.Spec().Reservoir.MinToMax
				return -w.Model.Level(&w.Rest) - low, nil
			},
		},
		{
			// Pressed with the hand until something pushes back.
			ID: "free_travel", Station: Seat, Minutes: 1, Meter: rule(0, 160),
			Measure: func(w *World, _ physics.Wheel) (float64, error) { return w.cache.free.get(w.freeTravel) },
		},
		{
			// Pressed with the engine running, the engine stopped, the foot kept: vacuum
			// that is lost under the foot lets the pedal rise.
			ID: "assist_kept", Station: Seat, Minutes: 1, Meter: rule(-60, 100),
			Measure: func(w *World, _ physics.Wheel) (float64, error) {
				return w.cache.risen.get(func() (float64, error) {
					f := w.foot(true)
					f.to(pressForce, 400)
					f.rest(1000, long)
					before := f.travel()
					f.engine = false
					f.rest(keptMillis, long)
					return before - f.travel(), f.err
				})
			},
		},
	}
}

// deadLamp is what a lamp without light counts as [%]; a level twice as far above
// MIN as MAX would run over the brim.
const deadLamp = -400.0

const (
	handMost  = 60.0   // [N] a hand that meets nothing gives up
	handStep  = 0.5    // [N] by which it presses on
	handFeels = 0.05e6 // [Pa] that a hand feels push back: 4 N of it; assumed
)

// freeTravel is the pedal's travel [m] until a chamber pushes back: the rod's
// play, the ports, and what the pads' clearance takes.
func (w *World) freeTravel() (float64, error) {
	f := w.foot(true)
	most := func() float64 { return max(f.s.Master.Pressure[0], f.s.Master.Pressure[1]) }
	t, p := 0.0, 0.0
	for force := handStep; force <= handMost && f.err == nil; force += handStep {
		f.to(force, short)
		f.rest(1000, long)
		at, now := f.travel(), most()
		if now >= handFeels {
			return t + float64((at-t)*(handFeels-p)/(now-p)), f.err
		}
		t, p = at, now
	}
	return t, f.err
}

// pressed is one slow press to the known force.
type pressed struct {
	light  float64 // [m] moved while lightForce doubled
	travel float64 // [m] at pressForce
}

func (w *World) press() (pressed, error) {
	return w.cache.press.get(func() (pressed, error) {
		var p pressed
		f := w.foot(true)
		f.to(lightForce, 200)
		f.rest(1000, long)
		p.light = f.travel()
		f.to(2*lightForce, 200)
		f.rest(1000, long)
		p.light = f.travel() - p.light
		f.to(pressForce, 300)
		f.rest(1000, long)
		p.travel = f.travel()
		return p, f.err
	})
}

// held is ten seconds under a heavy foot.
type held struct {
	sunk    float64                    // [m] after the first second
	through [physics.NumWheels]float64 // [m³/m²] pushed through each square metre of a hole at each wheel
	peak    [physics.NumWheels]float64 // [Pa] greatest pressure
}

func (w *World) hold() (held, error) {
	return w.cache.held.get(func() (held, error) {
		var h held
		f := w.foot(true)
		f.each = func(s *physics.State, seconds float64) {
			for i := range h.through {
				h.through[i] += float64(w.weep(s, physics.Wheel(i)) * seconds)
				h.peak[i] = max(h.peak[i], s.Pressure[i])
			}
		}
		f.to(holdForce, 400)
		f.rest(1000, long)
		h.sunk = f.travel()
		f.rest(holdMillis, long)
		h.sunk = f.travel() - h.sunk
		return h, f.err
	})
}

// spent is the booster emptied by pumping with the engine off.
type spent struct {
	first, last float64 // [m] travel of the first and the last stroke
	state       physics.State
}

func (w *World) empty() (spent, error) {
	return w.cache.spent.get(func() (spent, error) {
		var e spent
		f := w.foot(false)
		e.first = f.stroke(pressForce)
		for range emptying - 1 {
			e.last = f.stroke(pressForce)
		}
		e.state = f.s
		return e, f.err
	})
}
