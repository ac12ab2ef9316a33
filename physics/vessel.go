package physics

// VesselsSpec is what stands under the bonnet beside the brake reservoir. A
// vessel whose MinToMax is zero is not there.
type VesselsSpec struct {
	Oil      OilSpec
	Coolant  CoolantSpec
	Steering VesselSpec
	Washer   VesselSpec
}

// OilSpec is the engine's oil and its dipstick. The marks hold for warm oil that
// has run back.
type OilSpec struct {
	AtMax        float64 // [m³ at 20 °C] filling with which warm, rested oil stands at MAX
	MinToMax     float64 // [m³ at 20 °C] between the marks
	Warm         float64 // [°C] the marks are made for
	Density      float64 // [kg/m³] at 15 °C
	Viscosity40  float64 // [m²/s] at 40 °C
	Viscosity100 float64 // [m²/s] at 100 °C
	Aloft        float64 // [m³] held up in the engine while it runs
	WettedArea   float64 // [m²] of walls it runs down
	WettedHeight float64 // [m] of those walls
	SumpArea     float64 // [m²] plan of the sump between the marks
	Reach        float64 // [m] dipstick ahead of the middle of the sump
}

// CoolantSpec is the cooling system with its expansion vessel. The marks hold
// for a cold engine.
type CoolantSpec struct {
	Volume   float64 // [m³] whole filling at 20 °C with the vessel at MAX
	AtMax    float64 // [m³] of it that stands in the vessel at MAX
	MinToMax float64 // [m³] between the marks
	ToBrim   float64 // [m³] above MAX, beyond which the cap lets it out
	Glycol   float64 // [1] share by mass
	Metal    float64 // [1/K] expansion by volume of what holds it
}

// VesselSpec is a plain vessel with marks that hold at 20 °C.
type VesselSpec struct {
	Volume   float64 // [m³] whole filling at MAX, 20 °C
	MinToMax float64 // [m³] between the marks
	Density  float64 // [kg/m³] at 15 °C of a mineral oil; 0: water, whose growth is not seen
}

// VesselsCondition is what has been lost (< 0) or poured in too much (> 0) since
// the vessels were filled to MAX [m³ at 20 °C].
type VesselsCondition struct {
	Oil, Coolant, Steering, Washer float64 // [m³]
	Seep                           float64 // [m³/month] of coolant through a leak
}

// A Bonnet is how the car stands when somebody looks under its bonnet.
type Bonnet struct {
	Engine   float64 // [°C] oil and coolant
	Steering float64 // [°C] steering fluid
	Rested   float64 // [s] since the engine stopped; 0 while it runs
	Slope    float64 // [1] tangent of the ground, nose up > 0
}

// Cold is a car that has stood for a night on level ground at room temperature.
var Cold = Bonnet{Engine: roomAir, Steering: roomAir, Rested: 12 * 3600}

// OilLevel is where the oil stands on the dipstick: 0 at MIN, 1 at MAX. It
// follows from the filling, what still hangs in the engine, the oil's growth
// with heat, and the slope, which lowers the end that points up:
//
//	V     = (at MAX + added)·VCF(20 °C)/VCF(T) − aloft − A_sump·reach·slope       [m³]
//	aloft = min(held up running, ⅔·S·√(ν(T)·L/(g·t)))                             [m³] t since it stopped
//	level = (V − V_MIN)/(V_MAX − V_MIN), the marks grown to the heat they are made for
//
// VCF in [OilShrink], ν through two values (Walther; ASTM D341). Source of the film
// that runs down walls of area S and height L: H. Jeffreys, Proc. Camb. Phil. Soc. 26
// (1930) 204. Error: oil in the filter and galleries runs back otherwise.
func (m *Model) OilLevel(b Bonnet) float64 {
	o := &m.spec.Vessels.Oil
	if o.MinToMax <= 0 {
		return 0
	}
	room := OilShrink(o.Density, roomAir)
	grown := func(t float64) float64 { return room / OilShrink(o.Density, t) }
	marks := grown(o.Warm)
	v := float64((o.AtMax+m.cond.Vessels.Oil)*grown(b.Engine)) - o.aloft(b.Rested, b.Engine)
	v = max(0, v) - float64(o.SumpArea*o.Reach*b.Slope)
	return (v - float64((o.AtMax-o.MinToMax)*marks)) / (o.MinToMax * marks)
}

