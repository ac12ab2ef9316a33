package physics

import (
	"fmt"
	"math"
)

// A SpecError says which number of a car or its condition cannot work.
type SpecError struct {
	What   string  // "rear.piston_diameter", "front_left.wear[0][1]"
	Value  float64 // SI
	Wrong  string  // in the trade's words, where it does not go with another; may be empty
	Wanted string
}

func (e *SpecError) Error() string {
	if e.Wrong != "" {
		return fmt.Sprintf("car: %s is %.6g: %s, want %s", e.What, e.Value, e.Wrong, e.Wanted)
	}
	return fmt.Sprintf("car: %s is %.6g, want %s", e.What, e.Value, e.Wanted)
}

// New works a condition into a car. It refuses numbers that cannot work
// (piston larger than the disc, lining gone, negative stiffness) in a sentence; see
// also [Spec.Misfits].
func New(spec *Spec, cond Condition) (*Model, error) {
	if err := spec.check(); err != nil {
		return nil, err
	}
	if err := cond.check(spec); err != nil {
		return nil, err
	}
	m := &Model{spec: spec, cond: cond, master: newCylinder(spec, &cond)}
	for w := range Wheel(NumWheels) {
		m.corners[w] = NewCorner(spec.Corner(w), &cond.Wheels[w], w.String())
		m.pipes[w] = newPipe(spec, &cond.Wheels[w], w)
	}
	m.workInHeat()
	fluid := spec.Fluid.Mixed(cond.LowGrade)
	m.boil = fluid.BoilingPoint(cond.Water, 0) + freezing
	// A new car stands at MAX: what is in its cavities then is what it holds.
	m.filling = spec.Reservoir.max() + cond.Fluid
	for _, c := range [...]*CornerSpec{&spec.Front, &spec.Rear} {
		s, err := Released(c, &WheelCondition{}, "new")
		if err != nil {
			return nil, err
		}
		m.filling += float64(2 * c.PistonArea() * s.X)
	}
	return m, nil
}

// rule is one number with what it may be; hi 0 means no upper end.
type rule struct {
	what   string
	v      float64
	lo, hi float64
	open   bool // lo itself is not allowed
}

func checkRules(rules []rule) error {
	for _, r := range rules {
		hi := r.hi
		if hi == 0 {
			hi = math.MaxFloat64
		}
		if ok := r.v >= r.lo && r.v <= hi && !(r.open && r.v == r.lo); ok {
			continue
		}
		want := fmt.Sprintf("%g or more", r.lo)
		switch {
		case r.hi != 0 && r.open:
			want = fmt.Sprintf("more than %g and at most %g", r.lo, r.hi)
		case r.hi != 0:
			want = fmt.Sprintf("%g to %g", r.lo, r.hi)
		case r.open:
			want = fmt.Sprintf("more than %g", r.lo)
		}
		return &SpecError{What: r.what, Value: r.v, Wanted: want}
	}
	return nil
}

// check refuses a car that cannot be built.
func (s *Spec) check() error {
	b, p, o, m, f, r := &s.Body, &s.Pedal, &s.Booster, &s.Master, &s.Fluid, &s.Reservoir
	rules := []rule{
		{what: "body.mass", v: b.Mass, open: true}, {what: "body.wheelbase", v: b.Wheelbase, open: true},
		{what: "body.centre_height", v: b.CentreHeight}, {what: "body.track", v: b.Track}, {what: "body.peak_adhesion", v: b.PeakAdhesion}, {what: "body.slide_adhesion", v: b.SlideAdhesion},
		{what: "body.drag_area", v: b.DragArea}, {what: "body.rolling", v: b.Rolling, hi: 1}, {what: "body.wheel_inertia", v: b.WheelInertia},
		{what: "pedal.reserve", v: p.Reserve}, {what: "booster.threshold", v: o.Threshold}, {what: "reservoir.height", v: r.Height},
		{what: "body.tyre_radius", v: b.TyreRadius, open: true}, {what: "body.front_share", v: b.FrontShare, hi: 1},
		{what: "pedal.ratio", v: p.Ratio, open: true}, {what: "pedal.free", v: p.Free},
		{what: "booster.gain", v: o.Gain}, {what: "booster.ceiling", v: o.Ceiling}, {what: "booster.vacuum", v: o.Vacuum, hi: Atmosphere},
		{what: "booster.vent", v: o.Vent, hi: 1}, {what: "booster.restore", v: o.Restore},
		{what: "master.bore", v: m.Bore, open: true, hi: 0.2}, {what: "master.efficiency", v: m.Efficiency, open: true, hi: 1},
		{what: "master.cup_resistance", v: m.CupResistance, open: true},
		{what: "master.friction", v: m.Friction}, {what: "master.friction_share", v: m.FrictionShare, hi: 1}, {what: "master.friction_rate", v: m.FrictionRate},
		{what: "valve.knee", v: s.Valve.Knee}, {what: "valve.slope", v: s.Valve.Slope, hi: 1},
		{what: "fluid.bulk_modulus", v: f.BulkModulus, open: true}, {what: "fluid.expansion", v: f.Expansion},
		{what: "fluid.density", v: f.Density, open: true}, {what: "fluid.heat", v: f.Heat, open: true},
		{what: "fluid.dry_boil", v: f.DryBoil, open: true}, {what: "fluid.wet_boil", v: f.WetBoil, open: true},
		{what: "fluid.viscosity", v: f.Viscosity, open: true}, {what: "fluid.viscosity_cold", v: f.ViscosityC, lo: f.Viscosity},
		{what: "reservoir.at_min", v: r.AtMin}, {what: "reservoir.min_to_max", v: r.MinToMax, open: true}, {what: "reservoir.max_to_brim", v: r.MaxToBrim},
	}
	for i, name := range [...]string{"primary", "secondary"} {
		rules = append(rules,
			rule{what: "master.stroke_" + name, v: m.Stroke[i], open: true}, rule{what: "master.preload_" + name, v: m.SpringPreload[i]},
			rule{what: "master.spring_" + name, v: m.SpringRate[i]}, rule{what: "master.port_" + name, v: m.Port[i], hi: m.Stroke[i]},
			rule{what: "master.port_area_" + name, v: m.PortArea[i]}, rule{what: "reservoir.port_" + name, v: r.Port[i], hi: r.AtMin + r.MinToMax})
	}
	rules = append(rules, s.Vessels.rules()...)
	for w, c := range s.Circuit {
		rules = append(rules, rule{what: "circuit." + Wheel(w).String(), v: float64(c), hi: 1})
	}
	for i, c := range [...]*CornerSpec{&s.Front, &s.Rear} {
		rules = append(rules, c.rules([...]string{"front.", "rear."}[i])...)
	}
	if err := checkRules(rules); err != nil {
		return err
	}
	for _, bad := range s.Misfits() {
		return bad.refuse()
	}
	return nil
}

