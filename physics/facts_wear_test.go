package physics

import (
	"math"
	"testing"
)

// drag is what the outer pad drags with [N] after a stop of 3 MPa, the disc turning.
func drag(t *testing.T, spec *Spec, cond Condition) float64 {
	t.Helper()
	var w wornWheel
	if err := w.begin(spec, &cond, FrontLeft); err != nil {
		t.Fatal(err)
	}
	s, _, err := w.settle(w.rest, &CornerLoad{Pressure: 3e6}, &w.seen[0][0])
	if err != nil {
		t.Fatal(err)
	}
	half, _, err := w.release(s, &lump{pressure: 3e6})
	if err != nil {
		t.Fatal(err)
	}
	return half[Outer][Upper] + half[Outer][Lower]
}

// TestFactDryPins: dry pins hold the body where the stop has left it, so the
// outer pad drags; it wears more than a healthy one and more than its mate, the
// more the drier.
func TestFactDryPins(t *testing.T) {
	healthy := pad(driven(t, Condition{}, 12000, 1), FrontLeft, Outer)
	lastDrag, lastWear := drag(t, hatchback(), Condition{}), healthy
	for _, f := range []float64{100, 200, 300, 400} {
		d, c := drag(t, hatchback(), pins(f, f)), driven(t, pins(f, f), 12000, 1)
		in, out := pad(c, FrontLeft, Inner), pad(c, FrontLeft, Outer)
		t.Logf("%.0f N a pin: drags %.0f N, wears %.2f mm inside, %.2f mm outside (healthy %.2f)", f, d, in*1e3, out*1e3, healthy*1e3)
		if d < lastDrag+50 || out < lastWear+0.1e-3 || out < 1.1*in {
			t.Errorf("%.0f N a pin: drags %.0f N after %.0f, wears %.2f mm after %.2f, the inner pad %.2f", f, d, lastDrag, out*1e3, lastWear*1e3, in*1e3)
		}
		lastDrag, lastWear = d, out
	}
}

// TestFactSeizedPins: pins that hold 2000 N and more keep the body from following
// its outer lining: that pad starves, the inner is the thinner one.
//
// Pins of 2000 N slide in a hard stop, and the outer pad settles at about half
// of healthy wear for ever. Pins that never slide are springs: the outer pad
// wears only until the hardest stop of the duty no longer bends them that far,
// p·A/2k, and then hardly at all. Both halves of that are the equations'; "about
// half" is the rule of thumb for the former, and for the first kilometres of the latter.
func TestFactSeizedPins(t *testing.T) {
	for _, km := range []float64{3000, 12000, 24000} {
		healthy := driven(t, Condition{}, km, 1)
		for _, f := range []float64{2000, 4000, 20000} {
			c := driven(t, pins(f, f), km, 1)
			in, out := pad(c, FrontLeft, Inner), pad(c, FrontLeft, Outer)
			share := out / pad(healthy, FrontLeft, Outer)
			t.Logf("%5.0f km, %5.0f N a pin: inner %.2f mm, outer %.2f mm, %.2f of healthy", km, f, in*1e3, out*1e3, share)
			if in < 1.5*out || in < 1.05*pad(healthy, FrontLeft, Inner) || share > 0.65 {
				t.Errorf("%.0f km, %.0f N a pin: inner %.2f mm, outer %.2f mm", km, f, in*1e3, out*1e3)
			}
			if f == 2000 && share < 0.45 {
				t.Errorf("%.0f km: pins that slide in a hard stop leave the outer pad %.2f of healthy wear, want about half", km, share)
			}
			front := hatchback().Front
			if bend := 6.5e6 * front.PistonArea() / (2 * front.PinRate); f == 20000 && out > bend {
				t.Errorf("%.0f km: the outer pad wore %.2f mm, springs give %.2f", km, out*1e3, bend*1e3)
			}
		}
	}
}

// TestFactSeizedPicture: linings of 11 mm at the time healthy ones have 7.0 left:
// about 6.4 inside and 8.9 outside with pins of 2000 N.
func TestFactSeizedPicture(t *testing.T) {
	km := 4.0e-3 / (pad(driven(t, Condition{}, 12000, 1), FrontRight, Inner) / 12000)
	c := driven(t, pins(2000, 2000), km, 1)
	in, out := 11-pad(c, FrontLeft, Inner)*1e3, 11-pad(c, FrontLeft, Outer)*1e3
	if math.Abs(in-6.4) > 0.3 || math.Abs(out-8.9) > 0.3 {
		t.Errorf("after %.0f km %.2f mm are left inside, %.2f mm outside, want 6.4 and 8.9", km, in, out)
	}
}

