package play

import "testing"

// TestReasonFigures: shares and minutes' worth are whole, distances have two
// digits, and what is less than one minute is not called none.
func TestReasonFigures(t *testing.T) {
	for _, row := range []struct {
		name string
		x    float64
		want string
	}{
		{"said", 0.32, "0"}, {"said", 99.6, "100"}, {"support_top", 55, "55"},
		{"brier", 1.56, "1.56"}, {"distance", 0.4, "0.40"}, {"prior", 0.99, "0.99"},
		{"chosen", 51.28, "51"}, {"best", 6.28, "6"}, {"best", 0.3, "0.3"}, {"best", 0, "0"},
		{"bits", 4.57, "4.6"}, {"bits", 5, "5"}, {"mean", 0.333, "0.33"},
		{"harms", 1, "1"}, {"due", 7, "7"}, {"spent", 40.5, "40.5"}, {"spent", 1, "1"},
	} {
		if got := reasonFigure(row.name, row.x); got != row.want {
			t.Errorf("%s %g: %q, want %q", row.name, row.x, got, row.want)
		}
	}
	if a, b := whole(percent(0.0032)), reasonFigure("said", 0.32); a != b {
		t.Errorf("the row says %s %%, the reason %s %%", a, b)
	}
}
