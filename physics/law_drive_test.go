package physics

import (
	"math"
	"math/rand/v2"
	"testing"
)

// anyWheel draws how a wheel is stuck: pins of 0 to 20 kN, mostly both alike, a
// piston up to 3 kN, run-out up to 0.15 mm.
func anyWheel(r *rand.Rand) (w WheelCondition) {
	pin := func() float64 {
		if r.Float64() < 0.15 {
			return 0
		}
		return 20 * math.Exp(r.Float64()*math.Log(1000))
	}
	f := pin()
	w.PinFriction = [2]float64{f, f}
	if r.Float64() < 0.35 {
		w.PinFriction[Lower] = pin()
	}
	if r.Float64() < 0.4 {
		w.SealFriction = 3000 * r.Float64() * r.Float64()
		w.SealRate = 20e6 * r.Float64()
	}
	if r.Float64() < 0.5 {
		w.Runout = 150e-6 * r.Float64() * r.Float64()
	}
	return w
}

// linings is the greatest difference of a half pad's wear, as a share of its own.
func linings(got, want Condition) (worst float64) {
	for w := range Wheel(NumWheels) {
		for i := range 2 {
			for j := range 2 {
				worst = max(worst, math.Abs(got.Wheels[w].Wear[i][j]/want.Wheels[w].Wear[i][j]-1))
			}
		}
	}
	return worst
}

// TestDriveAny: however a wheel is stuck, no lining is 1 % from every stop computed
// by itself.
func TestDriveAny(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	r := rand.New(rand.NewPCG(1, 1))
	for n := range 20 {
		cond, km := frontLeft(anyWheel(r)), []float64{500, 1000, 3000, 6000}[n%4]
		want, err := drive(hatchback(), cond, MixedDuty(), km, finest)
		if err != nil {
			t.Fatal(err)
		}
		if e := linings(driven(t, cond, km, 1), want); !(e <= 0.01) {
			t.Errorf("%.0f km, %+v: %.2f %% from every stop by itself", km, cond.Wheels[FrontLeft], 100*e)
		}
	}
}

// TestDriveMirror: a car seen in a mirror wears as its image, and one upside down
// as its other image.
func TestDriveMirror(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	for range 6 {
		cond := four(func(int) WheelCondition { return anyWheel(r) })
		mirror, turned := cond, cond
		for w := range Wheel(NumWheels) {
			mirror.Wheels[w] = cond.Wheels[w.Mate()]
			p := &turned.Wheels[w].PinFriction
			p[Upper], p[Lower] = p[Lower], p[Upper]
		}
		is := driven(t, cond, 2000, 1)
		left, down := driven(t, mirror, 2000, 1), driven(t, turned, 2000, 1)
		var back, up Condition
		for w := range Wheel(NumWheels) {
			back.Wheels[w] = left.Wheels[w.Mate()]
			for i := range 2 {
				a := down.Wheels[w].Wear[i]
				up.Wheels[w].Wear[i] = [2]float64{a[Lower], a[Upper]}
			}
		}
		if e := linings(back, is); !(e < 1e-6) {
			t.Errorf("left and right exchanged: %.3g of some lining differs", e)
		}
		if e := linings(up, is); !(e < 1e-6) {
			t.Errorf("upper and lower exchanged: %.3g of some lining differs", e)
		}
		if e := linings(left, is); e < 0.01 {
			t.Errorf("the car is its own image (%.3g): nothing is tested", e)
		}
	}
}

// TestDriveFurther: the further, the more of everything has worn off.
func TestDriveFurther(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for range 6 {
		cond := four(func(int) WheelCondition { return anyWheel(r) })
		var last Condition
		for _, km := range []float64{100, 200, 400, 700, 1200, 2000, 3500, 6000, 10000} {
			now := driven(t, cond, km, 1)
			for w := range Wheel(NumWheels) {
				a, b := &last.Wheels[w], &now.Wheels[w]
				for i := range 2 {
					if b.DiscWear[i] <= a.DiscWear[i] {
						t.Errorf("%.0f km, %s: disc %.6g mm, before %.6g", km, w, b.DiscWear[i]*1e3, a.DiscWear[i]*1e3)
					}
					for j := range 2 {
						if full := hatchback().Corner(w).LiningNew; b.Wear[i][j] <= a.Wear[i][j] && a.Wear[i][j] < full {
							t.Errorf("%.0f km, %s: pad %.6g mm, before %.6g", km, w, b.Wear[i][j]*1e3, a.Wear[i][j]*1e3)
						}
					}
				}
			}
			last = now
		}
	}
}
