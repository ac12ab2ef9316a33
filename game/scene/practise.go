package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// A Practice is what stands before the next car of a learner.
type Practice interface {
	View() *play.PractiseView
	Begin(*App) (Scene, error) // the next car
	Lesson(a *App, id string) (Scene, error)
}

// practise is the sheet of what a learner's kept cars say of them.
type practise struct {
	*lettering
	keyed
	app    *App
	game   Practice
	view   *play.PractiseView
	notice string
	end    float64 // [unit] where the longest column ended when it was drawn last
}

// NewPractise shows what a learner's cars say; Esc leads back to the cover.
func NewPractise(a *App, game Practice) Scene {
	s := &practise{lettering: newLettering(a.words), app: a, game: game, view: game.View()}
	s.notice = s.view.Notice
	s.layout()
	return s
}

// show leads on to another scene; what is wrong stands on the sheet.
func (s *practise) show(next Scene, err error) {
	if err != nil {
		s.notice = err.Error()
		return
	}
	s.app.Show(next)
}

// layout lists the keys afresh.
func (s *practise) layout() {
	s.begin()
	s.addLeave(s.word("sheet.leave"), keyHeight(s.app.Touch), s.app.ShowCover)
	if a := s.view.Next; a != nil {
		s.add(1, "next", widget.Key{Rect: draw.Rect{X: 29, Y: 646, W: 244, H: 44}, Label: a.Label, Letter: a.Key, Strong: true}, func() { s.show(s.game.Begin(s.app)) })
	}
	if a := s.view.Lesson; a != nil {
		s.add(1, "lesson", widget.Key{Rect: draw.Rect{X: 285, Y: 646, W: 380, H: 44}, Label: a.Label, Letter: a.Key}, func() { s.show(s.game.Lesson(s.app, a.Act.What)) })
	}
}

// Handle answers one event.
func (s *practise) Handle(e widget.Event) {
	s.press(e)
	s.layout()
}

// Advance does nothing: nothing moves here.
func (s *practise) Advance(int) {}

// Cells are none: the sheet is drawn again when something is pressed.
func (s *practise) Cells() []Cell { return nil }

// StillStamp changes with the focus and what is told.
func (s *practise) StillStamp() uint64 {
	return uint64(newStamp.text(s.targets.Focus).text(s.notice).flag(s.app.Touch))
}

func (s *practise) pressables() []Pressable {
	s.layout()
	return s.list()
}

// Where the two columns of the sheet stand.
const (
	practiseLeft  = 29.0
	practiseRule  = 760.0
	practiseRight = 790.0
	practiseEnd   = 1251.0
)

// Still draws the sheet: at the left a wrong idea, at the right all else.
func (s *practise) Still(c *draw.Canvas) {
	s.layout()
	v := s.view
	c.Sheet()
	rule(c, 18, 62, 1262, 62)
	rule(c, 18, 634, 1262, 634)
	rule(c, practiseRule, 62, practiseRule, 634)
	head := s.notice
	if head == "" {
		head = v.Summary
	}
	s.head(c, s.word("practise.sheet_name"), head, 1146)
	y := 100.0
	s.end = 0
	for i, p := range v.Parts {
		x, w := practiseRight, practiseEnd-practiseRight
		if i == 0 {
			x, w = practiseLeft, practiseRule-practiseLeft-24
		}
		end := s.part(c, &p, draw.Pt{X: x, Y: y}, w)
		s.end = max(s.end, end)
		if i > 0 {
			y = end + 22
		}
	}
	s.draw(c)
	drawTitle(c, s.lettering, []Fact{{Caption: s.word("sheet.fact_sheet"), Value: s.word("practise.sheet")}},
		[]Fact{{Caption: s.word("practise.fact_kept"), Value: s.num(float64(v.Cars), 0), Width: 110},
			{Caption: s.word("practise.fact_met"), Value: s.words.Say("check.of", "n", v.Met, "all", v.All)}})
}

// part letters one part from a baseline down and returns where the next begins.
func (s *practise) part(c *draw.Canvas, p *play.PractisePart, at draw.Pt, width float64) float64 {
	c.Text(at, draw.HeadingText, c.Theme.Ink, p.Heading)
	at.Y += 30
	for _, text := range p.Lines {
		for _, l := range s.lines(c, text, draw.SentenceText, width) {
			c.Text(at, draw.SentenceText, c.Theme.Ink, l)
			at.Y += draw.SentenceText.LineHeight()
		}
		at.Y += 8
	}
	return at.Y
}
