package record

import (
	"fmt"
	"math"
	"slices"
)

// wrong says in a few words what cannot be in a result, or nothing.
func (r *Result) wrong() string {
	switch {
	case r.Job == "" || r.Session == "":
		return "it has no job or no session"
	case r.When.IsZero():
		return "it has no time"
	case len(r.Truth) == 0:
		return "it has no truth"
	case !(r.Total <= 100 && r.Total >= -1000):
		return fmt.Sprintf("its total is %g, at most 100 is allowed", r.Total)
	}
	sum := 0.0
	for _, f := range r.Said {
		if f.ID == "" || !(f.N >= 0 && f.N <= 1) {
			return fmt.Sprintf("its belief in %q is %g, 0 to 1 is allowed", f.ID, f.N)
		}
		sum += f.N
	}
	if sum > 1+1e-6 {
		return fmt.Sprintf("its beliefs add to %g, at most 1 is allowed", sum)
	}
	for _, m := range r.Marks {
		if m.ID == "" || !(m.N <= 100 && m.N >= -1000) {
			return fmt.Sprintf("its mark %q is %g, at most 100 is allowed", m.ID, m.N)
		}
	}
	for _, i := range r.Ideas {
		if len(i.LnP) == 0 || len(i.LnP) > mostPoints {
			return fmt.Sprintf("its idea %q stands at %d points, 1 to %d are allowed", i.ID, len(i.LnP), mostPoints)
		}
		for _, x := range i.LnP {
			if !(x <= 0) {
				return fmt.Sprintf("its idea %q has a log probability of %g, at most 0 is allowed", i.ID, x)
			}
		}
	}
	if m := r.Model; m != nil && !(m.Minutes >= 0 && m.Minutes <= 10000 && math.Abs(m.Bits) <= 1000) {
		return fmt.Sprintf("its model inspector came to %g bits in %g minutes, up to 1000 bits and 10000 minutes are allowed", m.Bits, m.Minutes)
	}
	return ""
}

// mostPoints is far above the points that ideas are asked at.
const mostPoints = 100

// same tells that two results are of the same debrief, whenever it was opened.
func (r *Result) same(o *Result) bool {
	return r.Session == o.Session && r.Job == o.Job && r.Seed == o.Seed && r.Library == o.Library &&
		slices.Equal(r.Truth, o.Truth) && slices.Equal(r.Said, o.Said) && slices.Equal(r.Marks, o.Marks) && r.Total == o.Total && r.Capped == o.Capped
}
