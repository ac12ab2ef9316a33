package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// While the debrief is worked out the sheet says how far it is. It can be
// stopped, gone on with, and left.

// layWait is the key that stops or goes on.
func (s *debrief) layWait(next func(id string, k widget.Key, do func())) {
	w := s.waiting()
	if w.Going {
		next("halt", widget.Key{Label: s.word("debrief_sheet.halt"), Letter: "C"}, func() {
			s.job.game.Cancel()
			s.job.refresh()
		})
		return
	}
	next("on", widget.Key{Label: s.word("debrief_sheet.go_on"), Letter: "Enter", Strong: true}, func() {
		s.job.game.Await()
		s.job.refresh()
	})
}

func (s *debrief) waiting() *play.WaitView {
	if w := s.job.view.Waiting; w != nil {
		return w
	}
	return &play.WaitView{}
}

// waitBar is where the bar of what is done stands.
var waitBar = draw.Rect{X: 60, Y: 246, W: 760, H: 34}

func (s *debrief) drawWait(c *draw.Canvas) {
	w, th := s.waiting(), c.Theme
	x := waitBar.X
	c.Text(draw.Pt{X: x, Y: 180}, draw.HeadingText, th.Ink, s.word("debrief_sheet.waiting"))
	s.block(c, draw.Pt{X: x, Y: 210}, draw.SentenceText, w.Text, waitBar.W, 1)
	share := min(max(w.Share, 0), 1)
	done := draw.Rect{X: x, Y: waitBar.Y, W: waitBar.W * share, H: waitBar.H}.Corners()
	ground := th.Panel
	c.Box(waitBar, &ground, draw.Thin)
	c.Hatch(done[:], draw.HatchBar, done[0])
	c.Box(waitBar, nil, draw.Visible)
	for i := 1; i < 10; i++ {
		at := x + waitBar.W*float64(i)/10
		c.Line(draw.Pt{X: at, Y: waitBar.Y + waitBar.H}, draw.Pt{X: at, Y: waitBar.Y + waitBar.H + 6}, draw.Thin)
	}
	c.Text(draw.Pt{X: x + waitBar.W, Y: waitBar.Y + waitBar.H + 24}, draw.ValueText.To(draw.Right), th.Ink,
		s.words.Say("debrief.percent", "percent", s.num(100*share, 0)))
	y := waitBar.Y + waitBar.H + 24
	if w.Error == "" {
		s.block(c, draw.Pt{X: x, Y: y}, draw.SentenceText.At(14), s.word("debrief_sheet.kept"), 560, 3)
		return
	}
	c.Triangle(draw.Pt{X: x + 10, Y: y + 22}, 18)
	c.Text(draw.Pt{X: x + 28, Y: y + 20}, draw.StrongText, th.Ink, s.word("debrief.failed"))
	s.block(c, draw.Pt{X: x, Y: y + 46}, draw.SentenceText.At(14), w.Error, waitBar.W, 8)
}
