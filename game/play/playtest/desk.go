package playtest

import (
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
