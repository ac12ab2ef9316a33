package scene

import "testing"

// TestCoverOffersWhatWasLeft: a job that is left can be gone on with at once.
func TestCoverOffersWhatWasLeft(t *testing.T) {
	base := testApp(t, false)
	left := false
	var a *App
	a = NewApp(Options{Words: base.words, Fonts: base.fonts, Cover: Cover{Resume: func() *Offer {
		if !left {
			return nil
		}
		return &Offer{Name: "left", Open: func(*App) (Scene, error) { return NewJob(a, &oneView{}, nil), nil }}
	}}})
	a.Draw()
	a.Handle(key("R"))
	if _, ok := a.scene.(*cover); !ok {
		t.Fatal("with nothing left R leads away from the cover")
	}
	left = true
	a.ShowCover()
	a.Draw()
	a.Handle(key("R"))
	if _, ok := a.scene.(*Job); !ok {
		t.Error("what was left cannot be gone on with")
	}
}
