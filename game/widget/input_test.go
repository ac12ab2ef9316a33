package widget

import (
	"strings"
	"testing"

	"evenwear/game/draw"
)

func typeInto(handle func(Event) bool, s string) (taken int) {
	for _, r := range s {
		if handle(Event{Kind: TextIn, Rune: r}) {
			taken++
		}
	}
	return taken
}

// TestNumberField: digits, point, comma and minus belong to it and stand as they
// were typed, so that no figure comes of what is none; letters do not.
func TestNumberField(t *testing.T) {
	for _, x := range []struct{ typed, want string }{
		{"8.7", "8.7"}, {"8,7", "8,7"}, {"8..7", "8..7"}, {"-0.14", "-0.14"}, {"1-2", "1-2"}, {"−3", "−3"}, {"7,5,3-2", "7,5,3-2"},
		{"0.00000000000000000005", "0.00000000000000000005"}, {strings.Repeat("1", 40), strings.Repeat("1", 30)},
	} {
		f := NumberField{Focused: true}
		typeInto(f.Handle, x.typed)
		if f.Text != x.want {
			t.Errorf("%q gave %q, want %q", x.typed, f.Text, x.want)
		}
	}
	f := NumberField{Focused: true, Text: "62"}
	if typeInto(f.Handle, "qWé") != 0 || f.Text != "62" {
		t.Errorf("letters must pass the field by: %q", f.Text)
	}
	if f.Handle(Event{Kind: KeyDown, Key: "Q"}) || f.Handle(Event{Kind: KeyDown, Key: "Enter"}) {
		t.Error("letters and Enter must still act")
	}
	if f.Handle(Event{Kind: KeyDown, Key: "Backspace"}); f.Text != "6" {
		t.Errorf("after Backspace %q, want 6", f.Text)
	}
	if f.Handle(Event{Kind: KeyDown, Key: "Delete"}); f.Text != "" {
		t.Errorf("after Delete %q, want nothing", f.Text)
	}
	f.Focused = false
	if typeInto(f.Handle, "5") != 0 {
		t.Error("a field out of focus took a digit")
	}
}

// TestTextField: while in focus nothing but Esc and Tab passes it by.
func TestTextField(t *testing.T) {
	f := TextField{Focused: true, Max: 5}
	typeInto(f.Handle, "é\x00ab\ncdefg")
	if f.Text != "éabcd" {
		t.Errorf("got %q, want éabcd: five characters, none of them control", f.Text)
	}
	for key, taken := range map[string]bool{"Q": true, "Enter": true, "Delete": true, "Esc": false, "Tab": false} {
		if f.Handle(Event{Kind: KeyDown, Key: key}) != taken {
			t.Errorf("%s: taken %v, want %v", key, !taken, taken)
		}
	}
	f.Text = strings.Repeat("é", 2)
	if f.Handle(Event{Kind: KeyDown, Key: "Backspace"}); f.Text != "é" {
		t.Errorf("Backspace left %q, want one whole character less", f.Text)
	}
}

// TestSlider: arrows by a step, Shift by the big one, drags to whole steps, never
// past its ends.
func TestSlider(t *testing.T) {
	s := Slider{Rect: rect(100, 100, 300, 12), Hi: 300, Step: 1, Big: 10, Value: 33, Focused: true}
	for _, x := range []struct {
		e    Event
		want float64
	}{
		{Event{Kind: KeyDown, Key: "Right"}, 34},
		{Event{Kind: KeyDown, Key: "Right", Shift: true}, 44},
		{Event{Kind: KeyDown, Key: "Left", Shift: true}, 34},
		{Event{Kind: KeyDown, Key: "Home"}, 0},
		{Event{Kind: KeyDown, Key: "Left"}, 0},
		{Event{Kind: KeyDown, Key: "End"}, 300},
		{Event{Kind: PointerMove, At: draw.Pt{X: 250, Y: 105}}, 300}, // not held
		{Event{Kind: PointerDown, At: draw.Pt{X: 250.3, Y: 105}}, 150},
		{Event{Kind: PointerMove, At: draw.Pt{X: 9999, Y: -50}}, 300},
		{Event{Kind: PointerUp}, 300},
		{Event{Kind: PointerMove, At: draw.Pt{X: 120, Y: 105}}, 300},
	} {
		was := s.Value
		if changed := s.Handle(x.e); s.Value != x.want || changed != (was != x.want) {
			t.Errorf("%+v: value %g changed %v, want %g", x.e, s.Value, changed, x.want)
		}
	}
}

// TestList: selection and scrolling stay within the rows, and the selected row
// is brought into sight.
func TestList(t *testing.T) {
	l := List{Rect: rect(0, 0, 100, 100), RowH: 25, Rows: 10, Focused: true}
	for range 6 {
		l.Handle(Event{Kind: KeyDown, Key: "Down"})
	}
	if from, to := l.Visible(); l.Selected != 6 || from != 3 || to != 7 {
		t.Errorf("six down: row %d, %d to %d in sight; want 6, 3 to 7", l.Selected, from, to)
	}
	l.Handle(Event{Kind: Wheel, Turn: 99, At: draw.Pt{X: 5, Y: 5}})
	if from, to := l.Visible(); from != 6 || to != 10 {
		t.Errorf("wheel to the end: %d to %d, want 6 to 10", from, to)
	}
	l.Handle(Event{Kind: KeyDown, Key: "Home"})
	if l.Handle(Event{Kind: KeyDown, Key: "Up"}) || l.Selected != 0 || l.Top != 0 {
		t.Errorf("above the first row: row %d, top %g", l.Selected, l.Top)
	}
	empty := List{Focused: true}
	empty.Handle(Event{Kind: KeyDown, Key: "Down"})
	if from, to := empty.Visible(); from != 0 || to != 0 {
		t.Errorf("an empty list shows %d to %d", from, to)
	}
}

func TestRodKey(t *testing.T) {
	for key, want := range map[string]RodAct{"Right": More, "Left": Less, "0": ClearRod, "Delete": DropRow, "R": Nothing} {
		if got := RodKey(Event{Kind: KeyDown, Key: key}); got != want {
			t.Errorf("%s does %d, want %d", key, got, want)
		}
	}
}

// TestNumberFieldHoldsItsFigure: nothing that can be typed overruns the field,
// and what was typed last stays in sight.
func TestNumberFieldHoldsItsFigure(t *testing.T) {
	c := testCanvas(t, draw.Paper)
	for _, w := range []float64{64, 84, 120} {
		for _, text := range []string{"", "8", "62.5", "-888.88", "888888888", "-88888888"} {
			f := NumberField{Rect: draw.Rect{W: w, H: 30}, Text: text}
			st, s := f.lettered(c)
			if got := c.Measure(st, s); got > w-22 || st.Size < 13 {
				t.Errorf("%q is %.1f units wide at %g in a field of %g", s, got, st.Size, w)
			}
			if n := len(text); n > 0 && s[len(s)-1] != text[n-1] {
				t.Errorf("%q: the last figure is out of sight in %q", text, s)
			}
		}
	}
}
