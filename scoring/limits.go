package scoring

import "evenwear/physics"

// A Finding is one way in which a car is unsafe: what the physics gave, the
// limit and where the limit comes from.
type Finding struct {
	ID     string
	Wheel  string // where; empty for the whole car
	Value  float64
	Limit  float64
	Unit   string // id of the unit of both: "m/s2", "percent", "mm", "per_10s_mm", "ml"
	Source string // id of where the limit comes from
}

// A limit is a line of the list of what is unsafe. Above: the value may not
// exceed it; else it may not fall below.
type limit struct {
	id     string
	value  float64
	above  bool
	unit   string
	source string
}

// ids of the findings.
const (
	UnsafeDecel      = "unsafe.deceleration"
	UnsafeImbalance  = "unsafe.imbalance"
	UnsafeTravel     = "unsafe.pedal_travel"
	UnsafeSink       = "unsafe.pedal_sinks"
	UnsafeLeak       = "unsafe.leak"
	UnsafeLevel      = "unsafe.level"
	UnsafeAssist     = "unsafe.assistance"
	UnsafeLining     = "unsafe.lining"
	UnsafeLiningSoon = "unsafe.lining_soon"
	UnsafeVapour     = "unsafe.vapour"
	UnsafeBurnt      = "unsafe.burnt"
	UnsafeHose       = "unsafe.hose"
	UnsafeCrack      = "unsafe.crack"
)

// The limits. Source is the id of a line in words.
var (
	// MOT inspection manual, cars, 1.2.2: 58 % of the weight.
	limitDecel = limit{UnsafeDecel, 0.58 * 9.80665, false, "m/s2", "source.mot_1_2_2"}
	// MOT inspection manual, cars, 1.2.1: the lower effort below 70 % of the higher.
	limitImbalance = limit{UnsafeImbalance, 30, true, "percent", "source.mot_1_2_1"}
	// 49 CFR 570.55(c): 80 % of the travel to the floor, at 222.4 N.
	limitTravel = limit{UnsafeTravel, 80, true, "percent", "source.cfr_570_55_c"}
	// 49 CFR 570.55(b)(1): no further sinking at 556 N in 10 s; one division of a rule.
	limitSink = limit{UnsafeSink, 1, true, "mm", "source.cfr_570_55_b"}
	// MOT inspection manual, cars, 1.1.11 and 1.1.12: leaking is dangerous.
	limitLeak = limit{UnsafeLeak, 0, true, "mm2", "source.mot_1_1_11"}
	// MOT inspection manual, cars, 1.1.10 (d): below the minimum mark.
	limitLevel = limit{UnsafeLevel, 0, false, "percent", "source.mot_1_1_10_d"}
	// MOT inspection manual, cars, 1.1.10 (a): inoperative is dangerous. Taken as
	// less than a tenth of a sound booster; no source for the share.
	limitAssist = limit{UnsafeAssist, 10, false, "percent", "source.mot_1_1_10_a"}
	// MOT inspection manual, cars, 1.1.13 (a): below 1.5 mm is dangerous.
	limitLining = limit{UnsafeLining, 1.5, false, "mm", "source.mot_1_1_13"}
	// The same, within 1000 km: no source.
	limitSoon = limit{UnsafeLiningSoon, 1.5, false, "mm", "source.mot_1_1_13"}
	// 49 CFR 570.55(c)'s 80 % ten minutes after the standard descent, 15 % for 12 km at 30 km/h.
	limitVapour = limit{UnsafeVapour, 80, true, "percent", "source.cfr_570_55_c"}
	// A brake that burns on the same descent; no source.
	limitBurnt = limit{UnsafeBurnt, physics.Burnt, true, "celsius", "source.none"}
	// 49 CFR 571.106, table I, low expansion: 0.61 cm³/ft at 19.99 MPa.
	limitHose = limit{UnsafeHose, 2.00, true, "cm3/m", "source.cfr_571_106"}
	// MOT inspection manual, cars, 1.1.14 (a): a disc likely to fail is dangerous. A
	// crack from the rim is taken as that, crazing of the face is not; no source.
	limitCrack = limit{UnsafeCrack, 0, true, "mm", "source.mot_1_1_14"}
)

// check returns a finding when value breaks the limit. The edge itself passes:
// exactly 80 % of the travel, 1.50 mm of lining, 30.0 % of imbalance.
func (l limit) check(value float64, wheel string) (Finding, bool) {
	slack := float64(1e-9 * max(1, l.value))
	bad := value < l.value-slack
	if l.above {
		bad = value > l.value+slack
	}
	return Finding{l.id, wheel, value, l.value, l.unit, l.source}, bad
}

// Imbalance is (higher − lower)/higher of two brake efforts [%].
func Imbalance(a, b float64) float64 {
	hi, lo := max(a, b), min(a, b)
	if hi <= 0 {
		return 0
	}
	return 100 * (hi - lo) / hi
}

// Travel is (free − pressed)/free of the pedal's height above the floor [%].
func Travel(free, pressed float64) float64 { return 100 * (free - pressed) / free }

// Efficiency is the sum of brake efforts over the weight [%].
func Efficiency(efforts, weight float64) float64 { return 100 * efforts / weight }
