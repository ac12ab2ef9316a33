// Package learner models people at a job: what they look at next and what they
// believe after it, as pure functions of an evidence table, the readings so far
// and their own luck.
//
//	belief = s·posterior^e/Σ + (1 − s)·prior      skill s, exponent e of confidence
//	look   : with chance s the check that tells most now, else the one that tells
//	         most of any car, as if nothing had been read
//
// Somebody with a wrong idea of how faults show has a table of their own, built
// from the real one: see [Misconception]. [Name] turns that round and finds the
// idea that explains somebody's beliefs better than slips do.
//
// # What this package does not know
//
// Cars, screens, files, clocks, marks: whoever plays a learner brings the
// readings, and marks what comes of them.
//
// # What it promises
//
// The same table, readings and luck give the same acts on every machine.
package learner
