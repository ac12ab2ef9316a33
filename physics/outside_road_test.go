package physics

import (
	"math"
	"testing"
)

// TestOutsideStops: distances on the stepped road, not by formula.
func TestOutsideStops(t *testing.T) {
	src := "CP2e ch. 2 (m42099); UP 1 ch. 3 (m58285)"
	for _, r := range []struct{ a, want, total float64 }{{7, 64.3, 79.3}, {5, 90.0, 105}} {
		s, _ := coast(t, 1500, 30, 0, r.a)
		// A first-order step of 20 ms that moves by the old speed is 0.3 m long.
		outside{id: "OC-43", source: src, got: s.Distance, want: r.want, tol: 1e-3, wrong: r.want + 0.3}.check(t)
		outside{id: "OC-44", source: src, got: s.Distance + 0.5*30, want: r.total, tol: 1e-3, wrong: r.want}.check(t)
	}
	s, _ := coast(t, 1500, 100*KmPerHour, 0, 8.573)
	outside{id: "OC-45", source: "UP 1 ch. 5 (m58297)", got: s.Distance, want: 45.0, tol: 1e-3, wrong: 45.0 * 1.005}.check(t)

	// OC-46: four locked wheels at μ_k 0.550; the speed that slides 32.0 m.
	body := BodySpec{Mass: 1500, Wheelbase: 2.5, CentreHeight: 0.5, FrontShare: 0.52, TyreRadius: 0.3, PeakAdhesion: 0.6, SlideAdhesion: 0.550 * 9.80 / Gravity}
	m := Model{spec: &Spec{Body: body}}
	slide := func(v float64) float64 {
		s := State{Speed: v}
		torque := [NumWheels]float64{1e5, 1e5, 1e5, 1e5}
		for s.Speed > 0 {
			m.road(&s, &torque, &Input{}, 0.001)
		}
		return s.Distance
	}
	low, high := 10.0, 30.0
	for range 40 {
		if mid := (low + high) / 2; slide(mid) < 32.0 {
			low = mid
		} else {
			high = mid
		}
	}
	outside{id: "OC-46", source: "UP 1 ch. 6 (m58306)", got: low, want: 18.57, tol: 1e-3, wrong: math.Sqrt(2 * 0.6 * 9.80 * 32)}.check(t)

	outside{id: "OC-67", source: "AASHTO Green Book, stopping sight distance", got: 2.5*60*0.44704 + math.Pow(60*0.44704, 2)/(2*3.4), want: 172.4, tol: 5e-3, wrong: math.Pow(60*0.44704, 2) / (2 * 3.4)}.check(t)
	c, _ := coast(t, 1500, 60*0.44704, 0, 3.4)
	outside{id: "OC-67, stepped", source: "AASHTO Green Book, stopping sight distance", got: 2.5*60*0.44704 + c.Distance, want: 172.9, tol: 1e-3, wrong: 172.4}.check(t)
}

// TestOutsideMFDD drives the recorder's own crossings.
func TestOutsideMFDD(t *testing.T) {
	ramped := func(decel, build float64) (mfdd, way float64) {
		body := BodySpec{Mass: 1500, Wheelbase: 2.5, FrontShare: 0.5, TyreRadius: 0.3, PeakAdhesion: 10, SlideAdhesion: 9}
		m := Model{spec: &Spec{Body: body}}
		v0 := 100 * KmPerHour
		s := State{Speed: v0}
		var sb, se float64
		for i := 0; s.Speed > 0; i++ {
			f := 1500 * decel / 4 * 0.3
			if build > 0 {
				f *= math.Min(1, (float64(i)+0.5)*0.001/build)
			}
			torque := [NumWheels]float64{f, f, f, f}
			last := s
			m.road(&s, &torque, &Input{}, 0.001)
			if last.Speed > 0.8*v0 && s.Speed <= 0.8*v0 {
				sb = crossing(&last, &s, 0.8*v0)
			}
			if last.Speed > 0.1*v0 && s.Speed <= 0.1*v0 {
				se = crossing(&last, &s, 0.1*v0)
			}
		}
		kmh := 100.0
		got := MFDD(0.8*v0, 0.1*v0, sb, se)
		outside{id: "OC-47 constant", source: "UN R13 Annex 4 §1.1.2", got: (math.Pow(0.8*kmh, 2) - math.Pow(0.1*kmh, 2)) / (25.92 * (se - sb)), want: got, tol: 1e-9, wrong: got * 25.92 / 25.9}.check(t)
		return got, s.Distance
	}
	d, _ := ramped(6.43, 0)
	outside{id: "OC-47", source: "UN R13 Annex 4 §1.1.2 (GRRF-56-3)", got: d, want: 6.430, tol: 1e-4, wrong: 6.434}.check(t)
	d, way := ramped(8, 0.4)
	v := 100 * KmPerHour
	outside{id: "OC-48 MFDD", source: "closed form", got: d, want: 8.000, tol: 1e-3, wrong: v * v / (2 * way)}.check(t)
	outside{id: "OC-48 way", source: "closed form", got: way, want: 53.73, tol: 1e-3, wrong: v * v / 16}.check(t)

	for _, r := range []struct{ k, s, d float64 }{{0.0060, 70.0, 6.430}, {0.0067, 77.0, 5.758}, {0.0158, 168.0, 2.442}} {
		outside{id: "OC-53 S", source: "1/(2 k 3.6²); that the k are R13-H's is from memory", got: 0.1*100 + r.k*1e4, want: r.s, tol: 1e-3, wrong: 0.15*100 + r.k*1e4}.check(t)
		c, _ := coast(t, 1500, v, 0, r.d)
		outside{id: "OC-53, stepped", source: "1/(2 k 3.6²)", got: 0.36*v + c.Distance, want: r.s, tol: 1e-3, wrong: c.Distance}.check(t)
	}
}

