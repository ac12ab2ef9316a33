package scenarios

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"evenwear/physics"
)

// A Field is one number of a car or of its condition: its path in files and on
// the command line, its unit, its range and where it is kept. The one table of
// fields serves the car loader, the changes of causes and remedies, and trace.
//
// Paths that start with "wheel." and the few that belong to the whole car's
// condition are deviations from new: they add to what the car has.
type Field struct {
	Path   string
	Unit   string  // for people: "mm"
	SI     float64 // [SI per unit]
	Lo, Hi float64 // [unit] what is possible

	plain string // Path without its unit
	spec  func(*physics.Spec) *float64
	cond  func(*physics.Condition) *float64
	kept  func(*physics.Condition) *float64 // of it [SI], what scaling leaves as it is
	mark  func(*physics.Condition) *bool    // set to true along with the number
}

// OfCar reports whether the field is part of a car when new.
func (f *Field) OfCar() bool { return f.spec != nil }

// Set puts v [unit] into the car or its condition.
func (f *Field) Set(s *physics.Spec, c *physics.Condition, v float64) error {
	if err := f.Check(v); err != nil {
		return err
	}
	if f.spec != nil {
		*f.spec(s) = v * f.SI
		return nil
	}
	*f.cond(c) = v * f.SI
	if f.mark != nil {
		*f.mark(c) = true
	}
	return nil
}

// Get returns the field's number [unit].
func (f *Field) Get(s *physics.Spec, c *physics.Condition) float64 {
	if f.spec != nil {
		return *f.spec(s) / f.SI
	}
	return *f.cond(c) / f.SI
}

// Check refuses numbers outside the field's range, and NaN.
func (f *Field) Check(v float64) error {
	if !(f.Lo <= v && v <= f.Hi) { // written so that NaN fails too
		return fmt.Errorf("%s is out of range; allowed is %s", show(v), f.Range())
	}
	return nil
}

// Range is "10 to 100 mm".
func (f *Field) Range() string {
	return strings.TrimSpace(show(f.Lo) + " to " + show(f.Hi) + " " + f.Unit)
}

func show(v float64) string {
	if a := math.Abs(v); a >= 1e-4 && a < 1e7 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}

// Fields is the whole table: the car's numbers, then the condition's. Every
// call returns the same table, which must not be changed.
func Fields() []Field { return fields }

var (
	fields     = slicesOf(carFields(), conditionFields())
	fieldIndex = index(fields)
)

func slicesOf(parts ...[]Field) []Field {
	var all []Field
	for _, p := range parts {
		all = append(all, p...)
	}
	return all
}

func index(fs []Field) map[string]*Field {
	m := make(map[string]*Field, len(fs))
	for i := range fs {
		m[fs[i].Path] = &fs[i]
	}
	return m
}

// FindFields returns the fields a path means: one, or all those a short path
// such as "wheel.front_left.pin_friction_n" (both pins) spreads to. Unknown
// paths are an error that names the nearest known ones.
func FindFields(path string) ([]*Field, error) {
	if f := fieldIndex[path]; f != nil {
		return []*Field{f}, nil
	}
	if i := strings.LastIndexByte(path, '.'); i >= 0 {
		if names, ok := spreadIndex[path[i+1:]]; ok {
			var out []*Field
			for _, n := range names {
				if f := fieldIndex[path[:i+1]+n]; f != nil {
					out = append(out, f)
				}
			}
			if len(out) > 0 {
				return out, nil
			}
		}
	}
	return nil, fmt.Errorf("unknown path %q; %s", clip(path), NearestWords(path, Paths()))
}

// Paths is every path of the table and every short one, in its order.
func Paths() []string {
	out := make([]string, 0, len(fields)+4*len(spreads))
	for i := range fields {
		out = append(out, fields[i].Path)
	}
	for w := physics.Wheel(0); w < physics.NumWheels; w++ {
		for _, s := range spreads {
			out = append(out, "wheel."+w.String()+"."+s.name)
		}
	}
	return out
}

// clip keeps what a stranger typed from filling the screen.
func clip(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}
