package scenarios

import "evenwear/physics"

// A unit is what a key's number is counted in: the key ends with suffix.
type unit struct {
	suffix string
	name   string  // for people
	si     float64 // [SI per unit]
}

// The units of keys, by kind. Micro-units keep authors from counting zeros.
var (
	kilogram    = unit{"kg", "kg", 1}
	metre       = unit{"m", "m", 1}
	mm          = unit{"mm", "mm", physics.Millimetre}
	micron      = unit{"um", "µm", 1e-6}
	mm2         = unit{"mm2", "mm²", 1e-6}
	micron2     = unit{"um2", "µm²", 1e-12}
	cm2         = unit{"cm2", "cm²", physics.SquareCm}
	sqMetre     = unit{"m2", "m²", 1}
	cm3         = unit{"cm3", "cm³", physics.CubicCentimetre}
	newton      = unit{"n", "N", 1}
	perM        = unit{"n_per_m", "N/m", 1}
	perMM       = unit{"kn_per_mm", "kN/mm", 1e6} // = MN/m
	perKN       = unit{"mm_per_kn", "mm/kN", 1e-6}
	cubic       = unit{"n_per_mm3", "N/mm³", 1e9}
	perMPa      = unit{"n_per_mpa", "N/MPa", 1e-6}
	torsion     = unit{"nm_per_rad", "N·m/rad", 1}
	viscous     = unit{"ns_per_m", "N·s/m", 1}
	inertia     = unit{"kgm2", "kg·m²", 1}
	mpa         = unit{"mpa", "MPa", physics.Megapascal}
	kpa         = unit{"kpa", "kPa", 1e3}
	gpa         = unit{"gpa", "GPa", 1e9}
	swell       = unit{"cm3_per_mpa", "cm³/MPa", 1e-12}
	resist      = unit{"kpa_s_per_cm3", "kPa·s/cm³", 1e9}
	bypass      = unit{"cm3_per_s_mpa", "cm³/(s·MPa)", 1e-12}
	archard     = unit{"mm3_per_mnm", "mm³/(MN·m)", 1e-15} // volume worn per force × distance slid
	second      = unit{"s", "s", 1}
	perS        = unit{"per_s", "1/s", 1}
	celsius     = unit{"c", "°C", 1}
	perK        = unit{"per_k", "1/K", 1}
	density     = unit{"kg_per_m3", "kg/m³", 1}
	heat        = unit{"j_per_kgk", "J/(kg·K)", 1}
	conduct     = unit{"w_per_mk", "W/(m·K)", 1}
	stokes      = unit{"mm2_per_s", "mm²/s", 1e-6}
	rusting     = unit{"n_per_month", "N/month", 1}
	cm3PerMonth = unit{"cm3_per_month", "cm³/month", physics.CubicCentimetre}
	perMonth    = unit{"share_per_month", "of 1 a month", 1}
	share       = unit{"share", "of 1", 1} // 0 to 1, or a signed part of 1
	ratio       = unit{"ratio", "×", 1}
)

// row is one line of a table, before its prefix is known.
type row[T any] struct {
	name   string
	unit   unit
	lo, hi float64 // [unit]
	at     func(*T) *float64
}

func (r row[T]) key() string { return r.name + "_" + r.unit.suffix }

func (r row[T]) field(prefix string) Field {
	return Field{Path: prefix + r.key(), plain: prefix + r.name, Unit: r.unit.name, SI: r.unit.si, Lo: r.lo, Hi: r.hi}
}
