package window

import (
	"math"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/inpututil"

	"evenwear/game/scene"
	"evenwear/game/widget"
)

// hands turns keyboard, mouse, touches and gamepad into events.
type hands struct {
	touched bool // the last pointer was a finger
	keys    []ebiten.Key
	runes   []rune
	ids     []ebiten.TouchID
	gone    []ebiten.TouchID
	pads    []ebiten.GamepadID
	mouseX  int
	mouseY  int
	button  bool // the mouse's is down
	finger  ebiten.TouchID
	one     bool // a finger is down
	all     []ebiten.TouchID
	spread  float64 // [px] between two fingers when they last acted; 0: not two
	stick   float64
}

// named are keys whose name differs from the library's.
var named = map[ebiten.Key]string{
	ebiten.KeySpace: "Space", ebiten.KeyArrowLeft: "Left", ebiten.KeyArrowRight: "Right", ebiten.KeyArrowUp: "Up", ebiten.KeyArrowDown: "Down",
	ebiten.KeyEnter: "Enter", ebiten.KeyNumpadEnter: "Enter", ebiten.KeyDelete: "Delete", ebiten.KeyBackspace: "Backspace", ebiten.KeyEscape: "Esc",
	ebiten.KeyTab: "Tab", ebiten.KeyHome: "Home", ebiten.KeyEnd: "End", ebiten.KeyPageUp: "PageUp", ebiten.KeyPageDown: "PageDown",
	ebiten.KeyEqual: "+", ebiten.KeyNumpadAdd: "+", ebiten.KeyMinus: "-", ebiten.KeyNumpadSubtract: "-",
}

// keyName is a key as the sheet shows it: the letter that the keyboard in use
// carries, so that the letter on the sheet is the one under the finger.
func keyName(k ebiten.Key) string {
	if n, ok := named[k]; ok {
		return n
	}
	switch {
	case k >= ebiten.KeyF1 && k <= ebiten.KeyF12:
		return "F" + string(digits[int(k-ebiten.KeyF1)])
	case k >= ebiten.KeyDigit0 && k <= ebiten.KeyDigit9:
		return string(rune('0' + k - ebiten.KeyDigit0))
	case k >= ebiten.KeyNumpad0 && k <= ebiten.KeyNumpad9:
		return string(rune('0' + k - ebiten.KeyNumpad0))
	case k >= ebiten.KeyA && k <= ebiten.KeyZ:
		if n := ebiten.KeyName(k); len(n) == 1 && n[0] >= 'a' && n[0] <= 'z' {
			return string(rune(n[0] - 'a' + 'A'))
		}
		return string(rune('A' + k - ebiten.KeyA))
	}
	return ""
}

var digits = [...]string{"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"}

// repeats reports whether a key that is held acts again: after 0.4 s, then 30
// times a second. Only what moves something does.
func repeats(k ebiten.Key, name string) bool {
	d := inpututil.KeyPressDuration(k)
	return d > 24 && d%2 == 0 && len(name) > 1 && name != "Space" && name != "Enter" && name != "Esc"
}

// each gives every event since the last update to the app.
func (h *hands) each(app *scene.App) {
	h.keyboard(app)
	h.mouse(app)
	h.touch(app)
	h.pinch(app)
	h.gamepad(app)
}

func (h *hands) keyboard(app *scene.App) {
	shift := ebiten.IsKeyPressed(ebiten.KeyShift)
	send := func(name string) {
		if name != "" {
			app.Handle(widget.Event{Kind: widget.KeyDown, Key: name, Shift: shift})
		}
	}
	// A tap shorter than a tick is seen only among the keys just pressed.
	h.keys = inpututil.AppendJustPressedKeys(h.keys[:0])
	for _, k := range h.keys {
		send(keyName(k))
	}
	h.keys = inpututil.AppendPressedKeys(h.keys[:0])
	for _, k := range h.keys {
		if n := keyName(k); repeats(k, n) {
			send(n)
		}
	}
	h.runes = ebiten.AppendInputChars(h.runes[:0])
	for _, r := range h.runes {
		app.Handle(widget.Event{Kind: widget.TextIn, Rune: r, Shift: shift})
	}
}

