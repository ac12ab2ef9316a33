package assets

import "testing"

// TestBind: a figure's thousands and its unit stay with it, all else may part.
func TestBind(t *testing.T) {
	for text, want := range map[string]string{
		"driven 12 000 km, as most":          "driven 12\u00a0000\u00a0km, as most",
		"1 234 567 N":                        "1\u00a0234\u00a0567\u00a0N",
		"at 80 km/h (cold)":                  "at 80\u00a0km/h (cold)",
		"front wheels brake 33 % apart":      "front wheels brake 33\u00a0% apart",
		"step 6 of 7 is 100 long":            "step 6 of 7 is 100 long",
		"4 minutes":                          "4 minutes",
		"pin 2 s":                            "pin 2\u00a0s",
		"not a 12 0000":                      "not a 12 0000",
		"":                                   "",
		"  two blanks, 3 mm.":                "  two blanks, 3\u00a0mm.",
		"bound already: 12\u2009000\u00a0km": "bound already: 12\u2009000\u00a0km",
	} {
		if got := Bind(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}
