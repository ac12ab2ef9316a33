package widget

import (
	"testing"

	"evenwear/assets"
	"evenwear/game/draw"
	"evenwear/game/draw/drawtest"
)

func testCanvas(t testing.TB, th *draw.Theme) *draw.Canvas {
	t.Helper()
	fonts, err := assets.LoadFonts()
	if err != nil {
		t.Fatal(err)
	}
	return draw.New(1280, 720, th, fonts)
}

// TestKitSheet draws every widget in every state once, in both themes.
func TestKitSheet(t *testing.T) {
	for _, th := range []*draw.Theme{draw.Paper, draw.Slate} {
		t.Run(th.Name, func(t *testing.T) {
			c := testCanvas(t, th)
			c.Sheet()
			kitKeys(c)
			kitFields(c)
			kitRods(c)
			drawtest.Golden(t, "widgets-"+th.Name, c.Image())
		})
	}
}

func kitKeys(c *draw.Canvas) {
	for i, k := range []Key{
		{Label: "Normal", Letter: "N"},
		{Label: "Focus", Letter: "F", Focused: true},
		{Label: "Chosen", Letter: "C", Chosen: true},
		{Label: "Chosen, focus", Chosen: true, Focused: true},
		{Label: "Go to the work", Letter: "G", Off: true},
		{Label: "Slide the body", Value: "3", Letter: "Q"},
		{Label: "guide pins", Left: true, Pencil: true},
		{Label: "pick a cause", Drop: true, Focused: true},
		{Label: "leave it as it is", Radio: true, Value: "0"},
		{Label: "bleed this wheel only", Radio: true, Value: "20", Chosen: true},
		{Label: "Seal the belief", Letter: "Enter", Strong: true},
		{Label: "a label far longer than its key can hold", Letter: "Esc"},
	} {
		k.Rect = draw.Rect{X: 40 + 210*float64(i%4), Y: 40 + 60*float64(i/4), W: 190, H: 32}
		if k.Strong {
			k.Rect.H = 40
		}
		k.Draw(c)
	}
	k := Key{Label: "Next: the truth", Strong: true, Chosen: true, Focused: true, Size: 40, Rect: draw.Rect{X: 890, Y: 200, W: 340, H: 80}}
	k.Draw(c)
	k = Key{Label: "+", Rect: draw.Rect{X: 900, Y: 40, W: 30, H: 30}}
	k.Draw(c)
}

func kitFields(c *draw.Canvas) {
	n := NumberField{Rect: draw.Rect{X: 40, Y: 240, W: 64, H: 30}, Text: "8.7", Focused: true}
	n.Draw(c)
	n = NumberField{Rect: draw.Rect{X: 140, Y: 240, W: 64, H: 30}, Text: "-0.14"}
	n.Draw(c)
	f := TextField{Rect: draw.Rect{X: 240, Y: 230, W: 300, H: 60}, Text: "Both pins renewed and greased; look again in a thousand kilometres.", Focused: true}
	f.Draw(c)
	s := Slider{Rect: draw.Rect{X: 60, Y: 340, W: 420, H: 13}, Hi: 300, Step: 1, Big: 10, Division: 10, Long: 50, Value: 33, Focused: true}
	s.Draw(c)
	l := List{Rect: draw.Rect{X: 600, Y: 230, W: 200, H: 140}, RowH: 28, Rows: 14, Top: 4}
	l.Draw(c)
	for i, to := l.Visible(); i < to; i++ {
		r := l.Row(i)
		c.Rule(r.X, r.X+r.W-6, r.Y+r.H)
		c.Text(draw.Pt{X: r.X + 4, Y: r.Y + 19}, draw.LabelText, c.Theme.Ink, "row "+assets.Figure(float64(i), 0))
	}
	Tick{At: draw.Pt{X: 850, Y: 240}, On: true}.Draw(c)
	Tick{At: draw.Pt{X: 850, Y: 270}}.Draw(c)
}

func kitRods(c *draw.Canvas) {
	for i, n := range []int{0, 1, 4, 11, 20} {
		r := Rod{Rect: draw.Rect{X: 60, Y: 400 + 46*float64(i), W: 350, H: 28}, Nuts: n}
		r.Draw(c)
		r = Rod{Rect: draw.Rect{X: 480, Y: 400 + 46*float64(i), W: 480, H: 40}, Nuts: n, Solid: true, Ink: i%2 == 1}
		r.Draw(c)
	}
}

// TestNoAllocations: warm widgets draw without the heap.
func TestNoAllocations(t *testing.T) {
	c := testCanvas(t, draw.Paper)
	s := Slider{Rect: draw.Rect{X: 60, Y: 340, W: 420, H: 13}, Hi: 300, Step: 1, Division: 10, Long: 50, Value: 33, Focused: true}
	k := Key{Label: "bleed this wheel only", Letter: "Q", Value: "20", Radio: true, Chosen: true, Focused: true, Rect: draw.Rect{X: 40, Y: 40, W: 260, H: 32}}
	r := Rod{Rect: draw.Rect{X: 60, Y: 400, W: 350, H: 28}, Nuts: 11}
	n := NumberField{Rect: draw.Rect{X: 40, Y: 240, W: 64, H: 30}, Text: "8.7", Focused: true}
	all := func() { s.Draw(c); k.Draw(c); r.Draw(c); n.Draw(c) }
	all()
	if got := testing.AllocsPerRun(5, all); got != 0 {
		t.Errorf("warm widgets allocate %v times, want 0", got)
	}
}
