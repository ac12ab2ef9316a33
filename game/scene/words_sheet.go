package scene

import (
	"strconv"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// A wordsSheet shows a view's nodes in reading order as lines and keys, with
// no drawing: any stage can be played on it. It scrolls.
type wordsSheet struct {
	*Job
	targets widget.Targets
	lines   []wordLine
	top     float64 // [unit] scrolled
	length  float64 // [unit] of everything
	field   widget.TextField
	asked   play.Action // the act whose text the field holds
}

// A wordLine is one laid-out line or key.
type wordLine struct {
	y      float64
	text   string
	style  draw.TextStyle
	role   string
	key    *widget.Key
	action play.Action
}

func newWords(j *Job) *wordsSheet {
	return &wordsSheet{Job: j, field: widget.TextField{Rect: draw.Rect{X: 30, Y: 646, W: 600, H: 46}}}
}

// wordsArea is where the lines stand.
var wordsArea = draw.Rect{X: 30, Y: 70, W: 1212, H: 550}

// layout breaks the nodes into lines; c measures, nil keeps what was measured.
func (s *wordsSheet) layout(c *draw.Canvas) {
	s.lines = s.lines[:0]
	y := 0.0
	for i := range s.view.Nodes {
		n := &s.view.Nodes[i]
		text := n.Name
		if n.Value != "" && text != "" {
			text += ": "
		}
		text += n.Value
		st := draw.SentenceText
		if n.Role == "heading" {
			st, y = draw.HeadingText, y+10
		}
		for _, line := range c.Wrap(st, text, wordsArea.W-40) {
			y += 22
			s.lines = append(s.lines, wordLine{y: y, text: line, style: st, role: n.Role})
		}
		const w, h = 392.0, 34.0
		for k := range n.Actions {
			a := n.Actions[k]
			if k%3 == 0 {
				y += 8
			}
			r := draw.Rect{X: wordsArea.X + float64(k%3)*(w+14), Y: y, W: w, H: h}
			key := widget.Key{Rect: r, Label: a.Label, Letter: a.Key, Off: !a.Enabled, Chosen: a.Chosen, Left: true,
				Focused: s.targets.Focus == actionID(i, k)}
			if a.Minutes > 0 {
				key.Value = s.num(a.Minutes, 0)
			}
			s.lines = append(s.lines, wordLine{y: y, key: &key, action: a, text: actionID(i, k)})
			if k%3 == 2 || k == len(n.Actions)-1 {
				y += h
			}
		}
		y += 4
	}
	s.length = y + 20
	s.top = min(max(s.top, 0), max(0, s.length-wordsArea.H))
	s.targets.Clear()
	for i := range s.lines {
		l := &s.lines[i]
		if l.key == nil {
			continue
		}
		l.key.Rect.Y += wordsArea.Y - s.top
		t := l.key.Target(l.text, 0)
		s.targets.Add(t)
	}
	if s.asked.Act.Do != "" {
		s.targets.Add(s.field.Target("field", 1))
	}
}

func actionID(i, k int) string { return strconv.Itoa(i) + "." + strconv.Itoa(k) }

// Handle works keys, pointer and scrolling.
func (s *wordsSheet) Handle(e widget.Event) {
	switch {
	case s.asked.Act.Do != "" && e.Kind == widget.KeyDown && e.Key == "Enter":
		a := s.asked.Act
		a.Text = s.field.Text
		if s.do(a) {
			s.asked, s.field.Text, s.field.Focused = play.Action{}, "", false
		}
		return
	case s.asked.Act.Do != "" && e.Kind == widget.KeyDown && e.Key == "Esc":
		s.asked, s.field.Text, s.field.Focused = play.Action{}, "", false
		s.stamp = s.stamp.add(1)
		return
	case s.field.Handle(e):
		s.stamp = s.stamp.add(2)
		return
	case e.Kind == widget.KeyDown && e.Key == "Esc":
		s.out()
		return
	case e.Kind == widget.Wheel:
		s.scroll(e.Turn * 44)
		return
	case e.Kind == widget.KeyDown && (e.Key == "Down" || e.Key == "PageDown"):
		s.scroll(44)
		return
	case e.Kind == widget.KeyDown && (e.Key == "Up" || e.Key == "PageUp"):
		s.scroll(-44)
		return
	}
	id := s.targets.Handle(e)
	s.stamp = s.stamp.add(3)
	if e.Kind == widget.KeyDown && e.Key == "Tab" {
		if t, ok := s.targets.Find(s.targets.Focus); ok { // bring what is in focus into sight
			s.scroll(max(0, t.Rect.Y+t.Rect.H-wordsArea.Y-wordsArea.H) - max(0, wordsArea.Y-t.Rect.Y))
		}
	}
	for i := range s.lines {
		l := &s.lines[i]
		if l.key == nil || l.text != id || !l.action.Enabled {
			continue
		}
		if l.action.Act.Do == play.Tell {
			s.asked, s.field.Focused = l.action, true
			return
		}
		s.do(l.action.Act)
		return
	}
}

func (s *wordsSheet) scroll(by float64) {
	s.top += by
	s.stamp = s.stamp.add(4)
}

// Advance does nothing.
func (s *wordsSheet) Advance(int) {}

// Cells are none.
func (s *wordsSheet) Cells() []Cell { return nil }

// StillStamp changes with focus and scrolling.
func (s *wordsSheet) StillStamp() uint64 {
	return uint64(newStamp.text(s.targets.Focus).num(s.top, 1).text(s.field.Text).flag(s.field.Focused).text(s.app.theme.Name))
}

// Still draws the lines in sight.
func (s *wordsSheet) Still(c *draw.Canvas) {
	s.layout(c)
	th := c.Theme
	c.Sheet()
	c.Line(draw.Pt{X: 18, Y: 62}, draw.Pt{X: 1262, Y: 62}, draw.Thin)
	c.Text(draw.Pt{X: 29, Y: 42}, draw.SheetText, th.Ink, s.view.Title.Sheet)
	c.Text(draw.Pt{X: 260, Y: 41}, draw.LabelText, th.Ink, c.Fit(draw.LabelText, s.view.Notice, 980))
	c.ClipTo(wordsArea)
	for i := range s.lines {
		l := &s.lines[i]
		if l.key != nil {
			l.key.Draw(c)
			continue
		}
		if y := wordsArea.Y + l.y - s.top; y > wordsArea.Y && y < wordsArea.Y+wordsArea.H+20 {
			x := wordsArea.X
			if l.role == "caution" {
				c.Triangle(draw.Pt{X: x + 9, Y: y + 2}, 15)
				x += 26
			}
			c.Text(draw.Pt{X: x, Y: y}, l.style, th.Ink, l.text)
		}
	}
	c.Unclip()
	c.Line(draw.Pt{X: 18, Y: 634}, draw.Pt{X: 1262, Y: 634}, draw.Thin)
	if s.asked.Act.Do != "" {
		s.field.Draw(c)
	}
	s.titleBlock(c)
}

// titleBlock letters the live facts of a session.
func (j *Job) titleBlock(c *draw.Canvas) {
	t := &j.view.Title
	drawTitle(c, j.lettering,
		[]Fact{{Caption: j.word("bench_sheet.fact_sheet"), Value: t.Sheet, Width: 88}, {Caption: j.word("bench_sheet.fact_car"), Value: t.Car, Width: 150}, {Caption: j.word("stations.km"), Value: j.num(t.Km, 0)}},
		[]Fact{{Caption: j.word("stations.place"), Value: t.Place, Width: 138},
			{Caption: j.word("stations.minutes"), Value: j.words.Say("stations.of", "n", j.minutes(t.Minutes), "all", j.minutes(t.Limit)), Width: 80},
			{Caption: j.word("bench_sheet.fact_seed"), Value: j.num(float64(t.Seed), 0), Width: 60},
			{Caption: j.word("bench_sheet.fact_job"), Value: t.Job}})
}
