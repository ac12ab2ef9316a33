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
