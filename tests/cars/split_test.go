package cars

import (
	"math"
	"testing"

	"evenwear/physics"
)

// TestSplitSurface brakes with all the foot there is, left wheels on ice that lacks
// 0.85 of its adhesion, right ones on dry road. Anti-lock keeps every wheel at its
// peak: none locks, the car is held by the mean of both sides, and turns to the dry
// one by half of the difference times its track. The same car without anti-lock
// locks wheels and needs the longer way; cars without it lock theirs on the ice.
func TestSplitSurface(t *testing.T) {
	const missing, foot = 0.85, 500
	every(t, func(t *testing.T, spec *physics.Spec) {
		surface := [physics.NumWheels]float64{physics.FrontLeft: missing, physics.RearLeft: missing}
		brake := func(antiLock bool, surface [physics.NumWheels]float64) physics.StopResult {
			s := *spec
			s.Body.AntiLock = antiLock
			m, rest := model(t, &s, physics.Condition{})
			return stop(t, m, rest, physics.StopPlan{Foot: foot, Surface: surface})
		}
		with, without := brake(true, surface), brake(false, surface)
		t.Logf("anti-lock: %.1f m, %.2f m/s², yaw %+.0f N·m; without: %.1f m, %.2f m/s², yaw %+.0f N·m, locked %v",
			with.Distance, with.MFDD, with.Yaw, without.Distance, without.MFDD, without.Yaw, without.Locked)
		if with.Locked != [physics.NumWheels]bool{} {
			t.Errorf("with anti-lock %v lock", with.Locked)
		}
		if !without.Locked[physics.FrontLeft] || !without.Locked[physics.RearLeft] {
			t.Errorf("without anti-lock the wheels on ice do not lock: %v", without.Locked)
		}
		if !(with.Distance < 0.97*without.Distance) {
			t.Errorf("anti-lock needs %.1f m, without it %.1f", with.Distance, without.Distance)
		}
		mirrored := [physics.NumWheels]float64{physics.FrontRight: missing, physics.RearRight: missing}
		if r := brake(true, mirrored); math.Abs(r.Yaw+with.Yaw) > 1e-3*with.Yaw {
			t.Errorf("with the ice on the right it turns with %.1f N·m, want %.1f", r.Yaw, -with.Yaw)
		}
		if !spec.Body.AntiLock {
			return // its reducing valve keeps its dry rear wheel below the peak
		}
		b := &spec.Body
		weight := b.Mass * physics.Gravity
		force := b.PeakAdhesion * weight * (1 - missing/2)
		slow := b.Resistance(45*physics.KmPerHour, 1) // at the middle of the part that counts
		if want := (force + slow) / b.Mass; math.Abs(with.MFDD-want) > 0.02*want {
			t.Errorf("with anti-lock %.3f m/s², want %.3f from peak adhesion × load of each side", with.MFDD, want)
		}
		if want := b.PeakAdhesion * weight / 2 * missing * b.Track / 2; math.Abs(with.Yaw-want) > 0.03*want {
			t.Errorf("with anti-lock it turns with %.0f N·m, want %.0f to the dry side", with.Yaw, want)
		}
	})
}

// TestOnlyFrontLocks: on dry road all the foot there is locks the front wheels of a
// car without anti-lock, which goes straight on, and no rear wheel, which would
// turn it round.
func TestOnlyFrontLocks(t *testing.T) {
	every(t, func(t *testing.T, spec *physics.Spec) {
		m, s := model(t, spec, physics.Condition{})
		r := stop(t, m, s, physics.StopPlan{Foot: 500})
		want := [physics.NumWheels]bool{physics.FrontLeft: !spec.Body.AntiLock, physics.FrontRight: !spec.Body.AntiLock}
		if r.Locked != want {
			t.Errorf("500 N lock %v, want %v", r.Locked, want)
		}
	})
}
