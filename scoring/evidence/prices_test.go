package evidence

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
)

// TestInspectPrices: a wheel taken off is paid for once, with its chocks, lift,
// stand, nuts and dust, and with the way back to four wheels, by the minutes of
// the catalogue.
func TestInspectPrices(t *testing.T) {
	p := Problem{Checks: inspect.Instances()}
	prices := InspectPrices(&p)
	first := inspect.Instance{Check: "pin_upper", Wheel: physics.FrontRight, PerWheel: true}
	second := inspect.Instance{Check: "pin_lower", Wheel: physics.FrontRight, PerWheel: true}
	bare := 0.0
	for _, name := range []string{"chock_rear", "lift_front", "slacken_nuts@front_right", "stand@front_right", "wheel_off@front_right", "wipe_dust@front_right",
		"wheel_on@front_right", "lower_front", "torque_nuts@front_right"} {
		w, err := inspect.ParseWork(name)
		if err != nil {
			t.Fatal(err)
		}
		bare += w.Minutes
	}
	upper, _ := inspect.Find(first.Check)
	lower, _ := inspect.Find(second.Check)
	if got, want := prices.Minutes(&p, []inspect.Instance{first}), bare+upper.Minutes; got != want {
		t.Errorf("the first pin costs %g min, want %g", got, want)
	}
	if got, want := prices.Minutes(&p, []inspect.Instance{first, second}), bare+upper.Minutes+lower.Minutes; got != want {
		t.Errorf("both pins cost %g min, want %g", got, want)
	}
	for i, w := range prices.Preparations {
		stands := false
		for _, s := range inspect.Standing() {
			stands = stands || s == w.ID
		}
		if prices.Standing[i] != stands {
			t.Errorf("%s stands at the beginning: %t, want %t", w.ID, prices.Standing[i], stands)
		}
	}
}

// TestVesselPrices: a reading under the bonnet is priced as it should be made,
// whatever has been done before it; one made in spite of that is not for sale.
func TestVesselPrices(t *testing.T) {
	p := Problem{Checks: append(inspect.Instances(), inspect.FormInstances()...)}
	prices := InspectPrices(&p)
	at := func(names ...string) (list []inspect.Instance) {
		for _, n := range names {
			inst, err := inspect.ParseInstance(n)
			if err != nil {
				t.Fatal(err)
			}
			list = append(list, inst)
		}
		return list
	}
	const oil, level, back, cold, warm, coolant, pedal = 2, 4, 10, 120, 20, 1, 2
	for _, tc := range []struct {
		checks []string
		want   float64 // [min]
	}{
		{[]string{"oil_level"}, level + back + oil},
		{[]string{"oil_level", "washer_level", "oil_level"}, level + back + oil + 1 + oil},
		{[]string{"oil_level", "pedal_travel", "oil_level"}, level + back + oil + pedal + back + oil},
		{[]string{"coolant_level", "steering_level"}, cold + coolant + 1},
		{[]string{"coolant_level", "oil_level"}, cold + coolant + warm + level + back + oil},
		{[]string{"oil_level~run_back"}, math.Inf(1)},
	} {
		if got := prices.Minutes(&p, at(tc.checks...)); got != tc.want {
			t.Errorf("%v cost %g min, want %g", tc.checks, got, tc.want)
		}
	}
	alone, lifted := prices.Minutes(&p, at("spin@front_left")), prices.Minutes(&p, at("spin@front_left", "oil_level"))
	if want := alone + level + back + oil; lifted != want { // lowering it was paid for with lifting it
		t.Errorf("lifted, then dipped: %g min, want %g", lifted, want)
	}
	// One end is up at a time, and what was taken back for it is done again.
	front, rear := prices.Minutes(&p, at("pin_upper@front_left")), prices.Minutes(&p, at("pin_upper@rear_left"))
	again := prices.Minutes(&p, at("pin_upper@front_left", "pin_upper@rear_left", "pin_lower@front_left"))
	const brake, up, stand, off, dust, pin = 0.2, 3 + 2, 1, 3 + 3, 1, 2
	if want := front + rear + brake + up + stand + off + dust + pin; math.Abs(again-want) > 1e-9 {
		t.Errorf("front, rear and front again cost %g min, want %g", again, want)
	}
}

// TestPricesOfAColdCar: what was left overnight is read cold at once, and its oil
// only after a drive that warms it.
func TestPricesOfAColdCar(t *testing.T) {
	p := Problem{Checks: inspect.Instances()}
	prices := InspectPricesOf(&p, inspect.StoodOvernight())
	coolant, oil := []inspect.Instance{{Check: "coolant_level"}}, []inspect.Instance{{Check: "oil_level"}}
	if got := prices.Minutes(&p, coolant); got != 1 {
		t.Errorf("the coolant of a cold car costs %g min, want 1", got)
	}
	if got := prices.Minutes(&p, oil); got != 20+2 {
		t.Errorf("the oil of a cold car costs %g min, want the drive and the look", got)
	}
}

// TestPricesOfAHose: at a wheel that is off the hose costs its own minutes and
// nothing to put the wheel back.
func TestPricesOfAHose(t *testing.T) {
	p := Problem{Checks: inspect.Instances()}
	prices := InspectPrices(&p)
	pin := inspect.Instance{Check: "pin_upper", Wheel: physics.FrontRight, PerWheel: true}
	for id, want := range map[inspect.ID]float64{"wetness": 1.5, "hose_bulge": 1} {
		hose := inspect.Instance{Check: id, Wheel: physics.FrontRight, PerWheel: true}
		alone, after := prices.Minutes(&p, []inspect.Instance{hose}), prices.Minutes(&p, []inspect.Instance{pin, hose})-prices.Minutes(&p, []inspect.Instance{pin})
		if alone != want || after != want {
			t.Errorf("%s costs %g min with the wheel on and %g with it off, want %g", id, alone, after, want)
		}
	}
}
