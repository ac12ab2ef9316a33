package audit

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"

	"evenwear/scenarios"
)

// A Drawing is what became of cars drawn from seeds, one after the other and of
// every ease in turn.
type Drawing struct {
	Cars     int
	Tried    int            // cars, those thrown away included
	Thrown   map[string]int // cars thrown away before one stood, by reason
	Given    map[string]int // seeds of which no car stood, by the last reason
	Refused  map[string]int // cars whose file the loader refuses, by its sentence
	False    map[string]int // cars whose file tells of what is not so
	Examples []string       // of cars that fail, with their sentence
}

// Failing is how many seeds gave no car that loads and tells the truth.
func (d *Drawing) Failing() int {
	n := 0
	for _, m := range []map[string]int{d.Given, d.Refused, d.False} {
		for _, k := range m {
			n += k
		}
	}
	return n
}

// A drawnOne is what became of one seed.
type drawnOne struct {
	id, file, claims string // why it fails; empty: it does not
	thrown           []string
	stands           bool
}

// Draw draws n cars, writes each as an author's file, reads it back through the
// loader and computes what its owner tells of once more.
func Draw(ctx context.Context, lib *scenarios.Library, opt Options, n int, progress func(Progress)) (*Drawing, error) {
	if err := opt.verify(); err != nil {
		return nil, err
	}
	if n < 1 {
		return nil, fmt.Errorf("audit: drawn is %d; wanted 1 or more", n)
	}
	r := run{opt: opt.full(), lib: lib, progress: progress}
	all := make([]drawnOne, n)
	err := r.each(ctx, "cars drawn", "drawn", n, func(i int) error {
		all[i] = draw(lib, opt.Seed+uint64(i))
		return nil
	})
	if err != nil {
		return nil, err
	}
	d := &Drawing{Thrown: map[string]int{}, Given: map[string]int{}, Refused: map[string]int{}, False: map[string]int{}}
	for _, one := range all {
		d.Cars++
		d.Tried += len(one.thrown)
		for _, why := range one.thrown {
			d.Thrown[short(why)]++
		}
		switch {
		case !one.stands:
			d.Given[short(one.thrown[len(one.thrown)-1])]++
			continue
		case one.file != "":
			d.Refused[short(one.file)]++
		case one.claims != "":
			d.False[short(one.claims)]++
		}
		d.Tried++
		if one.file+one.claims != "" && len(d.Examples) < mostExamples {
			d.Examples = append(d.Examples, one.id+": "+one.file+one.claims)
		}
	}
	return d, nil
}

const mostExamples = 5

// short is a reason without the figures of one car.
func short(why string) string {
	head, _, _ := strings.Cut(why, ": ")
	return head
}

func draw(lib *scenarios.Library, seed uint64) (one drawnOne) {
	ease := scenarios.Eases[seed%uint64(len(scenarios.Eases))]
	j, thrown := lib.DrawTelling(seed, scenarios.Wish{Ease: ease})
	one.thrown = thrown
	if j == nil {
		return one
	}
	one.stands, one.id = true, j.ID
	text, err := j.Text()
	if err != nil {
		one.file = "it cannot be written: " + err.Error()
		return one
	}
	again, err := lib.ReadJob(j.ID, text)
	if err != nil {
		one.file = "the loader refuses it: " + err.Error()
		return one
	}
	if now, err := again.Text(); err != nil || now != text {
		one.file = "it reads back as another"
		return one
	}
	if err := again.Verify(); err != nil {
		one.claims = "its owner tells what is not so: " + err.Error()
	}
	return one
}

// String is the drawing in words.
func (d *Drawing) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Cars drawn from seeds: %d, of gentle, fair and hard ones in turn\n", d.Cars)
	part := func(what string, reasons map[string]int, of int, may bool) {
		sum := 0
		for _, n := range reasons {
			sum += n
		}
		v := verdict(sum == 0)
		if may {
			v = Noted
		}
		fmt.Fprintf(&b, "%-11s %s: %d of %d, %.2f %%\n", v, what, sum, of, 100*float64(sum)/float64(max(1, of)))
		for _, why := range slices.Sorted(maps.Keys(reasons)) {
			fmt.Fprintf(&b, "%-11s   %s: %d\n", "", why, reasons[why])
		}
	}
	part("cars thrown away for another of the same seed", d.Thrown, d.Tried, true)
	part("seeds of which no car stood", d.Given, d.Cars, false)
	part("files that the loader refuses", d.Refused, d.Cars, false)
	part("owners who tell what is not so", d.False, d.Cars, false)
	for _, e := range d.Examples {
		fmt.Fprintf(&b, "%-11s   %s\n", "", e)
	}
	return b.String()
}
