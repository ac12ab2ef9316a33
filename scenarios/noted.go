package scenarios

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"evenwear/physics/inspect"
)

// Noted is the ease of a drawn car that stays away: somebody else has looked at it,
// and only their notes are there. Its truth is any cause that has notes, as far gone
// as fair cars are; its owner tells nothing, and no minutes are left to look. What is
// then said of it shows what somebody takes the readings to prove, and nothing else.
const Noted Ease = "noted"

// Where a note of a cause was taken: at the wheel of the fault, or at the other of
// its axle.
const (
	noteHere   = "here"
	noteBeside = "beside"
)

var besides = map[string]string{"front_left": "front_right", "front_right": "front_left", "rear_left": "rear_right", "rear_right": "rear_left"}

// noted is the check that a note of a cause names, for a fault at a place. The error
// says what name is unknown.
func noted(note string, at Place) (inspect.Instance, error) {
	return inspect.ParseInstance(noteAt(note, at))
}

// noteAt is a note with its wheel's name in the place of here and beside.
func noteAt(note string, at Place) string {
	wheel, _, _ := strings.Cut(string(at), ".") // a pin's place begins with its wheel's
	check, where, has := strings.Cut(note, "@")
	switch {
	case has && where == noteHere:
		return check + "@" + wheel
	case has && where == noteBeside:
		return check + "@" + besides[wheel]
	}
	return note
}

// Notes are the checks whose readings are handed over with a car of this fault.
func (f *Fault) Notes() ([]inspect.Instance, error) {
	var all []inspect.Instance
	for _, n := range f.Cause.Notes {
		inst, err := noted(n, f.Place)
		if err != nil {
			return nil, fmt.Errorf("a note of %s at %s: %w", f.Cause.ID, f.Place, err)
		}
		all = append(all, inst)
	}
	return all, nil
}

// note hands notes over with a drawn car, and leaves no minutes to look.
func (l *Library) note(j *Job, rng *rand.Rand) (why string) {
	var err error
	if j.Notes, err = j.Faults[0].Notes(); err != nil {
		return err.Error()
	}
	j.Complaint, j.Title = pick(l.owners.notes, rng), pick(l.owners.noteTitles, rng)
	j.verified = func() error { return nil } // nothing is claimed
	return ""
}
