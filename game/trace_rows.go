package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"evenwear/physics"
	"evenwear/scenarios"
)

const (
	pressureHeader = "pressure_mpa,inner_n,outer_n,inner_upper_n,inner_lower_n,outer_upper_n,outer_lower_n,piston_mm,body_mm,tilt_mrad"
	pedalHeader    = "pedal_n,pedal_mm,front_mpa,rear_mpa,deceleration_mps2,reservoir_cm3"
	// pressureStep [MPa] is the greatest step between two listed pressures. Friction
	// remembers the way, so the steps belong to the answer.
	pressureStep = 0.5
	pedalSpeed   = 50 * physics.KmPerHour // [m/s] held while the pedal is worked
)

// pressures takes one caliper from rest, all displacements and anchors zero,
// through the listed pressures [MPa]: as the reference points are stated.
func (tr *trace) pressures(list []float64) ([][]string, error) {
	if _, err := physics.New(&tr.spec, tr.cond); err != nil {
		return nil, err // numbers that cannot work together
	}
	c := physics.NewCorner(tr.spec.Corner(tr.wheel), &tr.cond.Wheels[tr.wheel], tr.wheel.String())
	in, out := c.Faces(1)
	var s physics.CornerState
	for i, set := range tr.cond.Wheels[tr.wheel].PinAnchorSet {
		if set {
			s.PinAnchor[i] = tr.cond.Wheels[tr.wheel].PinAnchor[i]
		}
	}
	table := [][]string{strings.Split(pressureHeader, ",")}
	at := 0.0
	for _, to := range list {
		n := max(1, int(math.Ceil(math.Abs(to-at)/pressureStep-1e-9)))
		var f physics.CornerForces
		for i := 1; i <= n; i++ {
			p := at + (to-at)*float64(i)/float64(n)
			var err error
			if s, f, err = c.Settle(s, &physics.CornerLoad{Pressure: p * physics.Megapascal, DiscIn: in, DiscOut: out}); err != nil {
				return nil, err
			}
		}
		at = to
		table = append(table, cells(to, 3, f.Inner(), 1, f.Outer(), 1,
			f.Half[physics.Inner][physics.Upper], 1, f.Half[physics.Inner][physics.Lower], 1,
			f.Half[physics.Outer][physics.Upper], 1, f.Half[physics.Outer][physics.Lower], 1,
			s.X/physics.Millimetre, 4, s.Y/physics.Millimetre, 4, s.Tilt/1e-3, 4))
	}
	return table, nil
}

// pedals holds each listed force [N] for one second on the pedal of the whole
// car, its speed held, and notes where it stands at the second's end.
func (tr *trace) pedals(list []float64) ([][]string, error) {
	m, err := physics.New(&tr.spec, tr.cond)
	if err != nil {
		return nil, err
	}
	s, err := m.Rest()
	if err != nil {
		return nil, err
	}
	s.Speed = pedalSpeed
	front, rear := physics.FrontLeft, physics.RearLeft
	if !tr.wheel.Left() {
		front, rear = physics.FrontRight, physics.RearRight
	}
	table := [][]string{strings.Split(pedalHeader, ",")}
	for _, force := range list {
		for range 1000 {
			if s, err = m.Step(s, physics.Input{Foot: force, Engine: true, Hold: true}, 1); err != nil {
				return nil, err
			}
		}
		table = append(table, cells(force, 2, m.PedalTravel(&s)/physics.Millimetre, 2,
			s.Pressure[front]/physics.Megapascal, 4, s.Pressure[rear]/physics.Megapascal, 4,
			s.Decel, 3, s.Standing/physics.CubicCentimetre, 2))
	}
	return table, nil
}

// cells writes pairs of a value and its decimals.
func cells(pairs ...float64) []string {
	var out []string
	for i := 0; i < len(pairs); i += 2 {
		s := strconv.FormatFloat(pairs[i], 'f', int(pairs[i+1]), 64)
		if strings.Trim(s, "-0.") == "" { // no minus before nothing, and no noise of the solver
			s = strings.TrimPrefix(s, "-")
		}
		out = append(out, s)
	}
	return out
}

func writeCSV(w io.Writer, table [][]string) error {
	c := csv.NewWriter(w)
	if err := c.WriteAll(table); err != nil {
		return err
	}
	return c.Error()
}

// writePaths lists what -set accepts.
func writePaths(w io.Writer) error {
	table := [][]string{{"path", "unit", "least", "greatest"}}
	for _, p := range scenarios.Paths() {
		f, err := scenarios.FindFields(p)
		if err != nil {
			return err
		}
		table = append(table, []string{p, f[0].Unit, fmt.Sprint(f[0].Lo), fmt.Sprint(f[0].Hi)})
	}
	return writeCSV(w, table)
}
