package term

import (
	"testing"

	"evenwear/game/play"
)

// A word an instrument asks for may be typed as it is; what two choices are
// called takes neither.
func TestCalled(t *testing.T) {
	s := sheet{choices: []choice{
		{token: "a", action: play.Action{Label: "dry", Act: play.Act{Do: play.Write, Text: "dry"}}},
		{token: "1a", action: play.Action{Label: "front left"}},
		{token: "2a", action: play.Action{Label: "front left"}},
	}}
	if a, ok := s.pick(" Dry "); !ok || a.Act.Text != "dry" {
		t.Errorf("dry: %+v %v", a, ok)
	}
	if a, ok := s.pick("front left"); ok {
		t.Errorf("two places are called so, but %+v was taken", a)
	}
	if _, ok := s.pick("damp"); ok {
		t.Error("damp is not offered")
	}
}
