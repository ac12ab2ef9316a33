package play

import (
	"math"

	"evenwear/physics/inspect"
)

// A face is how an instrument is drawn and what its marks are.
type face struct {
	kind   string
	long   float64 // [unit] between numbered marks
	lo, hi float64 // [unit] of the drawn scale where it is not the meter's
}

// faces by the id of the instrument. What has words is an observation.
var faces = []struct {
	instrument string
	face
}{
	{"reservoir_marks", face{kind: "reservoir", long: 100}},
	{"dipstick", face{kind: "dipstick", long: 100}},
	{"coolant_marks", face{kind: "coolant", long: 100}},
	{"cap_stick", face{kind: "cap_stick", long: 100}},
	{"dip_tube", face{kind: "dip_tube", long: 50}},
	{"boil_tester", face{kind: "boil_tester"}},
	{"water_tester", face{kind: "tester", long: 1}},
	{"floor_rule", face{kind: "rule", long: 10, lo: 0, hi: 200}},
	{"dial_indicator", face{kind: "dial_indicator", long: 0.1, lo: 0, hi: 1}},
	{"thickness_gauge", face{kind: "thickness_gauge", long: 0.5, lo: 0, hi: 25}},
	{"pull_gauge", face{kind: "pull_gauge", long: 100}},
	{"hanging_balance", face{kind: "pull_gauge", long: 200}},
	{"push_gauge", face{kind: "pull_gauge", long: 500}},
	{"stepped_feeler", face{kind: "stepped_feeler", long: 1, lo: 2, hi: 12}},
	{"blade_feeler", face{kind: "blade_feeler", long: 0.1, lo: 0, hi: 1}},
	{"side_pendulum", face{kind: "pendulum", long: 0.1}},
	{"tape", face{kind: "tape", long: 5}},
	{"infrared_thermometer", face{kind: "thermometer"}},
}

func faceOf(m *inspect.Meter) face {
	f := face{kind: "observation"}
	for _, g := range faces {
		if g.instrument == m.Instrument {
			f = g.face
		}
	}
	if f.lo == f.hi {
		f.lo, f.hi = m.Lo, m.Hi
	}
	return f
}

// turn is the cosine every 15° of one turn. It is written out because
// math.Cos has other last bits on other machines.
var turn = func() (t [25]float64) {
	quarter := [7]float64{1, 0.9659258262890683, 0.8660254037844387, 0.7071067811865476, 0.5, 0.25881904510252074, 0}
	for i, c := range quarter {
		t[i], t[24-i], t[12-i], t[12+i] = c, c, -c, -c
	}
	return t
}()

// needle is where the instrument stands [unit]: one position, the swing over a
// turn, or two whose difference is the reading. It is worked out from the
// display and from luck that does not know the car, never from the true value.
func (r *reading) needle(seed uint64, job string) []float64 {
	m := &r.check.Meter
	v := m.Value(r.display)
	u := luck(seed, job, "needle "+r.inst.String(), r.try).Float64()
	from := func(lo, hi float64) float64 { // a chance mark of the scale
		return math.Round((lo+(hi-lo)*u)/m.Resolution) * m.Resolution
	}
	free := math.Round(160 + 20*luck(seed, job, "free_pedal", 0).Float64()) // [mm] above the floor, all day
	switch r.check.ID {
	case "pedal_travel", "assist_reserve", "free_travel":
		a := max(free, v)
		return []float64{a, a - v}
	case "hold_sink": // under a heavier foot than the travel is measured with
		a := max(from(70, 85), v)
		return []float64{a, a - v}
	case "pump_running":
		a := max(0, free-r.base-v)
		return []float64{a, a + v}
	case "pump_off", "knock_back", "assist_kept":
		a := from(85, 100)
		return []float64{a, a + v}
	case "assist":
		a := from(115, 130)
		return []float64{a, a - v}
	case "hub_play":
		a := from(0.05, 0.2)
		return []float64{a, a + v}
	case "thickness_variation":
		return []float64{r.base + v, r.base}
	case "runout":
		a := from(0.1, 0.25) + v/2
		swing := make([]float64, len(turn))
		for i, c := range turn {
			swing[i] = a + float64(v/2*c)
		}
		return swing
	}
	if m.Floor {
		return []float64{v + m.Resolution/2} // the face stands somewhere past the step that clears
	}
	return []float64{v}
}

// instrument is what the eye sees of the check that waits to be read.
func (s *Session) instrument() *InstrumentView {
	r := s.reading
	if r == nil {
		return nil
	}
	m, f := &r.check.Meter, faceOf(&r.check.Meter)
	name := r.inst.String()
	v := &InstrumentView{
		Check: name, Kind: f.kind, Name: s.sayCheck(r.inst),
		Question: s.say("ask." + string(r.check.ID)),
		Unit:     s.sayUnit(m.Unit), Division: m.Division, Long: f.long, Lo: f.lo, Hi: f.hi,
		Pad: padOf(r.check), Half: halfOf(r.check.ID),
		Write: Action{Key: "Enter", Label: s.say("act.write"), Act: Act{Do: Write, What: name}, Enabled: true},
		Skip:  Action{Key: "Delete", Label: s.say("act.skip"), Act: Act{Do: Skip, What: name}, Enabled: true},
	}
	switch f.kind {
	case "observation":
		v.Marks = s.say("see." + string(r.check.ID) + "." + m.Words[r.display])
		if r.check.ID == "slow_stop" { // the steering wheel: to the left, straight, to the right
			v.Needle = []float64{float64(r.display) - 1}
		}
		for i, w := range m.Words {
			v.Words = append(v.Words, Action{Key: letter(i), Label: s.sayWord(r.check, w), Enabled: true,
				Act: Act{Do: Write, What: name, Text: w}})
		}
	case "thermometer", "boil_tester":
		v.Digits = figure(m, r.display)
		v.Marks = s.say("marks." + f.kind)
	default:
		v.Needle = r.needle(s.seed, s.job.ID)
		v.Marks = s.marks(r.check, f, r.display, v.Needle)
	}
	return v
}

func padOf(c *inspect.Check) string {
	switch c.Part {
	case inspect.InnerPadPart:
		return "inner"
	case inspect.OuterPadPart:
		return "outer"
	}
	return ""
}

func halfOf(id inspect.ID) string {
	switch id {
	case "lining_inner_upper", "lining_outer_upper", "pin_upper":
		return "upper"
	case "lining_inner_lower", "lining_outer_lower", "pin_lower":
		return "lower"
	}
	return ""
}

func letter(i int) string { return string(rune('A' + i)) }
