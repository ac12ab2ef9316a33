package scene

import (
	"errors"
	"testing"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
	"evenwear/physics"
)

// heardBench notes the acts it is given and does the simple ones.
type heardBench struct {
	benchCar
	acts []play.Act
}

func (h *heardBench) Do(a play.Act) error {
	h.acts = append(h.acts, a)
	v := &h.view
	switch a.Do {
	case play.Press:
		v.Down = !v.Down
		v.Predict.Open = !v.Down
	case play.Foot:
		v.Wanted = a.N
	case play.Say:
		if !v.Predict.Open {
			return errors.New("let go first")
		}
		v.Predict.Said = a.N
	case play.Rub:
		v.Predict.Said = -1
	case play.Pin:
		v.Now.Pins[map[string]int{"upper": 0, "lower": 1}[a.What]] = a.Text
	}
	return nil
}

func (h *heardBench) last() play.Act {
	if len(h.acts) == 0 {
		return play.Act{}
	}
	return h.acts[len(h.acts)-1]
}

func heard(t *testing.T) (*App, *bench, *heardBench) {
	h := new(heardBench)
	h.at(t, physics.WheelCondition{}, freePins, 0, 0)
	h.view.Wanted = 40
	h.view.Wheels = []play.Action{{Label: "front left", Act: play.Act{Do: play.Wheel, What: "front_left"}, Enabled: true, Chosen: true},
		{Label: "rear left", Act: play.Act{Do: play.Wheel, What: "rear_left"}, Enabled: true}}
	put := func(what, label string) play.Action {
		return play.Action{Label: label, Act: play.Act{Do: play.Put, What: what}, Enabled: true}
	}
	h.view.Groups = []play.GroupView{{ID: "pins", Name: "guide pins", Causes: []play.CauseView{
		{ID: "pins_dry", Name: "pins dry", Places: []play.Action{put("pins_dry@front_left", "front left"), put("pins_dry@front_right", "front right")}},
		{ID: "one", Name: "only here", Places: []play.Action{put("one@car", "car")}}}}}
	a := testApp(t, false)
	b := newBench(a, h)
	a.Show(b)
	a.Draw()
	return a, b, h
}

func key(name string) widget.Event { return widget.Event{Kind: widget.KeyDown, Key: name} }

// point goes down and up again at one place.
func point(a *App, at draw.Pt, touch bool) {
	a.Handle(widget.Event{Kind: widget.PointerDown, At: at, Touch: touch})
	a.Handle(widget.Event{Kind: widget.PointerUp, At: at, Touch: touch})
}

func TestKeyboardAlone(t *testing.T) {
	a, b, h := heard(t)
	want := func(what string, w play.Act) {
		t.Helper()
		if got := h.last(); got != w {
			t.Errorf("%s gave %+v, want %+v", what, got, w)
		}
	}
	a.Handle(key("Space"))
	want("Space", play.Act{Do: play.Press})
	a.Handle(key("Right"))
	want("→", play.Act{Do: play.Foot, N: 41})
	a.Handle(widget.Event{Kind: widget.KeyDown, Key: "Left", Shift: true})
	want("Shift ←", play.Act{Do: play.Foot, N: 31})
	a.Handle(widget.Event{Kind: widget.TextIn, Rune: '5'})
	if b.notice() != "let go first" || b.view.Predict.Said >= 0 {
		t.Errorf("a figure while pressed: said %g, notice %q", b.view.Predict.Said, b.notice())
	}
	a.Handle(key("Right"))
	want("→ while nothing can be predicted", play.Act{Do: play.Foot, N: 32})
	a.Handle(key("Enter"))
	want("Press again lets go", play.Act{Do: play.Press})
	a.Advance(300)
	if !b.view.Predict.Open {
		t.Error("pressed before the car came to rest")
	}
	a.Advance(500)
	if b.view.Predict.Open {
		t.Error("Press again did not press")
	}
	a.Handle(key("Space"))
	want("Space", play.Act{Do: play.Press})
	for _, r := range "93" {
		a.Handle(widget.Event{Kind: widget.TextIn, Rune: r})
	}
	want("93", play.Act{Do: play.Say, N: 93})
	a.Handle(key("Right"))
	want("→ on the scale", play.Act{Do: play.Say, N: 94})
	a.Handle(key("Delete"))
	want("Delete", play.Act{Do: play.Rub})
	a.Handle(key("L"))
	if !b.bare {
		t.Error("L did not take the labels away")
	}

	// Tab comes to everything that can be pressed and back to the first.
	seen := map[string]bool{}
	for range 40 {
		a.Handle(key("Tab"))
		seen[b.targets.Focus] = true
	}
	for _, id := range []string{"upperfree", "upperdry", "upperstuck", "lowerfree", "lowerdry", "lowerstuck", "setup", "parts", "leave", idShare, "again", idSlider, "press"} {
		if !seen[id] {
			t.Errorf("Tab never came to %s", id)
		}
	}
	for b.targets.Focus != "upperstuck" {
		a.Handle(key("Tab"))
	}
	a.Handle(key("Enter"))
	want("Enter on upper stuck", play.Act{Do: play.Pin, What: "upper", Text: "stuck"})

	a.Handle(key("S"))
	for range 3 { // none, the group, the first cause
		a.Handle(key("Down"))
	}
	a.Handle(key("Up"))
	a.Handle(key("Enter")) // opens its places
	a.Handle(key("Down"))
	a.Handle(key("Down"))
	a.Handle(key("Enter"))
	want("a place of a cause", play.Act{Do: play.Put, What: "pins_dry@front_right"})
	a.Handle(key("Esc"))
	if !b.drawer || b.opened != "" || b.rows[b.list.Selected].cause != "pins_dry" {
		t.Error("Esc did not go back from the places to their cause")
	}
	a.Handle(key("2"))
	want("2 in the drawer", play.Act{Do: play.Wheel, What: "rear_left"})
	a.Handle(key("6"))
	want("6 in the drawer", play.Act{Do: play.Slow, N: 4})
	a.Handle(key("T"))
	want("T", play.Act{Do: play.Turn, N: 1})
	a.Handle(key("Home")) // the list has lost nothing: ↓ is its own wherever the focus is
	a.Handle(key("Down"))
	if b.targets.Focus != idList {
		t.Errorf("↓ went to %q", b.targets.Focus)
	}
	a.Handle(key("Esc"))
	if b.drawer || a.scene != Scene(b) {
		t.Error("Esc did not shut the drawer only")
	}
	a.Handle(key("Esc"))
	if a.scene == Scene(b) {
		t.Error("Esc did not leave the bench")
	}
}

