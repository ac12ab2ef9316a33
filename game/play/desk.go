package play

import (
	"errors"
	"fmt"
	"hash/fnv"
	"sync"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// A Desk is where sessions are played: the library, the words, and the tables
// of evidence that sessions of the same car and facts share. It may be used by
// several goroutines; each session by one.
type Desk struct {
	lib     *scenarios.Library
	words   Words
	catalog catalog
	hash    string

	// Explain is asked at every debrief how well ideas explain what was said; nil:
	// nobody asks. Set it before sessions begin.
	Explain func(Said) ([]record.Idea, error)

	mu     sync.Mutex
	tables []*table
	drawn  map[string]*scenarios.Job // by id: to draw a car is to drive it
}

// NewDesk lays a desk.
func NewDesk(lib *scenarios.Library, words Words) *Desk {
	return &Desk{lib: lib, words: words, catalog: newCatalog(lib), hash: hashOf(lib, meaning), drawn: map[string]*scenarios.Job{}}
}

// Library is what the desk plays from.
func (d *Desk) Library() *scenarios.Library { return d.lib }

// ErrNoJob says that no job has this id.
var ErrNoJob = errors.New("there is no such job")

// job finds a job of the library, or draws one whose id says how.
func (d *Desk) job(id string) (*scenarios.Job, error) {
	if j := d.lib.Job(id); j != nil {
		return j, nil
	}
	if seed, ease, ok := scenarios.ParseDrawn(id); ok {
		d.mu.Lock()
		defer d.mu.Unlock()
		if j := d.drawn[id]; j != nil {
			return j, nil
		}
		j, err := d.lib.Draw(seed, scenarios.Wish{Ease: ease})
		if err == nil {
			d.drawn[id] = j
		}
		return j, err
	}
	known := make([]string, len(d.lib.Jobs))
	for i, j := range d.lib.Jobs {
		known[i] = j.ID
	}
	return nil, fmt.Errorf("%q: %w; %s; unseen ones are named as in %s", short(id), ErrNoJob, scenarios.NearestWords(id, known), scenarios.DrawnID(1234, scenarios.Fair))
}

// Title is a few words for a job, or its id when there is no such job.
func (d *Desk) Title(id string) string {
	j, err := d.job(id)
	if err != nil {
		return id
	}
	return j.Title
}

// buildWorld is the car an inspector finds.
func buildWorld(car *scenarios.Car, driven scenarios.Driven, faults []scenarios.Fault) (*inspect.World, error) {
	cond, err := scenarios.Build(&car.Spec, driven, faults)
	if err != nil {
		return nil, err
	}
	return inspect.NewWorld(&car.Spec, cond)
}

// repair is the car after these remedies, in the order they were chosen.
func (d *Desk) repair(car *scenarios.Car, found *inspect.World, chosen []string) (*inspect.World, error) {
	cond, err := d.repaired(car, found.Model.Condition(), chosen)
	if err != nil {
		return nil, err
	}
	return inspect.NewWorld(&car.Spec, cond)
}

func (d *Desk) repaired(car *scenarios.Car, cond physics.Condition, chosen []string) (physics.Condition, error) {
	for _, c := range chosen {
		r, at, ok := d.findRemedy(c)
		if !ok {
			return cond, fmt.Errorf("there is no remedy %q", c)
		}
		if err := r.Apply(&car.Spec, &cond, at); err != nil {
			return cond, err
		}
	}
	return cond, nil
}

func asRefusal(err error, r **Refusal) bool { return errors.As(err, r) }

// Hash tells apart libraries, and versions of the program, whose sessions would
// replay differently.
func (d *Desk) Hash() string { return d.hash }

// hashOf digests all that readings and marks depend on, in the library's own order.
func hashOf(lib *scenarios.Library, meaning string) string {
	h := fnv.New64a()
	fmt.Fprintln(h, meaning)
	for _, c := range lib.Cars {
		fmt.Fprintf(h, "%+v\n", *c)
	}
	for _, c := range lib.Causes {
		fmt.Fprintf(h, "%+v\n", *c)
	}
	for _, r := range lib.Remedies {
		fmt.Fprintf(h, "%+v\n", *r)
	}
	for _, j := range lib.Jobs {
		fmt.Fprintf(h, "%s %s %+v\n", j.ID, j.Car.ID, j.Driven)
		for _, f := range j.Faults {
			fmt.Fprintf(h, "%s %s %s %g\n", f.Cause.ID, f.Place, f.Severity.ID, f.SinceKm)
		}
	}
	lib.WriteDrawn(h)
	return fmt.Sprintf("%016x", h.Sum64())
}
