package scenarios

import (
	"math"
	"strings"
	"testing"

	"evenwear/physics"
)

// TestHistories: a car built from its mirror image is the car itself, to a
// nanometre of lining; what the fault put in is the same to the bit.
func TestHistories(t *testing.T) {
	lib := library(t)
	spec := &lib.Cars[0].Spec
	all := NewHistories(spec)
	mirrored := map[string]bool{}
	for _, c := range lib.Causes {
		since := (c.SinceKm[0] + c.SinceKm[1]) / 2
		s := c.Severities[len(c.Severities)-1]
		for i, place := range c.Places {
			if testing.Short() && i < len(c.Places)-1 {
				continue
			}
			f := Fault{Cause: c, Place: place, Severity: s, SinceKm: since}
			got, err := all.Build(ordinary, f)
			if err != nil {
				t.Fatal(err)
			}
			want, err := Build(spec, ordinary, []Fault{f})
			if err != nil {
				t.Fatal(err)
			}
			if at, side, half := s.mirrors(place); side || half {
				mirrored[string(at)+c.ID] = true
			} else if got != want {
				t.Errorf("%s at %s is no mirror image, yet not the same to the bit", c.ID, place)
			}
			if off := apart(&got, &want); off > 1e-9 {
				t.Errorf("%s at %s: linings, discs and anchors differ by %.3g mm", c.ID, place, off/physics.Millimetre)
			}
			if got != want {
				t.Errorf("%s at %s: fault or fluid differ:\n%+v\n%+v", c.ID, place, got, want)
			}
		}
	}
	if len(mirrored) < 6 {
		t.Errorf("only %d stories were mirrored", len(mirrored))
	}
}

// apart is the greatest difference of what driving moves [m]; it levels got on
// want, so that what is left to compare is what a fault put in.
func apart(got, want *physics.Condition) float64 {
	off := 0.0
	level := func(g, w *float64) {
		off = max(off, math.Abs(*g-*w))
		*g = *w
	}
	for i := range got.Wheels {
		g, w := &got.Wheels[i], &want.Wheels[i]
		for pad := range 2 {
			for half := range 2 {
				level(&g.Wear[pad][half], &w.Wear[pad][half])
			}
			level(&g.DiscWear[pad], &w.DiscWear[pad])
			level(&g.PinAnchor[pad], &w.PinAnchor[pad])
		}
	}
	if math.Abs(got.Fluid-want.Fluid) < 1e-12 { // a millionth of a cubic centimetre
		got.Fluid = want.Fluid
	}
	return off
}

// TestMirrors: what names a wheel or a half outright has no mirror image.
func TestMirrors(t *testing.T) {
	plain := Severity{Start: []Change{{Op: Add, Path: "wheel.pin_friction_n", Value: 1}}}
	named := Severity{Start: []Change{{Op: Add, Path: "wheel.rear_left.air_cm3", Value: 1}}}
	upper := Severity{End: []Change{{Op: Add, Path: "wheel.lining_loss_outer_upper_mm", Value: 1}}}
	for _, c := range []struct {
		s          *Severity
		place, at  Place
		side, half bool
	}{
		{&plain, "rear_right.lower_pin", "rear_left.upper_pin", true, true},
		{&plain, "rear_left.lower_pin", "rear_left.upper_pin", false, true},
		{&plain, "front_left", "front_left", false, false},
		{&plain, "front_axle", "front_axle", false, false},
		{&plain, "car", "car", false, false},
		{&named, "front_right.lower_pin", "front_right.upper_pin", false, true},
		{&upper, "front_right.lower_pin", "front_left.lower_pin", true, false},
	} {
		if at, side, half := c.s.mirrors(c.place); at != c.at || side != c.side || half != c.half {
			t.Errorf("%s: %s, sides %t, halves %t; want %s, %t, %t", c.place, at, side, half, c.at, c.side, c.half)
		}
	}
}

// TestMirrorHalves: every number that names upper or lower changes place with the
// other, bit for bit, with the mark beside it; every other stays.
func TestMirrorHalves(t *testing.T) {
	var cond, want physics.Condition
	swapped := 0
	other := strings.NewReplacer("upper", "lower", "lower", "upper")
	for i := range fields {
		f := &fields[i]
		if f.OfCar() {
			continue
		}
		*f.cond(&cond) = float64(i + 1)
		at := f
		if path := other.Replace(f.Path); path != f.Path {
			swapped++
			if at = fieldIndex[path]; at == nil {
				t.Fatalf("%s has no counterpart %s", f.Path, path)
			}
		}
		*at.cond(&want) = float64(i + 1)
		if f.mark != nil && strings.Contains(f.Path, "upper") {
			*f.mark(&cond), *at.mark(&want) = true, true
		}
	}
	mirrorHalves(&cond)
	for i := range fields {
		if f := &fields[i]; !f.OfCar() && *f.cond(&cond) != *f.cond(&want) {
			t.Errorf("%s is %g, want %g", f.Path, *f.cond(&cond), *f.cond(&want))
		}
	}
	if cond != want || swapped < 16*physics.NumWheels {
		t.Errorf("marks differ, or only %d numbers change place", swapped)
	}
}
