package physics

import (
	"testing"

	"evenwear/tests/published"
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
	published.Row{ID: o.id, Source: o.source, Got: o.got, Want: o.want, Tol: o.tol, Wrong: o.wrong, Absolute: o.absolute}.Check(t)
}

// bracket is a published range.
type bracketed struct {
	id, source     string
	got, low, high float64
	wrong          float64
}

func (b bracketed) check(t *testing.T) {
	t.Helper()
	published.Bracket{ID: b.id, Source: b.source, Got: b.got, Lo: b.low, Hi: b.high, Wrong: b.wrong}.Check(t)
}