// CoolantLevel is where the coolant stands in its vessel: 0 at MIN, 1 at MAX.
// Mass stays, density falls with heat, and the metal that holds it grows a
// little: what does not fit any more rises into the vessel, and above the brim
// it leaves through the cap:
//
//	V = (filling + added)·ρ(20 °C)/ρ(T) − (filling − at MAX)·(1 + β_metal·(T − 20 °C))   [m³] 0 to brim
//
// ρ in [CoolantDensity]. Error: hoses that give under pressure are left out.
func (m *Model) CoolantLevel(b Bonnet) float64 {
	c := &m.spec.Vessels.Coolant
	if c.MinToMax <= 0 {
		return 0
	}
	grow := CoolantDensity(c.Glycol, roomAir) / CoolantDensity(c.Glycol, b.Engine)
	held := float64((c.Volume - c.AtMax) * (1 + float64(c.Metal*(b.Engine-roomAir))))
	stands := float64((c.Volume+m.cond.Vessels.Coolant)*grow) - held
	stands = min(max(0, stands), c.AtMax+c.ToBrim)
	return (stands - c.AtMax + c.MinToMax) / c.MinToMax
}

// SteeringLevel is where the steering fluid stands against its cold marks: 0 at
// MIN, 1 at MAX. It grows with heat as [OilShrink] says.
func (m *Model) SteeringLevel(b Bonnet) float64 {
	return m.spec.Vessels.Steering.level(m.cond.Vessels.Steering, b.Steering)
}

// WasherLevel is the share of a full washer bottle that is there.
func (m *Model) WasherLevel(b Bonnet) float64 {
	return m.spec.Vessels.Washer.level(m.cond.Vessels.Washer, roomAir)
}

func (s *VesselSpec) level(changed, t float64) float64 {
	if s.MinToMax <= 0 {
		return 0
	}
	v := max(0, s.Volume+changed)
	if s.Density > 0 {
		v *= OilShrink(s.Density, roomAir) / OilShrink(s.Density, t)
	}
	return (v - s.Volume + s.MinToMax) / s.MinToMax
}

func (s *VesselsSpec) rules() []rule {
	o, c := &s.Oil, &s.Coolant
	var rules []rule
	if o.MinToMax != 0 {
		rules = append(rules, rule{what: "oil.at_max", v: o.AtMax, lo: o.MinToMax}, rule{what: "oil.min_to_max", v: o.MinToMax, open: true},
			rule{what: "oil.density", v: o.Density, lo: 700, hi: 1000}, rule{what: "oil.viscosity_hot", v: o.Viscosity100, lo: 1e-6, hi: 1e-4},
			rule{what: "oil.viscosity", v: o.Viscosity40, lo: o.Viscosity100, hi: 1e-3}, rule{what: "oil.warm", v: o.Warm, lo: -20, hi: 130},
			rule{what: "oil.aloft", v: o.Aloft, hi: o.AtMax}, rule{what: "oil.wetted_area", v: o.WettedArea}, rule{what: "oil.wetted_height", v: o.WettedHeight},
			rule{what: "oil.sump_area", v: o.SumpArea}, rule{what: "oil.reach", v: o.Reach, lo: -2, hi: 2})
	}
	if c.MinToMax != 0 {
		rules = append(rules, rule{what: "coolant.volume", v: c.Volume, lo: c.AtMax}, rule{what: "coolant.at_max", v: c.AtMax, lo: c.MinToMax},
			rule{what: "coolant.min_to_max", v: c.MinToMax, open: true}, rule{what: "coolant.to_brim", v: c.ToBrim},
			rule{what: "coolant.glycol", v: c.Glycol, hi: 0.6}, rule{what: "coolant.metal", v: c.Metal, hi: 1e-3})
	}
	for i, v := range [...]*VesselSpec{&s.Steering, &s.Washer} {
		at := [...]string{"steering.", "washer."}[i]
		if v.MinToMax != 0 {
			rules = append(rules, rule{what: at + "min_to_max", v: v.MinToMax, open: true}, rule{what: at + "volume", v: v.Volume, lo: v.MinToMax},
				rule{what: at + "density", v: v.Density, hi: 1000})
		}
	}
	return rules
}

// rules: no more can be lost than there is, nor twice as much poured in.
func (c *VesselsCondition) rules(s *VesselsSpec) []rule {
	return []rule{
		{what: "condition.oil", v: c.Oil, lo: -s.Oil.AtMax, hi: max(s.Oil.AtMax, tiny)},
		{what: "condition.coolant", v: c.Coolant, lo: -s.Coolant.Volume, hi: max(s.Coolant.Volume, tiny)},
		{what: "condition.coolant_seep", v: c.Seep, hi: 1e-3},
		{what: "condition.steering", v: c.Steering, lo: -s.Steering.Volume, hi: max(s.Steering.Volume, tiny)},
		{what: "condition.washer", v: c.Washer, lo: -s.Washer.Volume, hi: max(s.Washer.Volume, tiny)},
	}
}

const tiny = 1e-12 // [m³] a vessel that is not there holds nothing; 0 would mean no upper end
