package draw

import (
	"image"
	"image/color"
	"math"

	"evenwear/assets"
)

// SheetW and SheetH are the size of the standing sheet [unit].
const (
	SheetW = 1280
	SheetH = 720
)

// A Canvas draws on one RGBA image in sheet coordinates. It reuses every buffer
// it needs, so it is not for two goroutines at once.
type Canvas struct {
	Theme *Theme

	img    *image.RGBA
	fonts  *assets.Fonts
	scale  float64 // [px/unit]
	origin Pt      // [px] of the sheet's top left corner
	clip   image.Rectangle

	scan   scan
	path   []Pt      // [px] the shape in work
	run    []Pt      // [px] one dash in work
	rows   []Pt      // [px] the shape in a hatch's own frame
	cross  []float64 // where a hatch line meets the outline
	glyphs map[glyphKey]*glyph
	faces  map[faceKey]*face
	wraps  map[wrapKey][]string
	damage damage
}

// New returns a canvas of w×h pixels with the standing sheet as large as fits,
// in its middle. The ground is the theme's margin colour.
func New(w, h int, th *Theme, fonts *assets.Fonts) *Canvas {
	return NewSheet(w, h, Pt{SheetW, SheetH}, th, fonts)
}

// NewSheet is New for a sheet of another size [unit], such as a phone's page.
func NewSheet(w, h int, size Pt, th *Theme, fonts *assets.Fonts) *Canvas {
	w, h = max(w, 1), max(h, 1)
	c := &Canvas{
		Theme:  th,
		img:    image.NewRGBA(image.Rect(0, 0, w, h)),
		fonts:  fonts,
		scale:  math.Min(float64(w)/size.X, float64(h)/size.Y),
		glyphs: map[glyphKey]*glyph{},
		faces:  map[faceKey]*face{},
		wraps:  map[wrapKey][]string{},
	}
	c.origin = Pt{math.Floor((float64(w) - c.scale*size.X) / 2), math.Floor((float64(h) - c.scale*size.Y) / 2)}
	c.Unclip()
	c.fillPixels(c.img.Bounds(), th.Margin)
	return c
}

// Image returns the picture itself, not a copy.
func (c *Canvas) Image() *image.RGBA { return c.img }

// Scale returns the size of one unit [px].
func (c *Canvas) Scale() float64 { return c.scale }

// ToSheet returns the place on the sheet under a pixel.
func (c *Canvas) ToSheet(x, y float64) Pt {
	return Pt{(x - c.origin.X) / c.scale, (y - c.origin.Y) / c.scale}
}

// Pixels returns the smallest pixel rectangle that holds r.
func (c *Canvas) Pixels(r Rect) image.Rectangle {
	a, b := c.px(Pt{r.X, r.Y}), c.px(Pt{r.X + r.W, r.Y + r.H})
	return image.Rect(int(math.Floor(a.X)), int(math.Floor(a.Y)), int(math.Ceil(b.X)), int(math.Ceil(b.Y)))
}

// Clear fills r with the paper colour, hard-edged.
func (c *Canvas) Clear(r Rect) { c.Fill(r, c.Theme.Paper) }

// Fill fills r hard-edged on whole pixels, without a border.
func (c *Canvas) Fill(r Rect, col color.RGBA) {
	a, b := c.px(Pt{r.X, r.Y}), c.px(Pt{r.X + r.W, r.Y + r.H})
	c.fillPixels(image.Rect(int(math.Round(a.X)), int(math.Round(a.Y)), int(math.Round(b.X)), int(math.Round(b.Y))), col)
}

// ClipTo keeps everything drawn until Unclip inside r.
func (c *Canvas) ClipTo(r Rect) {
	c.clip = c.Pixels(r).Intersect(c.img.Bounds())
}

// Unclip lets everything be drawn again.
func (c *Canvas) Unclip() {
	c.clip = c.img.Bounds()
}

// px returns the pixel place of p, held within bounds that the scan's whole
// numbers can multiply. NaN falls far off the sheet.
func (c *Canvas) px(p Pt) Pt {
	return Pt{hold(c.origin.X + p.X*c.scale), hold(c.origin.Y + p.Y*c.scale)}
}

// farthest is the largest pixel coordinate drawn [px].
const farthest = 16000

func hold(x float64) float64 {
	if !(x > -farthest) { // NaN too
		return -farthest
	}
	return math.Min(x, farthest)
}

func (c *Canvas) ink(col color.RGBA) color.RGBA {
	if col.A == 0 {
		return c.Theme.Ink
	}
	return col
}
