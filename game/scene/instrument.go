package scene

import (
	"evenwear/assets"
	"evenwear/game/draw"
	"evenwear/game/play"
)

// drawInstrument draws what the eye sees of an instrument inside r, without
// ever lettering the reading. swing is the share of a disc's turn.
func drawInstrument(c *draw.Canvas, w *assets.Words, v *play.InstrumentView, r draw.Rect, swing float64) {
	at := c.Paragraph(draw.Pt{X: r.X + 12, Y: r.Y + 40}, draw.SentenceText.At(17), c.Theme.Ink, v.Marks, r.W-24)
	c.Text(draw.Pt{X: r.X + 12, Y: at.Y + 30}, draw.SheetText, c.Theme.Ink, v.Digits)
}
