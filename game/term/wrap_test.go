package term

import (
	"slices"
	"testing"
)

// TestFigureStaysWhole: no line ends within a figure, nor between it and its unit.
func TestFigureStaysWhole(t *testing.T) {
	got := wrap("With this pin it is driven 12 000 km, as most do.", 30, 2)
	want := []string{"With this pin it is driven", "  12 000 km, as most do."}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
