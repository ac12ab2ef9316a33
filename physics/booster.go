package physics

import "evenwear/physics/exact"

// BoosterForce is what the booster adds [N] to a rod force with this vacuum [Pa]:
// nothing below the threshold, then gain × the rest, up to what the diaphragm
// can give with the vacuum there is (the knee).
func (m *Model) BoosterForce(rod, vacuum float64) float64 {
	b := &m.spec.Booster
	return min(b.Gain*max(0, rod-b.Threshold), m.ceiling(vacuum))
}

// ceiling is the greatest force [N] with this vacuum.
func (m *Model) ceiling(vacuum float64) float64 {
	b := &m.spec.Booster
	if b.Vacuum <= 0 {
		return 0
	}
	return b.Ceiling * min(1, max(0, vacuum/b.Vacuum))
}

// demand is how far a rod force opens the booster, as a share of its ceiling at
// full vacuum.
func (b *BoosterSpec) demand(rod float64) float64 {
	if b.Ceiling <= 0 {
		return 0
	}
	return min(1, max(0, float64(b.Gain*(rod-b.Threshold))/b.Ceiling))
}

// vacuum is the vacuum dt after it was s.Vacuum. Letting the foot up vents the
// air let in behind the diaphragm into the vacuum side: a release from the
// ceiling costs the share Vent, a smaller one its part, however many steps it
// takes. The engine draws it out again; without it a leak eats what is left.
//
//	V ← V·(1 − Vent)^(drop of demand);  V ← V_e + (V − V_e)·e^(−dt/τ) or V·e^(−leak·dt)
//
// A torn diaphragm leaks while the foot holds the air valve open, in proportion to
// the demand d, engine or not: 1/τ' = 1/τ + ℓ·d, V_e' = V_e·τ'/τ.
func (m *Model) vacuum(s *State, in *Input, dt float64) float64 {
	b := &m.spec.Booster
	v := s.Vacuum
	drop := b.demand(float64(m.spec.Pedal.Ratio*s.Master.Foot)) - b.demand(float64(m.spec.Pedal.Ratio*in.Foot))
	if drop > 0 && b.Vent > 0 {
		v *= exact.Pow(1-b.Vent, drop)
	}
	torn := 0.0
	if m.cond.DiaphragmLeak > 0 {
		torn = m.cond.DiaphragmLeak * b.demand(float64(m.spec.Pedal.Ratio*in.Foot))
	}
	if !in.Engine {
		if leak := m.cond.VacuumLeak + torn; leak > 0 {
			v *= exact.Exp(-leak * dt)
		}
		return v
	}
	full := m.engineVacuum()
	if torn > 0 && b.Restore > 0 {
		rate := 1/b.Restore + torn
		full = full / b.Restore / rate
		return full + float64((v-full)*exact.Exp(-rate*dt))
	}
	if v == full {
		return v
	}
	if b.Restore <= 0 {
		return full
	}
	return full + float64((v-full)*exact.Exp(-dt/b.Restore))
}

// engineVacuum is what the engine draws [Pa].
func (m *Model) engineVacuum() float64 {
	return float64(m.spec.Booster.Vacuum * (1 - m.cond.BoosterLoss))
}
