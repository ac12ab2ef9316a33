package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// TestBushRubber: the grip follows from the rubber's own flow. A wall squeezed by ε
// sends its volume to both ends; it is held by the bore and slides on the pin, so the
// flow is half a parabola and its shear builds the pressure up: dp/dx = −3·G·ε·x/t²,
// G = E/3. Summed over the length by another way than the formula's.
func TestBushRubber(t *testing.T) {
	const over, d, l, wall, young, mu, n = 0.3e-3, 10e-3, 20e-3, 2e-3, 4e6, 0.2, 10_000
	const strain, shear = over / 2 / wall, young / 3
	p, force := 0.0, 0.0
	for i := range n { // from the open end to the middle
		dx := l / 2 / n
		x := l/2 - (float64(i)+0.5)*dx
		p += 3 * shear * strain * x / (wall * wall) * dx
		force += 2 * mu * math.Pi * d * dx * (p + 4.0/3*young*strain)
	}
	if got := physics.BushGrip(over); math.Abs(got/force-1) > 1e-3 {
		t.Errorf("a pin %g mm too thick slides at %.2f N, its rubber's flow says %.2f", over/mm, got, force)
	}
	if g := physics.BushGrip(-over); g != 0 {
		t.Errorf("a pin with play is gripped by %g N", g)
	}
}

// TestTightBush: pins in bushes a third of a millimetre too narrow drag like dry
// ones (common practice, no source: to the hand both are "tight"), and what is taken
// off a pin by cleaning leaves it as it is, where dry ones are freed. Workshop manuals
// say that swollen guide rubbers make a pin bind without any damage to the pin, and
// that what is worn or damaged of pin and bore is replaced, not cleaned.
func TestTightBush(t *testing.T) {
	drag := func(c physics.WheelCondition) float64 {
		_, free, _ := rubbed(t, at(physics.FrontLeft, worn(c, 4*mm)))
		return free.Forces[physics.FrontLeft].Outer()
	}
	const over = 0.3 * mm
	f := physics.BushGrip(over)
	if f < 100 || f > 400 {
		t.Errorf("0.3 mm too narrow grips with %.0f N, a dry pin with 100 to 400", f)
	}
	tight, dry := physics.WheelCondition{PinPinch: [2]float64{over, over}}, physics.WheelCondition{PinFriction: [2]float64{f, f}}
	if a, b := drag(tight), drag(dry); a != b {
		t.Errorf("gripped by its bush the pad rubs with %.6f N, by as much rust %.6f", a, b)
	}
	tight.PinFriction, dry.PinFriction = [2]float64{100, 100}, [2]float64{300, 300}
	cleaned := func(c physics.WheelCondition) float64 {
		c.PinFriction = [2]float64{}
		return drag(c)
	}
	sound, was, is, free := cleaned(physics.WheelCondition{}), drag(tight), cleaned(tight), cleaned(dry)
	t.Logf("outer pad rubs: dry in a tight bush %.0f N, cleaned %.0f; only dry and cleaned %.0f, sound %.0f", was, is, free, sound)
	if !(was > is && is > sound+100) || free != sound {
		t.Errorf("rubs with %.1f N, cleaned %.1f; a dry pin cleaned %.1f, sound %.1f", was, is, free, sound)
	}
}

// TestBushRefuses: a pin that no hand pushes into its bush is said to be one.
func TestBushRefuses(t *testing.T) {
	_, err := physics.New(physicstest.Hatchback(), at(physics.RearRight, physics.WheelCondition{PinPinch: [2]float64{0, 2e-3}}))
	const want = "car: rear_right.pin_pinch is 0.002, want 0 to 0.001"
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %q", err, want)
	}
}
