package play_test

import (
	"testing"

	"evenwear/assets"
	"evenwear/physics/inspect"
	"evenwear/scoring"
)

// TestEveryCheckHasWords: whatever can be checked, made ready, warned of, seen,
// written or marked has its sentence.
func TestEveryCheckHasWords(t *testing.T) {
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	need := func(id string) {
		if !words.Has(id) {
			t.Errorf("no sentence for %q", id)
		}
	}
	for _, c := range inspect.All() {
		need("check." + string(c.ID))
		need("ask." + string(c.ID))
		need("unit." + c.Meter.Unit)
		for _, w := range c.Meter.Words {
			need("word." + w)
			need("see." + string(c.ID) + "." + w)
			if words.Say("see."+string(c.ID)+"."+w) == words.Say("word."+w) {
				t.Errorf("%s: what is seen of %q is the answer itself", c.ID, w)
			}
		}
	}
	for _, p := range inspect.Preparations() {
		need("prep." + p.ID)
	}
	for _, id := range inspect.CautionIDs() {
		need(id)
	}
	for _, r := range scoring.ReasonIDs() {
		need(r.ID)
	}
}