func (c *CornerSpec) rules(at string) []rule {
	return []rule{
		{what: at + "piston_diameter", v: c.PistonDiameter, open: true, hi: 1},
		{what: at + "inner_gap", v: c.Gap[Inner], hi: 0.02}, {what: at + "outer_gap", v: c.Gap[Outer], hi: 0.02}, {what: at + "home", v: c.Home, hi: 0.1}, {what: at + "runout", v: c.Runout, hi: 5e-3},
		{what: at + "disc_diameter", v: c.DiscDiameter}, {what: at + "disc_thickness", v: c.DiscThickness}, {what: at + "disc_minimum", v: c.DiscMinimum},
		{what: at + "disc_mass", v: c.DiscMass}, {what: at + "disc_conduction", v: c.DiscConduction}, {what: at + "disc_density", v: c.DiscDensity}, {what: at + "disc_heat", v: c.DiscHeat},
		{what: at + "lining_new", v: c.LiningNew}, {what: at + "tongue", v: c.Tongue}, {what: at + "lining_area", v: c.LiningArea}, {what: at + "fade_knee", v: c.FadeKnee, lo: -freezing}, {what: at + "fade_slope", v: c.FadeSlope},
		{what: at + "lining_wear", v: c.WearRate}, {what: at + "disc_wear", v: c.DiscWearRate},
		{what: at + "pad_rate", v: c.K1, open: true}, {what: at + "pad_cubic", v: c.K3}, {what: at + "bridge", v: c.Bridge, open: true},
		{what: at + "seal_rate", v: c.SealRate, open: true}, {what: at + "seal_friction", v: c.SealFriction}, {what: at + "seal_grip", v: c.SealGrip},
		{what: at + "pin_rate", v: c.PinRate, open: true}, {what: at + "pin_friction", v: c.PinFriction}, {what: at + "pin_offset", v: c.PinOffset, open: true},
		{what: at + "pad_offset", v: c.PadOffset, open: true}, {what: at + "tilt_share", v: c.TiltShare, hi: 1}, {what: at + "boot", v: c.Boot},
		{what: at + "tilt_rate", v: c.TiltRate}, {what: at + "grease", v: c.Grease}, {what: at + "ear_rate", v: c.EarRate, open: true},
		{what: at + "ear_friction", v: c.EarFriction}, {what: at + "effective_radius", v: c.EffectiveRadius, open: true},
		{what: at + "lining_friction", v: c.Mu, hi: 2}, {what: at + "hose_swell", v: c.HoseSwell}, {what: at + "fluid", v: c.FluidVolume},
		{what: at + "line", v: c.LineResistance, open: true},
	}
}

