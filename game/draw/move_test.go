package draw

import "testing"

// TestMoved: what is drawn moved is what is drawn there, and afterwards nothing
// is moved any more; a clip within a clip cuts to both and gives the first back.
func TestMoved(t *testing.T) {
	a, b := testCanvas(t, SheetW, SheetH, Paper), testCanvas(t, SheetW, SheetH, Paper)
	by := Pt{40, -25}
	shape := func(c *Canvas, at Pt) {
		c.Part([]Pt{at, at.Add(Pt{60, 0}), at.Add(Pt{60, 35}), at.Add(Pt{0, 35})}, HatchDisc, at)
		c.Text(at.Add(Pt{5, 60}), LabelText, Paper.Ink, "disc")
	}
	a.ClipTo(Rect{100, 100, 150, 200})
	b.ClipTo(Rect{100, 100, 150, 200})
	a.Moved(by, func() { shape(a, Pt{150, 200}) })
	shape(b, Pt{150, 200}.Add(by))
	a.Clipped(Rect{240, 100, 50, 200}, func() { a.Clear(Rect{W: 600, H: 600}) })
	b.Clear(Rect{240, 100, 10, 200}) // of both clips
	a.Line(Pt{0, 150}, Pt{600, 150}, Thin)
	b.Line(Pt{0, 150}, Pt{600, 150}, Thin)
	a.Unclip()
	b.Unclip()
	shape(a, Pt{400, 300})
	shape(b, Pt{400, 300})
	for i := range a.img.Pix {
		if a.img.Pix[i] != b.img.Pix[i] {
			t.Fatalf("moved and there differ first at pixel %d, %d", i/4%SheetW, i/4/SheetW)
		}
	}
}
