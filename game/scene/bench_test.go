package scene

import (
	"testing"

	"evenwear/game/draw/drawtest"
	"evenwear/physics"
)

var freePins = [2]string{"free", "free"}
var stuckUpper = physics.WheelCondition{PinFriction: [2]float64{20000, 0}}

func stuckBench(t testing.TB) *benchCar {
	b := new(benchCar).at(t, stuckUpper, [2]string{"stuck", "free"}, 33, 1.28)
	b.view.Predict.Question = "If the upper pin cannot slide, what share of the inner force reaches the outer pad?"
	b.view.Predict.Said, b.view.Predict.Computed = 93, 100*b.view.Balance[1]/b.view.Balance[0]
	b.view.Predict.Comment = "24 too high. The stuck pin takes 0.84 kN that never reaches the outer pad."
	return b
}

func TestBenchPictures(t *testing.T) {
	for _, tc := range []struct {
		name  string
		slate bool
		car   *benchCar
	}{
		{"bench-rest", false, new(benchCar).at(t, physics.WheelCondition{}, freePins, 0, 0)},
		{"bench-150n", false, new(benchCar).at(t, physics.WheelCondition{}, freePins, 150, 7.37)},
		{"bench-stuck", false, stuckBench(t)},
		{"bench-stuck-slate", true, stuckBench(t)},
	} {
		t.Run(tc.name, func(t *testing.T) {
			a := testApp(t, tc.slate)
			a.Show(newBench(a, tc.car))
			img, _ := a.Draw()
			drawtest.Golden(t, tc.name, img)
		})
	}
}

func TestCoverPicture(t *testing.T) {
	words := testApp(t, false)
	a := NewApp(Options{Words: words.words, Fonts: words.fonts, Cover: Cover{
		Bench:  func(*App) (Scene, error) { return nil, nil },
		Resume: func() *Offer { return &Offer{Name: "A long pedal after the holiday, 24 minutes spent"} },
		Jobs: []Offer{{Name: "It pulls to the right when I brake", Detail: "compact hatchback"},
			{Name: "The pedal goes down further than it did before the summer, and the fluid is low again", Detail: "light delivery van"}},
	}})
	img, _ := a.Draw()
	drawtest.Golden(t, "cover", img)
}

func TestDrawerPicture(t *testing.T) {
	a, b, h := heard(t)
	h.view.Groups[0].Causes[0].Places[0].Chosen = true
	h.view.Cause = "pins dry, front left"
	a.Handle(key("S"))
	b.opened = "pins_dry"
	b.look()
	img, _ := a.Draw()
	drawtest.Golden(t, "bench-setup", img)
}
