package scenarios

import (
	"fmt"
	"strings"

	"evenwear/physics"
)

// A Place says where a cause or remedy sits: "car", "front_axle",
// "front_left", "front_left.upper_pin", "primary_circuit".
type Place string

// Places is every place there is.
var Places = func() []string {
	out := []string{"car", "front_axle", "rear_axle", "primary_circuit", "secondary_circuit"}
	for w := physics.Wheel(0); w < physics.NumWheels; w++ {
		out = append(out, w.String(), w.String()+".upper_pin", w.String()+".lower_pin")
	}
	return out
}()

// Wheel returns the one wheel of a place, if it has one.
func (p Place) Wheel() (physics.Wheel, bool) {
	name, _, _ := strings.Cut(string(p), ".")
	for w := physics.Wheel(0); w < physics.NumWheels; w++ {
		if w.String() == name {
			return w, true
		}
	}
	return 0, false
}

// Wheels returns every wheel of a place; circuits need the car's spec.
func (p Place) Wheels(spec *physics.Spec) []physics.Wheel {
	if w, ok := p.Wheel(); ok {
		return []physics.Wheel{w}
	}
	var out []physics.Wheel
	for w := physics.Wheel(0); w < physics.NumWheels; w++ {
		switch p {
		case "front_axle":
			if !w.Front() {
				continue
			}
		case "rear_axle":
			if w.Front() {
				continue
			}
		case "primary_circuit":
			if spec.Circuit[w] != 0 {
				continue
			}
		case "secondary_circuit":
			if spec.Circuit[w] != 1 {
				continue
			}
		}
		out = append(out, w)
	}
	return out
}

// Pin returns the one pin of a place, if it names one.
func (p Place) Pin() (int, bool) {
	switch {
	case strings.HasSuffix(string(p), ".upper_pin"):
		return physics.Upper, true
	case strings.HasSuffix(string(p), ".lower_pin"):
		return physics.Lower, true
	}
	return 0, false
}

// Circuits returns every circuit of a place, 0 the primary: the one it names, the
// one that serves its wheel, or both.
func (p Place) Circuits(spec *physics.Spec) []int {
	switch w, one := p.Wheel(); {
	case p == "primary_circuit":
		return []int{0}
	case p == "secondary_circuit":
		return []int{1}
	case one:
		return []int{spec.Circuit[w]}
	}
	return []int{0, 1}
}

// wheelsOf are the wheels the head of a path means: those of the place, or an
// axle's.
func (p Place) wheelsOf(spec *physics.Spec, head string) ([]physics.Wheel, bool) {
	switch head {
	case "wheel":
		return p.Wheels(spec), true
	case "front_wheels":
		return Place("front_axle").Wheels(spec), true
	case "rear_wheels":
		return Place("rear_axle").Wheels(spec), true
	}
	return nil, false
}

// at resolves a change's path at a place. Besides the paths of the table it
// knows "wheel.KEY" (the wheels of the place), "front_wheels.KEY",
// "rear_wheels.KEY" and "circuit.KEY" (the master cylinder's share of the
// place's circuits).
func (p Place) at(spec *physics.Spec, path string) ([]*Field, error) {
	head, key, _ := strings.Cut(path, ".")
	var out []*Field
	if head == "circuit" {
		for _, i := range p.Circuits(spec) {
			f := fieldIndex["master."+circuitNames[i]+"_"+key]
			if f == nil || f.cond == nil {
				return nil, fmt.Errorf("unknown path %q; %s", clip(path), NearestWords(path, changePaths))
			}
			out = append(out, f)
		}
		return out, nil
	}
	wheels, ok := p.wheelsOf(spec, head)
	if !ok {
		fs, err := FindFields(path)
		if err != nil {
			return nil, fmt.Errorf("unknown path %q; %s", clip(path), NearestWords(path, changePaths))
		}
		return fs, nil
	}
	if head == "wheel" && strings.Contains(key, ".") { // one wheel named outright
		return FindFields(path)
	}
	if pin, ok := p.Pin(); ok && head == "wheel" && strings.HasPrefix(key, "pin_") {
		key = [2]string{"pin_upper_", "pin_lower_"}[pin] + strings.TrimPrefix(key, "pin_")
	}
	for _, w := range wheels {
		fs, err := FindFields("wheel." + w.String() + "." + key)
		if err != nil {
			return nil, fmt.Errorf("unknown path %q; %s", clip(path), NearestWords(path, changePaths))
		}
		out = append(out, fs...)
	}
	return out, nil
}

var circuitNames = [2]string{"primary", "secondary"}

// changePaths is every path a change may write, for sentences.
var changePaths = func() []string {
	var out []string
	for _, r := range conditionRows {
		out = append(out, r.key())
		if key, ok := strings.CutPrefix(r.key(), "master.primary_"); ok {
			out = append(out, "circuit."+key)
		}
	}
	for _, head := range []string{"wheel.", "front_wheels.", "rear_wheels."} {
		for _, s := range spreads {
			out = append(out, head+s.name)
		}
		for _, r := range wheelRows {
			out = append(out, head+r.key())
		}
	}
	return out
}()
