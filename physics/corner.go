package physics

import "fmt"

// A Corner is one floating caliper ready to be solved: its design with its
// condition worked in. It is immutable; a [CornerState] moves.
//
// At pressure p the caliper sits where its energy over (x, y, θ, e) is least.
// Written as forces (a hand or tool pushes with H_x on the piston, H_y on the body):
//
//	piston  p·A + H_x − S(x) − N_i − E_i                              = 0
//	body    N_i + E_i + H_y − N_o − E_o − P_u − P_l − c·ẏ − boots     = 0
//	tilt    κb(N_iu − N_il) − b(N_ou − N_ol) − a(P_u − P_l) − k_θ·θ − boots = 0
//	bridge  N_o + E_o − k_bridge·e                                    = 0
//
//	δ_i,± = x − (y ± κbθ) − gap_i,± − disc_i(φ)          [m] squeeze
//	δ_o,± = (y ± bθ) − e − gap_o,± − disc_o(φ)
//	gap   = new + lining lost ± + face lost − proud      [m] with x, y, θ, e at zero
//	N     = ½(k1·δ + k3·δ³) for δ > 0, else 0            [N] each half pad
//	f     = clamp(k·(u − anchor), −F, +F)                [N] seal: u = x; pins: y ± aθ; ears: x − y and y − e
//	F     = F₀ + c_s·p of the seal, F₀ of the others     [N] with what a condition adds to k and F₀
//	boots = k_boot·(y ± aθ) at each pin;  S = 1 GN/m·(x + home) below home: the bore's bottom (assumed)
//
// An anchor follows what slides, so that |f| = F.
//
// A lining parted from a share of its plate bears on the rest alone until the crack
// closes: k1 falls by the share, k3 stays. A bent pin gives as it binds in its bush,
// so it springs back a long way where a dry one stays: 1/k = 1/k_pin + c_bend, about
// 1 to 4 mm/kN (a kink of slope 0.03 to 0.06 in 10 mm of steel 40 mm long: l³/(3EI·slope²),
// 0.2 µm/N across it). How hard it binds is its friction. A bush too narrow for its
// pin adds [BushGrip] to F.
//
// A release leaves the outer pad pressed by what the pins slide with, 2·15 N on a sound
// car, until the turning disc's run-out has pushed it back: 1.2 N·m of drag, then 0.14.
// Workshop manuals allow a light truck 9.8 N·m just released and 6.9 after ten turns.
//
// For fixed anchors the energy is convex, so the answer is unique up to
// directions in which nothing pushes. Newton with an exact Hessian and Armijo
// backtracking on the energy finds it; the anchors are then moved.
// Errors: force residual below 1e-6 of the greatest force or 1e-4 N.
type Corner struct {
	name                   string
	area                   float64    // [m²]
	k1                     [2]float64 // [N/m] of a half of the inner and outer pad
	k3, bridge             float64    // half-pad k3
	sealRate, seal0, grip  float64
	pinRate                [2]float64 // [N/m] upper and lower
	pin                    [2]float64 // [N]
	a, b, kb               float64    // kb = κ·b
	boot, tiltRate, grease float64
	earRate                float64
	ear                    [2]float64    // [N]
	home                   float64       // [m]
	gap                    [2][2]float64 // [m] pad, half: clearance with wear worked in
	runout, thickness      float64       // [m] amplitude over half a turn
	play, wedge            float64       // [m] way to either end of a loose hub's play; see [Corner.Tip]
	re                     float64
	mu                     [2][2]float64 // [1] cold
}

// NewCorner works a condition into a design. name is used in errors.
func NewCorner(spec *CornerSpec, cond *WheelCondition, name string) Corner {
	c := Corner{
		name: name,
		area: spec.PistonArea(),
		k3:   spec.K3 / 2, bridge: spec.Bridge,
		sealRate: spec.SealRate + cond.SealRate,
		seal0:    spec.SealFriction + cond.SealFriction, grip: spec.SealGrip,
		a: spec.PinOffset, b: spec.PadOffset, kb: spec.TiltShare * spec.PadOffset,
		boot: spec.Boot, tiltRate: spec.TiltRate, grease: spec.Grease,
		earRate: spec.EarRate, home: spec.Home,
		runout: (spec.Runout + cond.Runout) / 2, thickness: cond.Thickness / 4,
		re: spec.EffectiveRadius, play: cond.BearingPlay / 2,
	}
	if edge := float64(spec.DiscDiameter/2) - spec.EffectiveRadius; edge > 0 {
		c.wedge = c.play * edge / spec.EffectiveRadius
	}
	for i := range 2 {
		c.pin[i] = spec.PinFriction + cond.PinGrip(i)
		c.ear[i] = spec.EarFriction + cond.EarFriction[i]
		c.pinRate[i] = spec.PinRate / (1 + float64(spec.PinRate*cond.PinBend[i]))
		c.k1[i] = float64(spec.K1 / 2 * (1 - cond.BondLost[i]))
		for j := range 2 {
			c.gap[i][j] = spec.Gap[i] - cond.PlateProud[i] + cond.Wear[i][j] + cond.DiscWear[i]
			c.mu[i][j] = float64(spec.Mu * (1 - cond.MuLoss[i][j]))
		}
	}
	return c
}

