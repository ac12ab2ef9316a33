package scene

import (
	"testing"

	"evenwear/game/play"
	"evenwear/game/widget"
)

// demoHandover brings a job to its hand-over.
func demoHandover(t testing.TB, slate, touch bool) (*App, *Job) {
	t.Helper()
	a, j := demoCall(t, slate, touch, true)
	acts(t, j, append(chosenActs, play.Act{Do: play.Work})...)
	return a, j
}

// someLooks are looked at again for a picture.
var someLooks = []string{"pump_running", "reservoir_level", "wetness@front_right", "pull"}

const told = "Both guide pins had rusted fast. New pins, boots and front pads. First stops gentle."

func TestHandoverPictures(t *testing.T) {
	for _, p := range []struct {
		name         string
		slate, touch bool
		looked, told bool
		keys         []string
	}{
		{"handover-start", false, false, false, false, nil},
		{"handover-looks", false, false, true, false, nil},
		{"handover-others", false, false, true, false, []string{"M"}},
		{"handover-release", false, false, true, true, nil},
		{"handover-release-slate", true, false, true, true, nil},
		{"handover-letters-touch", false, true, true, true, []string{"Z", "Esc", "X"}},
		{"handover-release-touch", false, true, true, true, nil},
	} {
		t.Run(p.name, func(t *testing.T) {
			a, j := demoHandover(t, p.slate, p.touch)
			if p.looked {
				for _, c := range someLooks {
					look(t, j, a.words, c)
				}
			}
			if p.told {
				keys(a, "1", "Z")
				a.Handle(widget.Event{Kind: widget.TextIn, Rune: 'z'}) // comes with the key and is no part of the note
				typed(a, told)
				keys(a, "Esc")
				if got := j.view.Work.Told; got != told {
					t.Errorf("the owner is told %q", got)
				}
			}
			keys(a, p.keys...)
			pictured(t, a, p.name)
		})
	}
}

// TestHandoverRedraws: after every act of a hand the sheet is what it would be
// drawn afresh.
func TestHandoverRedraws(t *testing.T) {
	a, _ := demoHandover(t, false, false)
	a.Draw()
	for _, k := range []string{"Down", "Down", "Up", "Tab", "1", "2", "Tab", "M", "Down", "Esc", "N", "Down", "N", "Z", "Esc", "X", "Esc", "Tab"} {
		keys(a, k)
		sameAsWhole(t, a, k)
	}
}
