package play_test

import (
	"strings"
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/scenarios"
)

func desk(t testing.TB) *play.Desk {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	return play.NewDesk(lib, words)
}

func TestSmoke(t *testing.T) {
	d := desk(t)
	s, err := d.Open("warm_wheel", 1)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range s.View().Nodes {
		t.Log(n.Role, n.Name, n.Value)
		for _, a := range n.Actions {
			t.Log("   ", a.Key, a.Label, a.Enabled, a.Why)
		}
		if strings.Contains(n.Name+n.Value, "‹") {
			t.Error(n)
		}
	}
}