// CornerState is what a caliper remembers: where it sits and where its
// friction elements last came to rest.
type CornerState struct {
	X, Y, Tilt, Bridge float64    // [m m rad m]
	SealAnchor         float64    // [m]
	PinAnchor          [2]float64 // [m] upper, lower
	EarAnchor          [2]float64 // [m] inner, outer
}

// CornerLoad is what acts on a caliper during one solve.
type CornerLoad struct {
	Pressure float64 // [Pa] gauge
	Piston   float64 // [N] H_x, a tool on the piston, outwards
	Body     float64 // [N] H_y, a hand on the body, inboard
	// Two hands that know where they want the body's upper and lower pin end:
	// each pushes with HandRate·(HandAt − end) [N/m, m], inboard; zero is no hand.
	HandRate, HandAt [2]float64
	// DiscIn and DiscOut move the disc faces away from the pads [m]; see [Corner.Faces].
	DiscIn, DiscOut float64
	// Rate is c_g/Δt [N/m] of the grease for an implicit step; zero is quasi-static.
	// The body moved from FromY [m].
	Rate, FromY float64
	// PistonRate [N/m] is the same for the film between seal and piston, which moved
	// from FromX [m]. It keeps the piston's place a function of pressure where the
	// seal slides across an open gap.
	PistonRate, FromX float64
	// Yield [m/N] is a series compliance of each half pad: lining that wears off
	// during the solve, k_w·s/A_half. Zero outside history.
	Yield [2][2]float64
	// Tight wants the residual a thousandth of the usual: an outer solve that
	// balances volumes sees the piston to 1e-13 m.
	Tight bool
	// PadsOut takes both pads out.
	PadsOut bool
}

// CornerForces is what a solve found.
type CornerForces struct {
	Half [2][2]float64 // [N] pad, half
	Pin  [2]float64    // [N] upper, lower
	Ear  [2]float64    // [N] inner, outer
	Seal float64       // [N]
	DxDp float64       // [m/Pa] piston travel per pressure, everything else following
}

// Inner is the force of the inner pad on the disc [N].
func (f *CornerForces) Inner() float64 { return f.Half[Inner][Upper] + f.Half[Inner][Lower] }

// Outer is the force of the outer pad on the disc [N].
func (f *CornerForces) Outer() float64 { return f.Half[Outer][Upper] + f.Half[Outer][Lower] }

// A CornerError says that a caliper found no equilibrium.
type CornerError struct {
	Corner    string
	Pressure  float64 // [Pa]
	Residual  float64 // [N]
	Tolerance float64 // [N]
}

func (e *CornerError) Error() string {
	return fmt.Sprintf("caliper %s at %.4g MPa: force residual %.3g N, wanted below %.3g N",
		e.Corner, e.Pressure/Megapascal, e.Residual, e.Tolerance)
}

// Area is the piston's area [m²].
func (c *Corner) Area() float64 { return c.area }

// Faces returns how far the disc's faces have moved away from the inner and
// outer pad [m] at disc angle cosine cosPhi. Run-out moves the disc as a whole,
// so one face comes as the other goes; thickness variation moves both alike:
//
//	disc_i = (r/2 + t/4)·cos φ,  disc_o = (t/4 − r/2)·cos φ   r run-out, t variation, greatest less least
func (c *Corner) Faces(cosPhi float64) (in, out float64) {
	r, t := float64(c.runout*cosPhi), float64(c.thickness*cosPhi)
	return r + t, t - r
}

// Torque is r_e·Σ μ·N [N·m] of cold linings.
func (c *Corner) Torque(f *CornerForces) float64 {
	sum := 0.0
	for i := range 2 {
		for j := range 2 {
			sum += float64(c.mu[i][j] * f.Half[i][j])
		}
	}
	return float64(c.re * sum)
}
