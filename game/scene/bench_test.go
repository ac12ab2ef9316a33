package scene

import (
	"testing"

	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
	"evenwear/physics"
)

var freePins = [2]string{"free", "free"}
var stuckUpper = physics.WheelCondition{PinFriction: [2]float64{20000, 0}}
var tightAndBent = physics.WheelCondition{PinPinch: [2]float64{0.3 * physics.Millimetre, 0}, PinFriction: [2]float64{0, 500}, PinBend: [2]float64{0, 2e-6}}

func stuckBench(t testing.TB) *benchCar {
	b := new(benchCar).at(t, stuckUpper, [2]string{"stuck", "free"}, 33, 1.28)
	b.view.Predict.Question = words(t).Say("bench.question.upper", "force", "33")
	b.view.Predict.Said, b.view.Predict.Computed = 93, 100*b.view.Balance[1]/b.view.Balance[0]
	b.view.Predict.Comment = words(t).Say("bench.too_high", "off", "24", "computed", "69", "force", "33") + " " + words(t).Say("bench.pins_take", "force", "0.84")
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
		{"bench-tight-bent", false, new(benchCar).at(t, tightAndBent, [2]string{"tight", "bent"}, 33, 1.28)},
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
	like := testApp(t, false)
	a := NewApp(Options{Words: like.words, Fonts: like.fonts, Cover: Cover{
		Bench:    func(*App) (Scene, error) { return nil, nil },
		Practise: func(*App) (Scene, error) { return nil, nil }, SelfCheck: func(*App) (Scene, error) { return nil, nil },
		Resume: func() *Offer { return &Offer{Name: "A long pedal after the holiday, 24 minutes spent"} },
		Jobs: []Offer{{Name: "It pulls to the right when I brake", Detail: "compact hatchback"},
			{Name: "The pedal goes down further than it did before the summer, and the fluid is low again", Detail: "light delivery van"}},
		Lessons: []Offer{{Name: "One piston, two pads", Detail: "3 steps"}, {Name: "Why a pad drags", Detail: "3 steps"}},
	}})
	img, _ := a.Draw()
	drawtest.Golden(t, "cover", img)
}

func TestDrawerPicture(t *testing.T) {
	a, b, h := heard(t)
	h.view.Groups[0].Causes[0].Places[0].Chosen = true
	h.view.Cause = "pins dry"
	h.view.ByHand = true
	h.view.Wheels = nil
	for _, w := range []string{"front left", "front right", "rear left", "rear right"} {
		h.view.Wheels = append(h.view.Wheels, play.Action{Label: w, Enabled: true, Chosen: w == "front left"})
	}
	a.Handle(key("S"))
	b.opened = "pins_dry"
	b.look()
	img, _ := a.Draw()
	drawtest.Golden(t, "bench-setup", img)
}
