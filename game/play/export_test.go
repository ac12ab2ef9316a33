package play

import (
	"testing"

	"evenwear/assets"
	"evenwear/scenarios"
	"evenwear/scoring"
)

// Disguise gives s the job of another session, so that only the cars differ.
func Disguise(s, as *Session) { s.job = as.job }

// shelf is the program's own library and wording, for tests inside the package;
// playtest.Desk is the same from outside.
func shelf(t testing.TB) (*scenarios.Library, *assets.Words) {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	return lib, words
}

// Due are the cautions that were due so far.
func (s *Session) Due() []scoring.Caution { return s.due }

// SayAmiss is what the debrief says of readings made in spite of what they want.
func (s *Session) SayAmiss() string { return s.sayAmiss() }

// HashWith is what Hash would be in a version of this meaning.
func (d *Desk) HashWith(meaning string) string { return hashOf(d.lib, meaning) }
