package physics

import "math"

const (
	airDensity = 1.2 // [kg/m³] at 20 °C and one atmosphere
	loadPasses = 20  // [1] each errs a fifth of the one before
)

// FrontLoad is the share of the car's weight on its front axle [1] while the
// road holds it back with ratio z of its weight: f + z·h/L.
func (b *BodySpec) FrontLoad(z float64) float64 {
	return b.FrontShare + float64(z*b.CentreHeight/b.Wheelbase)
}

// slope returns sine and cosine of a grade given as a tangent.
func slope(grade float64) (sin, cos float64) {
	cos = 1 / math.Sqrt(1+float64(grade*grade))
	return grade * cos, cos
}

// Resistance is what holds the car back without brakes [N] at a speed [m/s] on a
// slope of this cosine [1]: ½·1.2 kg/m³·c_d·A·v² + c_r·m·g·cos.
func (b *BodySpec) Resistance(speed, cos float64) float64 {
	return float64(0.5*airDensity*b.DragArea*speed*speed) + float64(b.Rolling*b.Mass*Gravity*cos)
}

// tyres settles what the road gives each wheel when the brakes ask for torques
// [N·m] at a speed: brake forces [N], which wheels lock, and the deceleration
// [m/s²], braking positive.
//
// A wheel locks when torque/R exceeds peak adhesion × its load at the present
// deceleration and frees when torque/R falls to sliding adhesion × load. Loads
// and forces are settled together first, then the wheel that exceeds most locks,
// and they are settled again.
func (b *BodySpec) tyres(torque *[NumWheels]float64, was [NumWheels]bool, speed float64, in *Input) (force [NumWheels]float64, locked [NumWheels]bool, decel float64) {
	sin, cos := slope(in.Grade)
	weight := float64(b.Mass * Gravity)
	rolling := float64(b.Rolling * weight * cos)
	resist := b.Resistance(speed, cos)
	var ask, load [NumWheels]float64
	for w := range Wheel(NumWheels) {
		ask[w] = torque[w] / b.TyreRadius
		locked[w] = was[w] && !b.AntiLock && speed > 0
	}
	for range NumWheels + 1 {
		ground := 0.0 // [N] that the road holds the car back with
		for range loadPasses {
			front := min(cos, max(0, float64(b.FrontShare*cos)+float64(ground*b.CentreHeight/float64(b.Wheelbase*weight))))
			axle := [2]float64{front, cos - front}
			next := rolling - in.Drive
			for w := range Wheel(NumWheels) {
				load[w] = float64(weight*axle[w/2]/2) * (1 - in.Surface[w])
				force[w] = min(ask[w], float64(b.PeakAdhesion*load[w]))
				if locked[w] {
					force[w] = min(ask[w], float64(b.SlideAdhesion*load[w]))
				}
				next += force[w]
			}
			done := math.Abs(next-ground) <= 1e-9*weight
			ground = next
			if done {
				break
			}
		}
		worst, most := -1, 1.0
		for w := range Wheel(NumWheels) {
			if locked[w] && ask[w] <= float64(b.SlideAdhesion*load[w]) {
				locked[w] = false // its force is what it asks: nothing else changes
			}
			if peak := float64(b.PeakAdhesion * load[w]); !locked[w] && ask[w] > float64(most*peak) {
				worst = int(w)
				most = 2
				if peak > 0 {
					most = ask[w] / peak
				}
			}
		}
		if worst < 0 || b.AntiLock || speed <= 0 {
			break
		}
		locked[worst] = true
	}
	sum := force[0] + force[1] + force[2] + force[3]
	push := in.Drive + float64(weight*sin)
	if speed <= 0 && push <= sum+rolling {
		return force, locked, 0 // held
	}
	return force, locked, (sum + resist - push) / b.Mass
}

// road moves the car by dt [s] under the brakes' torques [N·m] and returns the
// mean speed of the step [m/s], so that work is force × way to rounding even in
// a step that comes to rest half way.
//
//	v' = v − a·dt, distance by the mean speed: exact while a is constant
//
// A car never rolls backwards: a grade uphill holds it where it stops.
func (m *Model) road(s *State, torque *[NumWheels]float64, in *Input, dt float64) (mean float64) {
	b := &m.spec.Body
	v := s.Speed
	middle := v
	if !in.Hold {
		middle = max(0, v-float64(0.5*s.Decel*dt)) // air resistance at mid-step
		if middle == 0 {
			middle = v / 2
		}
	}
	_, locked, decel := b.tyres(torque, s.Locked, middle, in)
	s.Locked = locked
	switch {
	case in.Hold:
		mean, s.Decel = v, decel
	case v-float64(decel*dt) >= 0:
		next := v - float64(decel*dt)
		mean, s.Decel, s.Speed = (v+next)/2, decel, next
	default:
		mean = v * v / float64(2*decel*dt)
		s.Speed, s.Decel = 0, decel
	}
	if s.Speed == 0 {
		s.Locked = [NumWheels]bool{}
	}
	if v == 0 && s.Speed == 0 {
		s.Decel = 0
	}
	way := float64(mean * dt)
	s.Distance += way
	for w := range s.Turn {
		if !s.Locked[w] {
			turn := s.Turn[w] + way/float64(2*pi*b.TyreRadius)
			s.Turn[w] = turn - math.Floor(turn)
		}
	}
	return mean
}
