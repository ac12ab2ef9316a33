package play

import (
	"math"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring"
)

// DebriefPressure is the line pressure of the debrief's drawing [Pa]: a gentle stop.
const DebriefPressure = 1.28 * physics.Megapascal

// faults are what was put into the car, each beside the same car honestly
// driven as far; a sound car has one view that says so.
func (s *Session) faults(found *scoring.Outlook) ([]FaultView, error) {
	sound, err := buildWorld(s.job.Car, s.job.Driven, nil)
	if err != nil {
		return nil, err
	}
	if s.job.Sound() {
		f, err := s.fault(sound, found, found, scenarios.Place(physics.FrontLeft.String()))
		f.Kind = "sound"
		f.Labels = s.soundLabels(&f, found)
		return []FaultView{f}, err
	}
	cond := sound.Model.Condition()
	healthy, err := scoring.Look(&s.job.Car.Spec, cond, s.job.Driven.Duty())
	if err != nil {
		return nil, err
	}
	var all []FaultView
	for _, x := range s.job.Faults {
		f, err := s.fault(sound, found, &healthy, x.Place)
		if err != nil {
			return nil, err
		}
		f.Cause, f.Place = x.Cause.Name, s.sayWhere(x.Cause.Where, string(x.Place))
		if err := s.vesselOf(&f, &x); err != nil {
			return nil, err
		}
		all = append(all, f)
	}
	return all, nil
}

// fault is one place of the car as it came beside the same place of the sound car.
func (s *Session) fault(sound *inspect.World, found, healthy *scoring.Outlook, at scenarios.Place) (FaultView, error) {
	w, one := wheelShown(at)
	spec := s.job.Car.Spec.Corner(w)
	f := FaultView{
		Kind: "caliper", Wheel: w.String(), Place: s.sayPlace(string(at)), Vented: spec.DiscVented,
		Disc: spec.DiscDiameter * perMm, Piston: spec.PistonDiameter * perMm, PinAt: spec.PinOffset * perMm, PadAt: spec.PadOffset * perMm,
		Level: [2]float64{healthy.Level / 100, found.Level / 100},
	}
	if !one {
		f.Kind = "fluid"
	}
	c := s.found.Model.Condition()
	f.Air, f.Leak = c.Wheels[w].Air*1e6, c.Wheels[w].Leak*1e6
	var on, off [2]CaliperView // healthy, faulty: pressed, let go again
	for i, m := range [2]*physics.Model{sound.Model, s.found.Model} {
		var err error
		if on[i], off[i], err = pressed(m, w); err != nil {
			return f, err
		}
	}
	f.Released = f.Air > 0 || dragOf(&off[1]) > dragOf(&off[0])+0.01 && (on[1].PistonStuck || !starved(&on))
	f.Healthy, f.Faulty = on[0], on[1]
	if f.Released {
		f.Healthy, f.Faulty = off[0], off[1]
	}
	f.Axial = 1
	for _, k := range [...]float64{80, 40, 20, 10} {
		if fits(&f.Healthy, k) && fits(&f.Faulty, k) {
			f.Axial = k
			break
		}
	}
	f.Labels = s.faultLabels(&f, on, off, &c.Wheels[w], found, healthy)
	return f, nil
}

// wheelShown is the wheel whose caliper shows what is wrong at a place: the left
// one of an axle; none where the whole car or a circuit is meant.
func wheelShown(at scenarios.Place) (w physics.Wheel, one bool) {
	switch at {
	case "front_axle":
		return physics.FrontLeft, true
	case "rear_axle":
		return physics.RearLeft, true
	}
	_, one = at.Wheel()
	return wheelOf(at), one
}

// starved tells that a pressed pad lacks, or has too much by, more than a sixth
// of what it has in the sound car. A caliper that brakes so wrongly is drawn
// pressed; one that only fails to let go, let go; and air has its size only
// without pressure.
func starved(on *[2]CaliperView) bool {
	for i := range 2 {
		sound := on[0].Half[i][0] + on[0].Half[i][1]
		if math.Abs(on[1].Half[i][0]+on[1].Half[i][1]-sound) > sound/6 {
			return true
		}
	}
	return false
}

// dragOf is what both pads press with [kN].
func dragOf(v *CaliperView) float64 {
	return v.Half[0][0] + v.Half[0][1] + v.Half[1][0] + v.Half[1][1]
}

// pressed takes a released caliper up to the drawing's pressure and back to none.
func pressed(m *physics.Model, w physics.Wheel) (on, off CaliperView, err error) {
	s, err := m.Rest()
	if err != nil {
		return on, off, err
	}
	const steps = 4
	for i := 1; i <= 2*steps; i++ {
		p := DebriefPressure * float64(min(i, 2*steps-i)) / steps
		s.Corners[w], s.Forces[w], err = m.Corner(w).Settle(s.Corners[w], &physics.CornerLoad{Pressure: p})
		if err != nil {
			return on, off, err
		}
		s.Pressure[w] = p
		if i == steps {
			on = caliper(m, &s, w)
		}
	}
	return on, caliper(m, &s, w), nil
}