// check refuses a condition no car can be in.
func (c *Condition) check(s *Spec) error {
	rules := []rule{
		{what: "condition.fluid", v: c.Fluid, lo: -1, hi: 1}, {what: "condition.water", v: c.Water, hi: waterMost}, {what: "condition.water_uptake", v: c.WaterUptake, hi: 0.1},
		{what: "condition.booster_loss", v: c.BoosterLoss, hi: 1}, {what: "condition.vacuum_leak", v: c.VacuumLeak, hi: 1e3},
		{what: "condition.cup_bypass_primary", v: c.CupBypass[0], hi: 1}, {what: "condition.cup_bypass_secondary", v: c.CupBypass[1], hi: 1},
		{what: "condition.low_grade", v: c.LowGrade, hi: 1}, {what: "condition.mineral_oil", v: c.MineralOil, hi: 1}, {what: "condition.rubber_swollen", v: c.RubberSwollen, hi: 1},
		{what: "condition.vent_shut", v: c.VentShut, hi: 1}, {what: "condition.diaphragm_leak", v: c.DiaphragmLeak, hi: 1e3},
		{what: "condition.chamber_air_primary", v: c.ChamberAir[0], hi: 1e-4}, {what: "condition.chamber_air_secondary", v: c.ChamberAir[1], hi: 1e-4},
		{what: "condition.lamp_lost", v: c.LampLost, hi: 1}, {what: "condition.float_high", v: c.FloatHigh, hi: 1e-3},
		{what: "condition.port_cover_primary", v: c.PortCover[0], hi: 0.1}, {what: "condition.port_cover_secondary", v: c.PortCover[1], hi: 0.1},
	}
	rules = append(rules, c.Vessels.rules(&s.Vessels)...)
	for w := range Wheel(NumWheels) {
		v, spec, at := &c.Wheels[w], s.Corner(w), w.String()+"."
		rules = append(rules,
			rule{what: at + "seal_friction", v: v.SealFriction, lo: -spec.SealFriction, hi: 1e5}, rule{what: at + "seal_rate", v: v.SealRate, lo: -0.9 * spec.SealRate, hi: 1e9},
			rule{what: at + "leak", v: v.Leak, hi: 1e-3}, rule{what: at + "air", v: v.Air, hi: 1e-4}, rule{what: at + "hose_swell", v: v.HoseSwell, lo: -spec.HoseSwell, hi: 1e-9},
			rule{what: at + "hose_hold", v: v.HoseHold, hi: 2e7}, rule{what: at + "hose_return", v: v.HoseReturn, hi: 1e6},
			rule{what: at + "seal_swelling", v: v.SealSwelling, hi: sealMost}, rule{what: at + "seal_rusting", v: v.SealRusting, hi: 1e5},
			rule{what: at + "seal_leak", v: v.SealLeak, hi: 1e-3}, rule{what: at + "screw_leak", v: v.ScrewLeak, hi: 1e-3},
			rule{what: at + "rim_rust", v: v.RimRust, hi: 5e-3}, rule{what: at + "disc_crack", v: v.DiscCrack, hi: max(tiny, spec.DiscDiameter/2)}, rule{what: at + "disc_film", v: v.DiscFilm, hi: 1},
			rule{what: at + "valve_stuck", v: v.ValveStuck, lo: -1, hi: 1},
			rule{what: at + "runout", v: v.Runout, hi: 5e-3}, rule{what: at + "thickness", v: v.Thickness, hi: 5e-3}, rule{what: at + "bearing_play", v: v.BearingPlay, hi: 5e-3})
		for i := range 2 {
			rules = append(rules,
				rule{what: at + "pin_bend", v: v.PinBend[i], hi: 1e-4}, rule{what: at + "pin_pinch", v: v.PinPinch[i], hi: pinchMost}, rule{what: at + "pin_soaked", v: v.PinSoaked[i], hi: pinMost},
				rule{what: at + "bond_lost", v: v.BondLost[i], hi: 0.95}, rule{what: at + "groove", v: v.Groove[i], hi: max(1e-4, spec.DiscThickness/4)},
				rule{what: at + "pin_swelling", v: v.PinSwelling[i], hi: pinMost}, rule{what: at + "pin_rusting", v: v.PinRusting[i], hi: 1e5},
				rule{what: at + "pin_friction", v: v.PinFriction[i], lo: -spec.PinFriction, hi: pinMost}, rule{what: at + "ear_friction", v: v.EarFriction[i], lo: -spec.EarFriction, hi: 1e6},
				rule{what: at + "pin_anchor", v: v.PinAnchor[i], lo: -0.1, hi: 0.1}, rule{what: at + "plate_proud", v: v.PlateProud[i], lo: -5e-3, hi: 5e-3},
				rule{what: at + "disc_wear", v: v.DiscWear[i], hi: max(1e-4, spec.DiscThickness/2)})
			for j := range 2 {
				rules = append(rules, rule{what: at + "wear", v: v.Wear[i][j], hi: max(1e-4, spec.LiningNew)}, rule{what: at + "friction_loss", v: v.MuLoss[i][j], lo: -1, hi: 1})
			}
		}
	}
	if err := checkRules(rules); err != nil {
		return err
	}
	return c.fits(s)
}
