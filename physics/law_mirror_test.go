package physics_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// mirrored exchanges left and right in whatever comes in an array of wheels.
func mirrored[T any](a [physics.NumWheels]T) (b [physics.NumWheels]T) {
	for w := range a {
		b[w] = a[physics.Wheel(w).Mate()]
	}
	return b
}

// lopsided is a car whose every wheel is different.
func lopsided() physics.Condition {
	var c physics.Condition
	c.Wheels[physics.FrontLeft] = physics.WheelCondition{PinFriction: [2]float64{8000, 0}, Wear: [2][2]float64{{2e-3, 3e-3}, {1e-3, 0}}, Runout: 60e-6}
	c.Wheels[physics.FrontRight] = physics.WheelCondition{MuLoss: [2][2]float64{{0.3, 0.3}, {0.1, 0}}, Air: 1e-6, Thickness: 20e-6}
	c.Wheels[physics.RearLeft] = physics.WheelCondition{SealFriction: 2000, SealRate: 15e6, Leak: 1e-9}
	c.Wheels[physics.RearRight] = physics.WheelCondition{HoseHold: 0.4e6, HoseReturn: 20, DiscWear: [2]float64{1e-4, 3e-4}}
	c.Water = 0.03
	c.Wheels[physics.FrontRight].BondLost, c.Wheels[physics.FrontRight].DiscFilm = [2]float64{0.2, 0.5}, 0.7
	c.Wheels[physics.RearLeft].ValveStuck, c.Wheels[physics.RearRight].ValveStuck = 0.4, -0.3
	c.Wheels[physics.RearLeft].PinBend, c.Wheels[physics.RearLeft].PinFriction = [2]float64{2e-6, 0}, [2]float64{250, 0}
	c.Wheels[physics.RearRight].SealLeak, c.Wheels[physics.FrontLeft].ScrewLeak = 2e-10, 3e-10
	c.VentShut, c.DiaphragmLeak, c.LowGrade, c.Fluid = 0.8, 0.3, 0.5, -15e-6
	return c
}

// TestMirror: a car seen in a mirror, circuits and all, does everything as its
// image does: pressures, places, temperatures, ways and forces to 1e-9 of
// themselves, and what turns it turns it the other way. Its own image is not
// itself: unmirrored the comparison fails.
func TestMirror(t *testing.T) {
	left, image := physicstest.Hatchback(), physicstest.Hatchback()
	image.Circuit = mirrored(left.Circuit)
	cond := lopsided()
	other := cond
	other.Wheels = mirrored(cond.Wheels)
	m, a := model(t, left, cond)
	n, b := model(t, image, other)
	surface := [physics.NumWheels]float64{0.1, 0.5, 0.2, 0.4}
	a.Speed, b.Speed = 25, 25
	apart := func(a, b *physics.State) (worst float64) {
		rel := func(x, y, unit float64) { worst = max(worst, math.Abs(x-y)/max(unit, math.Abs(x))) }
		rel(a.Speed, b.Speed, 1)
		rel(a.Distance, b.Distance, 1)
		for w := range physics.Wheel(physics.NumWheels) {
			v := w.Mate()
			rel(a.Pressure[w], b.Pressure[v], 1e5)
			rel(a.Corners[w].X, b.Corners[v].X, 1e-3)
			rel(a.Corners[w].Tilt, b.Corners[v].Tilt, 1e-3)
			rel(a.Forces[w].Outer(), b.Forces[v].Outer(), 1000)
			rel(a.Heat[w].Face(), b.Heat[v].Face(), 20)
			rel(a.Cavity[w], b.Cavity[v], 1e-6)
			if a.Locked[w] != b.Locked[v] {
				worst = 1
			}
		}
		return worst
	}
	for i := range 1500 {
		in := physics.Input{Foot: 400 * math.Abs(math.Sin(float64(i)/200)), Engine: true, Surface: surface}
		image := in
		image.Surface = mirrored(surface)
		var err error
		if a, err = m.Step(a, in, 1); err != nil {
			t.Fatal(err)
		}
		if b, err = n.Step(b, image, 1); err != nil {
			t.Fatal(err)
		}
		if d := apart(&a, &b); !(d <= 1e-9) {
			t.Fatalf("step %d: the image is off by %.3g of itself", i, d)
		}
	}
	if d := apart(&a, &a); d < 1e-3 {
		t.Errorf("the car is its own image (%g): nothing is tested", d)
	}
	one, err := m.Stop(a, physics.StopPlan{Speed: 20, Foot: 120, Surface: surface})
	if err != nil {
		t.Fatal(err)
	}
	two, err := n.Stop(b, physics.StopPlan{Speed: 20, Foot: 120, Surface: mirrored(surface)})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(one.Pull+two.Pull) > 1e-7*math.Abs(one.Pull) || math.Abs(one.Distance-two.Distance) > 1e-7*one.Distance || math.Abs(one.Pull) < 0.01 {
		t.Errorf("pulls %.9g and %.9g m/s², ways %.9g and %.9g m", one.Pull, two.Pull, one.Distance, two.Distance)
	}
}

