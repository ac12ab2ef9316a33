package scenarios

import "evenwear/physics"

// The car's own numbers. Ranges are what a passenger car or light van can have.

var bodyRows = []row[physics.BodySpec]{
	{"mass", kilogram, 500, 5000, func(b *physics.BodySpec) *float64 { return &b.Mass }},
	{"wheelbase", metre, 1.5, 5, func(b *physics.BodySpec) *float64 { return &b.Wheelbase }},
	{"centre_height", metre, 0.2, 1.5, func(b *physics.BodySpec) *float64 { return &b.CentreHeight }},
	{"front_load", share, 0.2, 0.8, func(b *physics.BodySpec) *float64 { return &b.FrontShare }},
	{"track", metre, 1, 2.5, func(b *physics.BodySpec) *float64 { return &b.Track }},
	{"tyre_radius", metre, 0.2, 0.6, func(b *physics.BodySpec) *float64 { return &b.TyreRadius }},
	{"peak_adhesion", ratio, 0.05, 1.5, func(b *physics.BodySpec) *float64 { return &b.PeakAdhesion }},
	{"slide_adhesion", ratio, 0.05, 1.5, func(b *physics.BodySpec) *float64 { return &b.SlideAdhesion }},
	{"drag_area", sqMetre, 0, 5, func(b *physics.BodySpec) *float64 { return &b.DragArea }},
	{"rolling", ratio, 0, 0.1, func(b *physics.BodySpec) *float64 { return &b.Rolling }},
	{"wheel_inertia", inertia, 0.1, 10, func(b *physics.BodySpec) *float64 { return &b.WheelInertia }},
}

var pedalRows = []row[physics.PedalSpec]{
	{"lever", ratio, 1, 10, func(p *physics.PedalSpec) *float64 { return &p.Ratio }},
	{"free", mm, 0, 10, func(p *physics.PedalSpec) *float64 { return &p.Free }},
	{"reserve", mm, 20, 300, func(p *physics.PedalSpec) *float64 { return &p.Reserve }},
}

var boosterRows = []row[physics.BoosterSpec]{
	{"gain", ratio, 0, 15, func(b *physics.BoosterSpec) *float64 { return &b.Gain }},
	{"threshold", newton, 0, 500, func(b *physics.BoosterSpec) *float64 { return &b.Threshold }},
	{"ceiling", newton, 0, 20000, func(b *physics.BoosterSpec) *float64 { return &b.Ceiling }},
	{"vacuum", kpa, 5, 100, func(b *physics.BoosterSpec) *float64 { return &b.Vacuum }},
	{"vent", share, 0, 1, func(b *physics.BoosterSpec) *float64 { return &b.Vent }},
	{"restore", second, 0.05, 60, func(b *physics.BoosterSpec) *float64 { return &b.Restore }},
}

var masterRows = []row[physics.MasterSpec]{
	{"bore", mm, 8, 50, func(m *physics.MasterSpec) *float64 { return &m.Bore }},
	{"efficiency", share, 0.5, 1, func(m *physics.MasterSpec) *float64 { return &m.Efficiency }},
	{"primary_stroke", mm, 2, 60, func(m *physics.MasterSpec) *float64 { return &m.Stroke[0] }},
	{"secondary_stroke", mm, 2, 60, func(m *physics.MasterSpec) *float64 { return &m.Stroke[1] }},
	{"primary_preload", newton, 0, 1000, func(m *physics.MasterSpec) *float64 { return &m.SpringPreload[0] }},
	{"secondary_preload", newton, 0, 1000, func(m *physics.MasterSpec) *float64 { return &m.SpringPreload[1] }},
	{"primary_spring", perM, 0, 50000, func(m *physics.MasterSpec) *float64 { return &m.SpringRate[0] }},
	{"secondary_spring", perM, 0, 50000, func(m *physics.MasterSpec) *float64 { return &m.SpringRate[1] }},
	{"primary_port", mm, 0, 10, func(m *physics.MasterSpec) *float64 { return &m.Port[0] }},
	{"secondary_port", mm, 0, 10, func(m *physics.MasterSpec) *float64 { return &m.Port[1] }},
	{"primary_port_area", mm2, 0.01, 20, func(m *physics.MasterSpec) *float64 { return &m.PortArea[0] }},
	{"secondary_port_area", mm2, 0.01, 20, func(m *physics.MasterSpec) *float64 { return &m.PortArea[1] }},
	{"cup", resist, 0.01, 1e6, func(m *physics.MasterSpec) *float64 { return &m.CupResistance }},
	{"friction", newton, 0, 500, func(m *physics.MasterSpec) *float64 { return &m.Friction }},
	{"friction_of_rod", share, 0, 0.5, func(m *physics.MasterSpec) *float64 { return &m.FrictionShare }},
	{"friction_rate", perMM, 0.001, 100, func(m *physics.MasterSpec) *float64 { return &m.FrictionRate }},
}

