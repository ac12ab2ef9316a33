package inspect

import (
	"evenwear/physics"
	"evenwear/physics/exact"
)

const (
	moved    = 1 * physics.Millimetre // [m] what a hand takes for "it moves"
	handRate = 1e7                    // [N/m] of a hand with its lever: stiff, so that it ends where it wants
)

// handForce is the force [N] with which hands have moved the upper and lower
// pin end of a caliper body by a millimetre, pads out: each hand that is not
// wanted stays away. Both together slide the body square. A hand is a
// displacement, so an answer exists however freely the body slides; a pin that
// holds shows the force of its own stretching, far above what a gauge can show.
func handForce(c *physics.Corner, spec *physics.CornerSpec, from physics.CornerState, upper, lower bool) (float64, error) {
	from, _, err := c.Settle(from, &physics.CornerLoad{PadsOut: true})
	if err != nil {
		return 0, err
	}
	load := physics.CornerLoad{PadsOut: true}
	arm := [2]float64{spec.PinOffset, -spec.PinOffset}
	hand := [2]bool{upper, lower}
	end := func(s physics.CornerState, i int) float64 { return s.Y + float64(arm[i]*s.Tilt) }
	for i := range hand {
		if hand[i] {
			load.HandRate[i], load.HandAt[i] = handRate, end(from, i)+moved
		}
	}
	to, _, err := c.Settle(from, &load)
	if err != nil {
		return 0, err
	}
	force := 0.0
	for i := range hand {
		if hand[i] {
			force += float64(handRate * (load.HandAt[i] - end(to, i)))
		}
	}
	return force, nil
}

// pushForce is the force [N] with which the piston slides back into its bore
// against a pressure [Pa] that does not leave: the inner pad is levered off the
// disc by a millimetre, so the tool is a displacement and an answer exists
// however freely the piston slides.
func pushForce(c *physics.Corner, from physics.CornerState, pressure float64) (float64, error) {
	const parts = 5
	s := from
	force := 0.0
	for i := 1; i <= parts; i++ {
		load := physics.CornerLoad{Pressure: pressure, DiscIn: -moved * float64(i) / parts}
		next, f, err := c.Settle(s, &load)
		if err != nil {
			return 0, err
		}
		s = next
		force = float64(pressure*c.Area()) - f.Seal
	}
	return force, nil
}

// spokes is the number of angles at which a turning disc is looked at.
const spokes = 24

// spokeCos is the cosine of i/24 of a turn.
var spokeCos = func() (t [spokes]float64) {
	for i := range t {
		t[i] = exact.CosTurn(float64(i) / spokes)
	}
	return t
}()

// dragTorque turns the disc once under a pressure [Pa] that stays, to let it
// push the pads where it wants them, and returns the mean torque [N·m] of the
// next turn, linings cold, and where the caliper sits after it.
func dragTorque(c *physics.Corner, s physics.CornerState, pressure float64) (float64, physics.CornerState, error) {
	sum := 0.0
	for turn := range 2 {
		for i := range spokes {
			load := physics.CornerLoad{Pressure: pressure}
			load.DiscIn, load.DiscOut = c.Faces(spokeCos[i])
			next, f, err := c.Settle(s, &load)
			if err != nil {
				return 0, s, err
			}
			s = next
			if turn == 1 {
				sum += c.Torque(&f)
			}
		}
	}
	return sum / spokes, s, nil
}

// turned is a wheel that a hand has turned after a press and a release.
type turned struct {
	torque   float64 // [N·m] mean over a turn
	pressure float64 // [Pa] that has stayed
	corner   physics.CornerState
}

func (w *World) turned(wheel physics.Wheel) (turned, error) {
	return w.cache.turned[wheel].get(func() (t turned, err error) {
		s, err := w.release()
		if err != nil {
			return t, err
		}
		t.pressure = s.Pressure[wheel]
		t.torque, t.corner, err = dragTorque(w.Model.Corner(wheel), s.Corners[wheel], t.pressure)
		return t, err
	})
}

// swing is the movement of the outer and inner disc face over a turn [m],
// towards the inspector positive, at every spoke.
func swing(c *physics.Corner) (inner, outer [spokes]float64) {
	for i := range spokes {
		in, out := c.Faces(spokeCos[i])
		inner[i], outer[i] = -in, -out
	}
	return inner, outer
}

// spread is greatest less least.
func spread(v []float64) float64 {
	lo, hi := v[0], v[0]
	for _, x := range v {
		lo, hi = min(lo, x), max(hi, x)
	}
	return hi - lo
}