// TestFactDragPeaks: drag is not monotone in pin friction. It grows as twice the
// pins' force while they slide back, peaks, and falls as the body stays on its
// springs. A new car with pins of 2000 N still drags, since 15 µm of run-out rub
// on a body that no longer follows; some kilometres wear that off.
func TestFactDragPeaks(t *testing.T) {
	forces := []float64{15, 100, 200, 400, 600, 800, 1000, 1500, 2000}
	var drags []float64
	peak := 0
	for i, f := range forces {
		drags = append(drags, drag(t, hatchback(), pins(f, f)))
		if drags[i] > drags[peak] {
			peak = i
		}
	}
	t.Logf("%v N a pin drag %.0f N", forces, drags)
	if f := forces[peak]; f < 200 || f > 1000 {
		t.Errorf("drag peaks at %.0f N a pin: %.0f N", f, drags)
	}
	for i := 1; i < len(drags); i++ {
		if i <= peak && drags[i] < drags[i-1] || i > peak && drags[i] > drags[i-1] {
			t.Errorf("drag has more than one peak: %.0f N at %.0f N a pin", drags, forces)
		}
	}
	fresh := drags[len(drags)-1]
	if fresh > drags[peak]/4 {
		t.Errorf("pins of 2000 N drag %.0f N, the peak is %.0f", fresh, drags[peak])
	}
	still := hatchback()
	still.Front.Runout = 0
	// Pins that no stop moves: at 2000 N the hard press every measurement begins with slides them again.
	fresh = drag(t, hatchback(), pins(20000, 20000))
	flat, later := drag(t, still, pins(20000, 20000)), drag(t, hatchback(), driven(t, pins(20000, 20000), 1000, 1))
	t.Logf("20 kN a pin: new %.0f N, without run-out %.0f N, after 1000 km %.0f N", fresh, flat, later)
	if fresh < 50 || flat > fresh/2 || later > 5 {
		t.Errorf("20 kN a pin: new %.0f N, without run-out %.0f, after 1000 km %.0f", fresh, flat, later)
	}
}

// TestFactReservoir: the reservoir falls by what pads and discs have worn, times
// the pistons' area, since the pistons follow. Topping up hides that, and with
// new pads the pistons go home and what was topped up stands over the brim.
func TestFactReservoir(t *testing.T) {
	spec := pedalled()
	rest := func(cond Condition) State {
		_, s := build(t, spec, cond)
		return s
	}
	worn, err := Drive(spec, Condition{}, MixedDuty(), 30000)
	if err != nil {
		t.Fatal(err)
	}
	swept := 0.0
	for w := range Wheel(NumWheels) {
		c := worn.Wheels[w]
		for i := range 2 {
			swept += ((c.Wear[i][Upper]+c.Wear[i][Lower])/2 + c.DiscWear[i]) * spec.Corner(w).PistonArea()
		}
	}
	full, low := rest(Condition{}), rest(worn)
	fall := full.Standing - low.Standing
	t.Logf("30 000 km: %.1f cm³ worn, level falls by %.1f cm³", swept*1e6, fall*1e6)
	if swept < 30e-6 || math.Abs(fall-swept) > 0.03*swept {
		t.Errorf("%.1f cm³ worn, the reservoir falls by %.1f", swept*1e6, fall*1e6)
	}
	topped := worn
	topped.Fluid += fall
	if s := rest(topped); math.Abs(s.Standing-full.Standing) > 1e-9 {
		t.Errorf("topped up it stands at %.2f cm³, new at %.2f", s.Standing*1e6, full.Standing*1e6)
	}
	for w := range topped.Wheels {
		topped.Wheels[w].Wear = [2][2]float64{}
	}
	s, over := rest(topped), fall-spec.Reservoir.MaxToBrim
	discs := fall
	for w := range Wheel(NumWheels) {
		for i := range 2 {
			discs -= (worn.Wheels[w].Wear[i][Upper] + worn.Wheels[w].Wear[i][Lower]) / 2 * spec.Corner(w).PistonArea()
		}
	}
	t.Logf("new pads: %.1f cm³ spill", s.Lost*1e6)
	if s.Lost < 1e-6 || math.Abs(s.Lost-(over-discs)) > 0.05*over {
		t.Errorf("new pads spill %.1f cm³, want %.1f", s.Lost*1e6, (over-discs)*1e6)
	}
}
