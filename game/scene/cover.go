package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// A Cover is what the first sheet offers. Each Open returns the scene to show;
// its error is a sentence that stands on the cover.
type Cover struct {
	Bench  func(*App) (Scene, error)
	Resume func() *Offer // the session cut off last, asked for whenever the cover is shown; nil: none
	Jobs   []Offer
}

// An Offer is one line of the cover.
type Offer struct {
	Name, Detail string
	Open         func(*App) (Scene, error)
}

// cover is the first sheet: bench, jobs, resume, theme, leave.
type cover struct {
	*lettering
	app     *App
	offers  Cover
	resume  *Offer
	targets widget.Targets
	list    widget.List
	keys    []coverKey
	notice  string
	pressY  float64
	held    bool
}

type coverKey struct {
	widget.Key
	id string
	do func()
}

func newCover(a *App, o Cover) *cover {
	v := &cover{lettering: newLettering(a.words), app: a, offers: o}
	v.list = widget.List{Rect: draw.Rect{X: 430, Y: 132, W: 806, H: 486}, Rows: len(o.Jobs)}
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
	v.keys = v.keys[:0]
	y := 132.0
	add := func(id, letter string, off, chosen bool, do func()) {
		v.keys = append(v.keys, coverKey{widget.Key{Rect: draw.Rect{X: 44, Y: y, W: 340, H: h}, Label: v.word("cover." + id), Letter: letter,
			Off: off, Chosen: chosen, Left: true, Focused: v.targets.Focus == id}, id, do})
		y += h + 14
	}
	o := &v.offers
	add("bench", "B", o.Bench == nil, false, func() { v.open(o.Bench) })
	add("resume", "R", v.resume == nil, false, func() { v.open(v.resume.Open) })
	y += 24
	add("slate", themeKey, false, v.app.theme == draw.Slate, v.app.SwapTheme)
	add("calm", "M", false, v.app.Calm, func() { v.app.Calm = !v.app.Calm })
	y += 24
	add("leave", "Esc", false, false, v.app.Leave)
	v.list.RowH = 34
	if v.app.Touch {
		v.list.RowH = 48
	}
	v.list.Focused = v.targets.Focus == idList
	v.targets.Clear()
	for i := range v.keys {
		v.targets.Add(v.keys[i].Target(v.keys[i].id, 0))
	}
	if v.list.Rows > 0 {
		v.targets.Add(widget.Target{ID: idList, Rect: v.list.Rect, Panel: 1, Enabled: true})
	}
}

// Handle answers one event.
func (v *cover) Handle(e widget.Event) {
	defer v.layout()
	l := &v.list
	switch {
	case e.Kind == widget.PointerDown && l.Rect.Contains(e.At):
		l.Handle(e)
		v.targets.Focus, v.held, v.pressY = idList, true, e.At.Y
		return
	case e.Kind == widget.PointerUp && v.held:
		v.held = false
		l.Handle(e)
		if d := e.At.Y - v.pressY; d > -8 && d < 8 { // a tap, not a drag
			from, to := l.Visible()
			for i := from; i < to; i++ {
				if l.Row(i).Contains(e.At) {
					l.Selected = i
					v.open(v.offers.Jobs[i].Open)
					return
				}
			}
		}
		return
	case e.Kind == widget.KeyDown && e.Key == "Enter" && v.targets.Focus == idList:
		v.open(v.offers.Jobs[l.Selected].Open)
		return
	case l.Handle(e):
		return
	}
	id := v.targets.Handle(e)
	for i := range v.keys {
		if v.keys[i].id == id {
			v.keys[i].do()
			return
		}
	}
}

// Advance does nothing: nothing moves on the cover.
func (v *cover) Advance(int) {}

// Cells are none: the cover is drawn again when something is pressed.
func (v *cover) Cells() []Cell { return nil }

// StillStamp changes with focus, scrolling and what is chosen.
func (v *cover) StillStamp() uint64 {
	from, _ := v.list.Visible()
	s := newStamp.text(v.targets.Focus).text(v.notice).add(uint64(from)).add(uint64(v.list.Selected)).flag(v.app.Calm).flag(v.app.Touch).text(v.app.theme.Name)
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
	c.Text(draw.Pt{X: 430, Y: 92}, draw.HeadingText, th.Ink, v.word("cover.jobs"))
	c.Text(draw.Pt{X: 430, Y: 114}, draw.SmallText, th.Graphite, v.word("cover.jobs_help"))
	if r := v.resume; r != nil {
		c.Text(draw.Pt{X: 44, Y: 114}, draw.SmallText, th.Graphite, c.Fit(draw.SmallText, r.Name, 340))
	}
	for i := range v.keys {
		v.keys[i].Key.Draw(c)
	}
	v.jobs(c)
	c.Paragraph(draw.Pt{X: 44, Y: 662}, draw.SentenceText, th.Ink, v.word("cover.caution"), 720)
	if v.notice != "" {
		c.Text(draw.Pt{X: 430, Y: 628}, draw.LabelText, th.Ink, c.Fit(draw.LabelText, v.notice, 800))
	}
	drawTitle(c, v.lettering, []Fact{{Caption: v.word("bench_sheet.fact_sheet"), Value: v.word("cover.sheet")}},
		[]Fact{{Caption: v.word("cover.fact_jobs"), Value: v.num(float64(len(v.offers.Jobs)), 0), Width: 157}, {Caption: v.word("cover.fact_keys"), Value: v.word("cover.keys_help")}})
}

func (v *cover) jobs(c *draw.Canvas) {
	l := &v.list
	if l.Rows == 0 {
		c.Text(draw.Pt{X: 430, Y: 150}, draw.LabelText, c.Theme.Ink, v.word("cover.no_jobs"))
		return
	}
	from, to := l.Visible()
	for i := from; i < to; i++ {
		o, r := &v.offers.Jobs[i], l.Row(i)
		k := widget.Key{Rect: draw.Rect{X: r.X + 4, Y: r.Y + 3, W: r.W - 10, H: r.H - 7}, Left: true, Focused: l.Focused && i == l.Selected}
		detail := c.Fit(draw.SmallText, o.Detail, 240)
		k.Label = c.Fit(draw.KeyText, o.Name, r.W-290)
		k.Draw(c)
		c.Text(draw.Pt{X: r.X + r.W - 18, Y: r.Y + r.H/2 + 5}, draw.SmallText.To(draw.Right), c.Theme.Graphite, detail)
	}
	l.Draw(c)
}
