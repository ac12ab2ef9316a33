package physics_test

import (
	"math"
	"strings"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

func car(t testing.TB, cond physics.Condition) (*physics.Model, physics.State) {
	t.Helper()
	return physicstest.Rest(t, physicstest.Hatchback(), cond)
}

// TestStopPulls: an oily left front lining pulls to the right.
func TestStopPulls(t *testing.T) {
	var cond physics.Condition
	for i := range 2 {
		for j := range 2 {
			cond.Wheels[physics.FrontLeft].MuLoss[i][j] = 0.5
		}
	}
	m, s := car(t, cond)
	r, err := m.Stop(s, physics.StopPlan{Speed: 50 * physics.KmPerHour, Foot: 80})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(r.Imbalance[0]-0.5) > 0.02 || r.Yaw <= 0 || r.Pull <= 0 {
		t.Errorf("half the friction at the front left: imbalance %.3f, yaw %.0f N·m, pull %.2f m/s², want 0.5 and a pull to the right", r.Imbalance[0], r.Yaw, r.Pull)
	}
}

// TestStopPulsates: thickness variation is felt; run-out alone hardly.
func TestStopPulsates(t *testing.T) {
	pulse := func(c physics.WheelCondition) (float64, float64) {
		var cond physics.Condition
		cond.Wheels[physics.FrontLeft] = c
		m, s := car(t, cond)
		r, err := m.Stop(s, physics.StopPlan{Speed: 100 * physics.KmPerHour, Foot: 60})
		if err != nil {
			t.Fatal(err)
		}
		return r.Pulsation[physics.FrontLeft], r.PedalPulse
	}
	healthy, hp := pulse(physics.WheelCondition{})
	runout, rp := pulse(physics.WheelCondition{Runout: 0.1e-3})
	thick, tp := pulse(physics.WheelCondition{Thickness: 0.04e-3})
	t.Logf("torque variation: healthy %.4f, run-out %.4f, thickness %.4f; pedal µm %.1f %.1f %.1f", healthy, runout, thick, hp*1e6, rp*1e6, tp*1e6)
	if thick < 0.01 || thick < 2*runout || healthy > 0.02 {
		t.Errorf("torque variation: healthy %.4f, 0.1 mm run-out %.4f, 0.04 mm thickness variation %.4f", healthy, runout, thick)
	}
}

// TestPedalFor: the solved foot gives the deceleration, and a weak car gives the limit.
func TestPedalFor(t *testing.T) {
	m, s := car(t, physics.Condition{})
	last := 0.0
	for _, a := range []float64{1, 3, 6} {
		foot, err := m.PedalFor(s, a, 20, 500)
		if err != nil {
			t.Fatal(err)
		}
		if foot <= last {
			t.Errorf("%g m/s² needs %.1f N after %.1f N", a, foot, last)
		}
		last = foot
	}
	if foot, err := m.PedalFor(s, 14, 20, 500); err != nil || foot != 500 {
		t.Errorf("beyond the tyres: %.1f N, %v, want the limit", foot, err)
	}
}

// TestTourWarms: a dry pair of pins runs its disc hotter than its mate's, the
// healthy car's two front discs are alike, and front is warmer than rear.
func TestTourWarms(t *testing.T) {
	m, s := car(t, physics.Condition{})
	end, err := m.Tour(s, physics.MixedDuty(), 8)
	if err != nil {
		t.Fatal(err)
	}
	h := end.Heat
	t.Logf("healthy: %.1f %.1f %.1f %.1f °C, hats %.1f %.1f", h[0].Face(), h[1].Face(), h[2].Face(), h[3].Face(), h[0].Hat, h[2].Hat)
	if math.Abs(h[0].Face()-h[1].Face()) > 1 || h[0].Face() < 40 || h[0].Face() < h[2].Face() || end.Speed != 0 {
		t.Errorf("healthy discs at %.1f %.1f %.1f %.1f °C, speed %g", h[0].Face(), h[1].Face(), h[2].Face(), h[3].Face(), end.Speed)
	}
	var cond physics.Condition
	cond.Wheels[physics.FrontLeft].PinFriction = [2]float64{235, 235}
	m, s = car(t, cond)
	if end, err = m.Tour(s, physics.MixedDuty(), 8); err != nil {
		t.Fatal(err)
	}
	t.Logf("dry pins: %.1f %.1f °C", end.Heat[0].Face(), end.Heat[1].Face())
	if end.Heat[0].Face() < end.Heat[1].Face()+20 {
		t.Errorf("disc beside dry pins %.1f °C, its mate %.1f °C, want at least 20 K more", end.Heat[0].Face(), end.Heat[1].Face())
	}
}

// TestDescend: the heat of a descent is the car's height less the road's share.
func TestDescend(t *testing.T) {
	m, s := car(t, physics.Condition{})
	r, err := m.Descend(s, 0.08, 4000, 40*physics.KmPerHour)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("foot %.1f N, travel %.1f mm, discs %.0f/%.0f °C, fluid %.0f/%.0f °C", r.Foot, r.Travel*1e3, r.DiscPeak[0], r.DiscPeak[2], r.FluidPeak[0], r.FluidPeak[2])
	if r.DiscPeak[0] < 120 || r.DiscPeak[0] > 600 || r.FluidPeak[0] < 25 || r.FluidPeak[0] > r.DiscPeak[0] || r.Foot >= 500 {
		t.Errorf("implausible descent: %+v", r)
	}
	steep, err := m.Descend(s, 0.12, 4000, 40*physics.KmPerHour)
	if err != nil || steep.DiscPeak[0] <= r.DiscPeak[0] {
		t.Errorf("12 %% heats to %.0f °C, 8 %% to %.0f °C (%v)", steep.DiscPeak[0], r.DiscPeak[0], err)
	}
}

// TestStopRefuses: bad input is a sentence.
func TestStopRefuses(t *testing.T) {
	m, s := car(t, physics.Condition{})
	for want, p := range map[string]physics.StopPlan{
		"speed NaN":    {Speed: math.NaN(), Foot: 100},
		"foot -1":      {Speed: 20, Foot: -1},
		"foot +Inf":    {Speed: 20, Foot: math.Inf(1)},
		"step 7 ms":    {Speed: 20, Foot: 100, Millis: 7},
		"neither":      {Speed: 20},
		"surface of":   {Speed: 20, Foot: 100, Surface: [4]float64{0, 2, 0, 0}},
		"deceleration": {Speed: 20, Decel: 99},
	} {
		if _, err := m.Stop(s, p); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want a sentence with %q, got %v", want, err)
		}
	}
	if _, err := m.Descend(s, 0.1, -5, 10); err == nil {
		t.Error("a descent of −5 m was driven")
	}
	if _, err := m.PedalFor(s, math.NaN(), 10, 500); err == nil {
		t.Error("a deceleration of NaN was solved")
	}
}

