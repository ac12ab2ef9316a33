package evidence

import "evenwear/physics/inspect"

// A Hypothesis is one cause at one place with one severity. Row is the cause ×
// place it belongs to: the unit of belief and of marks.
type Hypothesis struct {
	ID    string // "pins_dry@front_left#200"
	Row   string // "pins_dry@front_left"
	Cause string
	Place string
	Prior float64 // [1] the priors of a problem sum to 1
}

// A Background is one thing an inspector cannot know, as a standard normal
// coordinate: what it means is the builder's matter.
type Background struct {
	ID string
}

// A Problem is a car's whole question: what could be wrong and how each
// possibility would look. Build must be safe for concurrent calls and pure.
type Problem struct {
	Hypotheses []Hypothesis
	Background []Background
	Checks     []inspect.Instance

	// Build makes hypothesis h with background coordinates b (standard normals).
	Build func(h int, b []float64) (*inspect.World, error)
}

// A Reading is what a learner wrote: a display of the check's meter.
type Reading struct {
	Check   inspect.Instance
	Display int64 // steps, or the index of the word
}
