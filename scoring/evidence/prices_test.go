package evidence

import (
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
)

// TestInspectPrices: a wheel taken off is paid for once, with its chocks, lift,
// stand, nuts and dust, by the minutes of the catalogue.
func TestInspectPrices(t *testing.T) {
	p := Problem{Checks: inspect.Instances()}
	prices := InspectPrices(&p)
	first := inspect.Instance{Check: "pin_upper", Wheel: physics.FrontRight, PerWheel: true}
	second := inspect.Instance{Check: "pin_lower", Wheel: physics.FrontRight, PerWheel: true}
	bare := 0.0
	for _, name := range []string{"chock_rear", "lift_front", "slacken_nuts@front_right", "stand@front_right", "wheel_off@front_right", "wipe_dust@front_right"} {
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
