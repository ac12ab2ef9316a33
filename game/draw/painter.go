package draw

import (
	"image"
	"image/color"

	"github.com/golang/freetype/raster"
)

// A painter lays spans of one opaque colour on the picture.
type painter struct {
	img  *image.RGBA
	clip image.Rectangle
	col  color.RGBA
}

// Paint satisfies raster.Painter.
func (p *painter) Paint(spans []raster.Span, _ bool) {
	for _, s := range spans {
		if s.Y < p.clip.Min.Y || s.Y >= p.clip.Max.Y {
			continue
		}
		x0, x1 := max(s.X0, p.clip.Min.X), min(s.X1, p.clip.Max.X)
		if x0 >= x1 {
			continue
		}
		i := (s.Y-p.img.Rect.Min.Y)*p.img.Stride + (x0-p.img.Rect.Min.X)*4
		row := p.img.Pix[i : i+(x1-x0)*4]
		if s.Alpha >= 0xff00 {
			fillRow(row, p.col)
		} else {
			blendRow(row, p.col, s.Alpha>>8)
		}
	}
}

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
	for y := r.Min.Y; y < r.Max.Y; y++ {
		i := c.img.PixOffset(r.Min.X, y)
		if r.Min.X < r.Max.X {
			fillRow(c.img.Pix[i:i+4*r.Dx()], col)
		}
	}
}
