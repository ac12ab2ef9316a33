// Package scoring turns what a learner said and did into marks and a debrief,
// and drives the released car on to see what becomes of it.
//
//	diagnosis   100·(1 − Σ(r − t)²/(1 − Σπ²))             r said, t true, π prior
//	evidence    bits of the learner over bits of the model inspector
//	total       Σ weight·mark, diagnosis held to what the evidence bears, capped when unsafe
//
// Every mark carries the id of its reason and the numbers it came from; the
// sentence is made where words live. Marks are rounded to 0.01.
//
// # What this package does not know
//
// Files, words, faces, luck, and which remedy mends which cause: the caller
// brings the conditions before and after.
package scoring
