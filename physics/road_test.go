package physics

import (
	"math"
	"testing"
)

func ramped(m *Model, v float64, final [NumWheels]float64, in Input, dt float64) (State, [NumWheels]bool) {
	s := State{Speed: v}
	var ever [NumWheels]bool
	for i := 0; s.Speed > 0; i++ {
		share := min(1, float64(i+1)*dt/0.15)
		torque := final
		for w := range torque {
			torque[w] *= share
		}
		m.road(&s, &torque, &in, dt)
		for w := range ever {
			ever[w] = ever[w] || s.Locked[w]
		}
	}
	return s, ever
}

// TestLocks: rear wheels lock when they ask for more than their unloaded axle
// can give, and only then; a wet wheel locks first; anti-lock never locks.
func TestLocks(t *testing.T) {
	m := &Model{spec: hatchback()}
	b := &m.spec.Body
	weight := b.Mass * Gravity
	// At z = 0.8 the rear carries 0.4 − 0.8·0.54/2.55 = 0.2306 of the car.
	rear := 0.95 * 0.2306 * weight / 2 * 0.3
	front := 0.8*weight/2*0.3 - rear
	_, ever := ramped(m, 27, [4]float64{front, front, 0.97 * rear, 0.97 * rear}, Input{}, 0.001)
	if ever != [4]bool{} {
		t.Errorf("locked %v below the limit", ever)
	}
	_, ever = ramped(m, 27, [4]float64{front, front, 1.10 * rear, 1.10 * rear}, Input{}, 0.001)
	if ever != [4]bool{false, false, true, true} {
		t.Errorf("locked %v with rear brakes 10 %% too strong", ever)
	}
	_, ever = ramped(m, 27, [4]float64{front, front, 0, 0}, Input{Surface: [4]float64{0.5, 0, 0, 0}}, 0.001)
	if ever != [4]bool{true, false, false, false} {
		t.Errorf("locked %v with one wheel on ice", ever)
	}
	spec := *m.spec
	spec.Body.AntiLock = true
	locks, _ := ramped(m, 27, [4]float64{1e4, 1e4, 1e4, 1e4}, Input{}, 0.001)
	anti, ever := ramped(&Model{spec: &spec}, 27, [4]float64{1e4, 1e4, 1e4, 1e4}, Input{}, 0.001)
	if ever != [4]bool{} || anti.Distance >= locks.Distance {
		t.Errorf("anti-lock: locked %v, %.1f m against %.1f m", ever, anti.Distance, locks.Distance)
	}
}

// TestRoadSteps: steps of 1 ms, 20 ms and 1 s stop the same car within 0.2 m of
// the same place from 100 km/h (the ramp itself differs by at most a step).
func TestRoadSteps(t *testing.T) {
	m := &Model{spec: hatchback()}
	torque := [4]float64{900, 900, 250, 250}
	stop := func(dt float64) float64 {
		s := State{Speed: 100 * KmPerHour}
		for s.Speed > 0 {
			m.road(&s, &torque, &Input{}, dt)
		}
		return s.Distance
	}
	fine := stop(0.001)
	for _, dt := range []float64{0.02, 1} {
		if d := stop(dt) - fine; math.Abs(d) > 0.2 {
			t.Errorf("steps of %g s stop %.3f m further than steps of 1 ms (%.2f m)", dt, d, fine)
		}
	}
}

// TestStandsAndRolls: brakes hold a car on a slope and let it go without.
func TestStandsAndRolls(t *testing.T) {
	m := &Model{spec: hatchback()}
	in := Input{Grade: 0.10}
	s := State{}
	held, free := [4]float64{200, 200, 50, 50}, [4]float64{}
	m.road(&s, &held, &in, 1)
	if s.Speed != 0 || s.Distance != 0 {
		t.Errorf("a held car rolled: %+v", s.Speed)
	}
	m.road(&s, &free, &in, 1)
	if want := Gravity * (0.10 - 0.011) / math.Sqrt(1.01); math.Abs(s.Speed-want) > 0.01 {
		t.Errorf("after a second down 10 %% it goes %.3f m/s, want %.3f", s.Speed, want)
	}
}
