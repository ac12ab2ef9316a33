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
	turned := 0
	for _, i := range Instances() {
		if back := i.Mirrored(true, true).Mirrored(true, true); back != i {
			t.Errorf("%s mirrored twice is %s", i, back)
		}
		c, _ := Find(i.Check)
		a, b := measure(t, car, i.String())/c.Meter.PerUnit, measure(t, mirrored, i.Mirrored(true, true).String())/c.Meter.PerUnit
		if c.Meter.Lo < 0 && a*b < 0 {
			turned++
			b = -b
		}
		if d := a - b; d > c.Meter.Division/3 || d < -c.Meter.Division/3 {
			t.Errorf("%s: %.4g, in the mirror %s: %.4g %s", i, a, i.Mirrored(true, true), b, c.Meter.Unit)
		}
	}
	if turned != 2 { // the pull of a slow and of a fast stop
		t.Errorf("%d checks changed their sign, want 2", turned)
	}
	if got := (Instance{Check: "pin_upper", PerWheel: true}).Mirrored(false, true); got != (Instance{Check: "pin_lower", PerWheel: true}) {
		t.Errorf("the upper pin mirrored is %s", got)
	}
}
