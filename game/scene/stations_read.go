package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// What is pressed while an instrument waits: figures or words for a hand without
// a keyboard, what ends the reading, what turns the disc and what enlarges.

const (
	padHeight = 44.0
	padPitch  = padHeight + 3
)

func (s *stations) readingKeys() {
	v := s.view.Instrument
	h := 36.0
	if s.app.Touch {
		h = padHeight
	}
	if len(v.Words) == 0 {
		s.add("write", panelCentre, widget.Key{Rect: draw.Rect{X: 732, Y: 568 - h/2, W: 132, H: h}, Label: v.Write.Label, Letter: v.Write.Key, Size: 14}, s.write)
		s.pad()
		s.lookKeys()
	} else {
		w := (760 - 6*float64(len(v.Words)-1)) / float64(len(v.Words))
		for i, a := range v.Words {
			s.addAct("word."+a.Act.Text, panelChecks, draw.Rect{X: 27 + float64(i)*(w+6), Y: 632, W: w, H: padHeight}, a)
			s.keys[len(s.keys)-1].do = func() { s.finish(a.Act) }
		}
	}
	s.add("skip", panelWorks, widget.Key{Rect: padRight(3), Label: v.Skip.Label, Letter: s.word("stations.skip_key")}, func() { s.finish(v.Skip.Act) })
	if len(v.Needle) > 2 {
		s.add("turn", panelWorks, widget.Key{Rect: padRight(0), Label: s.word("stations.turn"), Letter: "Space", Chosen: s.turning, Size: 14}, s.turn)
	}
}

// padRight is the n-th key beside the figures.
func padRight(n int) draw.Rect {
	return draw.Rect{X: 1106, Y: 438 + padPitch*float64(n), W: 148, H: padHeight}
}

// pad is the keys of a figure.
func (s *stations) pad() {
	for i, r := range "789456123.0-" {
		at := draw.Rect{X: 883 + 74*float64(i%3), Y: 438 + padPitch*float64(i/3), W: 68, H: padHeight}
		label := string(r)
		if r == '-' {
			label = "−"
		}
		s.add("pad."+string(r), panelWorks, widget.Key{Rect: at, Label: label, Size: 18}, func() {
			s.field.Focused = true
			s.field.Handle(widget.Event{Kind: widget.TextIn, Rune: r})
		})
	}
	s.add("pad.rub", panelWorks, widget.Key{Rect: padRight(2), Label: s.word("stations.rub"), Letter: s.word("stations.rub_key"), Size: 14, Off: s.field.Text == ""}, func() {
		s.field.Focused = true
		s.field.Handle(widget.Event{Kind: widget.KeyDown, Key: "Backspace"})
	})
}
