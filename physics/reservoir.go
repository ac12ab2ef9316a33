package physics

// Level is the fluid's height in the reservoir as a share of the way from MIN
// (0) to MAX (1): (standing − at MIN)/(MAX − MIN). It follows from where the rest of
// the fluid stands, so it has no formula of wear or leak of its own.
func (m *Model) Level(s *State) float64 {
	r := &m.spec.Reservoir
	return (s.Standing - r.AtMin) / r.MinToMax
}

const (
	capAir  = 5 * CubicCentimetre // under the cap with fluid at the brim; assumed
	capLets = 30e3                // [Pa] either way, at which the cap's or the rod's seal lets air by all the same; assumed
)

// Above is the pressure of the air over the fluid in the reservoir [Pa]: none while
// its cap breathes. A blocked vent shuts in the air that stood over fluid at MAX:
//
//	p = share·p_atm·(V₀/V − 1) within ±30 kPa,  V = brim + 5 cm³ − standing
//
// so a level that falls draws on the ports, the pistons and any weeping joint, and
// warm fluid that rises presses. Air that the seals let by comes up into the
// reservoir, not into the lines. The air is a function of the level: filling up to
// MAX lets the atmosphere in.
func (m *Model) Above(s *State) float64 {
	p, _ := m.above(s.Standing)
	return p
}

// above is Above and its growth with what stands [Pa/m³].
func (m *Model) above(standing float64) (p, rate float64) {
	r := &m.spec.Reservoir
	shut, room := m.cond.VentShut, r.brim()+capAir-standing
	full := float64(shut*Atmosphere) * (r.MaxToBrim + capAir) / room
	if p = full - float64(shut*Atmosphere); p > capLets || p < -capLets {
		return max(-capLets, min(capLets, p)), 0
	}
	return p, full / room
}

func (r *ReservoirSpec) max() float64  { return r.AtMin + r.MinToMax }
func (r *ReservoirSpec) brim() float64 { return r.AtMin + r.MinToMax + r.MaxToBrim }

// escape is the fluid with which air gathered under a hole mixes as it leaves
// [m³]: the air goes first, the last of it with fluid. Assumed.
const escape = 0.2 * CubicCentimetre

// settleAir turns what passed the joints and ports of a step into fluid and
// air: air comes in where a hole sucks or a port is uncovered, and goes out with
// the fluid where it gathers. Volumes do not change, only what they are of.
func (m *Model) settleAir(f *flow, next *State) {
	for w := range next.Air {
		out := float64(f.wheel[w].out * f.dt)
		screw := float64(f.wheel[w].screw * f.dt)
		next.Lost += out
		var gone float64 // [m³] of what left that was air
		switch {
		case out < 0:
			gone = out
		case screw > 0 && next.Air[w] > 0: // the bleed screw sits where the air gathers
			v := f.wheel[w].gas
			gone = min(v, screw*v/(v+escape))
		default:
			continue
		}
		next.Lost -= gone
		next.Cavity[w] += gone
		next.Air[w] = max(0, next.Air[w]-float64(gone*absolute(next.Pressure[w])/Atmosphere))
	}
	for i := range next.Master.Air {
		in := float64(f.chamber[i].in * f.dt)
		next.Standing -= in
		switch {
		case in > 0 && next.Standing < m.spec.Reservoir.Port[i]:
			next.Standing += in
			next.Master.Fluid[i] -= in
			next.Master.Air[i] += in
		case in < 0 && next.Master.Air[i] > 0:
			v := f.chamber[i].gas
			gone := min(v, -in*v/(v+escape))
			next.Standing -= gone
			next.Master.Fluid[i] += gone
			next.Master.Air[i] = max(0, next.Master.Air[i]-float64(gone*absolute(next.Master.Pressure[i])/Atmosphere))
		}
	}
	if over := next.Standing - m.spec.Reservoir.brim(); over > 0 {
		next.Standing -= over
		next.Lost += over
	}
}
