package play

import (
	"strings"
	"testing"

	"evenwear/scoring"
)

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

// TestReasonNamesAll: what is missing is named whole, of many the first three and
// how many more, and no sentence ends twice.
func TestReasonNamesAll(t *testing.T) {
	lib, words := shelf(t)
	s, err := Open(lib, words, "warm_wheel", 1)
	if err != nil {
		t.Fatal(err)
	}
	missing := []string{"caution.hot_disc", "caution.dust_damp", "caution.nuts_torque", "caution.chock_rear", "caution.handbrake"}
	for n, want := range map[int]string{
		1: "Not kept: Discs burn; let them cool before touching.",
		3: "Not kept: Discs burn; let them cool before touching; Dust is wiped damp, never blown; Nuts to the handbook's figure, and checked again.",
		5: "Not kept: Discs burn; let them cool before touching; Dust is wiped damp, never blown; Nuts to the handbook's figure, and checked again; and 2 more.",
	} {
		got := s.reason(scoring.Reason{ID: scoring.SafetyBroken, Args: []scoring.Arg{{Name: "due", Number: 9}, {Name: "kept", Number: 9 - float64(n)}, {Name: "missing", Texts: missing[:n]}}})
		if !strings.HasSuffix(got, want) {
			t.Errorf("%d missing: %q, want %q at its end", n, got, want)
		}
	}
}