func TestPointerAlone(t *testing.T) {
	for _, touch := range []bool{false, true} {
		a, b, h := heard(t)
		want := func(what string, w play.Act) {
			t.Helper()
			if got := h.last(); got != w {
				t.Errorf("touch %v: %s gave %+v, want %+v", touch, what, got, w)
			}
		}
		a.Handle(widget.Event{Kind: widget.PointerDown, At: draw.Pt{X: slideAt(40), Y: 670}, Touch: touch})
		a.Handle(widget.Event{Kind: widget.PointerMove, At: draw.Pt{X: slideAt(150), Y: 690}, Touch: touch})
		want("dragging the slider", play.Act{Do: play.Foot, N: 150})
		a.Handle(widget.Event{Kind: widget.PointerUp, At: draw.Pt{X: slideAt(150), Y: 690}, Touch: touch})
		point(a, draw.Pt{X: shareAt(70), Y: shareY - 4}, touch)
		want("the scale", play.Act{Do: play.Say, N: 70})
		point(a, draw.Pt{X: 700, Y: 670}, touch)
		want("the pedal's key", play.Act{Do: play.Press})
		point(a, draw.Pt{X: shareAt(30), Y: shareY - 4}, touch)
		if b.view.Predict.Said != 70 || b.notice() == "" {
			t.Errorf("touch %v: pressed, the scale took %g, notice %q", touch, b.view.Predict.Said, b.notice())
		}
		point(a, draw.Pt{X: 1020, Y: 610}, touch)
		want("rub out", play.Act{Do: play.Rub})
		point(a, draw.Pt{X: 610, Y: 35}, touch)
		want("upper pin stuck", play.Act{Do: play.Pin, What: "upper", Text: "stuck"})
		point(a, draw.Pt{X: 980, Y: 35}, touch)
		if !b.drawer {
			t.Fatal("set-up did not open")
		}
		point(a, b.list.Row(3).Centre(), touch)
		want("a cause with one place", play.Act{Do: play.Put, What: "one@car"})
		point(a, b.list.Row(2).Centre(), touch)
		point(a, b.list.Row(3).Centre(), touch)
		want("the first place of a cause", play.Act{Do: play.Put, What: "pins_dry@front_left"})
		point(a, draw.Pt{X: 1180, Y: 112}, touch)
		want("the other wheel", play.Act{Do: play.Wheel, What: "rear_left"})
		point(a, draw.Pt{X: 1200, Y: 35}, touch)
		if a.scene == Scene(b) {
			t.Errorf("touch %v: the key did not leave the bench", touch)
		}
	}
}

// TestDeafToNonsense: no event can make the bench fail.
func TestDeafToNonsense(t *testing.T) {
	a, _, _ := heard(t)
	for kind := widget.Kind(0); kind < 12; kind++ {
		for _, k := range []string{"", "Tab", "Enter", "Up", "Down", "Home", "PageDown", "Backspace", "Ω", "S"} {
			a.Handle(widget.Event{Kind: kind, Key: k, Rune: -1, At: draw.Pt{X: -1e9, Y: 1e9}, Turn: 1e9})
			a.Draw()
		}
	}
	a.Resize(0, -5, true)
	a.Draw()
	a.Resize(1, 1, false)
	a.Advance(16)
	a.Draw()
}
