package term

import (
	"strings"
	"testing"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/physics/inspect"
)

// TestEveryCheckCanBeTyped: wherever a learner stands, what is printed before a
// check picks that check and nothing else, by its key or by its number.
func TestEveryCheckCanBeTyped(t *testing.T) {
	d, words := playtest.Desk(t)
	s, err := d.Open("warm_wheel", 3)
	if err != nil {
		t.Fatal(err)
	}
	found := map[inspect.ID]bool{}
	for _, place := range []string{"bonnet", "seat", "front_left", "rear_right", "road"} {
		if err := s.Do(play.Act{Do: play.Go, What: place}); err != nil {
			t.Fatal(err)
		}
		printed := read(s.View().Nodes, words)
		tokens := map[string]bool{}
		for _, c := range printed.choices {
			if tokens[c.token] {
				t.Errorf("%s: %q is printed twice", place, c.token)
			}
			tokens[c.token] = true
			if c.action.Act.Do != play.Check {
				continue
			}
			got, ok := printed.pick(strings.ToUpper(c.token))
			if !ok || got.Act != c.action.Act {
				t.Errorf("%s: %q picks %+v, want %+v", place, c.token, got.Act, c.action.Act)
			}
			id, _, _ := strings.Cut(c.action.Act.What, "@")
			found[inspect.ID(id)] = true
		}
	}
	for _, c := range inspect.All() {
		if !found[c.ID] {
			t.Errorf("%s cannot be typed anywhere", c.ID)
		}
	}
}
