package drawtest

import (
	"image"
	"image/color"
	"path/filepath"
	"testing"
)

// TestDiffer: one bit of one pixel is a difference, so is a size; a picture that
// was written and read again is the same.
func TestDiffer(t *testing.T) {
	a := image.NewRGBA(image.Rect(0, 0, 7, 5))
	for i := range a.Pix {
		a.Pix[i] = uint8(i * 31)
		if i%4 == 3 {
			a.Pix[i] = 255
		}
	}
	path := filepath.Join(t.TempDir(), "a.png")
	write(t, path, a)
	b, err := read(path)
	if err != nil {
		t.Fatal(err)
	}
	if n, at := differ(a, b); n != 0 {
		t.Errorf("%d pixels differ after writing and reading, the first at %v", n, at)
	}
	c := b.RGBAAt(3, 2)
	b.SetRGBA(3, 2, color.RGBA{c.R ^ 1, c.G, c.B, 255})
	if n, at := differ(a, b); n != 1 || at != image.Pt(3, 2) {
		t.Errorf("%d pixels differ, first at %v; want 1 at 3,2", n, at)
	}
	if n, _ := differ(a, image.NewRGBA(image.Rect(0, 0, 7, 6))); n == 0 {
		t.Error("another size must differ")
	}
}
