package physics

import (
	"math"
	"testing"
)

// driveCases are the causes that change how linings wear, at every severity of
// the catalogue, and pins over their whole range.
var driveCases = []struct {
	name string
	cond Condition
}{
	{"healthy", Condition{}},
	{"pins 100 N", pins(100, 100)},
	{"pins 135 N", pins(135, 135)},
	{"pins 235 N", pins(235, 235)},
	{"pins 400 N", pins(400, 400)},
	{"pins 1000 N", pins(1000, 1000)},
	{"pins 2000 N", pins(2000, 2000)},
	{"pins 4000 N", pins(4015, 4015)},
	{"pins 20 kN", pins(20000, 20000)},
	{"one pin 3 kN", pins(3015, 15)},
	{"one pin 20 kN", pins(20000, 15)},
	{"piston 380 N, 6 kN/mm", frontLeft(WheelCondition{SealFriction: 380, SealRate: 6e6})},
	{"piston 1200 N, 14 kN/mm", frontLeft(WheelCondition{SealFriction: 1200, SealRate: 14e6})},
	{"piston 2380 N, 19 kN/mm", frontLeft(WheelCondition{SealFriction: 2380, SealRate: 19.1e6})},
	{"hose holds 0.5 MPa", frontLeft(WheelCondition{HoseHold: 0.5e6})},
	{"ears 300 N", frontLeft(WheelCondition{EarFriction: [2]float64{300, 300}})},
	{"run-out 150 µm", frontLeft(WheelCondition{Runout: 150e-6})},
}

// manyCases are cars that age and cars with four wheels stuck in different ways.
var manyCases = []struct {
	name string
	cond Condition
}{
	{"swelling 300 N", swelling(300)},
	{"swelling 300 N and rust", frontLeft(WheelCondition{PinSwelling: [2]float64{300, 300}, PinRusting: [2]float64{20, 0}})},
	{"pins rust by 200 N/month", frontLeft(WheelCondition{PinRusting: [2]float64{200, 200}})},
	{"four: one pin 20 kN", four(func(w int) WheelCondition {
		return WheelCondition{PinFriction: [2]float64{20000 + 1000*float64(w), 0}}
	})},
	{"four: pins 400 to 460 N", four(func(w int) WheelCondition {
		f := 385 + 20*float64(w)
		return WheelCondition{PinFriction: [2]float64{f, f}}
	})},
	{"four: pistons 380 to 530 N", four(func(w int) WheelCondition {
		return WheelCondition{SealFriction: 380 + 50*float64(w), SealRate: 6e6}
	})},
	{"four: 400 N, 20 kN, piston, one pin", four(func(w int) WheelCondition {
		return [NumWheels]WheelCondition{
			{PinFriction: [2]float64{385, 385}},
			{PinFriction: [2]float64{20000, 20000}},
			{SealFriction: 380, SealRate: 6e6},
			{PinFriction: [2]float64{20000, 0}},
		}[w]
	})},
	{"four: swelling 250 to 400 N", four(func(w int) WheelCondition {
		f := 250 + 50*float64(w)
		return WheelCondition{PinSwelling: [2]float64{f, f}}
	})},
	{"four: rust by 150 to 300 N/month", four(func(w int) WheelCondition {
		f := 150 + 50*float64(w)
		return WheelCondition{PinRusting: [2]float64{f, f}}
	})},
}

func four(wheel func(w int) WheelCondition) (c Condition) {
	for w := range c.Wheels {
		c.Wheels[w] = wheel(w)
	}
	return c
}

// finest computes every stop by itself, no cycle by its trend.
var finest = accuracy{rounds: roundsMost, leap: false}

// errors is the greatest difference of a half pad's and of a disc face's wear, as a share of the latter's own.
func errors(got, want Condition) (worst float64) {
	for w := range Wheel(NumWheels) {
		a, b := got.Wheels[w], want.Wheels[w]
		for i := range 2 {
			worst = max(worst, math.Abs(a.DiscWear[i]/b.DiscWear[i]-1))
			for j := range 2 {
				worst = max(worst, math.Abs(a.Wear[i][j]/b.Wear[i][j]-1))
			}
		}
	}
	return worst
}

// TestDriveConverges: twice the rounds (a quarter of every tolerance) move no
// lining and no disc face by more than 1 %, whatever is wrong.
func TestDriveConverges(t *testing.T) {
	for _, c := range append(driveCases, manyCases...) {
		for _, km := range []float64{1000, 3000, 12000} {
			if e := errors(driven(t, c.cond, km, 1), driven(t, c.cond, km, 2)); e > 0.01 {
				t.Errorf("%s, %g km: twice the rounds change wear by %.2f %%", c.name, km, 100*e)
			}
		}
	}
}

