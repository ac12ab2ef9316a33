package scene

import (
	"testing"

	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
)

// pictured draws a job's sheet as the golden picture of a name.
func pictured(t *testing.T, a *App, name string) {
	t.Helper()
	img, _ := a.Draw()
	drawtest.Golden(t, name, img)
}

func TestCallPictures(t *testing.T) {
	for _, p := range []struct {
		name         string
		slate, touch bool
		rows         bool
		acts         []play.Act
		keys         []string
	}{
		{"call-empty", false, false, false, nil, nil},
		{"call-ask", false, false, true, nil, []string{"Left", "Enter", "Enter"}},
		{"call-rows", false, false, true, nil, []string{"Down"}},
		{"call-catalogue", false, false, true, nil, []string{"P", "Down", "Enter", "Enter"}},
		{"call-catalogue-touch", false, true, true, nil, []string{"P", "Enter", "Enter"}},
		{"call-notebook", false, false, true, nil, []string{"N"}},
		{"call-sealed", false, false, true, []play.Act{{Do: play.Seal}}, nil},
		{"call-remedies", false, false, true, chosenActs, nil},
		{"call-remedies-slate", true, false, true, chosenActs, nil},
		{"call-remedies-touch", false, true, true, chosenActs, nil},
	} {
		t.Run(p.name, func(t *testing.T) {
			a, j := demoCall(t, p.slate, p.touch, p.rows)
			acts(t, j, p.acts...)
			s := j.sheet.(*call)
			if len(p.acts) > 1 { // a part and its place are being looked through
				s.targets.Focus = s.parts.id
				s.layout()
				keys(a, "Enter", "Enter")
			} else if len(p.acts) == 1 {
				s.targets.Focus = s.parts.id
				s.layout()
			}
			keys(a, p.keys...)
			pictured(t, a, p.name)
		})
	}
}

var chosenActs = []play.Act{{Do: play.Seal}, {Do: play.Remedy, What: "renew_pins@front_right"}, {Do: play.Remedy, What: "renew_pads@front_axle"}}

// TestCallRedraws: after every act of a hand the sheet is what it would be drawn
// afresh: the caution of a remedy stands when the remedy is come to.
func TestCallRedraws(t *testing.T) {
	a, j := demoCall(t, false, false, true)
	a.Draw()
	for _, k := range []string{"Tab", "Down", "P", "Down", "Tab", "Down", "Down", "Enter", "Esc", "N", "Down", "N", "Tab", "Tab"} {
		keys(a, k)
		sameAsWhole(t, a, k)
	}
	acts(t, j, play.Act{Do: play.Seal})
	s := j.sheet.(*call)
	s.targets.Focus = s.parts.id
	seen := map[string]bool{}
	for _, k := range []string{"Right", "Left", "Enter", "Right", "Left", "Enter", "Down", "Down", "Enter", "Up", "Down"} {
		keys(a, k)
		sameAsWhole(t, a, "the seal and "+k)
		if m := s.ringed(); m != nil {
			seen[m.Caution] = true
		}
	}
	if len(seen) < 2 {
		t.Errorf("only %d remedies with cautions of their own were come to: the test shows little", len(seen))
	}
}
