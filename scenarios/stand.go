package scenarios

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"evenwear/physics"
)

// A vessel under the bonnet is filled to where its fluid stands between its
// marks, cold: MIN 0, MAX 1. Only [StandsAt], [FillTo] and [DrawTo] say so; they
// mean the same of every car, however much lies between the marks.
type vessel struct {
	key      string
	least    float64 // [1]
	rest     float64 // [1] where it stands in a car that is well looked after
	minToMax func(*physics.VesselsSpec) float64
	added    func(*physics.VesselsCondition) *float64
}

const mostStand = 4.0 // [1]

var vessels = []vessel{
	{"oil_share", -3, 1, func(s *physics.VesselsSpec) float64 { return s.Oil.MinToMax }, func(c *physics.VesselsCondition) *float64 { return &c.Oil }},
	// Coolant rests near its lower mark cold: common practice, no source.
	{"coolant_share", -1, 0.15, func(s *physics.VesselsSpec) float64 { return s.Coolant.MinToMax }, func(c *physics.VesselsCondition) *float64 { return &c.Coolant }},
	{"steering_share", -3, 1, func(s *physics.VesselsSpec) float64 { return s.Steering.MinToMax }, func(c *physics.VesselsCondition) *float64 { return &c.Steering }},
	{"washer_share", 0, 1, func(s *physics.VesselsSpec) float64 { return s.Washer.MinToMax }, func(c *physics.VesselsCondition) *float64 { return &c.Washer }},
}

// fill brings a vessel's fluid to stand at a share of the way from MIN to MAX.
func (v *vessel) fill(spec *physics.Spec, cond *physics.Condition, to float64) {
	*v.added(&cond.Vessels) = float64((to - 1) * v.minToMax(&spec.Vessels))
}

// move does what an operation says: fill up, draw off, or either.
func (v *vessel) move(op Op, spec *physics.Spec, cond *physics.Condition, to float64) {
	was := *v.added(&cond.Vessels)
	v.fill(spec, cond, to)
	at := v.added(&cond.Vessels)
	if op == FillTo {
		*at = max(*at, was)
	}
	if op == DrawTo {
		*at = min(*at, was)
	}
}

// vesselAt finds a vessel by its key; nil when there is none.
func vesselAt(key string) *vessel {
	for i := range vessels {
		if vessels[i].key == key {
			return &vessels[i]
		}
	}
	return nil
}

// stands reads where a fluid stands.
func stands(r *reader, op Op, key, val *yaml.Node, path string) (Change, bool) {
	path += "." + clip(key.Value)
	v := vesselAt(key.Value)
	if v == nil {
		known := make([]string, len(vessels))
		for i := range vessels {
			known[i] = vessels[i].key
		}
		r.fail(key, path, fmt.Sprintf("unknown vessel %q", clip(key.Value)), nearestWords(key.Value, known))
		return Change{}, false
	}
	to, ok := r.number(val, path, "of the way from MIN to MAX", v.least, mostStand)
	return Change{Op: op, Path: key.Value, Value: to}, ok
}
