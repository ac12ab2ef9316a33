package physics

// BoosterForce is what the booster adds [N] to a rod force [N] with this vacuum
// [Pa]: nothing below the threshold, then gain × the excess, up to what the
// vacuum can give (the knee), after which only muscle adds.
func (m *Model) BoosterForce(rod, vacuum float64) float64 {
	b := &m.spec.Booster
	if b.Vacuum <= 0 {
		return 0
	}
	return max(0, min(float64(b.Gain*(rod-b.Threshold)), float64(b.Ceiling*vacuum/b.Vacuum)))
}

// breathe moves the booster's vacuum by dt [s] after its force changed from
// before to after [N]:
//
//	engine running   V' = V + (V_full − V)·dt/(τ + dt)   backward Euler, stable for any dt
//	engine off       V' = V/(1 + leak·dt)
//	foot coming off  air enters the working side: a full release from the ceiling vents a share
//
// The vent counts the force given up, so a light touch costs little vacuum.
func (m *Model) breathe(vacuum, before, after float64, engine bool, dt float64) float64 {
	b := &m.spec.Booster
	if b.Vacuum <= 0 {
		return 0
	}
	if before > after && b.Ceiling > 0 {
		vacuum -= float64(b.Vent*b.Vacuum*(before-after)/b.Ceiling) * (vacuum / b.Vacuum)
	}
	vacuum = max(0, vacuum/(1+float64(m.cond.VacuumLeak*dt)))
	if engine {
		full := float64(b.Vacuum * (1 - m.cond.BoosterLoss))
		vacuum += (full - vacuum) * (dt / (b.Restore + dt))
	}
	return vacuum
}
