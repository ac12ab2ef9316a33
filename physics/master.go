package physics

import "math"

// stopRate turns the unknown beyond a stop into the stop.s share of the pressure
// [Pa/m]. It is a way of writing it down: no answer depends on it.
const stopRate = 1e9

// A push is what acts on the tandem pistons during one step.
type push struct {
	force  float64 // [N] η·(rod + booster)
	slide  float64 // [N] sliding friction, felt on reversal
	rate   float64 // [N/m]
	anchor float64 // [m]
	area   float64 // [m²]
}

// push works out the step's force on the pistons. rod is the lever's force [N],
// total with the booster's.
func (m *Model) push(s *State, total, rod float64) push {
	ms := &m.spec.Master
	return push{
		force: float64(ms.Efficiency * total),
		slide: ms.Friction + float64(ms.FrictionShare*total),
		rate:  ms.FrictionRate, anchor: s.Master.Anchor,
		area: 0.25 * pi * ms.Bore * ms.Bore,
	}
}

// effective is the force that makes pressure [N] with the pistons at u = s1 + s2
// and its slope. η·F of a rising foot contains the sliding friction, so the
// element adds only when the travel turns back: up to twice its force.
func (p *push) effective(u float64) (force, slope float64) {
	f, k, _ := friction(p.rate, p.slide, u-p.anchor, false)
	return p.force + p.slide - f, -k
}

// chamber is the pressure of one chamber with its piston at v [m] and its slopes
// with v and, through the friction, with the other piston's travel:
//
//	p·A = η·F − (preload + rate·s)      0 ≤ v ≤ stroke
//
// Beyond either end v counts how hard the piston leans on its stop: the stroke
// stays and the stop's force adds to, or takes from, the pressure. So one
// unknown serves both a moving piston and a stopped one.
func (m *Model) chamber(i int, p *push, v, u float64) (pressure, dv, du float64) {
	ms := &m.spec.Master
	f, k := p.effective(u)
	at := min(max(v, 0), ms.Stroke[i])
	pressure = (f - ms.SpringPreload[i] - float64(ms.SpringRate[i]*at)) / p.area
	du = k / p.area
	if at == v {
		return pressure, -ms.SpringRate[i] / p.area, du
	}
	return pressure + float64(stopRate*(at-v)), -stopRate, du
}

// feed is the flow [m³/s] from the reservoir into chamber i at pressure p with
// its piston at v: through the compensating port while that is uncovered, past
// the cup when the chamber is below the reservoir, and back past a worn cup.
func (m *Model) feed(i int, v, p float64) (q, dv, dp float64) {
	ms := &m.spec.Master
	if p < 0 && ms.CupResistance > 0 {
		q, dp = -p/ms.CupResistance, -1/ms.CupResistance
	}
	if b := m.cond.CupBypass[i]; b > 0 && p > 0 {
		q, dp = q-float64(b*p), dp-b
	}
	// The port closes over the first hundredth of a millimetre beyond its stroke,
	// unless lost play keeps the piston in front of it even at rest.
	open := ms.Port[i] + portEdge - m.cond.PortCover[i]
	share := min(1, max(0, (open-v)/portEdge))
	if share > 0 {
		j, dj := jet(ms.PortArea[i], p, m.spec.Fluid.Density)
		q -= share * j
		dp -= share * dj
		if share < 1 {
			dv += j / portEdge
		}
	}
	return q, dv, dp
}

const portEdge = 1e-5 // [m]

// PedalTravel is the pedal's travel from rest [m]: the lever's ratio × the rod's
// free travel and both strokes. The free travel is taken up against the pedal's
// own return spring, over the force that opens the booster.
func (m *Model) PedalTravel(s *State) float64 {
	p := &m.spec.Pedal
	share := min(1, s.Master.Lever/freeForce)
	return p.Ratio * (float64(p.Free*share) + s.Master.Stroke[0] + s.Master.Stroke[1])
}

// freeForce takes up the free travel [N at the rod]; assumed.
const freeForce = 40

// stroke clips an unknown of the tandem solve to the piston's travel.
func (m *Model) stroke(i int, v float64) float64 {
	return min(max(v, 0), m.spec.Master.Stroke[i])
}

// finite reports whether x is a number.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