// soundLabels are the figures of a sound car, of which none is to compare.
func (s *Session) soundLabels(f *FaultView, found *scoring.Outlook) []FaultLabel {
	v := &f.Faulty
	var args []any
	for i, pad := range [2]string{"inner", "outer"} {
		args = append(args, pad, fixed(min(v.Lining[i][0], v.Lining[i][1]), 1), pad+"_force", fixed(v.Half[i][0]+v.Half[i][1], 2))
	}
	return []FaultLabel{
		{Part: "inner_lining", Text: s.words.Say("fault.sound_linings", args...)},
		{Part: "force", Text: s.words.Say("fault.sound_forces", args...)},
		{Part: "level", Text: s.words.Say("fault.sound_level", "now", whole(found.Level))},
	}
}

// faultLabels say in words and figures what differs at the place, part by part.
func (s *Session) faultLabels(f *FaultView, on, off [2]CaliperView, c *physics.WheelCondition, found, healthy *scoring.Outlook) (all []FaultLabel) {
	add := func(part, id string, args ...any) {
		all = append(all, FaultLabel{Part: part, Text: s.words.Say(id, args...)})
	}
	// differ adds a figure that lies at least least apart from the sound car's.
	differ := func(part, id string, now, sound, least float64, digits int) {
		if math.Abs(now-sound) >= least {
			add(part, id, "now", fixed(now, digits), "sound", fixed(sound, digits))
		}
	}
	if f.Kind != "fluid" {
		for i, half := range [2]string{"upper", "lower"} {
			if state := on[1].Pins[i]; state != "free" {
				add(half+"_pin", "fault."+half+"_pin_"+state)
			}
		}
		if on[1].PistonStuck {
			add("piston", "fault.piston")
		}
		if f.Air > 0 {
			add("air", "fault.air", "now", fixed(f.Air, 1))
		}
		if f.Leak > 0 {
			add("joint", "fault.leak", "now", fixed(f.Leak*1e6, 0))
		}
		differ("disc", "fault.disc", on[1].DiscThickness, on[0].DiscThickness, 0.15, 1)
		differ("disc", "fault.runout", 1000*c.Runout, 0, 0.01, 2)
		differ("disc", "fault.variation", 1000*c.Thickness, 0, 0.005, 3)
		differ("joint", "fault.hose", c.HoseHold/physics.Megapascal, 0, 0.01, 2)
		all = append(all, s.moreLabels(wheelFigures(c))...)
		for i, pad := range [2]string{"inner", "outer"} {
			now, sound := on[1].Lining[i], on[0].Lining[i]
			if math.Abs(now[0]-now[1]) >= 0.3 {
				add(pad+"_lining", "fault.taper_"+pad, "upper", fixed(now[0], 1), "lower", fixed(now[1], 1), "sound", fixed(min(sound[0], sound[1]), 1))
				continue
			}
			differ(pad+"_lining", "fault.lining_"+pad, min(now[0], now[1]), min(sound[0], sound[1]), 0.1, 1)
		}
		forces := func(id string, v *[2]CaliperView, unit float64, digits int) {
			pad := func(c *CaliperView, i int) string { return fixed(unit*(c.Half[i][0]+c.Half[i][1]), digits) }
			add("force", id, "inner", pad(&v[1], 0), "outer", pad(&v[1], 1), "sound_inner", pad(&v[0], 0), "sound_outer", pad(&v[0], 1))
		}
		forces("fault.force", &on, 1, 2)
		if f.Released {
			forces("fault.drag", &off, 1000, 0)
		}
	}
	if f.Kind == "fluid" { // what the fluid went into
		cond := s.found.Model.Condition()
		all = append(all, s.moreLabels(carFigures(&cond))...)
		for i, axle := range [2]string{"front", "rear"} {
			differ("linings", "fault.linings_"+axle, thinnest(found, i), thinnest(healthy, i), 0.1, 1)
		}
	}
	differ("level", "fault.level", found.Level, healthy.Level, 3, 0)
	differ("pedal", "fault.pedal", found.Travel, healthy.Travel, 3, 0)
	differ("pedal", "fault.sink", 1000*found.Sink, 1000*healthy.Sink, 0.5, 1)
	differ("pedal", "fault.assist", found.Assist, healthy.Assist, 3, 0)
	for i, axle := range [2]string{"front", "rear"} {
		differ("pedal", "fault.imbalance_"+axle, found.Imbalance[i], healthy.Imbalance[i], 3, 0)
	}
	return all
}

// thinnest is the thinnest half lining of the front (0) or rear axle [mm].
func thinnest(o *scoring.Outlook, axle int) float64 {
	thin := math.Inf(1)
	for w := range physics.Wheel(physics.NumWheels) {
		if w.Front() != (axle == 0) {
			continue
		}
		for _, pad := range o.Lining[w] {
			thin = min(thin, pad[0], pad[1])
		}
	}
	return thin * perMm
}