var valveRows = []row[physics.ValveSpec]{
	{"knee", mpa, 0, 20, func(v *physics.ValveSpec) *float64 { return &v.Knee }},
	{"slope", ratio, 0, 1, func(v *physics.ValveSpec) *float64 { return &v.Slope }},
}

var fluidRows = []row[physics.FluidSpec]{
	{"bulk_modulus", gpa, 0.1, 10, func(f *physics.FluidSpec) *float64 { return &f.BulkModulus }},
	{"expansion", perK, 0, 0.01, func(f *physics.FluidSpec) *float64 { return &f.Expansion }},
	{"density", density, 500, 2000, func(f *physics.FluidSpec) *float64 { return &f.Density }},
	{"heat", heat, 500, 5000, func(f *physics.FluidSpec) *float64 { return &f.Heat }},
	{"viscosity", stokes, 0.5, 500, func(f *physics.FluidSpec) *float64 { return &f.Viscosity }},
	{"cold_viscosity", stokes, 0.5, 20000, func(f *physics.FluidSpec) *float64 { return &f.ViscosityC }},
	{"dry_boil", celsius, 100, 400, func(f *physics.FluidSpec) *float64 { return &f.DryBoil }},
	{"wet_boil", celsius, 100, 400, func(f *physics.FluidSpec) *float64 { return &f.WetBoil }},
}

var reservoirRows = []row[physics.ReservoirSpec]{
	{"at_min", cm3, 5, 1000, func(r *physics.ReservoirSpec) *float64 { return &r.AtMin }},
	{"min_to_max", cm3, 5, 1000, func(r *physics.ReservoirSpec) *float64 { return &r.MinToMax }},
	{"max_to_brim", cm3, 0, 500, func(r *physics.ReservoirSpec) *float64 { return &r.MaxToBrim }},
	{"primary_port", cm3, 0, 500, func(r *physics.ReservoirSpec) *float64 { return &r.Port[0] }},
	{"secondary_port", cm3, 0, 500, func(r *physics.ReservoirSpec) *float64 { return &r.Port[1] }},
	{"height", mm, 5, 300, func(r *physics.ReservoirSpec) *float64 { return &r.Height }},
}

