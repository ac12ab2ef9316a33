package playtest

import (
	"slices"
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/scenarios"
)

// Desk is a desk with the program's own library and wording.
func Desk(t testing.TB) (*play.Desk, *assets.Words) {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	return play.NewDesk(lib, words), words
}

// Few is a desk whose library has these causes alone, no pairs and no jobs, so that
// its tables take seconds in all.
func Few(t testing.TB, causes ...string) (*play.Desk, *assets.Words) {
	t.Helper()
	full, words := Desk(t)
	lib := *full.Library()
	lib.Causes, lib.Pairs, lib.PairShare, lib.Jobs = nil, nil, 0, nil
	for _, c := range full.Library().Causes {
		if slices.Contains(causes, c.ID) {
			lib.Causes = append(lib.Causes, c)
		}
	}
	if len(lib.Causes) != len(causes) {
		t.Fatalf("the library has %d of the causes %v", len(lib.Causes), causes)
	}
	return play.NewDesk(&lib, words), words
}
