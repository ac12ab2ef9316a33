package scenarios

import (
	"strings"
	"testing"
)

const soundTwins = soundPairs + `twins:
  - causes: [disc_runout, disc_variation]
    why: Both make the pedal move.
`

// TestTwins: what is declared of two causes is found whichever is asked for first,
// and each mistake has its sentence.
func TestTwins(t *testing.T) {
	lib, err := Load(with(t, "pairs.yaml", soundTwins))
	if err != nil {
		t.Fatal(err)
	}
	if a, b := lib.Twin("disc_runout", "disc_variation"), lib.Twin("disc_variation", "disc_runout"); a == nil || a != b || a.Why != "Both make the pedal move." {
		t.Errorf("found %+v and %+v", a, b)
	}
	if lib.Twin("disc_runout", "pins_dry") != nil {
		t.Error("two that are no twins are")
	}
	for _, row := range []struct{ old, new, want string }{
		{"disc_variation]", "disc_varation]", `pairs.yaml:6:27: twins[0].causes[1]: unknown cause "disc_varation"; the nearest known are disc_variation`},
		{"[disc_runout, disc_variation]", "[disc_runout]", "pairs.yaml:6:5: twins[0]: 1 causes stand in twins; two"},
		{"[disc_runout, disc_variation]", "[disc_runout, disc_runout]", "pairs.yaml:6:5: twins[0]: a cause is its own twin; two that differ"},
		{"    why: Both make the pedal move.\n", "", "pairs.yaml:6:5: twins[0].why: missing; text is needed here"},
		{"Both make the pedal move.", "Both.\n  - {causes: [disc_variation, disc_runout], why: Again.}", "pairs.yaml:8:5: twins[1]: the twins stand twice; once"},
		{"why:", "because:", "pairs.yaml:6:5: twins[0].why: missing; text is needed here"},
	} {
		text := strings.Replace(soundTwins, row.old, row.new, 1)
		if text == soundTwins {
			t.Fatalf("%q does not occur", row.old)
		}
		_, err := Load(with(t, "pairs.yaml", text))
		if err == nil || !strings.HasPrefix(err.Error(), row.want) {
			t.Errorf("%s\ngot  %v\nwant %s", row.new, err, row.want)
		}
	}
}
