package scenarios

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"evenwear/physics"
)

// A left is how much of a part that wears is still there, counted from its end
// and not from new: 3 mm of lining are as little on every car, however thick its
// linings were. Only [AtMost] moves it.
type left struct {
	key    string
	lo, hi float64 // [mm]
	worn   string  // the spread that keeps what is gone
	share  float64 // [1] of what is gone that each number of it takes
	good   float64 // [mm] that a part must have left to be good
	whole  func(*physics.CornerSpec) float64
}

var lefts = []left{
	// Renewed at about 3 mm: common practice, no source.
	{"lining_left_mm", 0, 25, "lining_loss_mm", 1, 3, func(c *physics.CornerSpec) float64 { return c.LiningNew }},
	// Half of it at either face. Good down to the minimum stamped into it: 49 CFR 570.59(b).
	{"disc_above_minimum_mm", -5, 10, "disc_loss_mm", 0.5, 0, func(c *physics.CornerSpec) float64 { return c.DiscThickness - c.DiscMinimum }},
}

// leftAt finds the wheels and what is left of which part, by a path such as
// "wheel.lining_left_mm".
func leftAt(spec *physics.Spec, p Place, path string) ([]physics.Wheel, *left) {
	head, key, _ := strings.Cut(path, ".")
	wheels, ok := p.wheelsOf(spec, head)
	for i := range lefts {
		if ok && lefts[i].key == key {
			return wheels, &lefts[i]
		}
	}
	return nil, nil
}

// leave wears a part down until no more than the change's value is left of it.
func (ch *Change) leave(spec *physics.Spec, cond *physics.Condition, p Place) {
	wheels, l := leftAt(spec, p, ch.Path)
	l.each(spec, cond, wheels, ch.Value, func(at *float64, gone float64) { *at = max(*at, gone) })
}

// restore brings a part that was worn down back to where it is still good.
func (ch *Change) restore(spec *physics.Spec, cond *physics.Condition, p Place) {
	wheels, l := leftAt(spec, p, ch.Path)
	l.each(spec, cond, wheels, l.good, func(at *float64, gone float64) { *at = min(*at, gone) })
}

// each calls do with every number that keeps what is gone, and what it would be
// [m] with this much left [mm].
func (l *left) each(spec *physics.Spec, cond *physics.Condition, wheels []physics.Wheel, left float64, do func(at *float64, gone float64)) {
	for _, w := range wheels {
		gone := float64((l.whole(spec.Corner(w)) - float64(left*physics.Millimetre)) * l.share)
		for _, key := range spreadIndex[l.worn] {
			do(fieldIndex["wheel."+w.String()+"."+key].cond(cond), gone)
		}
	}
}

// leaves reads what is left at most.
func leaves(r *reader, key, val *yaml.Node, path string) (Change, bool) {
	path += "." + clip(key.Value)
	_, l := leftAt(&anyCar, "car", key.Value)
	if l == nil {
		known := leftPaths()
		r.fail(key, path, fmt.Sprintf("unknown path %q; %s", clip(key.Value), NearestWords(key.Value, known)), "what is left of a part that wears")
		return Change{}, false
	}
	v, ok := r.number(val, path, "mm", l.lo, l.hi)
	return Change{Op: AtMost, Path: key.Value, Value: v}, ok
}

func leftPaths() []string {
	var out []string
	for _, head := range []string{"wheel", "front_wheels", "rear_wheels"} {
		for i := range lefts {
			out = append(out, head+"."+lefts[i].key)
		}
	}
	return out
}
