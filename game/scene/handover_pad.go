package scene

import (
	"strings"
	"unicode"

	"evenwear/game/draw"
	"evenwear/game/widget"
)

// A letterPad lays letters over the looks, so that the owner's note can be
// written by a hand without a keyboard. It is up while the note is in focus.
type letterPad struct {
	open  bool
	shift bool // the next letter is the other way round: large within a sentence, small at its beginning
}

const (
	padKeyW = 80.0
	padTop  = 356.0
)

// padArea is what the pad covers of the panel.
var padArea = draw.Rect{X: 22, Y: padTop, W: 848, H: 276}

// openPad lays the letters out and puts the note in focus, or takes both away.
func (s *handover) openPad() {
	if s.pad.open {
		s.pad.open = false
		s.targets.Focus = "letters"
		s.tell()
		return
	}
	s.pad.open, s.pad.shift = true, false
	s.targets.Focus = idTold
}

// capital reports whether the next letter is a large one: at the beginning, and
// after the end of a sentence.
func (s *handover) capital() bool {
	text := strings.TrimRight(s.told.Text, " ")
	begins := text == "" || text != s.told.Text && strings.HasSuffix(text, ".")
	return begins != s.pad.shift
}

func (s *handover) layPad() {
	large := s.capital()
	y := padTop + 34
	for _, row := range strings.Fields(s.word("handover.pad")) {
		x := padArea.X + 6
		for _, r := range row {
			if large {
				r = unicode.ToUpper(r)
			}
			s.padKey("letter."+string(unicode.ToLower(r)), draw.Rect{X: x, Y: y, W: padKeyW, H: widget.TouchTarget}, string(r), func() { s.letterIn(r) })
			x += padKeyW + 4
		}
		y += widget.TouchTarget + menuGap
	}
	x := padArea.X + 6
	for _, k := range []struct {
		id    string
		width float64
		do    func()
	}{
		{"shift", 164, func() { s.pad.shift = !s.pad.shift }},
		{"space", 332, func() { s.letterIn(' ') }},
		{"rub", 164, func() { s.told.Handle(widget.Event{Kind: widget.KeyDown, Key: "Backspace"}) }},
		{"end", 164, s.endTold},
	} {
		s.padKey("pad."+k.id, draw.Rect{X: x, Y: y, W: k.width, H: widget.TouchTarget}, s.word("handover.pad_"+k.id), k.do)
		x += k.width + 4
	}
}

// padKey adds a key that draws over the panel, above the looks.
func (s *handover) padKey(id string, r draw.Rect, label string, do func()) {
	s.hand(handPad, id, widget.Key{Rect: r, Label: label, Size: 17}, do)
}

// handPad is no panel of the form: its keys are drawn by the pad itself.
const handPad = -1

func (s *handover) letterIn(r rune) {
	s.told.Handle(widget.Event{Kind: widget.TextIn, Rune: r})
	s.pad.shift = false
}

// handlePad takes every hand over the open pad.
func (s *handover) handlePad(e widget.Event) bool {
	if !s.pad.open || e.Kind != widget.PointerDown || !padArea.Contains(e.At) {
		return false
	}
	if x, ok := s.hands.Hit(e.At, e.Touch); ok {
		s.press(x.ID)
	}
	s.layout()
	return true
}

// drawPad draws the open pad over what its panel has drawn.
func (s *handover) drawPad(c *draw.Canvas) {
	if !s.pad.open {
		return
	}
	c.Fill(padArea, c.Theme.Panel)
	c.Box(padArea.Inset(1), nil, draw.Visible)
	c.Text(draw.Pt{X: padArea.X + 12, Y: padTop + 22}, draw.HeadingText, c.Theme.Ink, s.word("handover.tell"))
	for i := range s.keys {
		if s.keys[i].panel == handPad {
			s.keys[i].Key.Draw(c)
		}
	}
}
