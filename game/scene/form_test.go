package scene

import (
	"strings"
	"testing"

	"evenwear/game/play"
	"evenwear/game/widget"
)

// formStates are the states of the call and of the hand-over that tests walk
// through: what is done to come to each, then what is typed.
var formStates = []struct {
	name string
	rows bool
	acts []play.Act
	keys []string
	// least is how many things can be pressed there, so that nothing is missed.
	least int
}{
	{"empty call", false, nil, nil, 12},
	{"catalogue", false, nil, []string{"P", "Enter", "Enter"}, 26},
	{"rows", true, nil, nil, 22},
	{"catalogue under rows", true, nil, []string{"P", "Down", "Enter", "Enter"}, 26},
	{"notebook", true, nil, []string{"N"}, 22},
	{"sealed", true, []play.Act{{Do: play.Seal}}, nil, 11},
	{"remedies", true, chosenActs, []string{"Tab", "Tab", "Enter", "Enter"}, 18},
	{"hand-over", true, append(chosenActs, play.Act{Do: play.Work}), nil, 15},
	{"other readings", true, append(chosenActs, play.Act{Do: play.Work}), []string{"M"}, 12},
	{"letters", true, append(chosenActs, play.Act{Do: play.Work}), []string{"X"}, 55},
}

// TestFormKeys: in every state no key meets another, keys are as high as the hand
// needs, what is pressed lies within the border, and a letter presses one thing.
func TestFormKeys(t *testing.T) {
	for _, touch := range []bool{false, true} {
		least := widget.Metrics{Touch: touch}.KeyHeight()
		for _, st := range formStates {
			a, j := demoCall(t, false, touch, st.rows)
			acts(t, j, st.acts...)
			a.Pressables() // lays out what was done without a hand
			keys(a, st.keys...)
			a.Draw()
			letters := map[string]string{}
			var there []Pressable
			for _, p := range a.Pressables() {
				covered := st.name == "letters" && p.Rect.Overlaps(padArea) && !strings.HasPrefix(p.Stop, "pad.") && !strings.HasPrefix(p.Stop, "letter.")
				if p.Rect.W == 0 || p.Stop == idRows || p.Stop == idBook || covered {
					continue
				}
				name := p.Stop + " " + p.Label
				if p.Rect.H < least-1e-9 || p.Pointer && p.Rect.W < least-1e-9 {
					t.Errorf("touch %v, %s: %s is %.1f × %.1f, want %.0f", touch, st.name, name, p.Rect.W, p.Rect.H, least)
				}
				if r := p.Rect; r.X < 18 || r.Y < 18 || r.X+r.W > 1262 || r.Y+r.H > 702 {
					t.Errorf("touch %v, %s: %s reaches over the border: %v", touch, st.name, name, r)
				}
				for _, q := range there {
					if p.Rect.Overlaps(q.Rect) {
						t.Errorf("touch %v, %s: %s meets %s %s", touch, st.name, name, q.Stop, q.Label)
					}
				}
				there = append(there, p)
				if o := letters[p.Letter]; o != "" && p.Letter != "" {
					t.Errorf("touch %v, %s: %s and %s both show %s", touch, st.name, o, name, p.Letter)
				}
				letters[p.Letter] = name
			}
			if len(there) < st.least {
				t.Errorf("touch %v, %s: %d things can be pressed, want %d or more", touch, st.name, len(there), st.least)
			}
			for i, c := range j.Cells() {
				for _, o := range j.Cells()[:i] {
					if a.sheet.Pixels(c.Area).Overlaps(a.sheet.Pixels(o.Area)) {
						t.Errorf("%s: cells %v and %v overlap", st.name, c.Area, o.Area)
					}
				}
			}
		}
	}
}

// TestFormRedraw: after every act of a hand the sheet is as one drawn afresh.
func TestFormRedraw(t *testing.T) {
	a, j := demoCall(t, false, false, false)
	walk := func(names ...string) {
		for _, k := range names {
			a.Handle(key(k))
			sameAsWhole(t, a, k)
		}
	}
	walk("P", "Down", "Enter", "Up", "Enter", "Enter", "Enter", "Right", "Right", "N", "Down", "Left", "Esc", "0", "Delete", "P", "Esc", "F2", "Tab")
	acts(t, j, play.Act{Do: play.Seal})
	walk("Tab", "Enter", "Right", "Enter", "Down", "Enter", "Tab", "F2", "N", "N", "G")
	if j.kind != handoverSheet {
		t.Fatalf("G led to sheet %d, want the hand-over", j.kind)
	}
	walk("Down", "M", "Up", "M", "2", "1", "Z", "Tab", "X", "Esc", "N", "Tab", "N")
	point(a, j.sheet.(*handover).told.Rect.Centre(), true)
	sameAsWhole(t, a, "a finger on the note")
	typed(a, "Go slow.")
	sameAsWhole(t, a, "the note")
}

// TestNoteStaysItsOwn: a letter that opens the note is no part of it, and while
// it is written no letter presses a key.
func TestNoteStaysItsOwn(t *testing.T) {
	a, j := demoCall(t, false, false, true)
	acts(t, j, append(chosenActs, play.Act{Do: play.Work})...)
	n := len(j.game.(*play.Session).Acts())
	typed(a, "z")
	typed(a, "zq1 Esc n")
	keys(a, "Esc")
	got := j.game.(*play.Session).Acts()[n:]
	if want := (play.Act{Do: play.Tell, Text: "zq1 Esc n"}); len(got) != 1 || got[0] != want {
		t.Errorf("was played %+v, want only %+v", got, want)
	}
	typed(a, "z")
	keys(a, "Esc")
	if more := j.game.(*play.Session).Acts()[n:]; len(more) != 1 {
		t.Errorf("a note that did not change was told again: %+v", more)
	}
}

// TestWhyNot: what is dashed says why when it is pressed, in the words in which
// the act itself would be refused, and nothing is done.
func TestWhyNot(t *testing.T) {
	for _, use := range []string{"keys", "mouse", "touch"} {
		a, j := demoCall(t, false, use == "touch", true)
		h := &hand{t, a, j, j.game.(*play.Session), use}
		a.Pressables()
		refused := func(act play.Act, press func()) {
			t.Helper()
			want := h.session.Refuses(act)
			if want == nil {
				t.Fatalf("%+v is not refused", act)
			}
			n := len(h.session.Acts())
			press()
			if got := j.view.Notice; got != want.Error() || len(h.session.Acts()) != n {
				t.Errorf("by %s the sheet says %q after %d acts more, want only %q", use, got, len(h.session.Acts())-n, want)
			}
		}
		if use != "keys" {
			refused(play.Act{Do: play.Counter, What: "pins_seized@front_right", N: 12}, func() { h.pressKey("more0") })
		}
		h.pressKey("pick")
		h.choose("groups", labelled("Guide pins"))
		h.choose("causes", labelled("Both guide pins seized"))
		refused(play.Act{Do: play.Row, What: "pins_seized@front_right"}, func() { h.choose("places", labelled("front right")) })
		acts(t, j, chosenActs...)
		a.Pressables()
		h.choose("parts", labelled("Guide pins and boots"))
		h.choose("spots", labelled("front right"))
		refused(play.Act{Do: play.Remedy, What: "clean_pins_silicone@front_right"}, func() {
			h.choose("remedies", func(i int, _ *menuItem) bool { return j.sheet.(*call).remedyAt(i).ID == "clean_pins_silicone" })
		})
	}
}
