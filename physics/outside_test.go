package physics

import (
	"math"
	"testing"
)

// outside is one published value: got must lie within tol (relative) of want,
// and wrong, what a usual mistake would give, must not.
type outside struct {
	id, source     string
	got, want, tol float64
	wrong          float64 // what the tolerance must catch; 0 means nothing tried
	absolute       bool
}

func (o outside) check(t *testing.T) {
	t.Helper()
	tol := o.tol * math.Abs(o.want)
	if o.absolute {
		tol = o.tol
	}
	if !(math.Abs(o.got-o.want) <= tol) {
		t.Errorf("%s: got %.8g, want %.8g ± %.3g (%s)", o.id, o.got, o.want, tol, o.source)
	}
	if o.wrong != 0 && math.Abs(o.wrong-o.want) <= tol {
		t.Errorf("%s: tolerance %.3g would pass the mistake %.8g", o.id, tol, o.wrong)
	}
}
