package audit

import (
	"strings"
	"testing"

	"evenwear/game/play/playtest"
)

// TestDrawn: cars drawn, written and read again are the same for any number of
// workers, and the table says what fails.
func TestDrawn(t *testing.T) {
	if testing.Short() {
		t.Skip("every car is driven")
	}
	desk, _ := playtest.Desk(t)
	told := 0
	one, err := Draw(t.Context(), desk.Library(), Options{Seed: 5}, 9, func(Progress) { told++ })
	if err != nil {
		t.Fatal(err)
	}
	more, err := Draw(t.Context(), desk.Library(), Options{Seed: 5, Workers: 3}, 9, nil)
	if err != nil {
		t.Fatal(err)
	}
	if one.Failing() != 0 || one.Cars != 9 || told != 9 || one.String() != more.String() {
		t.Errorf("told %d times\n%s\n%s", told, one, more)
	}
}

// TestDrawnFails: what must not be is counted and shown with its example.
func TestDrawnFails(t *testing.T) {
	d := &Drawing{Cars: 10, Tried: 12, Thrown: map[string]int{"a sound car is worn too far": 2}, Refused: map[string]int{"the loader refuses it": 1},
		False: map[string]int{"its owner tells what is not so": 1}, Examples: []string{"unseen_fair_3: the loader refuses it: x.yaml:1:1: …"}}
	if d.Failing() != 2 {
		t.Errorf("%d fail, want 2", d.Failing())
	}
	for _, want := range []string{"2 of 12, 16.67 %", "MISSED      files that the loader refuses: 1 of 10", "MISSED      owners", "reached     seeds", "unseen_fair_3"} {
		if !strings.Contains(d.String(), want) {
			t.Errorf("the table does not say %q:\n%s", want, d)
		}
	}
}
