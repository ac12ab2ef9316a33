package draw

import (
	"image"
	"image/color"
	"math"
	"testing"
)

var black = color.RGBA{A: 255}

// covered sums how much of the picture is blackened [px].
func covered(img *image.RGBA) float64 {
	sum := 0.0
	for i := 0; i < len(img.Pix); i += 4 {
		sum += 1 - float64(img.Pix[i])/255
	}
	return sum
}

func white(t testing.TB) *Canvas {
	c := testCanvas(t, 1280, 720, Paper)
	c.fillPixels(c.img.Bounds(), color.RGBA{255, 255, 255, 255})
	return c
}

// TestPolygonArea: the blackened area is the area of the outline, for a shape at
// odd places, wound either way, larger and smaller than a band.
func TestPolygonArea(t *testing.T) {
	for _, pts := range [][]Pt{
		{{10.3, 10.7}, {15.9, 12.2}, {11.1, 18.45}},
		{{11.1, 18.45}, {15.9, 12.2}, {10.3, 10.7}},
		{{5.5, 3.25}, {1270.1, 9.9}, {1255, 711}, {7, 700.3}},
		{{640, 20}, {640.6, 20}, {640.6, 700}, {640, 700}},
	} {
		want := 0.0
		for i, p := range pts {
			q := pts[(i+1)%len(pts)]
			want += (p.X*q.Y - q.X*p.Y) / 2
		}
		want = math.Abs(want)
		c := white(t)
		c.Polygon(pts, black)
		// Ends are rounded to 1/256 px and opacity to 1/255.
		if got := covered(c.img); math.Abs(got-want) > 0.002*want+0.1 {
			t.Errorf("%v: %.3f px blackened, want %.3f", pts, got, want)
		}
	}
}

// TestStrokeArea: a closed line of width w round a convex outline covers its
// length times w: overlaps at corners count once and mitres fill the outside.
func TestStrokeArea(t *testing.T) {
	c := white(t)
	k := Rect{100, 100, 300, 200}.Corners()
	c.Outline(k[:], Pen{Width: 10, Col: black})
	if got, want := covered(c.img), 2*(300.0+200)*10; math.Abs(got-want) > 1 {
		t.Errorf("a rectangle's outline covers %.2f px, want %.0f", got, want)
	}
	c = white(t)
	c.Circle(Pt{300, 300}, 100, nil, Pen{Width: 4, Col: black})
	if got, want := covered(c.img), 2*math.Pi*100*4; math.Abs(got/want-1) > 0.005 {
		t.Errorf("a circle's outline covers %.1f px, want %.1f", got, want)
	}
}

// TestClipIsExact: the sheet drawn in strips is the sheet drawn at once, byte for
// byte; dirty rectangles depend on it.
func TestClipIsExact(t *testing.T) {
	whole, strips := testCanvas(t, 1280, 720, Paper), testCanvas(t, 1280, 720, Paper)
	kitSheet(whole)
	for _, r := range []Rect{{0, 0, 431, 720}, {431, 0, 849, 97}, {431, 97, 849, 623}} {
		strips.ClipTo(r)
		kitSheet(strips)
	}
	n := 0
	for i := range whole.img.Pix {
		if whole.img.Pix[i] != strips.img.Pix[i] {
			n++
		}
	}
	if n > 0 {
		t.Errorf("%d bytes differ between the whole sheet and its strips", n)
	}
}

// TestClipKeepsOut: nothing is painted outside the clip.
func TestClipKeepsOut(t *testing.T) {
	c := white(t)
	r := Rect{300, 200, 100, 100}
	c.ClipTo(r)
	kitSheet(c)
	for y := range 720 {
		for x := range 1280 {
			if !r.Contains(Pt{float64(x), float64(y)}) && c.img.RGBAAt(x, y) != (color.RGBA{255, 255, 255, 255}) {
				t.Fatalf("painted at %d,%d, outside %v", x, y, r)
			}
		}
	}
}

// TestDamageCovers: every pixel that changed lies in the damage, and damage is
// not simply the whole sheet.
func TestDamageCovers(t *testing.T) {
	c := white(t)
	c.TakeDamage(nil)
	before := append([]uint8(nil), c.img.Pix...)
	c.Line(Pt{100, 100}, Pt{200, 150}, Visible)
	c.Text(Pt{1000, 600}, LabelText, color.RGBA{}, "28 mm")
	c.Clear(Rect{500, 300, 20, 20})
	list := c.TakeDamage(nil)
	sum := 0
	for _, r := range list {
		sum += area(r)
	}
	if sum > 20000 {
		t.Errorf("damage of %d px for three small things: %v", sum, list)
	}
	for i := 0; i < len(before); i += 4 {
		if c.img.Pix[i] == before[i] && c.img.Pix[i+2] == before[i+2] {
			continue
		}
		p := image.Pt(i/4%1280, i/4/1280)
		in := false
		for _, r := range list {
			in = in || p.In(r)
		}
		if !in {
			t.Fatalf("pixel %v changed outside the damage %v", p, list)
		}
	}
	if left := c.TakeDamage(nil); len(left) != 0 {
		t.Errorf("damage is still %v after it was taken", left)
	}
}

// FuzzShapes: no coordinate, width or text makes the canvas panic or hang.
func FuzzShapes(f *testing.F) {
	f.Add(1.0, 2.0, 3.0, 4.0, 2.0, "8.7 mm")
	f.Add(math.NaN(), math.Inf(1), -1e300, 5.0, math.Inf(1), "\xff\u2028")
	f.Add(-1e9, 1e9, 1e9, -1e9, -3.0, "")
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, "a")
	c := testCanvas(f, 320, 180, Slate)
	f.Fuzz(func(t *testing.T, x, y, u, v, w float64, s string) {
		a, b, m := Pt{x, y}, Pt{u, v}, Pt{w, x}
		c.Line(a, b, Pen{Width: w})
		c.Polyline([]Pt{a, b, m}, Centre)
		c.Outline([]Pt{a, b, m}, Visible)
		c.Polygon([]Pt{a, b, m}, black)
		c.Hatch([]Pt{a, b, m}, HatchLining, a)
		c.Level([]Pt{a, b, m}, int(min(max(x, -9), 9)), b)
		c.Circle(a, w, &black, Thin)
		c.Arc(a, w, u, v, Hidden)
		c.Pencil([]Pt{a, b})
		c.Arrow(a, b, Both)
		c.ForceArrow(a, b, w)
		c.Dimension(a, b, w, s)
		c.Triangle(a, w)
		c.Rust(a, b)
		c.Text(a, LabelText.At(max(1, min(w, 60))), color.RGBA{}, s)
		c.Wrap(SentenceText, s, w)
		c.Fit(KeyText, s, w)
		c.ClipTo(Rect{x, y, u, v})
		c.Clear(Rect{u, v, x, y})
		c.Unclip()
	})
}
