package scene

import (
	"testing"

	"evenwear/game/play"
	"evenwear/game/widget"
	"evenwear/physics"
)

// pumpedBench goes to and fro between views computed beforehand, so that the
// benchmark measures drawing and nothing else.
type pumpedBench struct {
	benchCar
	views []play.BenchView
	at    int
}

func (p *pumpedBench) Advance(int64) { p.at = (p.at + 1) % len(p.views) }
func (p *pumpedBench) Numbers(v *play.BenchView) {
	*v = p.views[p.at]
}

func pump(t testing.TB) *pumpedBench {
	p := new(pumpedBench)
	for i := range 12 {
		car := new(benchCar).at(t, stuckUpper, [2]string{"stuck", "free"}, 33+float64(i), 1.28+0.04*float64(i))
		car.view.Turn = float64(i) * 0.013
		car.view.Time += float64(i) / 60
		car.view.Axial = 80
		p.views = append(p.views, car.view)
	}
	p.benchCar.view = p.views[0]
	return p
}

// BenchmarkFrame is a frame's own work on the busiest screen in steady motion,
// 1280×720. Budget: 8 ms on one core, nothing allocated.
func BenchmarkFrame(b *testing.B) {
	a := testApp(b, false)
	a.Show(newBench(a, pump(b)))
	for range 100 {
		a.Advance(16)
		a.Draw()
	}
	b.ReportAllocs()
	for b.Loop() {
		a.Advance(16)
		a.Draw()
	}
}

// BenchmarkFrameAtRest is a frame in which nothing moves.
func BenchmarkFrameAtRest(b *testing.B) {
	a := testApp(b, false)
	a.Show(newBench(a, new(benchCar).at(b, physics.WheelCondition{}, freePins, 0, 0)))
	a.Draw()
	b.ReportAllocs()
	for b.Loop() {
		a.Advance(16)
		a.Draw()
	}
}

// TestFrameAllocatesNothing holds the budget of steady motion.
func TestFrameAllocatesNothing(t *testing.T) {
	a := testApp(t, false)
	a.Show(newBench(a, pump(t)))
	for range 100 {
		a.Advance(16)
		a.Draw()
	}
	moved := false
	if n := testing.AllocsPerRun(60, func() {
		a.Advance(16)
		_, dirty := a.Draw()
		moved = moved || len(dirty) > 0
	}); n > 0 {
		t.Errorf("a frame in steady motion allocates %.1f times, want 0", n)
	}
	if !moved {
		t.Error("nothing moved: the test saw no frame")
	}
}

// TestNothingIsDrawnAtRest: a frame in which nothing moved changes no rectangle.
func TestNothingIsDrawnAtRest(t *testing.T) {
	a := testApp(t, false)
	a.Show(newBench(a, new(benchCar).at(t, physics.WheelCondition{}, freePins, 0, 0)))
	if _, dirty := a.Draw(); len(dirty) != 1 {
		t.Fatalf("the first frame changed %d rectangles, want the whole sheet as one", len(dirty))
	}
	a.Advance(16)
	if _, dirty := a.Draw(); len(dirty) != 0 {
		t.Errorf("at rest a frame changed %v", dirty)
	}
}

// TestCellsEqualWhole: what cells leave after a movement is the same picture as
// the sheet drawn afresh: no cell forgets what it depends on or draws outside.
func TestCellsEqualWhole(t *testing.T) {
	p := pump(t)
	a := testApp(t, false)
	s := newBench(a, p)
	a.Show(s)
	a.Draw()
	for range len(p.views) - 1 {
		a.Advance(16)
		sameAsWhole(t, a, "a movement")
	}
}

// TestHandsRedrawWhatTheyChange: after every act of a hand, too.
func TestHandsRedrawWhatTheyChange(t *testing.T) {
	a, _, _ := heard(t)
	for _, k := range []string{"Tab", "Tab", "Enter", "L", "Space", "Right", "S", "Down", "Down", "Enter", "Tab", "Tab", "Enter", "Esc", "L", "Space", "Tab"} {
		a.Handle(key(k))
		sameAsWhole(t, a, k)
	}
	for _, r := range "73" {
		a.Handle(widget.Event{Kind: widget.TextIn, Rune: r})
		sameAsWhole(t, a, "a figure")
	}
	a.Handle(key(themeKey))
	sameAsWhole(t, a, themeKey)
	a.Handle(key("Esc"))
	for _, k := range []string{"Tab", "Tab", "M"} {
		a.Handle(key(k))
		sameAsWhole(t, a, "on the cover "+k)
	}
}

// sameAsWhole compares the picture as the cells left it with one drawn afresh.
func sameAsWhole(t *testing.T, a *App, after string) {
	t.Helper()
	img, _ := a.Draw()
	got := append([]uint8(nil), img.Pix...)
	a.drawn = false
	img, _ = a.Draw()
	for i := range got {
		if got[i] != img.Pix[i] {
			t.Fatalf("after %s the sheet differs from one drawn afresh, first at %d,%d", after, i/4%1280, i/4/1280)
		}
	}
}

// TestCellsDoNotOverlap: a cell that is drawn again must not rub out another.
// The drawer alone lies over the cells it shuts.
func TestCellsDoNotOverlap(t *testing.T) {
	a, b, _ := heard(t)
	cells := b.Cells()
	for i := range cells {
		for j := range i {
			p, q := a.sheet.Pixels(cells[i].Area), a.sheet.Pixels(cells[j].Area)
			if p.Overlaps(q) && cells[i].Area != drawerRect {
				t.Errorf("cells %v and %v overlap", p, q)
			}
		}
	}
}
