package scene

import (
	"strconv"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// Handle answers one event: first what is in focus, then the letters.
func (b *bench) Handle(e widget.Event) {
	if e.Kind == widget.KeyDown && e.Key == "Esc" && b.drawer {
		b.shut()
		b.look()
		return
	}
	switch {
	case b.handleSlider(e), b.handleShare(e), b.drawer && b.handleList(e):
	default:
		key := e
		if e.Kind == widget.KeyDown && e.Key == "Delete" {
			key.Key = "Del" // as it stands on the key
		}
		id := b.targets.Handle(key)
		for i := range b.keys {
			if b.keys[i].id == id {
				b.keys[i].do()
				break
			}
		}
	}
	b.look()
}

// handleSlider moves the pedal's force. The arrows reach it from everywhere but
// the other fields, because they stand beside it on the sheet.
func (b *bench) handleSlider(e widget.Event) bool {
	focus := b.targets.Focus
	if e.Kind == widget.KeyDown {
		arrow := e.Key == "Left" || e.Key == "Right"
		if focus != idSlider && (!arrow || focus == idShare && b.view.Predict.Open || focus == idList) {
			return false
		}
		b.slider.Focused = true
	}
	if e.Kind == widget.PointerDown {
		if _, hit := b.targets.Hit(e.At, e.Touch); !hit {
			return false
		}
	}
	if !b.slider.Handle(e) {
		return false
	}
	if e.Kind == widget.PointerDown {
		b.targets.Focus = idSlider
	}
	b.do(play.Act{Do: play.Foot, N: b.slider.Value})
	return true
}

// handleShare takes the prediction: pointed at on the scale, moved by arrows,
// or typed as a number.
func (b *bench) handleShare(e widget.Event) bool {
	if b.drawer {
		return false
	}
	said := b.view.Predict.Said
	switch e.Kind {
	case widget.PointerDown:
		hit, ok := b.targets.Hit(e.At, e.Touch)
		b.holdShare = ok && hit.ID == idShare
		if b.holdShare {
			b.targets.Focus = idShare
			b.sayAt(e.At)
			return true
		}
	case widget.PointerMove:
		if b.holdShare {
			b.sayAt(e.At)
			return true
		}
	case widget.PointerUp:
		b.holdShare = false
	case widget.KeyDown:
		if b.targets.Focus != idShare || !b.view.Predict.Open {
			return false
		}
		step := 1.0
		if e.Shift {
			step = 10
		}
		switch e.Key {
		case "Left":
			b.say(max(said, 0) - step)
		case "Right":
			b.say(max(said, 0) + step)
		case "Backspace":
			b.said = b.said[:max(len(b.said)-1, 0)]
			b.typed()
		default:
			return false
		}
		return true
	case widget.TextIn:
		if e.Rune < '0' || e.Rune > '9' {
			return false
		}
		b.targets.Focus = idShare
		if len(b.said) >= 3 {
			b.said = ""
		}
		b.said += string(e.Rune)
		b.typed()
		return true
	}
	return false
}

func (b *bench) typed() {
	n, err := strconv.Atoi(b.said)
	if err != nil {
		b.do(play.Act{Do: play.Rub})
		return
	}
	if n > 100 { // a fourth figure begins anew
		b.said = b.said[len(b.said)-1:]
		n, _ = strconv.Atoi(b.said)
	}
	b.do(play.Act{Do: play.Say, N: float64(n)})
}

func (b *bench) sayAt(p draw.Pt) { b.say((p.X - shareX0) / (shareX1 - shareX0) * 100) }

func (b *bench) say(percent float64) {
	b.said = ""
	b.do(play.Act{Do: play.Say, N: float64(int(clamp(percent, 0, 100) + 0.5))})
}

// do gives an act to the bench; a refusal stands on the sheet as its notice.
func (b *bench) do(a play.Act) {
	b.refused, b.again = "", 0
	if err := b.src.Do(a); err != nil {
		b.refused, b.said = err.Error(), ""
	}
	b.look()
	if b.app.Calm && b.refused == "" {
		b.jump(a)
	}
}

func (b *bench) press() {
	if !b.view.Down {
		b.newPress()
	}
	b.do(play.Act{Do: play.Press})
}

// pressAgain lets go and, when the car has come to rest, presses: a whole press.
func (b *bench) pressAgain() {
	if b.view.Down {
		b.do(play.Act{Do: play.Press})
		b.again = againAfter
		return
	}
	b.press()
}

const againAfter = 700 // [ms] of the car: pads are back from the disc

func (b *bench) newPress() { b.kN, b.limit, b.scaled = 0, 80, false }

func (b *bench) leave() { b.app.ShowCover() }

// Advance lets the car move on. Words are asked for again only when a computed
// share or a notice has come, or a share can be said again.
func (b *bench) Advance(ms int) {
	was, notice := b.view.Predict, b.view.Notice
	b.src.Advance(int64(ms))
	b.src.Numbers(b.view)
	if b.again > 0 && b.view.Foot == 0 {
		if b.again -= float64(ms) / max(b.view.Slow, 1); b.again <= 0 {
			b.press()
			return
		}
	}
	if b.view.Predict.Computed != was.Computed || b.view.Predict.Open != was.Open || b.view.Notice != notice {
		b.look()
		return
	}
	b.stand()
}