var cornerRows = []row[physics.CornerSpec]{
	{"piston_diameter", mm, 10, 120, func(c *physics.CornerSpec) *float64 { return &c.PistonDiameter }},
	{"pad_rate", perMM, 1, 1000, func(c *physics.CornerSpec) *float64 { return &c.K1 }},
	{"pad_cubic", cubic, 0, 1e9, func(c *physics.CornerSpec) *float64 { return &c.K3 }},
	{"bridge_rate", perMM, 1, 5000, func(c *physics.CornerSpec) *float64 { return &c.Bridge }},
	{"seal_rate", perMM, 0.01, 100, func(c *physics.CornerSpec) *float64 { return &c.SealRate }},
	{"seal_friction", newton, 0, 20000, func(c *physics.CornerSpec) *float64 { return &c.SealFriction }},
	{"seal_grip", perMPa, 0, 1000, func(c *physics.CornerSpec) *float64 { return &c.SealGrip }},
	{"pin_rate", perMM, 0.1, 1000, func(c *physics.CornerSpec) *float64 { return &c.PinRate }},
	{"pin_friction", newton, 0, 50000, func(c *physics.CornerSpec) *float64 { return &c.PinFriction }},
	{"pin_offset", mm, 10, 200, func(c *physics.CornerSpec) *float64 { return &c.PinOffset }},
	{"pad_offset", mm, 5, 150, func(c *physics.CornerSpec) *float64 { return &c.PadOffset }},
	{"tilt", share, 0, 1, func(c *physics.CornerSpec) *float64 { return &c.TiltShare }},
	{"boot_rate", perM, 0, 1e6, func(c *physics.CornerSpec) *float64 { return &c.Boot }},
	{"tilt_rate", torsion, 1, 1e6, func(c *physics.CornerSpec) *float64 { return &c.TiltRate }},
	{"home", mm, 0, 20, func(c *physics.CornerSpec) *float64 { return &c.Home }},
	{"inner_gap", mm, 0, 3, func(c *physics.CornerSpec) *float64 { return &c.Gap[physics.Inner] }},
	{"outer_gap", mm, 0, 3, func(c *physics.CornerSpec) *float64 { return &c.Gap[physics.Outer] }},
	{"grease", viscous, 0, 1e6, func(c *physics.CornerSpec) *float64 { return &c.Grease }},
	{"ear_rate", perMM, 0.1, 1000, func(c *physics.CornerSpec) *float64 { return &c.EarRate }},
	{"ear_friction", newton, 0, 20000, func(c *physics.CornerSpec) *float64 { return &c.EarFriction }},
	{"runout", micron, 0, 2000, func(c *physics.CornerSpec) *float64 { return &c.Runout }},
	{"disc_diameter", mm, 100, 600, func(c *physics.CornerSpec) *float64 { return &c.DiscDiameter }},
	{"disc_thickness", mm, 3, 60, func(c *physics.CornerSpec) *float64 { return &c.DiscThickness }},
	{"disc_minimum", mm, 2, 60, func(c *physics.CornerSpec) *float64 { return &c.DiscMinimum }},
	{"disc_mass", kilogram, 0.5, 50, func(c *physics.CornerSpec) *float64 { return &c.DiscMass }},
	{"disc_conduction", conduct, 1, 500, func(c *physics.CornerSpec) *float64 { return &c.DiscConduction }},
	{"disc_density", density, 1000, 10000, func(c *physics.CornerSpec) *float64 { return &c.DiscDensity }},
	{"disc_heat", heat, 100, 2000, func(c *physics.CornerSpec) *float64 { return &c.DiscHeat }},
	{"effective_radius", mm, 30, 280, func(c *physics.CornerSpec) *float64 { return &c.EffectiveRadius }},
	{"lining_new", mm, 2, 25, func(c *physics.CornerSpec) *float64 { return &c.LiningNew }},
	{"tongue", mm, 0, 5, func(c *physics.CornerSpec) *float64 { return &c.Tongue }},
	{"lining_area", cm2, 5, 200, func(c *physics.CornerSpec) *float64 { return &c.LiningArea }},
	{"lining_friction", ratio, 0.05, 0.8, func(c *physics.CornerSpec) *float64 { return &c.Mu }},
	{"fade_knee", celsius, 50, 900, func(c *physics.CornerSpec) *float64 { return &c.FadeKnee }},
	{"fade_slope", perK, 0, 0.01, func(c *physics.CornerSpec) *float64 { return &c.FadeSlope }},
	{"lining_wear", archard, 0, 1e5, func(c *physics.CornerSpec) *float64 { return &c.WearRate }},
	{"disc_wear", archard, 0, 1e5, func(c *physics.CornerSpec) *float64 { return &c.DiscWearRate }},
	{"hose_swell", swell, 0, 2, func(c *physics.CornerSpec) *float64 { return &c.HoseSwell }},
	{"fluid", cm3, 1, 500, func(c *physics.CornerSpec) *float64 { return &c.FluidVolume }},
	{"line", resist, 0.01, 1e5, func(c *physics.CornerSpec) *float64 { return &c.LineResistance }},
}

// carFields is the table of a car when new. Keys of the body stand at the top
// of a car's file, the others under the part they belong to.
func carFields() []Field {
	var out []Field
	out = specFields(out, "", bodyRows, func(s *physics.Spec) *physics.BodySpec { return &s.Body })
	out = specFields(out, "pedal.", pedalRows, func(s *physics.Spec) *physics.PedalSpec { return &s.Pedal })
	out = specFields(out, "booster.", boosterRows, func(s *physics.Spec) *physics.BoosterSpec { return &s.Booster })
	out = specFields(out, "master.", masterRows, func(s *physics.Spec) *physics.MasterSpec { return &s.Master })
	out = specFields(out, "valve.", valveRows, func(s *physics.Spec) *physics.ValveSpec { return &s.Valve })
	out = specFields(out, "fluid.", fluidRows, func(s *physics.Spec) *physics.FluidSpec { return &s.Fluid })
	out = specFields(out, "reservoir.", reservoirRows, func(s *physics.Spec) *physics.ReservoirSpec { return &s.Reservoir })
	out = vesselFields(out)
	out = specFields(out, "front.", cornerRows, func(s *physics.Spec) *physics.CornerSpec { return &s.Front })
	out = specFields(out, "rear.", cornerRows, func(s *physics.Spec) *physics.CornerSpec { return &s.Rear })
	return out
}

func specFields[T any](out []Field, prefix string, rows []row[T], part func(*physics.Spec) *T) []Field {
	for _, r := range rows {
		f := r.field(prefix)
		f.spec = func(s *physics.Spec) *float64 { return r.at(part(s)) }
		out = append(out, f)
	}
	return out
}
