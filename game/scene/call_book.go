package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

const idBook = "notebook"

// A notebook is laid over one panel of a form: what was read so far. It covers a
// part of the sheet and blocks nothing; N or Esc takes it away.
type notebook struct {
	form  *form
	panel int
	area  draw.Rect // within the panel
	open  bool
	list  widget.List
}

func (b *notebook) swap() {
	b.open = !b.open
	if b.open {
		b.form.targets.Focus = idBook
		b.list.Rows = len(b.form.job.view.Notebook)
		b.list.Show(b.list.Rows - 1)
	}
}

func (b *notebook) arrange() {
	if !b.open {
		return
	}
	a := b.area
	b.list.Rect = draw.Rect{X: a.X + 12, Y: a.Y + 40, W: a.W - 20, H: a.H - 46}
	b.list.RowH = 26
	b.list.Rows = len(b.form.job.view.Notebook)
	b.list.Focused = b.form.targets.Focus == idBook
	b.form.targets.Add(widget.Target{ID: idBook, Rect: draw.Rect{X: a.X, Y: a.Y}, Panel: b.panel, Enabled: true})
}

// handle takes Esc, the arrows while in focus, and every hand over it.
func (b *notebook) handle(e widget.Event) bool {
	if !b.open {
		return false
	}
	switch e.Kind {
	case widget.KeyDown:
		if e.Key == "Esc" {
			b.open = false
			return true
		}
		return b.list.Focused && b.list.Handle(e)
	case widget.PointerDown:
		if b.area.Contains(e.At) {
			b.form.targets.Focus = idBook
			b.list.Handle(e)
			return true
		}
		return false
	}
	return b.list.Handle(e)
}

func (b *notebook) stamp() stamp {
	return newStamp.flag(b.open).num(b.list.Top, 1).add(uint64(b.list.Selected)).flag(b.list.Focused)
}

// draw lays the open notebook over what its panel has drawn.
func (b *notebook) draw(c *draw.Canvas) {
	if !b.open {
		return
	}
	th, f, a := c.Theme, b.form, b.area
	c.Fill(a, th.Panel)
	c.Box(a.Inset(1), nil, draw.Visible)
	c.Text(draw.Pt{X: a.X + 12, Y: a.Y + 23}, draw.HeadingText, th.Ink, f.word("sheet.notebook"))
	c.Text(draw.Pt{X: a.X + a.W - 12, Y: a.Y + 23}, draw.SmallText.To(draw.Right), th.Ink, f.word("sheet.notebook_help"))
	rule(c, a.X+12, a.Y+32, a.X+a.W-12, a.Y+32)
	notes := f.job.view.Notebook
	if len(notes) == 0 {
		c.Text(draw.Pt{X: a.X + 12, Y: a.Y + 56}, draw.LabelText, th.Ink, f.word("sheet.no_notes"))
	}
	from, to := b.list.Visible()
	for i := from; i < to && i < len(notes); i++ {
		n, r := &notes[i], b.list.Row(i)
		y := r.Y + 18
		c.Text(draw.Pt{X: r.X, Y: y}, draw.SmallText, th.Graphite, fit(c, f.lettering, n.Where, draw.SmallText, 84))
		what := n.What
		if n.Again {
			what = f.fill("sheet.again", "what", what)
		}
		c.Text(draw.Pt{X: r.X + 90, Y: y}, draw.LabelText, th.Ink, fit(c, f.lettering, what, draw.LabelText, 270))
		written := n.Written
		if n.Unit != "" {
			written += " " + n.Unit
		}
		written = fit(c, f.lettering, written, draw.HandText, r.W-376)
		c.Text(draw.Pt{X: r.X + 368, Y: y}, draw.HandText, th.Graphite, written)
		if n.Struck {
			c.Pencil([]draw.Pt{{X: r.X + 366, Y: y - 5}, {X: r.X + 372 + c.Measure(draw.HandText, written), Y: y - 6}})
		}
		if i == b.list.Selected && b.list.Focused {
			c.Box(draw.Rect{X: r.X - 5, Y: r.Y + 1, W: r.W + 4, H: r.H - 2}, nil, draw.Thin.In(th.Key).Wide(1.4))
		}
	}
	b.list.Draw(c)
}
