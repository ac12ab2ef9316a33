package evidence

import (
	"fmt"

	"evenwear/physics/inspect"
)

// A Hypothesis is one cause at one place with one severity, or two of them in one
// car. Row is the cause × place it belongs to: the unit of belief and of marks.
type Hypothesis struct {
	ID    string // "pins_dry@front_left#200"
	Row   string // "pins_dry@front_left"
	Cause string
	Place string
	Also  Also    // the second fault of a car that has two
	Prior float64 // [1] the priors of a problem sum to 1
	Kin   string  // those of one kin share work: they are computed in turn, not at the same time; empty: none
}

// An Also is the row of a second fault; without a row there is none.
type Also struct{ Row, Cause, Place string }

// And parts the rows of a hypothesis of two faults in the id of what is believed.
const And = " + "

// classID names what a hypothesis says is wrong: its row, or both of its rows.
func (h *Hypothesis) classID() string {
	if h.Also.Row == "" {
		return h.Row
	}
	return h.Row + And + h.Also.Row
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

	// Told is ln P(what the owner told | h) [nat], given the hypothesis's car at the
	// centre of its background; nil: nothing was told. It must be pure and finite.
	Told func(h int, centre *inspect.World) (float64, error)

	// Mirror names the check at which hypothesis elder shows what h shows at a
	// check, if it does: two of one kin are mirror images of each other, but for
	// the brake's circuits. May be nil. See alike.
	Mirror func(h, elder int, check inspect.Instance) (inspect.Instance, bool)

	// Thorough leaves no point of the design out: dear, to hold the short way against.
	Thorough bool

	// Find gives the check of an id; nil means the catalogue of inspect.
	Find func(inspect.ID) (*inspect.Check, bool)
}

// A Reading is what a learner wrote: a display of the check's meter.
type Reading struct {
	Check   inspect.Instance
	Display int64 // steps, or the index of the word
}

// MaxBackground is the greatest number of background coordinates: the design of
// points grows as their power of two.
const MaxBackground = 5

// verify refuses a problem that cannot be worked with, in a sentence.
func (p *Problem) verify() error {
	switch {
	case p == nil || p.Build == nil:
		return fmt.Errorf("evidence: a problem needs a way to build its worlds")
	case len(p.Hypotheses) == 0:
		return fmt.Errorf("evidence: a problem needs at least one hypothesis")
	case len(p.Background) > MaxBackground:
		return fmt.Errorf("evidence: %d background coordinates; at most %d are allowed", len(p.Background), MaxBackground)
	}
	sum := 0.0
	for i := range p.Hypotheses {
		h := &p.Hypotheses[i]
		if !(h.Prior > 0 && h.Prior <= 1) {
			return fmt.Errorf("evidence: hypothesis %s has prior %g; wanted above 0 and at most 1", h.ID, h.Prior)
		}
		for j := range i {
			if p.Hypotheses[j].ID == h.ID {
				return fmt.Errorf("evidence: hypothesis %s stands twice", h.ID)
			}
		}
		sum += h.Prior
	}
	if !(sum > 1-1e-9 && sum < 1+1e-9) {
		return fmt.Errorf("evidence: the priors sum to %.12g; wanted 1", sum)
	}
	for i, a := range p.Checks {
		for j := range i {
			if p.Checks[j] == a {
				return fmt.Errorf("evidence: check %s stands twice", a)
			}
		}
	}
	return nil
}

func (p *Problem) find(id inspect.ID) (*inspect.Check, bool) {
	if p.Find != nil {
		return p.Find(id)
	}
	return inspect.Find(id)
}

func errNotComputed(inst inspect.Instance) error {
	return fmt.Errorf("evidence: check %s has not been computed; call Fill or Ensure", inst)
}
