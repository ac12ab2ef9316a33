// Package evidence says what readings prove. It holds a table of what every
// hypothesis would show at every check, with its dependence on what an
// inspector cannot know, and turns readings into a posterior.
//
//	m(b) ≈ m₀ + J·b            one fit for each hypothesis and check      [unit of the meter]
//	s    = m(b) + β + ε_fit    what stands before the meter's repeatability
//	P(readings | h) = ∫ Π [(1 − ε)·Prob(display | s) + ε/n] dN(b, β, ε_fit)
//	P(h | readings) ∝ P(h)·P(told | h)·P(readings | h)
//
// b (the background), β (one constant error for each instrument) and ε_fit (what
// the fit of a check leaves over) are Gaussian and enter s linearly, so they are
// integrated together: see [Posterior]. Ten repeats with one instrument make
// its repeatability small, never its bias or the fit's error.
//
// What the owner told is evidence too: P(told | h) comes with the problem, from the
// hypothesis's car at the centre of its background. A posterior without readings is
// P(h)·P(told | h); what readings tell is reckoned from there. See [Posterior.Bits].
//
// # What this package does not know
//
// What a cause means, how a world is made, files, words, luck: a problem brings
// its own worlds and whoever plays it brings the readings.
//
// # What it promises
//
// The same problem and readings give the same bits on every machine and for any
// number of workers: no map is walked and sums run in the order of the problem.
package evidence
