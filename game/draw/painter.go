package draw

import (
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

// blendRow lays col over row at a [1/255].
func blendRow(row []byte, col color.RGBA, a uint32) {
	r, g, b, rest := uint32(col.R)*a, uint32(col.G)*a, uint32(col.B)*a, 255-a
	for ; len(row) >= 4; row = row[4:] {
		row[0] = div255(r + uint32(row[0])*rest)
		row[1] = div255(g + uint32(row[1])*rest)
		row[2] = div255(b + uint32(row[2])*rest)
		row[3] = 0xff
	}
}

// div255 is x/255 rounded to nearest, exact for x ≤ 255².
func div255(x uint32) uint8 {
	x += 128
	return uint8((x + x>>8) >> 8)
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
