package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// A Cover is what the first sheet offers. Each Open returns the scene to show;
// its error is a sentence that stands on the cover.
type Cover struct {
	Bench     func(*App) (Scene, error)
	Practise  func(*App) (Scene, error) // the car that the learner needs next
	SelfCheck func(*App) (Scene, error) // ten unseen cars without a hint
	Resume    func() *Offer             // the session cut off last, asked for whenever the cover is shown; nil: none
	Jobs      []Offer
	Lessons   []Offer
}

// An Offer is one line of the cover.
type Offer struct {
	Name, Detail string
	Open         func(*App) (Scene, error)
}

// cover is the first sheet: bench, jobs, lessons, resume, theme, leave.
type cover struct {
	*lettering
	keyed
	app    *App
	offers Cover
	resume *Offer
	lists  [2]offerList // jobs and lessons
	notice string
}

// An offerList is offers one under the other.
type offerList struct {
	widget.List
	id, heading, help, none string
	offers                  []Offer
	pressY                  float64
	held                    bool
}

func newCover(a *App, o Cover) *cover {
	v := &cover{lettering: newLettering(a.words), app: a, offers: o}
	v.lists = [2]offerList{
		{List: widget.List{Rect: draw.Rect{X: 430, Y: 132, W: 486, H: 486}}, id: idList, heading: "cover.jobs", help: "cover.jobs_help", none: "cover.no_jobs", offers: o.Jobs},
		{List: widget.List{Rect: draw.Rect{X: 936, Y: 132, W: 306, H: 486}}, id: idLessons, heading: "cover.lessons", help: "cover.lessons_help", none: "cover.no_lessons", offers: o.Lessons},
	}
	for i := range v.lists {
		v.lists[i].Rows = len(v.lists[i].offers)
	}
	v.renew()
	return v
}

// renew asks again what can be gone on with.
func (v *cover) renew() {
	v.resume = nil
	if v.offers.Resume != nil {
		v.resume = v.offers.Resume()
	}
	v.layout()
}

func (v *cover) open(f func(*App) (Scene, error)) {
	s, err := f(v.app)
	if err != nil {
		v.notice = err.Error()
		return
	}
	v.notice = ""
	v.app.Show(s)
}

// layout lists the keys afresh.
func (v *cover) layout() {
	h := 40.0
	if v.app.Touch {
		h = 48
	}
	v.begin()
	y := 132.0
	add := func(id, letter string, off, chosen bool, do func()) {
		v.add(0, id, widget.Key{Rect: draw.Rect{X: 44, Y: y, W: 340, H: h}, Label: v.word("cover." + id), Letter: letter, Off: off, Chosen: chosen, Left: true}, do)
		y += h + 14
	}
	o := &v.offers
	add("bench", "B", o.Bench == nil, false, func() { v.open(o.Bench) })
	add("practise", "P", o.Practise == nil, false, func() { v.open(o.Practise) })
	add("selfcheck", "S", o.SelfCheck == nil, false, func() { v.open(o.SelfCheck) })
	add("resume", "R", v.resume == nil, false, func() { v.open(v.resume.Open) })
	y += 24
	add("slate", themeKey, false, v.app.theme == draw.Slate, v.app.SwapTheme)
	add("calm", "M", false, v.app.Calm, func() { v.app.Calm = !v.app.Calm })
	y += 24
	add("leave", "Esc", false, false, v.app.Leave)
	for i := range v.lists {
		l := &v.lists[i]
		l.RowH = 34
		if v.app.Touch {
			l.RowH = 48
		}
		l.Focused = v.targets.Focus == l.id
		if l.Rows > 0 {
			v.targets.Add(widget.Target{ID: l.id, Rect: l.Rect, Panel: 1 + i, Enabled: true})
		}
	}
}

// Handle answers one event.
func (v *cover) Handle(e widget.Event) {
	defer v.layout()
	for i := range v.lists {
		if v.handleList(&v.lists[i], e) {
			return
		}
	}
	v.press(e)
}

// handleList scrolls a list and opens what is tapped or entered.
func (v *cover) handleList(l *offerList, e widget.Event) bool {
	switch {
	case e.Kind == widget.PointerDown && l.Rect.Contains(e.At):
		l.Handle(e)
		v.targets.Focus, l.held, l.pressY = l.id, true, e.At.Y
		return true
	case e.Kind == widget.PointerUp && l.held:
		l.held = false
		l.Handle(e)
		if d := e.At.Y - l.pressY; d > -8 && d < 8 { // a tap, not a drag
			from, to := l.Visible()
			for i := from; i < to; i++ {
				if l.Row(i).Contains(e.At) {
					l.Selected = i
					v.open(l.offers[i].Open)
					return true
				}
			}
		}
		return true
	case e.Kind == widget.KeyDown && e.Key == "Enter" && v.targets.Focus == l.id:
		v.open(l.offers[l.Selected].Open)
		return true
	}
	return l.Handle(e)
}

