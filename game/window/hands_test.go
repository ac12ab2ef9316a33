package window

import (
	"slices"
	"testing"

	"evenwear/game/widget"
)

// TestClick: whatever a button does within a tick, downs and ups alternate and
// none is lost.
func TestClick(t *testing.T) {
	down, up := widget.PointerDown, widget.PointerUp
	var h hands
	for i, tc := range []struct {
		pressed, released bool
		want              []widget.Kind
	}{
		{true, true, []widget.Kind{down, up}},
		{false, false, nil},
		{true, false, []widget.Kind{down}},
		{true, true, []widget.Kind{up, down}}, // let go and down again
		{false, true, []widget.Kind{up}},
		{false, true, nil},
	} {
		if got := h.click(tc.pressed, tc.released); !slices.Equal(got, tc.want) {
			t.Errorf("tick %d gave %v, want %v", i, got, tc.want)
		}
	}
}

// TestPinch: fingers that spread act once for every quarter, and as far back.
func TestPinch(t *testing.T) {
	var h hands
	var got []float64
	for _, d := range []float64{100, 120, 126, 150, 158, 130, 126, 120, 99} {
		got = append(got, h.pinched(d))
	}
	if want := []float64{0, 0, -1, 0, -1, 0, 1, 0, 1}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}
