package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"

	"evenwear/physics"
	"evenwear/scenarios"
)

const traceUsage = `game trace: the bench without a picture, as CSV.

  game trace -pressure 0,1,2,4,8,4,2,1,0 [-wheel front_left] [-car ID] [-set path=value …]
  game trace -pedal 0,100,150,0          [-wheel front_left] [-car ID] [-set path=value …]
  game trace -paths                      every path of -set with its unit and range

  -pressure  one caliper, from rest, in MPa, each reached in equal steps of at
             most 0.5 MPa; quasi-static: no viscous drag, and no run-out unless set
             (then with the disc's high spot turned away from the inner pad)
  -pedal     the whole car at 50 km/h, in N, one second each, engine running;
             front_mpa and rear_mpa are of the wheels on the side of -wheel;
             run-out, air drag and rolling resistance are nothing unless set
  -set       any number of the car or its condition; wheel.… adds to the new car's
  -folder    cars of this folder laid over the program's own

`

// list is a flag that may be given more than once.
type list []string

func (l *list) String() string     { return strings.Join(*l, " ") }
func (l *list) Set(s string) error { *l = append(*l, s); return nil }

// A trace is what was asked for, checked.
type trace struct {
	spec  physics.Spec
	cond  physics.Condition
	wheel physics.Wheel
}

// runTrace answers "trace" and returns the exit code: 0, 1 when the physics or
// the writing failed, 2 for a mistake in what was asked.
func runTrace(args []string, stdout, stderr io.Writer) int {
	fail := func(code int, err error) int {
		fmt.Fprintf(stderr, "trace: %v\n", err)
		return code
	}
	fs := flag.NewFlagSet("trace", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	car := fs.String("car", "compact_hatchback", "")
	wheel := fs.String("wheel", "front_left", "")
	pressure := fs.String("pressure", "", "")
	pedal := fs.String("pedal", "", "")
	folder := fs.String("folder", "", "")
	paths := fs.Bool("paths", false, "")
	var sets list
	fs.Var(&sets, "set", "")
	if err := fs.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			if _, err := io.WriteString(stdout, traceUsage); err != nil {
				return fail(1, writing(err))
			}
			return 0
		}
		return fail(wrongUse, fmt.Errorf("%w; known are -car, -wheel, -pressure, -pedal, -set, -folder, -paths; game trace -help tells more", err))
	}
	if fs.NArg() > 0 {
		return fail(2, fmt.Errorf("%q stands alone; every value follows a flag, and lists hold no spaces", fs.Arg(0)))
	}
	given := map[string]bool{}
	fs.Visit(func(f *flag.Flag) { given[f.Name] = true })
	if *paths {
		if err := writePaths(stdout); err != nil {
			return fail(1, writing(err))
		}
		return 0
	}
	if given["pressure"] == given["pedal"] {
		return fail(2, errors.New("give either -pressure or -pedal"))
	}
	tr, err := newTrace(*folder, *car, *wheel, sets)
	if err != nil {
		return fail(2, err)
	}
	rows := tr.pressures
	name, unit, most, values := "-pressure", "MPa", 30.0, *pressure
	if given["pedal"] {
		rows = tr.pedals
		name, unit, most, values = "-pedal", "N", 2000, *pedal
	}
	asked, err := numbers(name, unit, most, values)
	if err != nil {
		return fail(2, err)
	}
	table, err := rows(asked)
	if err != nil {
		return fail(1, err)
	}
	if err := writeCSV(stdout, table); err != nil {
		return fail(1, writing(err))
	}
	return 0
}

func writing(err error) error { return fmt.Errorf("the output cannot be written: %w", err) }

// newTrace takes the car and puts in what -set says.
func newTrace(folder, car, wheel string, sets []string) (*trace, error) {
	load := scenarios.Embedded
	if folder != "" {
		load = func() (*scenarios.Library, error) { return scenarios.Overlay(folder) }
	}
	lib, err := load()
	if err != nil {
		return nil, err
	}
	if err := knownCar(lib, car); err != nil {
		return nil, err
	}
	tr := &trace{spec: lib.Car(car).Spec, wheel: -1}
	var wheels []string
	for w := physics.Wheel(0); w < physics.NumWheels; w++ {
		if wheels = append(wheels, w.String()); w.String() == wheel {
			tr.wheel = w
		}
	}
	if tr.wheel < 0 {
		return nil, fmt.Errorf("unknown wheel %q; known are %s", wheel, strings.Join(wheels, ", "))
	}
	// Left out unless set: the run-out of a car as fitted, and what slows it besides the brakes.
	tr.spec.Front.Runout, tr.spec.Rear.Runout = 0, 0
	tr.spec.Body.DragArea, tr.spec.Body.Rolling = 0, 0
	for _, s := range sets {
		if err := tr.set(s); err != nil {
			return nil, fmt.Errorf("-set %s: %w", s, err)
		}
	}
	return tr, nil
}

// set puts one number in.
func (tr *trace) set(s string) error {
	path, value, ok := strings.Cut(s, "=")
	if !ok {
		return errors.New("the = is missing; write path=value")
	}
	fields, err := scenarios.FindFields(path)
	if err != nil {
		return err
	}
	v, err := number(value)
	if err != nil {
		return fmt.Errorf("%w; allowed is %s", err, fields[0].Range())
	}
	for _, f := range fields {
		if err := f.Set(&tr.spec, &tr.cond, v); err != nil {
			return err
		}
	}
	return nil
}

// number reads a finite decimal number.
func number(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if (err != nil && !errors.Is(err, strconv.ErrRange)) || strings.ContainsAny(s, "xXpP_") {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	return v, nil // infinities and NaN fall to the range that follows
}

const mostValues = 1000

// numbers reads a list of values from 0 to most.
func numbers(name, unit string, most float64, values string) ([]float64, error) {
	allowed := fmt.Sprintf("allowed are numbers from 0 to %g %s with commas between, such as %s 0,1,2", most, unit, name)
	if strings.TrimSpace(values) == "" {
		return nil, fmt.Errorf("%s: the list is empty; %s", name, allowed)
	}
	parts := strings.Split(values, ",")
	if len(parts) > mostValues {
		return nil, fmt.Errorf("%s: %d values; at most %d", name, len(parts), mostValues)
	}
	out := make([]float64, len(parts))
	for i, p := range parts {
		v, err := number(strings.TrimSpace(p))
		if err != nil {
			return nil, fmt.Errorf("%s, value %d: %w; %s", name, i+1, err, allowed)
		}
		if !(0 <= v && v <= most) {
			return nil, fmt.Errorf("%s, value %d: %s is out of range; %s", name, i+1, strings.TrimSpace(p), allowed)
		}
		out[i] = v
	}
	return out, nil
}
