// Package physics models a car on its disc brakes: pedal, booster, master
// cylinder, lines, floating calipers, heat, wear and road.
//
// # Chain of causes
//
//	F_rod = r·F_foot + booster(F_rod, vacuum)     assisted input            [N]
//	p·A_m = η·F_rod − springs                     each chamber              [Pa]
//	q     = (p_chamber − p_wheel)/R               each line                 [m³/s]
//	∂W/∂(x, y, θ, e) = 0                          each caliper, see [Corner]
//	T     = r_e·Σ μ·N                             each wheel                [N·m]
//	m·a   = −Σ min(T/R, adhesion) − drag          the car                   [N]
//
// # Hydraulics
//
//	booster    B = min(g·max(0, F_rod − F₀), B_max·V/V_full)              added to the rod; V vacuum [Pa], see [BoosterSpec]
//	chamber    p·A_m = η·(F_rod + B) − preload − k·s,  0 ≤ s ≤ stroke     [N]
//	valve      p_out = knee + slope·(p − knee) above the knee             rear only, see [ValveSpec]
//	line       q = (p_out − p_w)·ν(20 °C)/(R·ν(T))                        [m³/s] laminar: Hagen–Poiseuille
//	hose       q = −max(0, p_w − p − p_hold)/R_back                       back through a collapsed one
//	leak       q = C_d·A·√(2·p/ρ), C_d 0.6                                [m³/s] Torricelli
//	port       open while s is short of it less the play lost, the same law
//	cup        q = max(0, −p)/R_cup in from the reservoir on a fast return; c_bypass·p past a worn one [m³/s]
//	wheel      A·x + c·p + V_f·p/K(T) − V_f·β·(T − 20 °C) − (V_g(p) − V_g(0)) − V_vap = ∫(q − q_leak) dt   [m³]
//	fluid      1/K(T) = (1 + 0.004/K·(T − 20 °C))/K                       assumed growth
//	air        p_abs·V^1.4 squeezed at once, p_abs·V once its heat has left in 0.3 s (assumed)
//	vapour     m = V_f·ρ·c·(T − T_b(w, p))/L,  V_vap = m·R·T/(M·p_abs)    T_b in [FluidSpec.BoilingPoint]
//	reservoir  standing = filling − what stands in chambers and wheels − what is lost
//
// One implicit step solves all of them at once; a step of 1 ms errs by less than
// 0.5 % in root mean square of a press (held against SciPy's Radau).
//
// # Heat
//
//	disc       ρ·c·∂T/∂t = k·∂²T/∂z², half its thickness, mid-plane insulated but for vanes and hat
//	face       −k·∂T/∂z = (share·Σ μ·N·v_slip − to the pads)/(2·A_swept) − h·(T − T_air)    [W/m²]
//	share      e_d·A_swept/(e_d·A_swept + e_p·A_pad), e = √(k·ρ·c)        see [DiscShare]
//	air        h = 4 + 8·v^⅝ on faces, 1.2·max(4, 1.3 + 0.7175·ω) in vanes [W/m²K] v m/s, ω rad/s: McPhee & Johnson 2008
//	radiation  ε·σ·(T⁴ − T_air⁴), ε 0.5 (assumed)                          [W/m²]
//	lumps      C·dT/dt = Σ g·(T_other − T)                                pads, piston, caliper with fluid, hat
//	friction   μ = μ₀·(1 − loss)·fade(T)·(1 + 0.15·f)                     see [CornerSpec.Fade]; f rust film
//	film       f ← f·e^(−W/(2·A_swept·0.8 MJ/m²)), W friction work; f·e^(−n/3) over n stops of a way   assumed
//
// Every temperature of a stop and of a descent errs by less than 0.5 % of the
// greatest rise of its kind (held against SciPy on 400 cells).
//
// # Road
//
//	tyre       F = min(T/R, a_peak·load); once locked a_slide·load, free again below that    [N]
//	load       front axle W·(f + z·h/L), z = deceleration/g               see [BodySpec.FrontLoad]
//	car        m·a = Σ F + ½·1.2·c_d·A·v² + c_r·m·g·cos − m·g·sin − drive [N]
//	side       M_z = ½·t·(F_right − F_left), pull = M_z/(m·L)             [N·m], [m/s²] see [StopResult]
//
// Way and time of a stop err by less than 0.5 % (held against SciPy's Radau).
//
// # Wear
//
//	lining     A_half·ds = k(T)·N·(r_e/R)·dway                            [m³] Archard, see [Archard]
//	heat       k(T) = k·(1 + ((T − 250 °C)/150 K)²) above 250 °C, at most 8 k   assumed
//	score      k·(1 + depth/0.4 mm) on a scored face                      assumed: 0.1 mm may pass, common practice
//	disc       the same of the face, cold
//	age        see [Condition.Age]
//
// # Three kinds of data
//
// A [Spec] is the car when new and never changes. A [Condition] says how far
// its parts are from new; the zero Condition is a healthy new car. A [State] is
// what moves while the car runs; to copy it is to fork the world.
//
// # Conventions
//
// SI units inside, degrees Celsius for temperatures. Pressures are gauge
// pressures unless a name says absolute. x is the piston's travel out of its
// bore, y the body's slide towards the car's centre line (inboard), θ the
// body's tilt (upper pin end further inboard), e the opening of the bridge. Wheels come in the order front
// left, front right, rear left, rear right; pads in the order inner, outer;
// halves and pins in the order upper, lower.
//
// # What this package does not know
//
// Faults, inspectors, marks, files, clocks, randomness, pictures. A worn part
// is a number in a Condition; whoever put it there knows why.
//
// # What it promises
//
// The same inputs give the same bits on amd64, arm64 and wasm: only exactly
// rounded operations and physics/exact are used, every product that is added to
// something is wrapped in float64() so that no compiler fuses it, and sums run
// in a fixed order. A step that does not converge is an error that names the
// quantity and the residual, never a half-converged answer.
package physics
