package scene

import "evenwear/game/draw"

// roomyScale is the least scale [px/unit] of a sheet whose lettering can be read.
const roomyScale = 0.8

// askForRoom letters one line in the upper margin, the same on every sheet, when
// the window is so small that the sheet's own lettering falls under 13 px. The
// line itself is 13 px high at any scale.
func (a *App) askForRoom() {
	c := a.still
	if c.Scale() >= roomyScale {
		return
	}
	st := draw.TextStyle{Face: draw.HeadingText.Face, Size: draw.SmallText.Size / c.Scale(), Caps: true}
	s := a.words.Say("frame.enlarge")
	w := c.Measure(st, s)
	c.Fill(draw.Rect{X: (draw.SheetW-w)/2 - 8, W: w + 16, H: draw.Margin - 2}, c.Theme.Margin)
	c.Text(draw.Pt{X: draw.SheetW / 2, Y: draw.Margin - 4}, st.To(draw.Middle), c.Theme.Ink, s)
}