func TestOutsideBalance(t *testing.T) {
	b := BodySpec{Wheelbase: 2.5, FrontShare: 0.52, CentreHeight: 0.50}
	src := "UP 1 ch. 12 (m58340)"
	outside{id: "OC-61", source: src, got: b.FrontLoad(0) * b.Wheelbase, want: 1.3, tol: 1e-6, wrong: 1.2}.check(t)
	c := BodySpec{Wheelbase: 3.0, FrontShare: 0.60}
	outside{id: "OC-62", source: src, got: (1 - c.FrontLoad(0)) * c.Wheelbase, want: 1.2, tol: 1e-6, wrong: 1.8}.check(t)
	for i, z := range []float64{0, 0.3, 0.6, 0.8, 1.0} {
		want := []float64{0.520, 0.580, 0.640, 0.680, 0.720}[i]
		outside{id: "OC-63", source: "statics", got: b.FrontLoad(z), want: want, tol: 1e-6, wrong: 1 - want}.check(t)
	}
	// OC-64 by the tyres themselves: a car whose every wheel slides at μ = z is
	// held by each axle in proportion to its load.
	hatch := hatchback().Body
	for i, z := range []float64{0.3, 0.6, 0.8} {
		want := []float64{1.972, 2.664, 3.337}[i]
		body := hatch
		body.PeakAdhesion, body.SlideAdhesion, body.Rolling, body.DragArea = z, z, 0, 0
		torque := [NumWheels]float64{1e5, 1e5, 1e5, 1e5}
		f, _, a := body.tyres(&torque, [NumWheels]bool{}, 20, &Input{})
		outside{id: "OC-64", source: "statics", got: f[FrontLeft] / f[RearLeft], want: want, tol: 1e-3, wrong: 1.5}.check(t)
		outside{id: "OC-64 z", source: "statics", got: a / Gravity, want: z, tol: 1e-6, wrong: z * hatch.FrontShare}.check(t)
	}
}

func TestOutsideWear(t *testing.T) {
	src := "Archard, J. Appl. Phys. 24 (1953) 981"
	v := Archard(3e-14, 8000, 1000)
	outside{id: "OC-108 volume", source: src, got: v, want: 240e-9, tol: 1e-6, wrong: 240e-6}.check(t)
	outside{id: "OC-108 depth", source: src, got: v / (45 * SquareCm), want: 53.33e-6, tol: 1e-4, wrong: v / (2 * 45 * SquareCm)}.check(t)
	// OC-109: friction work instead of force and way.
	per := Archard(3e-14, 25e3/0.4, 1)
	outside{id: "OC-109 per km", source: "algebra", got: per, want: 1.875e-9, tol: 1e-3, wrong: 3e-14 * 25e3}.check(t)
	outside{id: "OC-109 life", source: "algebra", got: 50e-4 * 10e-3 / per, want: 26700, tol: 2e-3, wrong: 26700 * 0.4}.check(t)
	// The same through the caliper: a Drive's front pad wears k·W/μ of its share
	// of the kinetic energy, work and wear being of one solve.
	c, err := Drive(hatchback(), Condition{}, MixedDuty(), 1000)
	if err != nil {
		t.Fatal(err)
	}
	life := 9 * Millimetre / (pad(c, FrontLeft, Inner) / 1000)
	bracketed{"OC-110 front pad down to 2 mm, km", "Materials 15 (2022) 1991", life, 15000, 60000, life / 10}.check(t)
	// OC-111: friction and wear rate fall with pressure and speed when cold; a law
	// that depends on them must show it, ours has constants below its knees.
	spec := hatchback()
	for _, t0 := range []float64{20, 120, 200} {
		outside{id: "OC-111 cold friction", source: "Wei, Choy & Cheung, Tribol. Int. 2019: constants allowed", got: spec.Front.Fade(t0), want: 1, tol: 1e-12, wrong: 1.01}.check(t)
		outside{id: "OC-111 cold wear", source: "Wei, Choy & Cheung, Tribol. Int. 2019: constants allowed", got: hotWear(t0), want: 1, tol: 1e-12, wrong: 1.01}.check(t)
	}
}
