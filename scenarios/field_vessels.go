package scenarios

import "evenwear/physics"

// The vessels under the bonnet beside the brake reservoir.

var oilRows = []row[physics.OilSpec]{
	{"at_max", cm3, 500, 20000, func(o *physics.OilSpec) *float64 { return &o.AtMax }},
	{"min_to_max", cm3, 100, 5000, func(o *physics.OilSpec) *float64 { return &o.MinToMax }},
	{"warm", celsius, 0, 120, func(o *physics.OilSpec) *float64 { return &o.Warm }},
	{"density", density, 750, 950, func(o *physics.OilSpec) *float64 { return &o.Density }},
	{"viscosity_40", stokes, 10, 500, func(o *physics.OilSpec) *float64 { return &o.Viscosity40 }},
	{"viscosity_100", stokes, 2, 40, func(o *physics.OilSpec) *float64 { return &o.Viscosity100 }},
	{"aloft", cm3, 0, 5000, func(o *physics.OilSpec) *float64 { return &o.Aloft }},
	{"wetted_area", sqMetre, 0, 10, func(o *physics.OilSpec) *float64 { return &o.WettedArea }},
	{"wetted_height", metre, 0, 2, func(o *physics.OilSpec) *float64 { return &o.WettedHeight }},
	{"sump_area", sqMetre, 0.01, 1, func(o *physics.OilSpec) *float64 { return &o.SumpArea }},
	{"reach", mm, -500, 500, func(o *physics.OilSpec) *float64 { return &o.Reach }},
}

var coolantRows = []row[physics.CoolantSpec]{
	{"volume", cm3, 1000, 30000, func(c *physics.CoolantSpec) *float64 { return &c.Volume }},
	{"at_max", cm3, 100, 5000, func(c *physics.CoolantSpec) *float64 { return &c.AtMax }},
	{"min_to_max", cm3, 50, 3000, func(c *physics.CoolantSpec) *float64 { return &c.MinToMax }},
	{"to_brim", cm3, 50, 5000, func(c *physics.CoolantSpec) *float64 { return &c.ToBrim }},
	{"glycol", share, 0, 0.6, func(c *physics.CoolantSpec) *float64 { return &c.Glycol }},
	{"metal", perK, 0, 0.001, func(c *physics.CoolantSpec) *float64 { return &c.Metal }},
}

var vesselRows = []row[physics.VesselSpec]{
	{"volume", cm3, 100, 20000, func(v *physics.VesselSpec) *float64 { return &v.Volume }},
	{"min_to_max", cm3, 20, 20000, func(v *physics.VesselSpec) *float64 { return &v.MinToMax }},
	{"density", density, 0, 950, func(v *physics.VesselSpec) *float64 { return &v.Density }},
}

func vesselFields(out []Field) []Field {
	out = specFields(out, "oil.", oilRows, func(s *physics.Spec) *physics.OilSpec { return &s.Vessels.Oil })
	out = specFields(out, "coolant.", coolantRows, func(s *physics.Spec) *physics.CoolantSpec { return &s.Vessels.Coolant })
	out = specFields(out, "steering.", vesselRows, func(s *physics.Spec) *physics.VesselSpec { return &s.Vessels.Steering })
	return specFields(out, "washer.", vesselRows, func(s *physics.Spec) *physics.VesselSpec { return &s.Vessels.Washer })
}
