package play_test

import (
	"slices"
	"strings"
	"testing"
	"unicode"

	"evenwear/assets"
	"evenwear/game/play/playtest"
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

// TestSeenIsNoAnswer: what is described of a sight, sound or touch, before the
// learner has chosen a word for it, holds no word of the answers it is chosen
// from, not in another form either: neither the right one nor a wrong one.
func TestSeenIsNoAnswer(t *testing.T) {
	_, words := playtest.Desk(t)
	small := []string{"air", "out", "two", "much", "before"} // no answer by themselves
	seen := 0
	for _, c := range inspect.All() {
		var answers []string
		for _, w := range c.Meter.Words {
			for _, part := range lettered(words.Say("word." + w)) {
				if len(part) >= 3 && !slices.Contains(small, part) {
					answers = append(answers, strings.TrimSuffix(part, "s"))
				}
			}
		}
		for _, w := range c.Meter.Words {
			text := words.Say("see." + string(c.ID) + "." + w)
			seen++
			for _, part := range lettered(text) {
				for _, a := range answers {
					short, long := min(part, a), max(part, a) // of two where one begins the other the shorter comes first
					if len(short) >= 3 && strings.HasPrefix(long, short) && len(long)-len(short) <= 3 {
						t.Errorf("%s: %q of the answers is told by %q in %q", c.ID, a, part, text)
					}
				}
			}
		}
	}
	if seen < 50 {
		t.Errorf("only %d descriptions were read", seen)
	}
}

func lettered(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
}