func BenchmarkStop(b *testing.B) {
	m, s := car(b, physics.Condition{})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Stop(s, physics.StopPlan{Speed: 100 * physics.KmPerHour, Foot: 120}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTour(b *testing.B) {
	m, s := car(b, physics.Condition{})
	for b.Loop() {
		if _, err := m.Tour(s, physics.MixedDuty(), 8); err != nil {
			b.Fatal(err)
		}
	}
}

// TestDescendEndsBurnt: with both compensating ports covered the fluid that warms
// presses the pads on, which warms it more. The descent of a heavy car ends where a
// brake burns, with what was driven until then; that of a healthy one at its foot.
func TestDescendEndsBurnt(t *testing.T) {
	const length = 12000
	for _, c := range []struct {
		cond  physics.Condition
		burns bool
	}{{physics.Condition{}, false}, {physics.Condition{PortCover: [2]float64{2e-3, 2e-3}}, true}} {
		m, s := car(t, c.cond)
		r, err := m.Descend(s, 0.15, length, 30*physics.KmPerHour)
		if err != nil {
			t.Fatal(err)
		}
		hottest := r.Hottest()
		t.Logf("ports covered %v: %.0f m, hottest %.0f °C", c.burns, r.Way, hottest)
		if burnt := hottest > physics.Burnt; burnt != c.burns || (r.Way < length-1) != c.burns {
			t.Errorf("ports covered %v: hottest %.0f °C after %.0f of %d m", c.burns, hottest, r.Way, length)
		}
		if hottest > 1100 { // it ends in the second it burns
			t.Errorf("driven on to %.0f °C", hottest)
		}
	}
}