// upsideDown exchanges the upper and the lower half of a wheel.
func upsideDown(c physics.WheelCondition) physics.WheelCondition {
	for _, v := range []*[2]float64{&c.PinFriction, &c.PinBend, &c.PinPinch, &c.PinSwelling, &c.PinSoaked, &c.PinRusting, &c.PinAnchor, &c.Wear[0], &c.Wear[1], &c.MuLoss[0], &c.MuLoss[1]} {
		v[0], v[1] = v[1], v[0]
	}
	c.PinAnchorSet[0], c.PinAnchorSet[1] = c.PinAnchorSet[1], c.PinAnchorSet[0]
	return c
}

// TestMirrorUpsideDown: a caliper upside down does everything upside down, with any
// condition: pressed, released and driven 500 km its halves change places and its tilt
// its sign, to a micronewton, a picometre of way and a nanometre of wear.
func TestMirrorUpsideDown(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	spec := physicstest.Hatchback()
	unlike := 0
	for n := range 60 {
		cond := anyCondition(rng)
		c := cond.Wheels[physics.FrontLeft]
		c.PinRusting, c.SealRusting = [2]float64{50 * rng.Float64(), 0}, 20*rng.Float64()
		up, down := physics.NewCorner(&spec.Front, &c, "up"), physics.Corner{}
		other := upsideDown(c)
		down = physics.NewCorner(&spec.Front, &other, "down")
		var a, b physics.CornerState
		var f, g physics.CornerForces
		var err error
		for _, p := range []float64{0.5, 2, 5, 8, 3, 1, 0} {
			if a, f, err = up.Settle(a, &physics.CornerLoad{Pressure: p * mpa, Tight: true}); err != nil {
				t.Fatal(err)
			}
			if b, g, err = down.Settle(b, &physics.CornerLoad{Pressure: p * mpa, Tight: true}); err != nil {
				t.Fatal(err)
			}
			off := max(math.Abs(a.X-b.X), math.Abs(a.Y-b.Y), math.Abs(a.Tilt+b.Tilt)) / 1e-12
			for i := range 2 {
				off = max(off, math.Abs(a.PinAnchor[i]-b.PinAnchor[1-i])/1e-12)
				for j := range 2 {
					off = max(off, math.Abs(f.Half[i][j]-g.Half[i][1-j])/1e-4)
				}
			}
			if off > 1e3 { // in units of what the solver leaves open
				t.Errorf("car %d at %g MPa: off by %.3g", n, p, off)
			}
			if math.Abs(a.Tilt) > 1e-6 {
				unlike++
			}
		}
		if n%10 != 0 {
			continue
		}
		one, two := physics.Condition{}, physics.Condition{}
		one.Wheels[physics.FrontLeft], two.Wheels[physics.FrontLeft] = c, other
		if one, err = physics.Drive(spec, one, physics.MixedDuty(), 500); err != nil {
			t.Fatal(err)
		}
		if two, err = physics.Drive(spec, two, physics.MixedDuty(), 500); err != nil {
			t.Fatal(err)
		}
		x, y := one.Wheels[physics.FrontLeft], upsideDown(two.Wheels[physics.FrontLeft])
		for i := range 2 {
			for j := range 2 {
				if d := math.Abs(x.Wear[i][j] - y.Wear[i][j]); d > 1e-9 {
					t.Errorf("car %d: driven, the wear of half %d.%d is off by %.3g m", n, i, j, d)
				}
			}
			if d := math.Abs(x.PinFriction[i] - y.PinFriction[i]); d > 1e-9 {
				t.Errorf("car %d: friction of pin %d is off by %.3g N", n, i, d)
			}
		}
	}
	if unlike < 100 {
		t.Errorf("only %d times did a caliper tilt: nothing is tested", unlike)
	}
}
