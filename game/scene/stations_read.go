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
		}
	}
	s.add("skip", panelWorks, widget.Key{Rect: padRight(3), Label: v.Skip.Label, Letter: s.word("stations.skip_key")}, func() { s.do(v.Skip.Act) })
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

// enlargement of an instrument, and how far one press moves it [1].
const (
	enlargement = 3.0
	panStep     = 1.0 / 12
)

var panKeys = [...]struct {
	key    string
	dx, dy float64
}{{"Left", -1, 0}, {"Right", 1, 0}, {"Up", 0, -1}, {"Down", 0, 1}}

// lookKeys enlarge the instrument and move what is seen of it.
func (s *stations) lookKeys() {
	s.add("big", panelChecks, widget.Key{Rect: draw.Rect{X: 27, Y: 632, W: 180, H: padHeight}, Label: s.word("stations.enlarge"), Letter: "+", Chosen: s.big},
		func() { s.big = !s.big })
	if !s.big {
		return
	}
	for i, p := range panKeys {
		s.add("pan."+p.key, panelChecks, widget.Key{Rect: draw.Rect{X: 217 + 142*float64(i), Y: 632, W: 134, H: padHeight},
			Label: s.word("stations.pan_" + p.key), Letter: p.key, Size: 14}, func() { s.pan(p.key) })
	}
}

// pan moves what is seen of an enlarged instrument; it says whether key does.
func (s *stations) pan(key string) bool {
	for _, p := range panKeys {
		if p.key == key {
			s.look.X = clamp(s.look.X+p.dx*panStep, 0, 1)
			s.look.Y = clamp(s.look.Y+p.dy*panStep, 0, 1)
			return true
		}
	}
	return false
}

// frame is where the instrument is drawn: larger than what is seen of it when
// it is enlarged.
func (s *stations) frame() draw.Rect {
	r := draw.Rect{X: 274, Y: 94, W: 588, H: 430}
	if !s.big {
		return r
	}
	w, h := r.W*enlargement, r.H*enlargement
	mid := r.Centre()
	return draw.Rect{X: mid.X - w*s.look.X, Y: mid.Y - h*s.look.Y, W: w, H: h}
}
