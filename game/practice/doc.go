// Package practice chooses the next car for a learner from what their debriefs
// came to, and lays out a self-check of ten cars.
//
// What a learner mixes up is their own confusion table: the mean belief they put
// on cause j when i was true ([Confused]). What they have mastered comes back by
// a published schedule, the Free Spaced Repetition Scheduler, version 6, of
// module go-fsrs with its published weights: one card a cause ([Cards]).
//
// # What this package does not know
//
// Clocks, files, faces: time, luck and history are arguments, and the same ones
// give the same car.
package practice
