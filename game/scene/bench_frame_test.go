package scene

import (
	"testing"

	"evenwear/game/play"
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
		img, _ := a.Draw()
		got := append([]uint8(nil), img.Pix...)
		a.drawn = false
		img, _ = a.Draw()
		n := 0
		for i := 0; i < len(got); i += 4 {
			if got[i] != img.Pix[i] || got[i+1] != img.Pix[i+1] || got[i+2] != img.Pix[i+2] {
				if n == 0 {
					t.Errorf("frame %d: first difference at %d,%d", p.at, i/4%1280, i/4/1280)
				}
				n++
			}
		}
		if n > 0 {
			t.Fatalf("frame %d: %d pixels differ from the sheet drawn afresh", p.at, n)
		}
	}
}
