// Package published holds a computed value against one from outside: a book, a
// rule, a measurement. Tests in any room use it, so that all rows read alike and
// one table can be printed of them (go test ./tests -run Outside -v).
package published

import (
	"fmt"
	"math"
	"testing"
)

// Mark begins every line that a row logs; fields are split by tabs after it.
const Mark = "published\t"

// A Row is one value from outside.
type Row struct {
	ID     string // "OC-28", and after a blank which part of it
	Source string
	Got    float64
	Want   float64
	// Tol is how far Got may be from Want, as a share of Want, or in its unit when
	// Absolute.
	Tol      float64
	Absolute bool
	// Wrong is what a usual mistake would give, which the tolerance must catch. Every
	// row has one; 0 counts as none, since nearly any tolerance catches it.
	Wrong float64
}

// Check logs the row and fails the test unless Got is near and Wrong is named and not.
func (r Row) Check(t testing.TB) {
	t.Helper()
	tol := r.Tol
	if !r.Absolute {
		tol *= math.Abs(r.Want)
	}
	off := fmt.Sprintf("%+.2g", r.Got-r.Want)
	if !r.Absolute && r.Want != 0 {
		off = fmt.Sprintf("%+.2g %%", 100*(r.Got/r.Want-1))
	}
	log(t, r.ID, r.Got, fmt.Sprintf("%.6g ± %.2g", r.Want, tol), off, r.Source)
	if !(math.Abs(r.Got-r.Want) <= tol) {
		t.Errorf("%s: got %.8g, want %.8g ± %.3g (%s)", r.ID, r.Got, r.Want, tol, r.Source)
	}
	if r.Wrong == 0 {
		t.Errorf("%s: no mistake is named that its tolerance catches", r.ID)
	}
	if math.Abs(r.Wrong-r.Want) <= tol {
		t.Errorf("%s: tolerance %.3g would pass the mistake %.8g", r.ID, tol, r.Wrong)
	}
}

// A Bracket is a range from outside.
type Bracket struct {
	ID, Source string
	Got        float64
	Lo, Hi     float64 // infinite where one side is open
	Wrong      float64 // what the range must catch
}

// Check logs the bracket and fails the test unless Got is in it and Wrong is not.
func (b Bracket) Check(t testing.TB) {
	t.Helper()
	want := fmt.Sprintf("%.6g to %.6g", b.Lo, b.Hi)
	switch {
	case math.IsInf(b.Hi, 1):
		want = fmt.Sprintf("≥ %.6g", b.Lo)
	case math.IsInf(b.Lo, -1):
		want = fmt.Sprintf("≤ %.6g", b.Hi)
	}
	in := func(x float64) bool { return b.Lo <= x && x <= b.Hi }
	off := "inside"
	if !in(b.Got) {
		off = "outside"
	}
	log(t, b.ID, b.Got, want, off, b.Source)
	if !in(b.Got) {
		t.Errorf("%s: got %.6g, want %s (%s)", b.ID, b.Got, want, b.Source)
	}
	if in(b.Wrong) {
		t.Errorf("%s: the mistake %.6g lies %s too", b.ID, b.Wrong, want)
	}
}

func log(t testing.TB, id string, got float64, want, off, source string) {
	t.Helper()
	t.Logf("%s%s\t%.6g\t%s\t%s\t%s", Mark, id, got, want, off, source)
}
