// Package playtest plays jobs as a careful inspector would: it makes ready,
// looks, writes down exactly what the marks say, spreads its counters over what
// the readings bear, chooses a remedy and looks again. It sees nothing but
// views, as any learner does, so a face can be driven by the same acts.
package playtest
