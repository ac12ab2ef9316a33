package inspect

import (
	"math"

	"evenwear/physics"
)

const (
	moved     = 1 * physics.Millimetre // [m] what a hand takes for "it moves"
	handLimit = 600.0                  // [N] more than one hand pushes
	halvings  = 13                     // of the limit: below 0.1 N
)

// handForce is the least force [N] of a hand on a caliper body with its pads
// out that moves both pin ends (or, with arm ≠ 0, the end at that arm [m] from
// the piston axis) by a millimetre; handLimit when none does.
//
// Friction with memory makes the movement grow steadily with the force, so the
// force is found by halving.
func handForce(c *physics.Corner, spec *physics.CornerSpec, from physics.CornerState, arm float64) (float64, error) {
	free := physics.CornerLoad{PadsOut: true}
	from, _, err := c.Settle(from, &free)
	if err != nil {
		return 0, err
	}
	moves := func(force float64) (bool, error) {
		s, _, err := c.Settle(from, &physics.CornerLoad{PadsOut: true, Body: force, Moment: float64(arm * force)})
		if err != nil {
			return false, err
		}
		slid, turned := s.Y-from.Y, s.Tilt-from.Tilt
		upper, lower := slid+float64(spec.PinOffset*turned), slid-float64(spec.PinOffset*turned)
		switch {
		case arm > 0:
			return upper >= moved, nil
		case arm < 0:
			return lower >= moved, nil
		}
		return min(upper, lower) >= moved, nil
	}
	lo, hi := 0.0, handLimit
	for range halvings {
		mid := (lo + hi) / 2
		ok, err := moves(mid)
		if err != nil {
			return 0, err
		}
		if ok {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi, nil
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

// spokeCos is the cosine of i/24 of a turn, from the half-angle roots.
var spokeCos = func() (t [spokes]float64) {
	r2, r3, r6 := math.Sqrt(2), math.Sqrt(3), math.Sqrt(6)
	quarter := [7]float64{1, (r6 + r2) / 4, r3 / 2, r2 / 2, 0.5, (r6 - r2) / 4, 0}
	for i := range t {
		j := i
		if j > 12 {
			j = 24 - j
		}
		if j <= 6 {
			t[i] = quarter[j]
		} else {
			t[i] = -quarter[12-j]
		}
	}
	return t
}()

// dragTorque turns the disc once under a pressure [Pa] that stays, to let it
// push the pads where it wants them, and returns the mean torque [N·m] of the
// next turn, linings cold.
func dragTorque(c *physics.Corner, s physics.CornerState, pressure float64) (float64, error) {
	sum := 0.0
	for turn := range 2 {
		for i := range spokes {
			load := physics.CornerLoad{Pressure: pressure}
			load.DiscIn, load.DiscOut = c.Faces(spokeCos[i])
			next, f, err := c.Settle(s, &load)
			if err != nil {
				return 0, err
			}
			s = next
			if turn == 1 {
				sum += c.Torque(&f)
			}
		}
	}
	return sum / spokes, nil
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
