package physics

import "math"

const (
	hydraulicIterations = 100
	hydraulicTolerance  = 1e-14 // [m³] volume left unbalanced in any chamber or wheel
	hydraulicHalvings   = 16
)

// hydraulics is one implicit step of all fluid: unknowns are both pistons and
// the four wheel pressures,
//
//	wheel    stored(p_w) − stored_0 − Δt·(q_line − q_loss)                    = 0
//	chamber  A·(s − s_0) − Δt·(Σ q_line − q_feed) − gas given up since s_0    = 0
//
// Each caliper is condensed by its dx/dp, so a Newton iteration is four 1×1
// eliminations and one 2×2 solve. Backward Euler: stable at any Δt, first order.
type hydraulics struct {
	m     *Model
	start *State
	in    *Input
	dt    float64
	push  push
	lines [NumWheels]line
	load  [NumWheels]CornerLoad

	v       [2]float64 // unknown of each piston
	w       [NumWheels]float64
	corner  [NumWheels]CornerState
	forces  [NumWheels]CornerForces
	chamber [2]float64 // [Pa]
	volume  [NumWheels]float64
	fed     [2]float64 // [m³/s]
	lost    [NumWheels]float64

	// residuals and slopes of the present point
	rw, rww, rwp [NumWheels]float64
	rc           [2]float64
	j            [2][2]float64
	norm         float64
}

// evaluate works out residuals and slopes at the present unknowns.
func (h *hydraulics) evaluate() error {
	m, s := h.m, h.start
	u := m.stroke(0, h.v[0]) + m.stroke(1, h.v[1])
	var pv, pu [2]float64
	for i := range 2 {
		h.chamber[i], pv[i], pu[i] = m.chamber(i, &h.push, h.v[i], u)
	}
	h.norm = 0
	var out, outP [2]float64 // Σ q of a chamber's lines, with the wheels eliminated
	for w := range Wheel(NumWheels) {
		at := h.corner[w]
		old := &s.Corners[w]
		at.SealAnchor, at.PinAnchor, at.EarAnchor = old.SealAnchor, old.PinAnchor, old.EarAnchor
		h.load[w].Pressure = h.w[w]
		next, f, err := m.corners[w].Settle(at, &h.load[w])
		if err != nil {
			return err
		}
		h.corner[w], h.forces[w] = next, f
		v, slope := m.stored(s, w, next.X, h.w[w])
		i := m.spec.Circuit[w]
		q, dp, dw := h.lines[w].flow(h.chamber[i], h.w[w])
		loss, dl := h.lines[w].loss(h.w[w])
		h.volume[w], h.lost[w] = v, loss
		h.rw[w] = v - s.Cavity[w] - float64(h.dt*(q-loss))
		h.rww[w] = slope + float64(m.corners[w].area*f.DxDp) - float64(h.dt*(dw-dl))
		h.rwp[w] = -float64(h.dt * dp)
		// A line's flow answers chamber pressure by dp + dw·∂w/∂p, ∂w/∂p = −rwp/rww.
		out[i] += q
		outP[i] += dp - float64(dw*h.rwp[w]/h.rww[w])
		h.norm = max(h.norm, math.Abs(h.rw[w]))
	}
	for i := range 2 {
		fed, dv, dp := m.feed(i, h.v[i], h.chamber[i])
		h.fed[i] = fed
		g, gs := gas(s.Master.Air[i], h.chamber[i])
		g0, _ := gas(s.Master.Air[i], s.Master.Pressure[i])
		soft := h.push.area * chamberDepth / m.spec.Fluid.BulkModulus
		moved := m.stroke(i, h.v[i]) - s.Master.Stroke[i]
		h.rc[i] = float64(h.push.area*moved) - float64(h.dt*(out[i]-fed)) - (g - g0) - float64(soft*(h.chamber[i]-s.Master.Pressure[i]))
		byP := -float64(h.dt*(outP[i]-dp)) - gs - soft
		byV := float64(h.dt * dv)
		if m.stroke(i, h.v[i]) == h.v[i] {
			byV += h.push.area
		}
		for k := range 2 {
			h.j[i][k] = 0
			if m.stroke(k, h.v[k]) == h.v[k] {
				h.j[i][k] = float64(byP * pu[i])
			}
		}
		h.j[i][i] += byV + float64(byP*pv[i])
		h.norm = max(h.norm, math.Abs(h.rc[i]))
	}
	return nil
}

// chamberDepth is the depth of fluid in a chamber that is squeezed [m].
const chamberDepth = 0.03

// solve iterates from the present unknowns to balance.
func (h *hydraulics) solve() error {
	if err := h.evaluate(); err != nil {
		return err
	}
	for range hydraulicIterations {
		if h.norm <= hydraulicTolerance {
			return nil
		}
		dv, dw := h.newton()
		was := *h
		step := 1.0
		for k := 0; ; k++ {
			for i := range 2 {
				h.v[i] = was.v[i] + float64(step*dv[i])
			}
			for w := range h.w {
				h.w[w] = max(lowest, was.w[w]+float64(step*dw[w]))
			}
			err := h.evaluate()
			if err == nil && (h.norm < was.norm || k == hydraulicHalvings) {
				break
			}
			if k == hydraulicHalvings {
				return err
			}
			step /= 2
			corner, forces := was.corner, was.forces
			h.corner, h.forces = corner, forces
		}
	}
	if h.norm <= 1e3*hydraulicTolerance { // a kink between two branches: below 1e-5 mm³
		return nil
	}
	return &DivergedError{Tick: h.start.Millis, Quantity: "fluid volume", Residual: h.norm, Tolerance: hydraulicTolerance, Unit: "m³"}
}

// lowest is the gauge pressure of a wheel pulled to its vapour pressure [Pa].
const lowest = vapourFloor - Atmosphere

// newton returns the step of pistons and wheel pressures.
func (h *hydraulics) newton() (dv [2]float64, dw [NumWheels]float64) {
	m := h.m
	// Chamber residuals with the wheels' own residuals eliminated.
	r := h.rc
	for w := range Wheel(NumWheels) {
		i := m.spec.Circuit[w]
		_, _, dqw := h.lines[w].flow(h.chamber[i], h.w[w])
		r[i] += float64(h.dt * dqw * h.rw[w] / h.rww[w])
	}
	det := float64(h.j[0][0]*h.j[1][1]) - float64(h.j[0][1]*h.j[1][0])
	if det != 0 {
		dv[0] = -(float64(r[0]*h.j[1][1]) - float64(r[1]*h.j[0][1])) / det
		dv[1] = -(float64(r[1]*h.j[0][0]) - float64(r[0]*h.j[1][0])) / det
	}
	u0 := m.stroke(0, h.v[0]) + m.stroke(1, h.v[1])
	for w := range Wheel(NumWheels) {
		i := m.spec.Circuit[w]
		_, pv, pu := m.chamber(i, &h.push, h.v[i], u0)
		dp := float64(pv * dv[i])
		for k := range 2 {
			if m.stroke(k, h.v[k]) == h.v[k] {
				dp += float64(pu * dv[k])
			}
		}
		dw[w] = -(h.rw[w] + float64(h.rwp[w]*dp)) / h.rww[w]
	}
	return dv, dw
}