// Advance does nothing: nothing moves on the cover.
func (v *cover) Advance(int) {}

// Cells are none: the cover is drawn again when something is pressed.
func (v *cover) Cells() []Cell { return nil }

// StillStamp changes with focus, scrolling and what is chosen.
func (v *cover) StillStamp() uint64 {
	s := newStamp.text(v.targets.Focus).text(v.notice).flag(v.app.Calm).flag(v.app.Touch).text(v.app.theme.Name)
	for i := range v.lists {
		from, _ := v.lists[i].Visible()
		s = s.add(uint64(from)).add(uint64(v.lists[i].Selected))
	}
	return uint64(s)
}

// Still draws the cover.
func (v *cover) Still(c *draw.Canvas) {
	v.layout()
	th := c.Theme
	c.Sheet()
	c.Line(draw.Pt{X: 18, Y: 50}, draw.Pt{X: 1262, Y: 50}, draw.Thin)
	c.Line(draw.Pt{X: 408, Y: 50}, draw.Pt{X: 408, Y: 634}, draw.Thin)
	c.Line(draw.Pt{X: 18, Y: 634}, draw.Pt{X: 1262, Y: 634}, draw.Thin)
	c.Text(draw.Pt{X: 29, Y: 42}, draw.SheetText, th.Ink, v.word("cover.name"))
	c.Text(draw.Pt{X: 200, Y: 41}, draw.LabelText, th.Ink, v.word("cover.what"))
	c.Text(draw.Pt{X: 44, Y: 92}, draw.HeadingText, th.Ink, v.word("cover.begin"))
	if r := v.resume; r != nil {
		c.Text(draw.Pt{X: 44, Y: 114}, draw.SmallText, th.Graphite, c.Fit(draw.SmallText, r.Name, 340))
	}
	v.draw(c)
	for i := range v.lists {
		v.drawList(c, &v.lists[i])
	}
	c.Paragraph(draw.Pt{X: 44, Y: 662}, draw.SentenceText, th.Ink, v.word("cover.caution"), 720)
	if v.notice != "" {
		c.Text(draw.Pt{X: 430, Y: 628}, draw.LabelText, th.Ink, c.Fit(draw.LabelText, v.notice, 800))
	}
	drawTitle(c, v.lettering, []Fact{{Caption: v.word("bench_sheet.fact_sheet"), Value: v.word("cover.sheet")}},
		[]Fact{{Caption: v.word("cover.fact_jobs"), Value: v.num(float64(len(v.offers.Jobs)), 0), Width: 157}, {Caption: v.word("cover.fact_keys"), Value: v.word("cover.keys_help")}})
}

func (v *cover) drawList(c *draw.Canvas, l *offerList) {
	th := c.Theme
	c.Text(draw.Pt{X: l.Rect.X, Y: 92}, draw.HeadingText, th.Ink, v.word(l.heading))
	c.Text(draw.Pt{X: l.Rect.X, Y: 114}, draw.SmallText, th.Graphite, c.Fit(draw.SmallText, v.word(l.help), l.Rect.W))
	if l.Rows == 0 {
		c.Text(draw.Pt{X: l.Rect.X, Y: 150}, draw.LabelText, th.Ink, v.word(l.none))
		return
	}
	from, to := l.Visible()
	for i := from; i < to; i++ {
		o, r := &l.offers[i], l.Row(i)
		k := widget.Key{Rect: draw.Rect{X: r.X + 4, Y: r.Y + 3, W: r.W - 10, H: r.H - 7}, Left: true, Focused: l.Focused && i == l.Selected}
		detail := c.Fit(draw.SmallText, o.Detail, 130)
		k.Label = c.Fit(draw.KeyText, o.Name, r.W-46-c.Measure(draw.SmallText, detail))
		k.Draw(c)
		c.Text(draw.Pt{X: r.X + r.W - 18, Y: r.Y + r.H/2 + 5}, draw.SmallText.To(draw.Right), th.Graphite, detail)
	}
	l.Draw(c)
}
