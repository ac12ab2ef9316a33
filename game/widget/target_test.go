package widget

import (
	"slices"
	"testing"

	"evenwear/game/draw"
)

func rect(x, y, w, h float64) draw.Rect { return draw.Rect{X: x, Y: y, W: w, H: h} }

func sample() *Targets {
	t := new(Targets)
	t.Add(Target{ID: "c", Rect: rect(10, 60, 50, 30), Key: "C", Enabled: true})
	t.Add(Target{ID: "off", Rect: rect(70, 60, 50, 30), Key: "O"})
	t.Add(Target{ID: "b", Rect: rect(100, 8, 50, 30), Key: "B", Enabled: true}) // two higher, same row as a
	t.Add(Target{ID: "a", Rect: rect(10, 10, 50, 30), Key: "A", Enabled: true})
	t.Add(Target{ID: "z", Rect: rect(0, 0, 5, 5), Panel: 1, Enabled: true})
	return t
}

// TestReadingOrder: left to right, top to bottom, panel after panel; Tab goes
// round and passes over what is unavailable, Shift-Tab goes back.
func TestReadingOrder(t *testing.T) {
	s := sample()
	var order []string
	for _, x := range s.InOrder() {
		order = append(order, x.ID)
	}
	if want := []string{"a", "b", "c", "off", "z"}; !slices.Equal(order, want) {
		t.Fatalf("order %v, want %v", order, want)
	}
	for _, want := range []string{"a", "b", "c", "z", "a"} {
		s.Handle(Event{Kind: KeyDown, Key: "Tab"})
		if s.Focus != want {
			t.Errorf("Tab came to %q, want %q", s.Focus, want)
		}
	}
	for _, want := range []string{"z", "c", "b"} {
		s.Handle(Event{Kind: KeyDown, Key: "Tab", Shift: true})
		if s.Focus != want {
			t.Errorf("Shift-Tab came to %q, want %q", s.Focus, want)
		}
	}
	s.Focus = ""
	if got := s.Step(true); got != "z" {
		t.Errorf("Shift-Tab from nothing came to %q, want the last", got)
	}
	if got := new(Targets).Step(false); got != "" {
		t.Errorf("an empty screen gave focus to %q", got)
	}
}

// TestPressing: letters, Enter and pointers press what is available only.
func TestPressing(t *testing.T) {
	for _, x := range []struct {
		name string
		e    Event
		want string
	}{
		{"letter", Event{Kind: KeyDown, Key: "B"}, "b"},
		{"letter of an unavailable key", Event{Kind: KeyDown, Key: "O"}, ""},
		{"unknown letter", Event{Kind: KeyDown, Key: "X"}, ""},
		{"no letter", Event{Kind: KeyDown}, ""},
		{"mouse", Event{Kind: PointerDown, At: draw.Pt{X: 20, Y: 20}}, "a"},
		{"mouse beside", Event{Kind: PointerDown, At: draw.Pt{X: 20, Y: 44}}, ""},
		{"finger beside, nearer to a", Event{Kind: PointerDown, At: draw.Pt{X: 20, Y: 44}, Touch: true}, "a"},
		{"finger far away", Event{Kind: PointerDown, At: draw.Pt{X: 20, Y: 200}, Touch: true}, ""},
		{"mouse on an unavailable key", Event{Kind: PointerDown, At: draw.Pt{X: 80, Y: 70}}, ""},
	} {
		if got := sample().Handle(x.e); got != x.want {
			t.Errorf("%s pressed %q, want %q", x.name, got, x.want)
		}
	}
	s := sample()
	s.Handle(Event{Kind: PointerDown, At: draw.Pt{X: 80, Y: 70}})
	if s.Focus != "off" {
		t.Errorf("an unavailable key takes the focus so that its reason can be read: focus %q", s.Focus)
	}
	if got := s.Handle(Event{Kind: KeyDown, Key: "Enter"}); got != "" {
		t.Errorf("Enter pressed the unavailable %q", got)
	}
}

