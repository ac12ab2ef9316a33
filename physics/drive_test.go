package physics

import (
	"math"
	"strings"
	"testing"
)

func frontLeft(c WheelCondition) Condition {
	var cond Condition
	cond.Wheels[FrontLeft] = c
	return cond
}

func pins(upper, lower float64) Condition {
	return frontLeft(WheelCondition{PinFriction: [2]float64{upper - 15, lower - 15}})
}

func driven(t *testing.T, cond Condition, km float64, rounds int) Condition {
	t.Helper()
	c, err := drive(hatchback(), cond, MixedDuty(), km, accuracy{rounds: rounds, leap: true})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func pad(c Condition, w Wheel, p int) float64 {
	return (c.Wheels[w].Wear[p][Upper] + c.Wheels[w].Wear[p][Lower]) / 2
}

// TestDrivePlausible: what the physics page §5 expects of a history.
func TestDrivePlausible(t *testing.T) {
	const source = "physics page §5"
	for _, km := range []float64{1000, 12000} {
		healthy := driven(t, Condition{}, km, 1)
		dry := driven(t, pins(250, 250), km, 1)
		seized := driven(t, pins(2000, 2000), km, 1)
		per := pad(healthy, FrontLeft, Inner) / km * 1000
		if math.Abs(per-0.18e-3) > 0.036e-3 {
			t.Errorf("front lining wears %.4f mm per 1000 km, want 0.18 ± 20 %% (%s)", per*1e3, source)
		}
		for _, r := range []struct {
			what     string
			got      Condition
			pad      int
			low, top float64
		}{
			{"dry pins, outer", dry, Outer, 1.7, 2.4},
			{"dry pins, inner", dry, Inner, 0.97, 1.05},
			{"seized pins, outer", seized, Outer, 0.40, 0.65},
			{"seized pins, inner", seized, Inner, 1.06, 1.20},
		} {
			if x := pad(r.got, FrontLeft, r.pad) / pad(healthy, FrontLeft, r.pad); x < r.low || x > r.top {
				t.Errorf("%g km, %s: %.3f of healthy wear, want %.2f to %.2f (%s)", km, r.what, x, r.low, r.top, source)
			}
		}
		for i := range 2 {
			if !seized.Wheels[FrontLeft].PinAnchorSet[i] || dry.Wheels[FrontLeft].PinAnchorSet[i] {
				t.Error("a seized pin keeps its anchor, a dry one does not")
			}
		}
	}
}

// TestOneSeizedPinTapers: inner and outer pads taper in opposite directions.
func TestOneSeizedPinTapers(t *testing.T) {
	w := driven(t, pins(20000, 15), 12000, 1).Wheels[FrontLeft].Wear
	in, out := w[Inner][Upper]-w[Inner][Lower], w[Outer][Upper]-w[Outer][Lower]
	if in < 0.1e-3 || out > -0.1e-3 {
		t.Errorf("upper less lower wear: inner %.3f mm, outer %.3f mm, want above 0.1 and below −0.1", in*1e3, out*1e3)
	}
}

// TestDriveRefuses: bad input is a sentence.
func TestDriveRefuses(t *testing.T) {
	d := MixedDuty()
	for want, change := range map[string]func(*Duty, *float64){
		"NaN km":       func(_ *Duty, km *float64) { *km = math.NaN() },
		"-1 km":        func(_ *Duty, km *float64) { *km = -1 },
		"between":      func(d *Duty, _ *float64) { d.Speed = 0 },
		"deceleration": func(d *Duty, _ *float64) { d.Stops[1].Decel = math.Inf(1) },
		"from > to":    func(d *Duty, _ *float64) { d.Stops[0].To = 60 },
		"1000 km":      func(d *Duty, _ *float64) { d.Stops[0].PerThousandKm = 1e6 },
	} {
		duty, km := d, 100.0
		change(&duty, &km)
		if _, err := Drive(hatchback(), Condition{}, duty, km); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want a sentence with %q, got %v", want, err)
		}
	}
}

// TestLeakFalls: a leak takes fluid with pressure and time; never more than there is.
func TestLeakFalls(t *testing.T) {
	small := driven(t, frontLeft(WheelCondition{Leak: 1e-11}), 1000, 1).Fluid
	twice := driven(t, frontLeft(WheelCondition{Leak: 2e-11}), 1000, 1).Fluid
	all := driven(t, frontLeft(WheelCondition{Leak: 1e-6}), 1000, 1)
	if small >= 0 || math.Abs(twice/small-2) > 1e-9 {
		t.Errorf("leaked %.3g and %.3g cm³", small*1e6, twice*1e6)
	}
	if left := hatchback().standing(&all); math.Abs(left) > 1e-9 {
		t.Errorf("a wide leak leaves %.3g cm³ in the reservoir, want 0", left*1e6)
	}
}

// BenchmarkDrive: 12 000 km of a car as named, with the corners it solves, which no
// other load on the machine changes.
func BenchmarkDrive(b *testing.B) {
	spec := hatchback()
	for _, c := range append(driveCases, manyCases...) {
		b.Run(c.name, func(b *testing.B) {
			solves := 0
			for b.Loop() {
				if _, err := drive(spec, c.cond, MixedDuty(), 12000, accuracy{rounds: 1, leap: true, solves: &solves}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(solves)/float64(b.N), "solves/op")
		})
	}
}
