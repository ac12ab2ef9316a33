package draw

import (
	"fmt"
	"image/color"
	"testing"

	"evenwear/assets"
	"evenwear/game/draw/drawtest"
)

func testCanvas(t testing.TB, w, h int, th *Theme) *Canvas {
	t.Helper()
	fonts, err := assets.LoadFonts()
	if err != nil {
		t.Fatal(err)
	}
	return New(w, h, th, fonts)
}

// TestKitSheet draws everything the kit knows once, in both themes.
func TestKitSheet(t *testing.T) {
	for _, th := range []*Theme{Paper, Slate} {
		t.Run(th.Name, func(t *testing.T) {
			c := testCanvas(t, 1280, 720, th)
			kitSheet(c)
			drawtest.Golden(t, "kit-"+th.Name, c.Image())
		})
	}
}

func kitSheet(c *Canvas) {
	c.Sheet()
	c.kitSheetParts()
	c.kitLines()
	c.kitHatches()
	c.kitText()
	c.kitMarks()
}

func (c *Canvas) kitLines() {
	for i, p := range []Pen{Visible, Thin, HatchPen, Hidden, Centre, InFront} {
		y := 50 + 18*float64(i)
		c.Line(Pt{40, y}, Pt{240, y}, p)
		c.Outline([]Pt{{260, y - 5}, {300, y - 5}, {306, y}, {300, y + 5}, {260, y + 5}}, p)
	}
	c.Pencil([]Pt{{40, 170}, {140, 160}, {200, 175}, {300, 165}})
	c.Polyline([]Pt{{40, 230}, {60, 190}, {80, 230}, {100, 190}, {104, 230}, {108, 190}, {200, 190}}, Visible)
	ink := c.Theme.Ink
	c.Circle(Pt{230, 210}, 20, nil, Visible)
	c.Circle(Pt{230, 210}, 8, &ink, Pen{})
	c.Arc(Pt{280, 210}, 20, 0, 4, Centre)
}

func (c *Canvas) kitHatches() {
	for h := range hatchKinds {
		x, y := 340+90*float64(h%6), 40+100*float64(h/6)
		c.Part([]Pt{{x, y}, {x + 60, y}, {x + 80, y + 20}, {x + 80, y + 80}, {x + 40, y + 80}, {x + 40, y + 50}, {x, y + 50}}, h, Pt{x, y})
	}
	for s := range 5 {
		x := 900 + 68*float64(s)
		k := Rect{x, 40, 60, 80}.Corners()
		c.Level(k[:], s, Pt{x, 40})
		c.Outline(k[:], Visible)
		c.Text(Pt{x + 30, 84}, ValueText.To(Middle), color.RGBA{}, fmt.Sprintf("%d.28", s))
	}
}

func (c *Canvas) kitText() {
	const s = "Outer lining 8.7 mm, 148 °C, ø 256, ×80 ≤ ≥ √ Ω μ − “hot”"
	for i, st := range []TextStyle{SheetText, HeadingText, LabelText, ValueText, SmallText, SentenceText, StrongText, HandText} {
		col := c.Theme.Ink
		if st.Face == assets.Hand {
			col = c.Theme.Graphite
		}
		c.Text(Pt{40, 270 + 28*float64(i)}, st, col, s)
	}
	c.Paragraph(Pt{900, 300}, SentenceText, color.RGBA{}, "If the upper pin cannot slide, what share of the inner force reaches the outer pad?", 300)
	c.Text(Pt{1000, 380}, LabelText.To(Middle), color.RGBA{}, "middle")
	c.Text(Pt{1000, 396}, LabelText.To(Right), color.RGBA{}, "right")
	c.Line(Pt{1000, 360}, Pt{1000, 410}, Centre)
}

func (c *Canvas) kitSheetParts() {
	c.TitleBlock(Block, "Evenwear", []Field{{"sheet", "bench", false}, {"car", "compact hatchback", false}, {"km", "61 400", false}},
		[]Field{{"job", "free play", false}, {"pressure", "1.28 MPa", false}, {"time", "2.9 s", false}, {"seed", "4117", false}, {"scale", "movement shown ×80", true}})
	c.TitleBlock(Rect{792, 550, 470, 68}, "Evenwear", []Field{{"sheet", "a sheet whose name is too long for its cell", false}, {"car", "an estate car with a long name", false}},
		[]Field{{"job", "12", false}})
	c.Heading(Pt{40, 510}, "What is wrong", "pick a cause and its place")
	c.Row(Rect{40, 520, 220, 25}, "Pedal travel", "31", "mm")
	c.Row(Rect{40, 545, 220, 25}, "Line pressure", "1.28", "MPa")
	c.Row(Rect{40, 570, 220, 25}, "A label that is longer than its cell", "2.74", "kN")
	c.Panel(Rect{300, 500, 200, 80})
	c.Part([]Pt{{320, 510}, {480, 510}, {480, 570}, {320, 570}}, HatchBody, Pt{})
	c.TextOn(Pt{400, 545}, ValueText.To(Middle), color.RGBA{}, c.Theme.Body, "33.0 m")
}

func (c *Canvas) kitMarks() {
	c.Arrow(Pt{900, 150}, Pt{1000, 150}, Head)
	c.Arrow(Pt{900, 165}, Pt{1000, 165}, Both)
	c.Arrow(Pt{900, 180}, Pt{1000, 195}, Dot)
	c.ForceArrow(Pt{1030, 150}, Pt{1, 0}, 2.74)
	c.ForceArrow(Pt{1200, 180}, Pt{-1, 0}, 1.89)
	c.ForceArrow(Pt{1030, 200}, Pt{1, 0.4}, 0.84)
	c.ForceArrow(Pt{1030, 230}, Pt{1, 0}, 0.2) // below 8 px: nothing
	c.BlockArrow(Pt{1220, 220}, Pt{-1, 0}, 60, c.Theme.Ink, false)
	c.BlockArrow(Pt{1240, 240}, Pt{-1, 0}, 18, c.Theme.Caution, true)
	c.Dimension(Pt{900, 230}, Pt{1000, 230}, 20, "33.0 m")
	c.Dimension(Pt{1060, 260}, Pt{1072, 260}, 14, "6.4")
	c.Triangle(Pt{1150, 270}, 22)
	c.Rust(Pt{1180, 262}, Pt{1240, 262})
}
