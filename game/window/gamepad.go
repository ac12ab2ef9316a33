package window

import (
	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/inpututil"

	"evenwear/game/scene"
	"evenwear/game/widget"
)

// buttons are the gamepad's buttons and the keys they stand for.
var buttons = [...]struct {
	button ebiten.StandardGamepadButton
	key    string
	shift  bool
}{
	{ebiten.StandardGamepadButtonFrontTopLeft, "Tab", true},
	{ebiten.StandardGamepadButtonFrontTopRight, "Tab", false},
	{ebiten.StandardGamepadButtonRightBottom, "Enter", false},
	{ebiten.StandardGamepadButtonRightLeft, "Delete", false},
	{ebiten.StandardGamepadButtonRightRight, "Esc", false},
	{ebiten.StandardGamepadButtonRightTop, "L", false},
	{ebiten.StandardGamepadButtonFrontBottomRight, "Space", false},
	{ebiten.StandardGamepadButtonRightStick, "+", false},
	{ebiten.StandardGamepadButtonLeftLeft, "Left", false},
	{ebiten.StandardGamepadButtonLeftRight, "Right", false},
	{ebiten.StandardGamepadButtonLeftTop, "Up", false},
	{ebiten.StandardGamepadButtonLeftBottom, "Down", false},
}

// gamepad sends buttons as keys, and the left stick as arrows that repeat the
// faster the further it is pushed.
func (h *hands) gamepad(app *scene.App) {
	h.pads = ebiten.AppendGamepadIDs(h.pads[:0])
	for _, id := range h.pads {
		if !ebiten.IsStandardGamepadLayoutAvailable(id) {
			continue
		}
		for _, b := range buttons {
			d := inpututil.StandardGamepadButtonPressDuration(id, b.button)
			again := d > 24 && d%3 == 0 && (b.key == "Left" || b.key == "Right" || b.key == "Up" || b.key == "Down")
			if again || inpututil.IsStandardGamepadButtonJustPressed(id, b.button) {
				app.Handle(widget.Event{Kind: widget.KeyDown, Key: b.key, Shift: b.shift})
			}
		}
		x := ebiten.StandardGamepadAxisValue(id, ebiten.StandardGamepadAxisLeftStickHorizontal)
		if x > -0.2 && x < 0.2 { // a stick at rest is never quite in its middle
			h.stick = 0
			continue
		}
		h.stick += x * x * x
		for ; h.stick >= 0.5; h.stick-- {
			app.Handle(widget.Event{Kind: widget.KeyDown, Key: "Right"})
		}
		for ; h.stick <= -0.5; h.stick++ {
			app.Handle(widget.Event{Kind: widget.KeyDown, Key: "Left"})
		}
	}
}
