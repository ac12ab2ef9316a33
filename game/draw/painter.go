package draw

import (
	"encoding/binary"
	"image"
	"image/color"
)

// fillRow doubles what it has written: copy moves memory faster than a loop.
func fillRow(row []byte, col color.RGBA) {
	row[0], row[1], row[2], row[3] = col.R, col.G, col.B, 0xff
	for n := 4; n < len(row); n *= 2 {
		copy(row[n:], row[:n])
	}
}

// blendRow lays col over row at a [1/255], rounded to nearest. Two channels are
// worked in one word: 255² + 128 and its own 1/256 still fit in 16 bits.
func blendRow(row []byte, col color.RGBA, a uint32) {
	const low = 0x00ff00ff
	rest := 255 - a
	rb := (uint32(col.R)|uint32(col.B)<<16)*a + 0x00800080
	g := uint32(col.G)*a + 0x80
	for ; len(row) >= 4; row = row[4:] {
		p := binary.LittleEndian.Uint32(row)
		x := rb + p&low*rest
		y := g + p>>8&0xff*rest
		x = (x + x>>8&low) >> 8 & low
		y = (y + y>>8) & 0xff00
		binary.LittleEndian.PutUint32(row, x|y|0xff000000)
	}
}

func (c *Canvas) fillPixels(r image.Rectangle, col color.RGBA) {
	r = r.Intersect(c.clip)
	if r.Empty() {
		return
	}
	c.damage.add(r)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		i := c.img.PixOffset(r.Min.X, y)
		fillRow(c.img.Pix[i:i+4*r.Dx()], col)
	}
}
