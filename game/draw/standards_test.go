package draw

import (
	"image/color"
	"math"
	"testing"

	"github.com/golang/freetype/truetype"

	"evenwear/assets"
)

// scale8 is a small sheet drawn at 8 px to the unit, so that what is measured in
// the picture is not the pixel.
func scale8(t *testing.T) *Canvas {
	t.Helper()
	fonts, err := assets.LoadFonts()
	if err != nil {
		t.Fatal(err)
	}
	c := NewSheet(800, 800, Pt{100, 100}, Paper, fonts)
	c.Fill(Rect{0, 0, 100, 100}, color.RGBA{255, 255, 255, 255})
	return c
}

// inkIn returns how much of a row or column of pixels is inked [px].
func inkIn(c *Canvas, horizontal bool, at int) float64 {
	sum := 0.0
	for i := range 800 {
		x, y := at, i
		if horizontal {
			x, y = i, at
		}
		sum += 1 - float64(c.img.RGBAAt(x, y).G)/255
	}
	return sum
}

// TestLineWidths is OC-133 and OC-135: ISO 128-24 as given in Simmons & Maguire,
// Manual of Engineering Drawing: widths of the series, wide : narrow 2 : 1, 0.7
// with 0.35 mm; outlines wide, all else narrow. Measured in the picture. The
// hatch is the sheet's own 0.28 mm, no wider than narrow.
func TestLineWidths(t *testing.T) {
	const wide, narrow = 0.7, 0.35 // [mm]
	for _, x := range []struct {
		name string
		pen  Pen
		want float64
	}{
		{"visible edge", Visible, wide}, {"dimension and leader", Thin, narrow},
		{"hidden", Hidden, narrow}, {"centre", Centre, narrow}, {"in front of the cut", InFront, narrow},
	} {
		c := scale8(t)
		c.Line(Pt{0, 50.03}, Pt{100, 50.03}, x.pen.In(color.RGBA{A: 255}))
		got := inkIn(c, false, 8) / 8 / 3 // the first dash covers x = 1
		if math.Abs(got-x.want) > 0.01 {
			t.Errorf("OC-133 %s: %.3f mm in the picture, want %.2f (ISO 128-24)", x.name, got, x.want)
		}
	}
	if HatchPen.Width > Thin.Width {
		t.Errorf("OC-135 hatching is %.2f mm wide, want narrow, at most %.2f (ISO 128-24)", HatchPen.Width/3, narrow)
	}
}

// TestDashes: hidden, centre and in-front lines differ by their pattern alone,
// which must come out in the picture as it was asked for.
func TestDashes(t *testing.T) {
	for _, p := range []Pen{Hidden, Centre, InFront} {
		on, all := 0.0, 0.0
		for i, d := range p.Dash {
			all += d
			if i%2 == 0 {
				on += d
			}
		}
		c := scale8(t)
		n := math.Floor(100 / all)
		c.Line(Pt{0, 50}, Pt{n * all, 50}, p.In(color.RGBA{A: 255}))
		if got := inkIn(c, true, 400) / 8; math.Abs(got-n*on) > 0.05 {
			t.Errorf("dash %v: %.2f units inked of %.0f, want %.0f", p.Dash, got, n*all, n*on)
		}
	}
}

// TestHatchAngles is OC-137: even spacing at the angle of the table, measured in
// the picture: the angle from the mean direction of its gradients, the pitch
// from how much of it is inked.
func TestHatchAngles(t *testing.T) {
	for h := range hatchKinds {
		if len(hatches[h]) != 1 || hatches[h][0].dash != nil {
			continue
		}
		f := hatches[h][0]
		c := scale8(t)
		k := Rect{0, 0, 100, 100}.Corners()
		c.Hatch(k[:], h, Pt{50, 50})
		if got := lineAngle(c); math.Abs(got-f.angle) > 0.5 {
			t.Errorf("OC-137 hatch %d: lines at %.2f°, want %.0f ± 0.5 (PCT Guidelines A-V 7.3.2)", h, got, f.angle)
		}
		inked := 0.0
		for y := range 800 {
			inked += inkIn(c, true, y)
		}
		full := 1 - float64(Paper.Ink.G)/255
		if got := HatchPen.Width * 640000 * full / inked; math.Abs(got/f.pitch-1) > 0.03 {
			t.Errorf("OC-137 hatch %d: pitch %.2f units, want %.0f", h, got, f.pitch)
		}
	}
}

