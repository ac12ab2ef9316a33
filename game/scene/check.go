package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// A SelfCheck is a self-check being played: some cars, one after the other.
type SelfCheck interface {
	View() *play.CheckView
	// Open begins a car, goes on with it, or opens its debrief; back shows the
	// self-check again.
	Open(a *App, car int, back func()) (Scene, error)
	Await()  // work marks out in the background
	Cancel() // stop that; what is worked out stays
	Renew() error
}

// check is the sheet of a self-check: its cars, and their marks once all of them
// are handed over.
type check struct {
	*lettering
	keyed
	app    *App
	game   SelfCheck
	view   *play.CheckView
	notice string
	stamp  stamp // counts what changed
	wait   int   // [ms] until it is asked again how far the marks are
}

// NewCheck shows a self-check; Esc leads back to the cover.
func NewCheck(a *App, game SelfCheck) Scene {
	s := &check{lettering: newLettering(a.words), app: a, game: game}
	s.again()
	return s
}

// again goes on working marks out and takes the view anew.
func (s *check) again() {
	s.game.Await()
	s.refresh()
}

func (s *check) refresh() {
	s.view = s.game.View()
	s.stamp = s.stamp.add(1)
	s.layout()
}

// open shows a car; what is wrong stands on the sheet.
func (s *check) open(car int) {
	next, err := s.game.Open(s.app, car, func() {
		s.app.Show(s)
		s.again()
	})
	if err != nil {
		s.notice = err.Error()
		s.refresh()
		return
	}
	s.notice = ""
	s.app.Show(next)
}

func (s *check) leave() {
	s.game.Cancel()
	s.app.ShowCover()
}

// layout lists the keys afresh.
func (s *check) layout() {
	s.begin()
	h := keyHeight(s.app.Touch)
	s.addLeave(s.word("sheet.leave"), h, s.leave)
	v := s.view
	for i := range v.Cars {
		if a := v.Cars[i].Open; a != nil {
			high := max(checkKeyH, h)
			k := widget.Key{Rect: draw.Rect{X: 29, Y: checkRow(i) + (checkRowH-high)/2, W: 150, H: high}, Label: v.Cars[i].Name, Left: true}
			if i < 10 {
				k.Letter = s.num(float64((i+1)%10), 0)
			}
			s.add(1, "car"+s.num(float64(i+1), 0), k, func() { s.open(i + 1) })
		}
	}
	foot := draw.Rect{X: 29, Y: 646, W: 244, H: 44}
	next := func(id string, a *play.Action, strong bool, do func()) {
		if a == nil {
			return
		}
		s.add(2, id, widget.Key{Rect: foot, Label: a.Label, Letter: a.Key, Strong: strong}, do)
		foot.X += foot.W + 12
	}
	next("next", v.Next, true, func() { s.open(int(v.Next.Act.N)) })
	if w := v.Waiting; w != nil && w.Going {
		next("halt", &play.Action{Label: s.word("check.halt"), Key: "C"}, false, func() { s.game.Cancel(); s.refresh() })
	} else {
		next("mark", v.Mark, true, s.again)
	}
	next("new", v.Renew, false, func() {
		s.notice = ""
		if err := s.game.Renew(); err != nil {
			s.notice = err.Error()
		}
		s.again()
	})
}

// Handle answers one event.
func (s *check) Handle(e widget.Event) {
	s.press(e)
	s.layout()
}

// Advance asks twice a second how far the marks are.
func (s *check) Advance(ms int) {
	if s.view.Waiting == nil || !s.view.Waiting.Going {
		return
	}
	if s.wait -= ms; s.wait <= 0 {
		s.wait = 500
		s.refresh()
	}
}

// Cells are none: the sheet is drawn again when something changes.
func (s *check) Cells() []Cell { return nil }

// StillStamp changes with the view and the focus.
func (s *check) StillStamp() uint64 {
	return uint64(newStamp.add(uint64(s.stamp)).text(s.targets.Focus).text(s.notice).flag(s.app.Touch))
}

func (s *check) pressables() []Pressable {
	s.layout()
	return s.list()
}
