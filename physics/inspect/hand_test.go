package inspect

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// front is the demo front corner of the physics page.
func front() *physics.CornerSpec { return &physicstest.Hatchback().Front }

// pressedCorner takes a new caliper to a pressure [MPa] and back.
func pressedCorner(t *testing.T, cond physics.WheelCondition, peak float64) (physics.Corner, physics.CornerState) {
	t.Helper()
	c := physics.NewCorner(front(), &cond, "front_left")
	var s physics.CornerState
	for i := range 33 {
		p := peak * physics.Megapascal * (1 - math.Abs(float64(i)-16)/16)
		var err error
		if s, _, err = c.Settle(s, &physics.CornerLoad{Pressure: p}); err != nil {
			t.Fatal(err)
		}
	}
	return c, s
}

// TestHandForce: a body slides at the sum of its pins' friction, one pin end at
// its own, and boots add 0.3 N a millimetre each.
func TestHandForce(t *testing.T) {
	for _, row := range []struct {
		name                string
		upper, lower        float64 // [N] added
		slide, wantU, wantL float64 // [N]
	}{
		{"healthy", 0, 0, 30, 15, 15},
		{"dry", 185, 185, 400, 200, 200},
		{"upper dry", 200, 0, 230, 215, 15},
		{"upper seized", 5000, 0, 500, 500, 15},
		{"both seized", 5000, 5000, 500, 500, 500},
	} {
		c, s := pressedCorner(t, physics.WheelCondition{PinFriction: [2]float64{row.upper, row.lower}}, 8)
		for i, hands := range [][2]bool{{true, true}, {true, false}, {false, true}} {
			got, err := handForce(&c, front(), s, hands[0], hands[1])
			if err != nil {
				t.Fatalf("%s: %v", row.name, err)
			}
			want := []float64{row.slide, row.wantU, row.wantL}[i]
			// Boots and the tilt spring add a few newtons, below half a division of
			// the pull gauge; a pin that holds shows more than the gauge can.
			if got < want-0.1 || want < 500 && got > want+5 {
				t.Errorf("%s, hands %v: %.1f N, want %.0f and at most 5 more", row.name, hands, got, want)
			}
		}
	}
}

// TestPushForce: the seal's friction, and the piston's area times what pressure stays.
func TestPushForce(t *testing.T) {
	for _, row := range []struct {
		name     string
		cond     physics.WheelCondition
		pressure float64
		want     float64
	}{
		{"healthy", physics.WheelCondition{}, 0, 120},
		{"corroded", physics.WheelCondition{SealFriction: 2380, SealRate: 19.1e6}, 0, 2500},
		{"pins seized", physics.WheelCondition{PinFriction: [2]float64{5000, 5000}}, 0, 120},
		{"0.2 MPa kept back", physics.WheelCondition{}, 0.2e6, 120 + 0.2e6*(2.290221e-3+55e-6)},
	} {
		c, s := pressedCorner(t, row.cond, 8)
		got, err := pushForce(&c, s, row.pressure)
		if err != nil {
			t.Fatalf("%s: %v", row.name, err)
		}
		if math.Abs(got-row.want) > 1 {
			t.Errorf("%s: %.2f N, want %.2f ± 1", row.name, got, row.want)
		}
	}
}

// TestDragTorque: a healthy wheel turns freely; drag grows with dry pins, is
// gone with seized ones (the body stays where the turning disc put it), and is
// greatest behind a corroded piston (physics page §1: not monotone).
func TestDragTorque(t *testing.T) {
	drag := func(cond physics.WheelCondition) float64 {
		c, s := pressedCorner(t, cond, 8)
		got, _, err := dragTorque(&c, s, 0)
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	pins := func(f float64) physics.WheelCondition {
		return physics.WheelCondition{PinFriction: [2]float64{f, f}}
	}
	healthy, dry, seized := drag(physics.WheelCondition{}), drag(pins(250)), drag(pins(4000))
	corroded := drag(physics.WheelCondition{SealFriction: 2380, SealRate: 19.1e6})
	t.Logf("drag [N·m]: healthy %.2f, dry %.2f, seized %.2f, corroded %.2f", healthy, dry, seized, corroded)
	c, _ := Find("spin")
	word := func(v float64) string { return c.Meter.Words[c.Meter.Show(v)] }
	if got := [4]string{word(healthy), word(dry), word(seized), word(corroded)}; got[0] != "free" || got[1] == "free" || got[2] != "free" || got[3] == "free" || got[3] == "rubs" {
		t.Errorf("words %v, want free, not free, free, drags or held", got)
	}
}

// TestInfrared: a matt spot reads low by little, bright iron by much
// (physics page, heat: ε 0.9 and 0.2 to 0.3).
func TestInfrared(t *testing.T) {
	for _, row := range []struct{ temp, eps, want float64 }{
		{20, 0.9, 20}, {20, 0.25, 20}, {150, 0.9, 141.61}, {150, 0.25, 68.06},
	} {
		if got := infrared(row.temp, row.eps, 20); math.Abs(got-row.want) > 0.01 {
			t.Errorf("%g °C at ε %g reads %.3f, want %.2f (T⁴ by hand)", row.temp, row.eps, got, row.want)
		}
	}
}