// lineAngle returns the direction of the lines in a picture [°], 0 to 180,
// anticlockwise from the right, by the structure tensor.
func lineAngle(c *Canvas) float64 {
	var xx, yy, xy float64
	v := func(x, y int) float64 { return float64(c.img.RGBAAt(x, y).G) }
	for y := 2; y < 798; y++ {
		for x := 2; x < 798; x++ {
			gx := 3*(v(x+1, y-1)-v(x-1, y-1)) + 10*(v(x+1, y)-v(x-1, y)) + 3*(v(x+1, y+1)-v(x-1, y+1))
			gy := 3*(v(x-1, y+1)-v(x-1, y-1)) + 10*(v(x, y+1)-v(x, y-1)) + 3*(v(x+1, y+1)-v(x+1, y-1))
			xx, yy, xy = xx+gx*gx, yy+gy*gy, xy+gx*gy
		}
	}
	across := math.Atan2(2*xy, xx-yy) / 2 // of the gradient, y down
	return math.Mod(450-across*180/math.Pi, 180)
}

// TestNeighboursDiffer is OC-137: parts that touch are hatched at angles that
// differ by 15° or more. A lining is told apart by its crossed dashes.
func TestNeighboursDiffer(t *testing.T) {
	for _, x := range [][2]HatchKind{
		{HatchPlate, HatchPiston}, {HatchPlate, HatchBody}, {HatchPiston, HatchBody}, {HatchBody, HatchWasher},
		{HatchBody, HatchCarrier}, {HatchCarrier, HatchKnuckle}, {HatchBody, HatchDisc}, {HatchDisc, HatchCarrier},
	} {
		a, b := hatches[x[0]][0].angle, hatches[x[1]][0].angle
		d := math.Abs(a - b)
		if d = math.Min(d, 180-d); d < 15 {
			t.Errorf("OC-137 hatches %d and %d touch and differ by %.0f°, want 15 or more (PCT Guidelines A-V 7.3.2)", x[0], x[1], d)
		}
	}
	if l := hatches[HatchLining]; len(l) != 2 || l[0].dash == nil {
		t.Error("OC-137 a lining touches disc and plate at 5° and 10°: it must be crossed and dashed")
	}
}

// TestHatchStaysWithPart: a hatch drawn at a part moved by whole pixels is the
// same hatch, moved.
func TestHatchStaysWithPart(t *testing.T) {
	a, b := scale8(t), scale8(t)
	k := Rect{10, 10, 40, 40}.Corners()
	m := Rect{33, 25, 40, 40}.Corners()
	a.Hatch(k[:], HatchLining, Pt{10, 10})
	b.Hatch(m[:], HatchLining, Pt{33, 25})
	for y := range 320 {
		for x := range 320 {
			if p, q := a.img.RGBAAt(80+x, 80+y), b.img.RGBAAt(264+x, 200+y); p != q {
				t.Fatalf("at %d,%d of the part: %v before the move, %v after", x, y, p, q)
			}
		}
	}
}

// TestHatchBreaksForText is the last of OC-137: no hatch line runs through a
// figure that stands on it.
func TestHatchBreaksForText(t *testing.T) {
	c := scale8(t)
	k := Rect{0, 0, 100, 100}.Corners()
	c.Hatch(k[:], HatchWasher, Pt{})
	c.TextOn(Pt{50, 50}, ValueText.To(Middle), Paper.Ink, Paper.Piston, "")
	for y := 8 * 40; y < 8*53; y++ {
		if got := c.img.RGBAAt(400, y); got != Paper.Piston {
			t.Fatalf("OC-137 the ground of a figure is %v at row %d, want %v", got, y, Paper.Piston)
		}
	}
}

// TestLetteringHeights is OC-138: capitals 2.5 mm or higher (ISO 3098-0). The
// screen's sizes follow its own grid and are not all of the series 2.5, 3.5, 5.
func TestLetteringHeights(t *testing.T) {
	fonts, err := assets.LoadFonts()
	if err != nil {
		t.Fatal(err)
	}
	for _, st := range []TextStyle{LabelText, SmallText, ValueText, HeadingText, SheetText, SentenceText, KeyText, StrongText, HandText} {
		outline, i := fonts.Outline(st.Face, 'H')
		var g truetype.GlyphBuf
		if err := g.Load(outline, 64*1000, i, 0); err != nil {
			t.Fatal(err)
		}
		mm := float64(g.Bounds.Max.Y) / 64000 * st.Size / 3
		if mm < 2.5 {
			t.Errorf("OC-138 face %d at %.0f: capitals %.2f mm high, want 2.5 or more (ISO 3098-0)", st.Face, st.Size, mm)
		}
		if st.Size < 13 {
			t.Errorf("face %d: size %.0f, want 13 or more", st.Face, st.Size)
		}
	}
}