func (h *hands) mouse(app *scene.App) {
	x, y := ebiten.CursorPosition()
	at := app.Sheet(float64(x), float64(y))
	left := ebiten.MouseButtonLeft
	if x != h.mouseX || y != h.mouseY {
		app.Handle(widget.Event{Kind: widget.PointerMove, At: at})
	}
	if inpututil.IsMouseButtonJustPressed(left) {
		h.touched = false
	}
	for _, k := range h.click(inpututil.IsMouseButtonJustPressed(left), inpututil.IsMouseButtonJustReleased(left)) {
		app.Handle(widget.Event{Kind: k, At: at})
	}
	h.mouseX, h.mouseY = x, y
	if _, turn := ebiten.Wheel(); turn != 0 {
		app.Handle(widget.Event{Kind: widget.Wheel, At: at, Turn: -turn})
	}
}

// click is what a button did within one tick, in the order of its doing: a quick
// click goes down and up between two ticks.
func (h *hands) click(pressed, released bool) []widget.Kind {
	var list []widget.Kind
	if released && h.button {
		list, h.button, released = append(list, widget.PointerUp), false, false
	}
	if pressed {
		list, h.button = append(list, widget.PointerDown), true
	}
	if released && h.button {
		list, h.button = append(list, widget.PointerUp), false
	}
	return list
}

// pinched is what two fingers do that stood spread apart and now stand otherwise
// [px]: −1 they spread by a quarter, +1 they closed as much, 0 neither.
func (h *hands) pinched(now float64) float64 {
	const step = 1.25
	switch {
	case h.spread == 0:
		h.spread = now
	case now > h.spread*step:
		h.spread = now
		return -1
	case now < h.spread/step:
		h.spread = now
		return 1
	}
	return 0
}

// pinch watches two fingers.
func (h *hands) pinch(app *scene.App) {
	h.all = ebiten.AppendTouchIDs(h.all[:0])
	if len(h.all) != 2 {
		h.spread = 0
		return
	}
	ax, ay := ebiten.TouchPosition(h.all[0])
	bx, by := ebiten.TouchPosition(h.all[1])
	mid := app.Sheet(float64(ax+bx)/2, float64(ay+by)/2)
	if turn := h.pinched(math.Hypot(float64(ax-bx), float64(ay-by))); turn != 0 {
		app.Handle(widget.Event{Kind: widget.Pinch, At: mid, Turn: turn, Touch: true})
	}
}

// touch follows one finger; a second one only pinches.
func (h *hands) touch(app *scene.App) {
	h.gone = inpututil.AppendJustReleasedTouchIDs(h.gone[:0])
	for _, id := range h.gone {
		if h.one && id == h.finger {
			h.one = false
			x, y := inpututil.TouchPositionInPreviousTick(id)
			app.Handle(widget.Event{Kind: widget.PointerUp, Touch: true, At: app.Sheet(float64(x), float64(y))})
		}
	}
	h.ids = inpututil.AppendJustPressedTouchIDs(h.ids[:0])
	if len(h.ids) > 0 && !h.one { // one finger at a time
		id := h.ids[0]
		h.one, h.finger, h.touched = true, id, true
		x, y := ebiten.TouchPosition(id)
		app.Handle(widget.Event{Kind: widget.PointerDown, Touch: true, At: app.Sheet(float64(x), float64(y))})
		if inpututil.IsTouchJustReleased(id) { // a tap shorter than a tick
			h.one = false
			app.Handle(widget.Event{Kind: widget.PointerUp, Touch: true, At: app.Sheet(float64(x), float64(y))})
		}
		return
	}
	if h.one {
		x, y := ebiten.TouchPosition(h.finger)
		if px, py := inpututil.TouchPositionInPreviousTick(h.finger); px != x || py != y {
			app.Handle(widget.Event{Kind: widget.PointerMove, Touch: true, At: app.Sheet(float64(x), float64(y))})
		}
	}
}
