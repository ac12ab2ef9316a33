package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// A form is a sheet of keys, menus and fields in panels: what call, hand-over
// and debrief have in common. Each panel is a cell that is drawn again when its
// keys, its menus or the session change.
type form struct {
	*lettering
	app     *App
	job     *Job
	panels  []formPanel
	arrange func() // lists keys and menus as the sheet stands
	keys    []formKey
	menus   []*menu
	targets widget.Targets
	hands   widget.Targets       // pressed by a pointer only; the keyboard has another way
	why     map[string]string    // by id of a key, of those that are unavailable
	local   uint64               // counts what was pressed
	own     func() stamp         // what else a panel shows
	over    func(c *draw.Canvas) // lies over the panel of the notebook; nil: nothing
	book    notebook
	cells   []Cell
}

// headPanel is the first panel of every form; headArea leaves room for the ring
// round a key as high as a finger needs.
const headPanel = 0

var headArea = draw.Rect{X: 18, Y: 12, W: 1245, H: 54}

type formPanel struct {
	area draw.Rect
	draw func(c *draw.Canvas)
}

type formKey struct {
	widget.Key
	id    string
	panel int
	do    func()
}

func (f *form) begin(j *Job, arrange func(), panels ...formPanel) {
	f.lettering, f.app, f.job, f.arrange, f.panels = j.lettering, j.app, j, arrange, panels
	f.book.form = f
	for i := range panels {
		f.cells = append(f.cells, Cell{panels[i].area, func() uint64 { return f.panelStamp(i) }, func(c *draw.Canvas) { f.paint(c, i) }})
	}
	f.layout()
}

// key adds a key to a panel.
func (f *form) key(panel int, id string, k widget.Key, do func()) {
	k.Focused = f.targets.Focus == id
	f.keys = append(f.keys, formKey{k, id, panel, do})
	f.targets.Add(k.Target(id, panel))
}

// high is how high a key is that is h high for a mouse [unit].
func (f *form) high(h float64) float64 {
	if f.app.Touch {
		return max(h, widget.TouchTarget)
	}
	return h
}

// headKey adds a key beside the sheet's name.
func (f *form) headKey(id string, x, w float64, label, letter string, chosen bool, do func()) {
	h := f.high(29)
	f.key(headPanel, id, widget.Key{Rect: draw.Rect{X: x, Y: 40.5 - h/2, W: w, H: h}, Label: f.word(label), Letter: letter, Chosen: chosen}, do)
}

// hand adds a key that only a pointer presses.
func (f *form) hand(panel int, id string, k widget.Key, do func()) {
	f.keys = append(f.keys, formKey{k, id, panel, do})
	f.hands.Add(k.Target(id, panel))
}

// because says why an unavailable key that only a pointer presses is so.
func (f *form) because(id, why string) {
	if f.why == nil {
		f.why = map[string]string{}
	}
	f.why[id] = why
}

// tell lets a sentence stand where refusals stand until something is done.
func (f *form) tell(sentence string) {
	if sentence != "" {
		f.job.view.Notice = sentence
		f.local++
	}
}

// menu adds a menu; it keeps where it stood.
func (f *form) menu(m *menu) {
	m.fit(f.app.Touch)
	m.list.Focused = f.targets.Focus == m.id
	m.tell = f.tell
	f.menus = append(f.menus, m)
	if m.any() {
		f.targets.Add(widget.Target{ID: m.id, Rect: m.area, Panel: m.panel, Enabled: true})
	}
}

// layout lists everything afresh.
func (f *form) layout() {
	f.keys, f.menus = f.keys[:0], f.menus[:0]
	clear(f.why)
	f.targets.Clear()
	f.hands.Clear()
	f.arrange()
	f.book.arrange()
	for i := range f.keys {
		f.keys[i].Letter = f.targets.Letter(f.keys[i].id, f.keys[i].Letter)
	}
}

// handle answers what every form answers alike.
func (f *form) handle(e widget.Event) {
	defer f.layout()
	if f.book.handle(e) {
		return
	}
	for _, m := range f.menus {
		if e.Kind == widget.PointerDown && m.area.Contains(e.At) && m.any() {
			f.targets.Focus = m.id
			m.down(e)
			return
		}
		if do, took := m.handle(e); took {
			if do != nil {
				f.local++
				do()
			}
			return
		}
	}
	if e.Kind == widget.PointerDown {
		if x, ok := f.hands.Hit(e.At, e.Touch); ok {
			if x.Enabled {
				f.press(x.ID)
			} else {
				f.tell(f.why[x.ID])
			}
			return
		}
	}
	f.press(f.targets.Handle(e))
}

func (f *form) press(id string) {
	for i := range f.keys {
		if f.keys[i].id == id {
			f.local++
			f.keys[i].do()
			return
		}
	}
}

// Advance does nothing: a form moves only when something is done.
func (f *form) Advance(int) {}

// Cells are the panels.
func (f *form) Cells() []Cell { return f.cells }

func (f *form) paint(c *draw.Canvas, panel int) {
	f.panels[panel].draw(c)
	for i := range f.keys {
		if f.keys[i].panel == panel {
			f.keys[i].Key.Draw(c)
		}
	}
	for _, m := range f.menus {
		if m.panel == panel {
			m.draw(c)
		}
	}
	if panel == f.book.panel {
		f.book.draw(c)
		if f.over != nil {
			f.over(c)
		}
	}
}

func (f *form) panelStamp(panel int) uint64 {
	s := newStamp.add(uint64(f.job.stamp)).add(f.local)
	for i := range f.keys {
		if k := &f.keys[i]; k.panel == panel {
			s = s.flag(k.Focused).flag(k.Off).flag(k.Chosen).text(k.Label).text(k.Letter)
		}
	}
	for _, m := range f.menus {
		if m.panel == panel {
			s = s.flag(m.list.Focused).add(uint64(m.sel)).num(m.list.Top, 1)
		}
	}
	if f.own != nil {
		s = s.add(uint64(f.own()))
	}
	if panel == f.book.panel {
		s = s.add(uint64(f.book.stamp()))
	}
	return uint64(s)
}

// rule draws a thin line of the sheet.
func rule(c *draw.Canvas, x0, y0, x1, y1 float64) {
	c.Line(draw.Pt{X: x0, Y: y0}, draw.Pt{X: x1, Y: y1}, draw.Thin)
}

// title draws the title block of a session's sheet.
func (f *form) title(c *draw.Canvas, sheet, scaleCaption, scale string) {
	t := &f.job.view.Title
	drawTitle(c, f.lettering,
		[]Fact{{Caption: f.word("sheet.fact_sheet"), Value: sheet, Width: 84}, {Caption: f.word("sheet.fact_car"), Value: t.Car, Width: 150}, {Caption: f.word("sheet.fact_km"), Value: f.num(t.Km, 0)}},
		[]Fact{{Caption: f.word("sheet.fact_readings"), Value: f.num(float64(t.Readings), 0), Width: 62},
			{Caption: f.word("sheet.fact_minutes"), Value: f.words.Say("sheet.of", "n", f.num(t.Minutes, 0), "of", f.num(t.Limit, 0)), Width: 80},
			{Caption: f.word("sheet.fact_seed"), Value: seedText(t.Seed), Width: 76},
			{Caption: f.word("sheet.fact_counters"), Value: f.words.Say("sheet.of", "n", f.num(float64(t.Counters), 0), "of", f.num(widget.Counters, 0)), Width: 84},
			{Caption: scaleCaption, Value: scale}})
}