// TestTargetSizes is OC-143: WCAG 2.2 SC 2.5.8, targets of 24 px or more, and SC
// 2.5.5, 44 px or more by touch, at every text size and window size; and keys of
// a grid do not meet.
func TestTargetSizes(t *testing.T) {
	for _, scale := range []float64{0.25, 0.5, 0.75, 1, 1.5, 3} {
		for _, size := range []float64{1, 1.25, 1.5, 2} {
			for _, touch := range []bool{false, true} {
				least := MouseTarget
				if touch {
					least = TouchTarget
				}
				m := Metrics{Touch: touch, Scale: scale, Text: size}
				cells := m.Grid(rect(0, 0, 1200, 100), 4, 9, 6)
				for i, r := range cells {
					if px := min(r.W, r.H) * scale; px < least-1e-9 {
						t.Errorf("OC-143 scale %g text %g touch %v: key of %.1f px, want %.0f (WCAG 2.2)", scale, size, touch, px, least)
					}
					for _, q := range cells[:i] {
						if r.Overlaps(q) {
							t.Errorf("OC-143 keys %v and %v meet", q, r)
						}
					}
				}
			}
		}
	}
	if got := (Metrics{}).KeyHeight(); got != 28 {
		t.Errorf("a key by mouse is %g high, want 28", got)
	}
}

// TestEnterPressesWhatHasTheRing: Tab puts the ring on a key and Enter presses it,
// as often as it is struck; a key that was pressed by its letter or by a pointer has
// none, so that Enter is the key lettered so, and Tab goes on from there.
func TestEnterPressesWhatHasTheRing(t *testing.T) {
	three := func() *Targets {
		s := &Targets{}
		for i, k := range []Key{{Letter: "Q"}, {Letter: "W"}, {Letter: "Enter"}} {
			k.Rect = rect(100*float64(i), 0, 90, 30)
			s.Add(k.Target(string(rune('a'+i)), 0))
		}
		return s
	}
	enter, tab := Event{Kind: KeyDown, Key: "Enter"}, Event{Kind: KeyDown, Key: "Tab"}
	for name, first := range map[string]Event{"letter": {Kind: KeyDown, Key: "Q"}, "mouse": {Kind: PointerDown, At: draw.Pt{X: 20, Y: 20}}} {
		s := three()
		if got := s.Handle(first); got != "a" || s.Focus != "" {
			t.Errorf("%s pressed %q and left the ring on %q", name, got, s.Focus)
		}
		if got := s.Handle(enter); got != "c" {
			t.Errorf("after a %s Enter pressed %q, want c, which is lettered so", name, got)
		}
		s.Handle(first)
		if s.Handle(tab); s.Focus != "b" {
			t.Errorf("after a %s on a Tab came to %q, want b", name, s.Focus)
		}
		for range 2 {
			if got := s.Handle(enter); got != "b" {
				t.Errorf("Enter pressed %q, want b, which has the ring", got)
			}
		}
	}
}

// TestEnterIsShownWhereItActs: a key shows Enter only where Enter presses it; what
// Enter does nothing to lets it through, and what is unavailable does not.
func TestEnterIsShownWhereItActs(t *testing.T) {
	s := &Targets{}
	s.Add(Target{ID: "go", Rect: rect(0, 0, 90, 30), Key: "Enter", Enabled: true})
	s.Add(Target{ID: "other", Rect: rect(100, 0, 90, 30), Key: "Q", Enabled: true})
	s.Add(Target{ID: "scale", Rect: rect(200, 0, 90, 30), Enabled: true, Through: true})
	s.Add(Target{ID: "off", Rect: rect(300, 0, 90, 30)})
	for focus, want := range map[string][2]string{"": {"go", "Enter"}, "go": {"go", "Enter"}, "other": {"other", ""}, "scale": {"go", "Enter"}, "off": {"", ""}, "gone": {"go", "Enter"}} {
		s.Focus = focus
		if got := s.Letter("go", "Enter"); got != want[1] {
			t.Errorf("with the ring on %q the key lettered Enter shows %q, want %q", focus, got, want[1])
		}
		if got := s.Letter("other", "Q"); got != "Q" {
			t.Errorf("with the ring on %q another key shows %q, want its own Q", focus, got)
		}
		if got := s.Handle(Event{Kind: KeyDown, Key: "Enter"}); got != want[0] {
			t.Errorf("with the ring on %q Enter pressed %q, want %q", focus, got, want[0])
		}
		if focus == "scale" && s.Focus != "scale" {
			t.Errorf("Enter took the ring from the scale to %q", s.Focus)
		}
	}
}
