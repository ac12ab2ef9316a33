package physics

import "math"

// MFDD is the mean fully developed deceleration [m/s²] between two speeds
// [m/s] met at two ways [m]: (v_b² − v_e²)/(2·(s_e − s_b)), which with km/h is
// the 25.92 of UN R13 Annex 4 §1.1.2. v_b is 0.8 and v_e 0.1 of the first speed.
func MFDD(vb, ve, sb, se float64) float64 {
	return (float64(vb*vb) - float64(ve*ve)) / (2 * (se - sb))
}

// crossing is the way at which speed v was met between two states: v² is
// straight in the way while deceleration is constant.
func crossing(a, b *State, v float64) float64 {
	a2, b2 := float64(a.Speed*a.Speed), float64(b.Speed*b.Speed)
	share := (a2 - float64(v*v)) / (a2 - b2)
	return a.Distance + float64(share*(b.Distance-a.Distance))
}

// turnRange watches one quantity over each whole turn of a wheel.
type turnRange struct {
	least, most, sum, first float64
	count                   int
	swing, mean             float64 // sums over finished turns
	turns                   float64
}

// see takes one value; a finished turn starts the next. The drift from a turn's
// first to its last value does not count as swing.
func (t *turnRange) see(x float64, wrapped bool) {
	if wrapped {
		if t.count > 3 {
			t.swing += max(0, t.most-t.least-math.Abs(x-t.first))
			t.mean += t.sum / float64(t.count)
			t.turns++
		}
		t.count = 0
	}
	if t.count == 0 {
		t.least, t.most, t.sum, t.first = x, x, 0, x
	}
	t.least, t.most = min(t.least, x), max(t.most, x)
	t.sum += x
	t.count++
}

// recorder sees every step of a stop.
type recorder struct {
	model        *Model
	v0           float64
	start        State
	upper, lower float64 // [m] way at 0.8 v and 0.1 v
	time         float64 // [s] between them
	torque       [NumWheels]turnRange
	pedal        turnRange
	r            StopResult
	last         State
}

func (c *recorder) see(before, after *State, in *Input) {
	m, r := c.model, &c.r
	dt := float64(after.Millis-before.Millis) / 1000
	r.Foot = max(r.Foot, in.Foot)
	r.Travel = max(r.Travel, m.PedalTravel(after))
	vb, ve := 0.8*c.v0, 0.1*c.v0
	if before.Speed > vb && after.Speed <= vb {
		c.upper = crossing(before, after, vb)
	}
	if before.Speed > ve && after.Speed <= ve {
		c.lower = crossing(before, after, ve)
	}
	full := before.Speed <= vb && before.Speed > ve
	var torque [NumWheels]float64
	for w := range Wheel(NumWheels) {
		torque[w] = m.WheelTorque(after, w)
		r.Locked[w] = r.Locked[w] || after.Locked[w]
		r.DiscPeak[w] = max(r.DiscPeak[w], after.Heat[w].Face())
		r.FluidPeak[w] = max(r.FluidPeak[w], after.Heat[w].Fluid)
	}
	if full {
		force, _, _ := m.spec.Body.tyres(&torque, after.Locked, before.Speed, in)
		for w := range Wheel(NumWheels) {
			r.Force[w] += float64(force[w] * dt)
			r.Pressure[w] += float64(after.Pressure[w] * dt)
			c.torque[w].see(torque[w], after.Turn[w] < before.Turn[w])
		}
		c.pedal.see(m.PedalTravel(after), after.Turn[FrontLeft] < before.Turn[FrontLeft])
		c.time += dt
	}
	if after.Speed == 0 {
		// The last step ends where the car stands, not where the clock does.
		part := dt
		if d := after.Decel; d > 0 && before.Speed < float64(d*dt) {
			part = before.Speed / d
		} else if mean := (after.Distance - before.Distance); before.Speed > 0 {
			part = min(dt, 2*mean/before.Speed)
		}
		r.Time = float64(before.Millis-c.start.Millis)/1000 + part
	}
	c.last = *after
}

func (c *recorder) result(out *StopResult) {
	r := &c.r
	r.Distance = c.last.Distance - c.start.Distance
	if c.lower > c.upper {
		r.MFDD = MFDD(0.8*c.v0, 0.1*c.v0, c.upper, c.lower)
	}
	if c.time > 0 {
		for w := range Wheel(NumWheels) {
			r.Force[w] /= c.time
			r.Pressure[w] /= c.time
			if t := &c.torque[w]; t.turns > 0 && t.mean > 0 {
				r.Pulsation[w] = t.swing / (2 * t.mean)
			}
		}
		if c.pedal.turns > 0 {
			r.PedalPulse = c.pedal.swing / c.pedal.turns
		}
	}
	for axle := range 2 {
		left, right := r.Force[2*axle], r.Force[2*axle+1]
		if most := max(left, right); most > 0 {
			r.Imbalance[axle] = 1 - min(left, right)/most
		}
	}
	b := &c.model.spec.Body
	r.Yaw = float64(b.Track/2) * (r.Force[FrontRight] + r.Force[RearRight] - r.Force[FrontLeft] - r.Force[RearLeft])
	r.Pull = r.Yaw / float64(b.Mass*b.Wheelbase)
	*out = *r
}
