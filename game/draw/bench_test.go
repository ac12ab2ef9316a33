package draw

import (
	"image/color"
	"testing"
)

// busy draws some 300 primitives of the kinds and sizes a busy bench frame has.
func busy(c *Canvas) {
	c.Clear(Rect{258, 50, 686, 584})
	for i := range 12 {
		x, y := 270+55*float64(i), 60.0
		k := [4]Pt{{x, y}, {x + 50, y}, {x + 50, y + 200}, {x, y + 200}}
		c.Part(k[:], HatchKind(i%9), Pt{x, y})
		k = [4]Pt{{x, y + 210}, {x + 50, y + 215}, {x + 50, y + 300}, {x, y + 300}}
		c.Level(k[:], i%5, Pt{x, y})
		c.Outline(k[:], Visible)
	}
	for i := range 60 {
		y := 380 + 4*float64(i)
		c.Line(Pt{270, y}, Pt{500, y + 30}, Thin)
		c.Line(Pt{500, y}, Pt{700, y}, Centre)
		c.Arrow(Pt{700, y}, Pt{760, y - 10}, Dot)
	}
	for i := range 40 {
		c.Text(Pt{760, 380 + 6*float64(i)}, LabelText, color.RGBA{}, "upper half of the outer pad")
	}
	for i := range 8 {
		c.ForceArrow(Pt{300, 100 + 20*float64(i)}, Pt{1, 0}, 2.74)
		c.Circle(Pt{600, 100 + 20*float64(i)}, 8, nil, Visible)
	}
	pts := [5]Pt{{300, 600}, {400, 560}, {500, 520}, {600, 515}, {700, 515}}
	c.Pencil(pts[:])
}

func BenchmarkBusyFrame(b *testing.B) {
	c := testCanvas(b, 1280, 720, Paper)
	busy(c)
	b.ReportAllocs()
	for b.Loop() {
		busy(c)
	}
}

func BenchmarkHatchPart(b *testing.B) {
	c := testCanvas(b, 1280, 720, Paper)
	k := Rect{200, 100, 600, 400}.Corners()
	b.ReportAllocs()
	for b.Loop() {
		c.Part(k[:], HatchDisc, Pt{})
	}
}

func BenchmarkFill600x400(b *testing.B) {
	c := testCanvas(b, 1280, 720, Paper)
	k := [4]Pt{{200.3, 100.4}, {800.2, 101}, {801, 500.5}, {200, 500}}
	b.ReportAllocs()
	for b.Loop() {
		c.Polygon(k[:], c.Theme.Disc)
	}
}

func BenchmarkLine(b *testing.B) {
	c := testCanvas(b, 1280, 720, Paper)
	b.ReportAllocs()
	for b.Loop() {
		c.Line(Pt{300, 300}, Pt{400, 250}, Visible)
	}
}

func BenchmarkText60(b *testing.B) {
	c := testCanvas(b, 1280, 720, Paper)
	b.ReportAllocs()
	for b.Loop() {
		c.Text(Pt{40, 300}, LabelText, color.RGBA{}, "If the upper pin cannot slide, what share of the inner force")
	}
}

// TestNoAllocations: a warm canvas draws a busy frame without the heap.
func TestNoAllocations(t *testing.T) {
	c := testCanvas(t, 1280, 720, Slate)
	busy(c)
	if n := testing.AllocsPerRun(5, func() { busy(c) }); n != 0 {
		t.Errorf("a warm frame allocates %v times, want 0", n)
	}
}
