package scene

import (
	"slices"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// The set-up drawer takes the place of the plots: wheel, slow motion, disc, and
// the whole catalogue of causes, any of which can be put in.

var drawerRect = draw.Rect{X: 945, Y: 51, W: 316, H: 580}

// A drawerRow is a line of the catalogue: a group, a cause, or a place of it.
type drawerRow struct {
	text   string
	indent float64
	act    *play.Action
	cause  string // opens and shuts its places
	in     bool   // one of them is in
	head   bool
}

func (b *bench) swapDrawer() {
	b.drawer = !b.drawer
	b.targets.Focus = ""
	if b.drawer {
		b.targets.Focus = idList
	}
}

// drawerKeys lists the drawer's own keys.
func (b *bench) drawerKeys(add func(int, string, widget.Key, func())) {
	v := b.view
	h := 26.0
	for i := range v.Wheels {
		w := &v.Wheels[i]
		r := draw.Rect{X: 957 + 150*float64(i%2), Y: 100 + 30*float64(i/2), W: 146, H: h}
		add(drawerCell, "wheel"+w.Act.What, widget.Key{Rect: r, Label: w.Label, Letter: b.num(float64(i+1), 0), Chosen: w.Chosen, Off: !w.Enabled}, func() { b.do(w.Act) })
	}
	for i, n := range [...]float64{1, 4, 16} {
		r := draw.Rect{X: 957 + 100*float64(i), Y: 180, W: 96, H: h}
		label := b.fill("bench_sheet.times_slower", "n", b.num(n, 0))
		add(drawerCell, "slow"+label, widget.Key{Rect: r, Label: label, Letter: b.num(float64(i+5), 0), Chosen: v.Slow == n}, func() { b.do(play.Act{Do: play.Slow, N: n}) })
	}
	turn := 1.0
	if v.Turning {
		turn = 0
	}
	add(drawerCell, "turn", widget.Key{Rect: draw.Rect{X: 1137, Y: 60, W: 116, H: h}, Label: b.word("bench_sheet.disc_turns"), Letter: "T", Chosen: v.Turning},
		func() { b.do(play.Act{Do: play.Turn, N: turn}) })
	b.drawerRows()
}

// drawerRows lists the catalogue with the places of the opened cause.
func (b *bench) drawerRows() {
	rows := b.rows[:0]
	none := &play.Action{Label: b.word("bench_sheet.no_cause"), Act: play.Act{Do: play.Put}, Enabled: true, Chosen: b.view.Healthy()}
	rows = append(rows, drawerRow{text: none.Label, act: none})
	if b.view.ByHand {
		rows = append(rows, drawerRow{text: b.word("bench_sheet.pins_by_hand"), head: true})
	}
	for i := range b.view.Groups {
		g := &b.view.Groups[i]
		rows = append(rows, drawerRow{text: g.Name, head: true})
		for j := range g.Causes {
			k := &g.Causes[j]
			if len(k.Places) == 1 {
				rows = append(rows, drawerRow{text: k.Name, act: &k.Places[0], indent: 8})
				continue
			}
			in := slices.ContainsFunc(k.Places, func(a play.Action) bool { return a.Chosen })
			rows = append(rows, drawerRow{text: k.Name, cause: k.ID, indent: 8, in: in})
			if k.ID != b.opened {
				continue
			}
			for p := range k.Places {
				rows = append(rows, drawerRow{text: k.Places[p].Label, act: &k.Places[p], indent: 28})
			}
		}
	}
	b.rows = rows
	b.list.RowH = 28
	if b.app.Touch {
		b.list.RowH = 44
	}
	b.list.Rect = draw.Rect{X: 957, Y: 234, W: 296, H: 392}
	b.list.Rows, b.list.Focused = len(rows), b.targets.Focus == idList
}

// handleList moves in the catalogue and presses its rows.
func (b *bench) handleList(e widget.Event) bool {
	l := &b.list
	if e.Kind == widget.KeyDown && (e.Key == "Up" || e.Key == "Down") {
		b.targets.Focus, l.Focused = idList, true // the arrows of the hint reach it from everywhere
	}
	switch {
	case e.Kind == widget.PointerDown && l.Rect.Contains(e.At):
		l.Handle(e)
		b.targets.Focus = idList
		b.fingerY, b.fingerDown = e.At.Y, true
		return true
	case e.Kind == widget.PointerUp && b.fingerDown:
		l.Handle(e)
		b.fingerDown = false
		if d := e.At.Y - b.fingerY; d > -8 && d < 8 { // a tap, not a drag
			from, to := l.Visible()
			for i := from; i < to; i++ {
				if l.Row(i).Contains(e.At) {
					l.Selected = i
					b.pressRow()
				}
			}
		}
		return true
	case e.Kind == widget.KeyDown && e.Key == "Enter" && b.targets.Focus == idList:
		b.pressRow()
		return true
	}
	return l.Handle(e)
}

// shut goes back by one: from the places of a cause to the list, from the list
// to the plots.
func (b *bench) shut() {
	if b.opened == "" {
		b.swapDrawer()
		return
	}
	for i := range b.rows {
		if b.rows[i].cause == b.opened {
			b.list.Selected = i
			b.list.Show(i)
		}
	}
	b.opened = ""
}

func (b *bench) pressRow() {
	if b.list.Selected >= len(b.rows) {
		return
	}
	switch r := b.rows[b.list.Selected]; {
	case r.act != nil:
		b.do(r.act.Act)
	case r.cause == b.opened:
		b.opened = ""
	case r.cause != "":
		b.opened = r.cause
	}
}

// drawerMoving draws the drawer.
func (b *bench) drawerMoving(c *draw.Canvas) {
	th := c.Theme
	c.Fill(drawerRect, th.Paper)
	c.Text(draw.Pt{X: 957, Y: 74}, draw.HeadingText, th.Ink, b.word("bench_sheet.set_up_heading"))
	c.Text(draw.Pt{X: 957, Y: 94}, draw.SmallText, th.Ink, b.word("bench_sheet.wheel_on_bench"))
	c.Text(draw.Pt{X: 957, Y: 174}, draw.SmallText, th.Ink, b.word("bench_sheet.slow_motion"))
	c.Text(draw.Pt{X: 957, Y: 226}, draw.SmallText, th.Ink, b.word("bench_sheet.put_cause_in"))
	c.Text(draw.Pt{X: 1252, Y: 226}, draw.SmallText.To(draw.Right), th.Graphite, b.word("bench_sheet.list_keys"))
	b.drawKeys(drawerCell)(c)
	l := &b.list
	from, to := l.Visible()
	for i := from; i < to; i++ {
		row, r := &b.rows[i], l.Row(i)
		if row.head {
			c.Text(draw.Pt{X: r.X, Y: r.Y + r.H - 8}, draw.LabelText, th.Graphite, fit(c, b.lettering, row.text, draw.LabelText, r.W-10))
			if l.Focused && i == l.Selected {
				c.Box(r.Inset(2), nil, draw.Thin.In(th.Key).Wide(1.4))
			}
			continue
		}
		k := widget.Key{Rect: draw.Rect{X: r.X + 4 + row.indent, Y: r.Y + 3, W: r.W - 10 - row.indent, H: r.H - 7}, Label: row.text, Left: true,
			Drop: row.cause != "", Chosen: row.in, Focused: l.Focused && i == l.Selected}
		if row.act != nil {
			k.Chosen, k.Off = row.act.Chosen, !row.act.Enabled
		}
		k.Draw(c)
	}
	l.Draw(c)
}

func (b *bench) drawerStamp() uint64 {
	if !b.drawer {
		return 0
	}
	s := newStamp.add(b.keyStamp(drawerCell)())
	from, to := b.list.Visible()
	s = s.add(uint64(from)).add(uint64(b.list.Selected)).flag(b.list.Focused).text(b.opened)
	for i := from; i < to; i++ {
		r := &b.rows[i]
		s = s.text(r.text).flag(r.in)
		if r.act != nil {
			s = s.flag(r.act.Chosen).flag(r.act.Enabled)
		}
	}
	return uint64(s)
}
