package scenarios

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"evenwear/physics"
)

// floats lists the address of every float64 inside v with its Go name.
func floats(v reflect.Value, name string, out map[uintptr]string) {
	switch v.Kind() {
	case reflect.Float64:
		out[v.Addr().Pointer()] = name
	case reflect.Struct:
		for i := range v.NumField() {
			floats(v.Field(i), name+"."+v.Type().Field(i).Name, out)
		}
	case reflect.Array, reflect.Slice:
		for i := range v.Len() {
			floats(v.Index(i), name+"[]", out)
		}
	}
}

// TestFieldsComplete: every number of a car and of its condition has exactly one path.
func TestFieldsComplete(t *testing.T) {
	var s physics.Spec
	var c physics.Condition
	kept := map[uintptr]string{}
	floats(reflect.ValueOf(&s).Elem(), "Spec", kept)
	floats(reflect.ValueOf(&c).Elem(), "Condition", kept)
	if len(kept) < 200 {
		t.Fatalf("found only %d numbers: the walk is broken", len(kept))
	}
	by := map[uintptr]string{}
	for _, f := range Fields() {
		var p *float64
		if f.OfCar() {
			p = f.spec(&s)
		} else {
			p = f.cond(&c)
		}
		at := reflect.ValueOf(p).Pointer()
		if kept[at] == "" {
			t.Errorf("%s is kept outside Spec and Condition", f.Path)
		}
		if by[at] != "" {
			t.Errorf("%s and %s are the same number %s", f.Path, by[at], kept[at])
		}
		by[at] = f.Path
	}
	for at, name := range kept {
		if by[at] == "" {
			t.Errorf("%s has no path in the table of fields", name)
		}
	}
}

func TestFieldsSound(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range Fields() {
		if seen[f.Path] {
			t.Errorf("path %s stands twice", f.Path)
		}
		seen[f.Path] = true
		if !(f.Lo < f.Hi) || !(f.SI > 0) || f.Unit == "" {
			t.Errorf("%s: range %g to %g, factor %g, unit %q", f.Path, f.Lo, f.Hi, f.SI, f.Unit)
		}
		var s physics.Spec
		var c physics.Condition
		mid := (f.Lo + f.Hi) / 2
		if err := f.Set(&s, &c, mid); err != nil {
			t.Error(err)
		}
		if got := f.Get(&s, &c); math.Abs(got-mid) > 1e-12*math.Abs(mid) {
			t.Errorf("%s: set %g, got %g", f.Path, mid, got)
		}
		for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), f.Hi*2 + 1, 1e300} {
			if f.Set(&s, &c, v) == nil {
				t.Errorf("%s took %g", f.Path, v)
			}
		}
	}
}

func TestFindFields(t *testing.T) {
	if fs, err := FindFields("wheel.rear_left.lining_loss_mm"); err != nil || len(fs) != 4 {
		t.Errorf("short path: %d fields, %v", len(fs), err)
	}
	if _, err := FindFields("front.piston_diameter"); err == nil || !strings.Contains(err.Error(), "front.piston_diameter_mm") {
		t.Errorf("unknown path: %v", err)
	}
	if _, err := FindFields("mass"); err == nil || !strings.Contains(err.Error(), "mass_kg") {
		t.Errorf("unknown path: %v", err)
	}
}
