package scene

import (
	"testing"

	"evenwear/game/play"
)

// oneView is a session that never moves on.
type oneView struct{ view play.View }

func (g *oneView) View() *play.View  { v := g.view; return &v }
func (g *oneView) Do(play.Act) error { return nil }
func (g *oneView) Await()            {}
func (g *oneView) Cancel()           {}

// TestInstrumentIsDrawnOnce: an instrument that is come to is drawn by one
// frame; the next has nothing to do until something moves.
func TestInstrumentIsDrawnOnce(t *testing.T) {
	a := testApp(t, false)
	swing := make([]float64, 25)
	for i := range swing {
		swing[i] = 0.2
	}
	a.Show(NewJob(a, &oneView{play.View{Stage: play.Inspecting, Plan: &play.PlanView{}, Instrument: &play.InstrumentView{
		Check: "runout@front_left", Kind: "dial_indicator", Name: "Run-out", Unit: "mm", Division: 0.01, Long: 0.1, Hi: 1, Needle: swing}}}, nil))
	if _, dirty := a.Draw(); len(dirty) == 0 {
		t.Fatal("the first frame drew nothing")
	}
	if _, dirty := a.Draw(); len(dirty) != 0 {
		t.Errorf("the second frame drew %v again though nothing moved", dirty)
	}
	a.Advance(500)
	if _, dirty := a.Draw(); len(dirty) == 0 {
		t.Error("the disc turned and nothing was drawn")
	}
}
