package scene

import (
	"math"
	"testing"

	"evenwear/physics"
)

// posed puts a caliper on the bench and returns where it stands, drawn at factor.
func posed(t *testing.T, cond physics.WheelCondition, mpa, factor float64) (*benchCar, pose) {
	car := new(benchCar).at(t, cond, freePins, 0, mpa)
	return car, newPose(&car.view, &car.view.Now, factor)
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.01 {
		t.Errorf("%s: got %.3f, want %.3f units", what, got, want)
	}
}

func TestPoseGapIsEnlargedAndLiningIsNot(t *testing.T) {
	for _, k := range []float64{80, 20, 1} {
		_, p := posed(t, physics.WheelCondition{}, 0, k)
		near(t, "lining", p.face(axisBB, 0, 0).X-p.front(axisBB, 0, 0).X, 11*trueScale)
		near(t, "inner gap", p.disc[0]-p.face(axisBB, 0, 0).X, 0.12*k*trueScale)
		near(t, "outer gap", p.face(axisBB, 1, 0).X-p.disc[1], 0.12*k*trueScale)
		near(t, "piston end to plate", p.inner(axisBB, pistonL, 0).X, p.back(axisBB, 0, 0).X)
	}
}

func TestPosePressedTouchesAndSqueezes(t *testing.T) {
	car, p := posed(t, physics.WheelCondition{}, 1.28, 80)
	for pad := range 2 {
		near(t, "lining face on the disc", p.face(axisBB, pad, 0).X, p.disc[pad])
		squeeze := -(car.view.Now.Gap[pad][0] + car.view.Now.Gap[pad][1]) / 2
		if squeeze <= 0 {
			t.Fatal("nothing is squeezed: the case shows nothing")
		}
		near(t, "lining squeezed", math.Abs(p.face(axisBB, pad, 0).X-p.front(axisBB, pad, 0).X), (11-80*squeeze)*trueScale)
	}
	// The body has slid inboard by its travel, read at the bottom of the bore.
	_, rest := posed(t, physics.WheelCondition{}, 0, 80)
	near(t, "body", rest.bore-p.bore, car.view.Now.Body*80*trueScale)
	near(t, "piston", p.piston-rest.piston, (car.view.Now.Piston-car.view.Now.Body)*80*trueScale)
}

// TestPoseLeansAsTheBodyTilts: the drawn lean times the distance of the pins is
// the difference of their slides.
func TestPoseLeansAsTheBodyTilts(t *testing.T) {
	car, p := posed(t, stuckUpper, 1.28, 80)
	d := p.body(axisBB, 0, p.pinAt).X - p.body(axisBB, 0, -p.pinAt).X
	near(t, "pins apart", d, (car.view.BodyEnds[1]-car.view.BodyEnds[0])*80*trueScale)
	if d < 10 {
		t.Errorf("a stuck upper pin leans the body by %.1f units only: it cannot be seen", d)
	}
	if p.lean[0] <= 0 || p.lean[0] >= p.lean[1] {
		t.Errorf("the inner pad leans %.4f, want between 0 and the body's %.4f", p.lean[0], p.lean[1])
	}
}

// TestWornLiningLeavesNoFalseGap: 6 mm of even wear moves piston and body by 6 mm
// at true scale, however far movement is enlarged.
func TestWornLiningLeavesNoFalseGap(t *testing.T) {
	_, fresh := posed(t, physics.WheelCondition{}, 1.28, 80)
	_, worn := posed(t, physics.WheelCondition{Wear: [2][2]float64{{.006, .006}, {.006, .006}}}, 1.28, 80)
	near(t, "inner lining face", worn.face(axisBB, 0, 0).X, worn.disc[0])
	near(t, "outer lining face", worn.face(axisBB, 1, 0).X, worn.disc[1])
	if d := worn.piston - fresh.piston; math.Abs(d-6*trueScale) > 0.5 {
		t.Errorf("the piston stands %.2f units further out, want %.2f", d, 6*trueScale)
	}
}

// TestEverythingStandsInItsPlace over pressures and wear no drawn part leaves
// the section, and the factor never rises during a press.
func TestEverythingStandsInItsPlace(t *testing.T) {
	for name, cond := range map[string]physics.WheelCondition{
		"healthy": {}, "upper": stuckUpper, "both": {PinFriction: [2]float64{20000, 20000}},
		"worn askew": {Wear: [2][2]float64{{.008, .0075}, {.003, .0065}}, PinFriction: [2]float64{0, 20000}},
	} {
		for _, mpa := range []float64{0, 0.3, 1.28, 4, 9} {
			car := new(benchCar).at(t, cond, freePins, 30, mpa)
			b := newBench(testApp(t, false), car)
			if !b.now.fits() {
				t.Errorf("%s at %g MPa, ×%g: a part has left its place: %+v", name, mpa, b.axial, b.now)
			}
			if b.axial > car.view.Axial {
				t.Errorf("%s at %g MPa: drawn ×%g, allowed ×%g", name, mpa, b.axial, car.view.Axial)
			}
		}
	}
}

// TestLabelsFit: every wording of a label beside section B–B stands in the lines
// it has room for.
func TestLabelsFit(t *testing.T) {
	a := testApp(t, false)
	b := newBench(a, new(benchCar).at(t, physics.WheelCondition{}, freePins, 0, 0))
	room := map[string]int{"upper": 4, "lower": 3}
	for _, ids := range pinLabels {
		for i, side := range [2]string{"upper", "lower"} {
			if n := len(b.lines(a.sheet, b.fill(ids[i], "n", "10.88"), pinLabelStyle, pinLabelWidth)); n > room[side] {
				t.Errorf("%s takes %d lines, room for %d", ids[i], n, room[side])
			}
		}
	}
	for _, half := range [][2]float64{{1, 1}, {0, 1}, {1, 0}, {0, 0}} {
		for i := range 2 {
			id := halfLabelID(half, i)
			for _, line := range b.lines(a.sheet, b.fill(id, "n", "10.88"), pinLabelStyle, pinLabelWidth) {
				if w := a.sheet.Measure(pinLabelStyle, line); w > pinLabelWidth {
					t.Errorf("%s: %q is %.0f units wide, room for %.0f", id, line, w, pinLabelWidth)
				}
			}
		}
	}
}
