package widget

import "evenwear/game/draw"

// A Kind is what happened.
type Kind uint8

// The kinds. A touch is a pointer with Touch set.
const (
	KeyDown     Kind = iota // Key, Shift
	TextIn                  // Rune
	PointerDown             // At, Touch
	PointerMove             // At, Touch
	PointerUp               // At, Touch
	Wheel                   // At, Turn
	Pinch                   // At, between two fingers; Turn −1 where they spread, 1 where they close
)

// An Event is one act of a hand, in sheet coordinates.
type Event struct {
	Kind  Kind
	Key   string  // as on a key: "Space", "Left", "Right", "Up", "Down", "Enter", "Delete", "Backspace", "Esc", "Tab", "Home", "End", "PageUp", "PageDown", "A"…"Z", "0"…"9", "+", "-", "F1"…
	Shift bool    // held down
	Rune  rune    // what was typed
	At    draw.Pt // [unit]
	Touch bool    // a finger, not a mouse
	Turn  float64 // [row] of the wheel, down is positive
}
