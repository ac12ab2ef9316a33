package physics

import (
	"math"
	"testing"
)

// stored is the heat in one brake above 0 °C [J].
func (b *brakeHeat) stored(h *HeatState) float64 {
	ring := 2 * b.area * b.ring.depth * b.ring.rhoC
	return ring*h.Mean() + b.hatC*h.Hat + b.padC[0]*h.Pad[0] + b.padC[1]*h.Pad[1] + b.pistonC*h.Piston + b.fluidC*h.Fluid
}

// TestHeatIsConserved: what is rubbed in is stored or has gone to the air; in a
// second almost nothing has gone.
func TestHeatIsConserved(t *testing.T) {
	spec := hatchback()
	for _, c := range []*CornerSpec{&spec.Front, &spec.Rear} {
		b := newBrakeHeat(c, &WheelCondition{})
		var h HeatState
		h.CoolTo(20)
		before := b.stored(&h)
		load := heatLoad{power: [2]float64{20e3, 10e3}, pressed: [2]bool{true, true}, air: 20}
		for range 1000 {
			b.step(&h, &load, 0.001)
		}
		if got := b.stored(&h) - before; math.Abs(got-30e3) > 60 || got > 30e3 {
			t.Errorf("30 kJ rubbed in, %.1f kJ found", got/1e3)
		}
	}
}

// TestHeatStepsAgree: ten minutes of a dragging brake in steps of 1 s, 20 ms
// and 1 ms end within half a degree of one another.
func TestHeatStepsAgree(t *testing.T) {
	run := func(dt float64) HeatState {
		b := newBrakeHeat(&hatchback().Front, &WheelCondition{})
		var h HeatState
		h.CoolTo(20)
		load := heatLoad{power: [2]float64{300, 900}, pressed: [2]bool{true, true}, speed: 14, turning: 46, air: 20}
		for range int(math.Round(600 / dt)) {
			b.step(&h, &load, dt)
		}
		return h
	}
	fine := run(0.001)
	for _, dt := range []float64{0.02, 1} {
		h := run(dt)
		for _, d := range []float64{h.Face() - fine.Face(), h.Pad[Outer] - fine.Pad[Outer], h.Fluid - fine.Fluid} {
			if math.Abs(d) > 0.5 {
				t.Errorf("step %g s: %+v, 1 ms: %+v", dt, h, fine)
				break
			}
		}
	}
	if fine.Face() < 80 || fine.Face() > 400 || fine.Fluid < 21 || fine.Fluid > fine.Face() {
		t.Errorf("implausible after ten minutes of 1.2 kW: %+v", fine)
	}
}

// TestCoolsToAir: a parked hot brake ends at the air's temperature, never below.
func TestCoolsToAir(t *testing.T) {
	b := newBrakeHeat(&hatchback().Rear, &WheelCondition{})
	var h HeatState
	h.CoolTo(400)
	load := heatLoad{air: 5}
	last := b.stored(&h)
	for range 40_000 {
		b.step(&h, &load, 1)
		if now := b.stored(&h); now > last {
			t.Fatal("a brake in cool air took up heat")
		} else {
			last = now
		}
	}
	if x := h.Face(); x < 5-1e-9 || x > 8 {
		t.Errorf("disc at %.2f °C after eleven hours in air of 5 °C", x)
	}
}

func TestFade(t *testing.T) {
	c := &hatchback().Front
	last := 1.0
	for x := -40.0; x < 1200; x += 10 {
		f := c.Fade(x)
		if f > last || f < fadeFloor || (x <= c.FadeKnee && f != 1) {
			t.Errorf("fade at %g °C = %g after %g", x, f, last)
		}
		last = f
	}
	if last != fadeFloor {
		t.Errorf("a glowing disc keeps %g", last)
	}
}

func TestHeatAllocatesNothing(t *testing.T) {
	spec := hatchback()
	m := Model{spec: spec}
	for w := range Wheel(NumWheels) {
		m.corners[w] = NewCorner(spec.Corner(w), &WheelCondition{}, w.String())
	}
	m.workInHeat()
	s := State{Speed: 30}
	for w := range s.Heat {
		s.Heat[w].CoolTo(20)
		s.Forces[w].Half = [2][2]float64{{1000, 1000}, {1000, 1000}}
	}
	in := Input{}
	if n := testing.AllocsPerRun(200, func() { m.move(&s, &in, 0.001) }); n != 0 {
		t.Errorf("%g allocations a step", n)
	}
	if s.Speed >= 30 || s.Heat[0].Face() <= 20 {
		t.Error("nothing moved")
	}
}

func BenchmarkMove(b *testing.B) {
	spec := hatchback()
	m := Model{spec: spec}
	for w := range Wheel(NumWheels) {
		m.corners[w] = NewCorner(spec.Corner(w), &WheelCondition{}, w.String())
	}
	m.workInHeat()
	s := State{}
	in := Input{}
	b.ReportAllocs()
	for b.Loop() {
		s.Speed = 20
		m.move(&s, &in, 0.001)
	}
}
