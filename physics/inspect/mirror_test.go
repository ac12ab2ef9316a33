package inspect

import (
	"testing"

	"evenwear/physics"
)

// TestMirrored: a car and its mirror image show the same at a check and at its
// mirror image; a pull is turned round. The circuits of the car are diagonal, so
// the fault is one that the two serve alike.
func TestMirrored(t *testing.T) {
	var cond physics.Condition
	cond.Wheels[physics.FrontLeft].PinFriction = [2]float64{5000, 200}
	cond.Wheels[physics.FrontLeft].Wear = [2][2]float64{{3e-3, 4e-3}, {2e-3, 1e-3}}
	image := cond
	image.Wheels[physics.FrontLeft] = physics.WheelCondition{}
	image.Wheels[physics.FrontRight].PinFriction = [2]float64{200, 5000}
	image.Wheels[physics.FrontRight].Wear = [2][2]float64{{4e-3, 3e-3}, {1e-3, 2e-3}}
	car, mirrored := world(t, cond), world(t, image)
	turned, blind := map[ID]bool{}, 0
	for _, i := range Instances() {
		there, ok := i.Mirrored(true, true)
		if !ok {
			blind++
			continue
		}
		if back, _ := there.Mirrored(true, true); back != i {
			t.Errorf("%s mirrored twice is %s", i, back)
		}
		c, _ := Find(i.Check)
		a, b := measure(t, car, i.String())/c.Meter.PerUnit, measure(t, mirrored, there.String())/c.Meter.PerUnit
		if c.Meter.Lo < 0 && a*b < 0 {
			turned[i.Check] = true
			b = -b
		}
		if d := a - b; d > c.Meter.Division/3 || d < -c.Meter.Division/3 {
			t.Errorf("%s: %.4g, in the mirror %s: %.4g %s", i, a, there, b, c.Meter.Unit)
		}
	}
	if !turned["slow_stop"] || !turned["pull"] {
		t.Errorf("turned round are %v, want a pull in a slow and in a fast stop among them", turned)
	}
	if blind != physics.NumWheels {
		t.Errorf("%d checks have no mirror image, want one a wheel", blind)
	}
	if got, _ := (Instance{Check: "pin_upper", PerWheel: true}).Mirrored(false, true); got != (Instance{Check: "pin_lower", PerWheel: true}) {
		t.Errorf("the upper pin mirrored is %s", got)
	}
}
