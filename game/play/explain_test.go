package play

import (
	"strings"
	"testing"
)

// TestTwinsAreTold: where a cause is explained, so is what looks the same.
func TestTwinsAreTold(t *testing.T) {
	lib, words := shelf(t)
	if len(lib.Twins) == 0 {
		t.Fatal("the library declares no twins")
	}
	for _, tw := range lib.Twins {
		for k, c := range tw.Causes {
			said := explain(lib, words, c)
			for _, want := range []string{c.Explain, tw.Causes[1-k].Name, tw.Why} {
				if !strings.Contains(said, want) {
					t.Errorf("%s: %q does not hold %q", c.ID, said, want)
				}
			}
		}
	}
	if dry := lib.Cause("pins_dry"); explain(lib, words, dry) != dry.Explain {
		t.Error("a cause without twins is told of one")
	}
}