// TestDriveEveryStop: against every stop computed by itself, below 1 %.
func TestDriveEveryStop(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	for _, c := range append(driveCases, manyCases...) {
		want, err := drive(hatchback(), c.cond, MixedDuty(), 3000, finest)
		if err != nil {
			t.Fatal(err)
		}
		e := errors(driven(t, c.cond, 3000, 1), want)
		t.Logf("%-36s %.2f %%", c.name, 100*e)
		if e > 0.01 {
			t.Errorf("%s: %.2f %% from every stop by itself", c.name, 100*e)
		}
	}
}

// TestDriveLong: the same over 12 000 km, against figures kept. Made by drive
// with [finest] in TestDriveEveryStop, km set to 12 000, the disc turned in steps of
// 60° wherever it takes a half pad off.
func TestDriveLong(t *testing.T) {
	want := map[string][5]float64{ // [mm] front left inner upper, lower, outer upper, lower; front right inner
		"healthy":                 {2.1351, 2.1351, 2.1595, 2.1595, 2.1351},
		"pins 100 N":              {2.1541, 2.1541, 2.6429, 2.6429, 2.1540},
		"pins 135 N":              {2.1619, 2.1619, 2.9304, 2.9304, 2.1618},
		"pins 235 N":              {2.1833, 2.1833, 4.4482, 4.4482, 2.1835},
		"pins 400 N":              {2.5460, 2.5460, 7.9424, 7.9424, 2.1854},
		"pins 1000 N":             {2.3659, 2.3659, 6.7029, 6.7029, 2.1860},
		"pins 2000 N":             {2.3495, 2.3495, 1.1730, 1.1730, 2.3505},
		"pins 4000 N":             {3.0348, 3.0348, 0.3104, 0.3104, 2.5445},
		"pins 20 kN":              {3.0348, 3.0348, 0.3104, 0.3104, 2.5445},
		"one pin 3 kN":            {2.4455, 1.9612, 1.0188, 2.6305, 2.2045},
		"one pin 20 kN":           {2.4455, 1.9612, 1.0188, 2.6305, 2.2045},
		"piston 380 N, 6 kN/mm":   {10.4312, 10.4312, 10.3440, 10.3440, 2.2491},
		"piston 1200 N, 14 kN/mm": {11.0000, 11.0000, 11.0000, 11.0000, 2.5014},
		"piston 2380 N, 19 kN/mm": {11.0000, 11.0000, 11.0000, 11.0000, 2.5078},
		"hose holds 0.5 MPa":      {11.0000, 11.0000, 11.0000, 11.0000, 2.5038},
		"ears 300 N":              {2.6559, 2.6559, 2.6704, 2.6704, 2.2017},
		"run-out 150 µm":          {2.2449, 2.2449, 2.1733, 2.1733, 2.1351},
	}
	for _, c := range driveCases {
		got := driven(t, c.cond, 12000, 1)
		l, r := got.Wheels[FrontLeft].Wear, got.Wheels[FrontRight].Wear
		for i, x := range [5]float64{l[0][0], l[0][1], l[1][0], l[1][1], r[0][0]} {
			if w := want[c.name][i]; math.Abs(x*1e3-w) > 0.01*w {
				t.Errorf("%s, figure %d: %.4f mm, every stop by itself %.4f mm", c.name, i, x*1e3, w)
			}
		}
	}
}

// TestDriveOrder: a lump errs by the square of its size. After a hard stop a
// stuck piston or stiff pins drag, and 24 soft stops wear that off; in 1 to 4
// pieces, against 32. Errors that small are free of the kinks at which something slides.
func TestDriveOrder(t *testing.T) {
	for name, cond := range map[string]Condition{
		"piston":     frontLeft(WheelCondition{SealFriction: 380, SealRate: 6e6}),
		"pins 400 N": pins(400, 400),
	} {
		duty := MixedDuty()
		d := trip{spec: hatchback(), duty: &duty, way: 100, pressure: [4]float64{1.7e6, 1.2e6, 2.5e6, 5.8e6}}
		d.sort()
		var start wornWheel
		if err := start.begin(d.spec, &cond, FrontLeft); err != nil {
			t.Fatal(err)
		}
		take := func(w *wornWheel, class int, number float64) {
			if err := w.lumps(&d, []lump{d.lump(w, class, number)}); err != nil {
				t.Fatal(err)
			}
		}
		take(&start, d.order[3], 1)
		worn := func(pieces int) float64 {
			w := start
			for range pieces {
				take(&w, d.order[0], 24/float64(pieces))
			}
			return w.cond.Wear[Outer][Upper] - start.cond.Wear[Outer][Upper]
		}
		best, last := worn(32), 0.0
		for _, pieces := range []int{1, 2, 4} {
			e := math.Abs(worn(pieces) - best)
			t.Logf("%s: %d pieces err by %.5f µm of %.2f", name, pieces, e*1e6, best*1e6)
			if last > 0 && (last/e < 3 || last/e > 5.5) {
				t.Errorf("%s: %d pieces err by a %.2fth of half as many, want about a fourth", name, pieces, last/e)
			}
			last = e
		}
	}
}
