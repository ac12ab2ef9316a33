package record

import (
	"cmp"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// A Check is a self-check that was begun: which cars it is of. How far it is
// stands in the sessions and results of these cars.
type Check struct {
	Name    string     `json:"-"` // of its file
	Version int        `json:"version"`
	Began   time.Time  `json:"began"`
	Library string     `json:"library"` // hash of the library the cars were drawn from
	Cars    []CheckCar `json:"cars"`
}

// A CheckCar is one car of a self-check.
type CheckCar struct {
	Job  string `json:"job"`
	Seed uint64 `json:"seed"` // luck of its readings
}

const (
	checkSuffix = ".selfcheck"
	checkBegin  = "selfcheck"
	mostCars    = 100 // of a self-check; more is no file of ours
)

// CreateCheck keeps a self-check under a name of its own, on disk when it returns.
func CreateCheck(dir string, c Check) (Check, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return c, err
	}
	c.Version = Version
	line, err := json.Marshal(c)
	if err != nil {
		return c, err
	}
	c.Name, err = place(dir, checkBegin, checkSuffix, line)
	return c, err
}

// Checks are the self-checks of a folder in the order they were begun. One that
// cannot be read is set aside and told in damaged; the others stay usable.
func Checks(dir string) (list []Check, damaged []error, err error) {
	files, err := os.ReadDir(dir)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil, nil
	}
	if err != nil {
		return nil, nil, err
	}
	for _, f := range files {
		name, ok := strings.CutSuffix(f.Name(), checkSuffix)
		if !ok || f.IsDir() {
			continue
		}
		path := filepath.Join(dir, f.Name())
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, nil, err
		}
		if len(data) == 0 {
			continue // another program is about to put it there
		}
		c := Check{Name: name}
		if err := json.Unmarshal(data, &c); err == nil && c.Version != Version {
			continue // not damaged: another version reads it
		} else if err != nil || !c.whole() {
			damaged = append(damaged, &DamagedError{File: path, Line: 1, What: "this is not a self-check", Aside: setAside(path)})
			continue
		}
		list = append(list, c)
	}
	slices.SortStableFunc(list, func(a, b Check) int {
		return cmp.Or(a.Began.Compare(b.Began), cmp.Compare(a.Name, b.Name))
	})
	return list, damaged, nil
}

// whole tells that nothing is missing of a self-check.
func (c *Check) whole() bool {
	return !c.Began.IsZero() && len(c.Cars) > 0 && len(c.Cars) <= mostCars &&
		!slices.ContainsFunc(c.Cars, func(car CheckCar) bool { return car.Job == "" })
}
