package draw

import (
	"image"
	"image/color"
	"math"
	"unicode"

	"github.com/golang/freetype/truetype"
	"golang.org/x/image/font"
	"golang.org/x/image/math/fixed"

	"evenwear/assets"
)

// An Align says which end of a line of text stands at its place.
type Align uint8

// The alignments.
const (
	Left Align = iota
	Middle
	Right
)

// A TextStyle is a face at a size.
type TextStyle struct {
	Face  assets.Face
	Size  float64 // [unit] of the em
	Align Align
	Caps  bool // letter in capitals, as headings are
}

// The styles of the sheet. Nothing is smaller than 13.
var (
	LabelText    = TextStyle{Face: assets.Lettering, Size: 14}
	SmallText    = TextStyle{Face: assets.Lettering, Size: 13}
	ValueText    = TextStyle{Face: assets.Lettering, Size: 15}
	HeadingText  = TextStyle{Face: assets.Wide, Size: 15, Caps: true}
	SheetText    = TextStyle{Face: assets.Wide, Size: 22, Caps: true}
	SentenceText = TextStyle{Face: assets.Plain, Size: 15}
	KeyText      = TextStyle{Face: assets.Plain, Size: 15}
	StrongText   = TextStyle{Face: assets.Bold, Size: 15}
	HandText     = TextStyle{Face: assets.Hand, Size: 18}
)

// At returns the style at another size [unit].
func (s TextStyle) At(size float64) TextStyle { s.Size = size; return s }

// To returns the style with another alignment.
func (s TextStyle) To(a Align) TextStyle { s.Align = a; return s }

type faceKey struct {
	outline *truetype.Font
	size    fixed.Int26_6 // [px]
}

type face struct{ font.Face }

type glyphKey struct {
	face  assets.Face
	size  fixed.Int26_6 // [px]
	r     rune
	shift uint8 // quarter pixels to the right
}

// A glyph is one rasterised letter. Glyphs are kept for the canvas' life: a
// sheet uses a few hundred.
type glyph struct {
	box     image.Rectangle // about the dot
	mask    []uint8
	advance fixed.Int26_6
}

// maxText is the largest em drawn [px]: beyond it a letter is larger than any
// sheet and only memory is at stake.
const maxText = 400

func (c *Canvas) emPixels(st TextStyle) fixed.Int26_6 {
	return fixed.Int26_6(math.Min(math.Max(st.Size*c.scale, 1), maxText)*64 + 0.5)
}

// glyphOf returns the letter from the cache or rasterises it.
func (c *Canvas) glyphOf(k glyphKey) *glyph {
	if g := c.glyphs[k]; g != nil {
		return g
	}
	outline, _ := c.fonts.Outline(k.face, k.r)
	fk := faceKey{outline, k.size}
	f := c.faces[fk]
	if f == nil {
		f = &face{truetype.NewFace(outline, &truetype.Options{Size: float64(k.size) / 64, DPI: 72, GlyphCacheEntries: 1})}
		c.faces[fk] = f
	}
	g := new(glyph)
	dot := fixed.Point26_6{X: fixed.Int26_6(k.shift) * 16}
	if box, mask, at, adv, ok := f.Glyph(dot, k.r); ok {
		g.box, g.advance = box, adv
		a := mask.(*image.Alpha)
		for y := range box.Dy() {
			i := a.PixOffset(at.X, at.Y+y)
			g.mask = append(g.mask, a.Pix[i:i+box.Dx()]...)
		}
	}
	c.glyphs[k] = g
	return g
}

// Text writes s with its baseline at a place.
func (c *Canvas) Text(at Pt, st TextStyle, col color.RGBA, s string) {
	p := c.px(at)
	switch st.Align {
	case Middle:
		p.X -= c.Measure(st, s) * c.scale / 2
	case Right:
		p.X -= c.Measure(st, s) * c.scale
	}
	col = c.ink(col)
	x, y := fixed.Int26_6(math.Floor(p.X*64+0.5)), int(math.Floor(p.Y+0.5))
	k := glyphKey{face: st.Face, size: c.emPixels(st)}
	for _, r := range s {
		if st.Caps {
			r = unicode.ToUpper(r)
		}
		q := (x + 8) &^ 15 // to the nearest quarter pixel
		k.r, k.shift = r, uint8(q&63>>4)
		g := c.glyphOf(k)
		c.stamp(g, int(q>>6), y, col)
		if st.Face == assets.Hand { // gone over once more: the hand is a thin one
			q = (q + k.size/32 + 8) &^ 15
			k.shift = uint8(q & 63 >> 4)
			c.stamp(c.glyphOf(k), int(q>>6), y, col)
		}
		x += g.advance
	}
}

// TextOn is [Canvas.Text] with the ground cleared behind it, for figures that
// stand on a hatch or in fluid.
func (c *Canvas) TextOn(at Pt, st TextStyle, col, ground color.RGBA, s string) {
	w := c.Measure(st, s)
	x := at.X
	switch st.Align {
	case Middle:
		x -= w / 2
	case Right:
		x -= w
	}
	c.Fill(Rect{x - 3, at.Y - st.Size*0.85, w + 6, st.Size * 1.1}, ground)
	c.Text(at, st, col, s)
}

// stamp lays one letter on the picture.
func (c *Canvas) stamp(g *glyph, x, y int, col color.RGBA) {
	box := g.box.Add(image.Pt(x, y))
	in := box.Intersect(c.clip)
	if in.Empty() {
		return
	}
	c.damage.add(in)
	for v := in.Min.Y; v < in.Max.Y; v++ {
		m := g.mask[(v-box.Min.Y)*box.Dx()+in.Min.X-box.Min.X:]
		i := c.img.PixOffset(in.Min.X, v)
		row := c.img.Pix[i : i+4*in.Dx()]
		for u := range in.Dx() {
			if a := m[u]; a != 0 {
				blendRow(row[4*u:4*u+4], col, uint32(a))
			}
		}
	}
}

// Measure returns the length of s [unit].
func (c *Canvas) Measure(st TextStyle, s string) float64 {
	k := glyphKey{face: st.Face, size: c.emPixels(st)}
	var w fixed.Int26_6
	for _, r := range s {
		if st.Caps {
			r = unicode.ToUpper(r)
		}
		k.r = r
		w += c.glyphOf(k).advance
	}
	return float64(w) / 64 / c.scale
}
