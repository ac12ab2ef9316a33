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
