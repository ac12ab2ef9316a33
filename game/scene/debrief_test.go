package scene

import (
	"testing"

	"evenwear/game/draw"
	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
	"evenwear/scenarios"
)

// played is the debrief most tests are made on.
const played = "debrief-pin"

// shownDebrief is the debrief of a job that was really played.
func shownDebrief(t testing.TB, name string, slate bool) (*App, *debrief, *oneView) {
	t.Helper()
	a := testApp(t, slate)
	g := &oneView{view: *recordedView(t, name)}
	j := NewJob(a, g, nil)
	a.Show(j)
	s, ok := j.sheet.(*debrief)
	if !ok {
		t.Fatalf("a debrief is shown on %T", j.sheet)
	}
	return a, s, g
}

func TestDebriefPictures(t *testing.T) {
	for _, x := range []struct {
		name, of string
		slate    bool
		keys     []string
	}{
		{"debrief-dry", "debrief-dry", false, nil},
		{"debrief-unsafe-slate", "debrief-unsafe", true, nil},
		{"debrief-leak", "debrief-leak", false, []string{"S"}},
		{"debrief-air", "debrief-air", false, nil},
		{"debrief-sound", "debrief-sound", false, nil},
		{"debrief-pin", "debrief-pin", false, nil},
		{"debrief-piston", "debrief-piston", false, nil},
		{"debrief-trail", played, false, []string{"T"}},
		{"debrief-words", played, true, []string{"W"}},
	} {
		t.Run(x.name, func(t *testing.T) {
			a, _, _ := shownDebrief(t, x.of, x.slate)
			a.Draw()
			keys(a, x.keys...)
			img, _ := a.Draw()
			drawtest.Golden(t, x.name, img)
		})
	}
}

// TestDebriefVesselPictures: a fluid under the bonnet is drawn in its own vessel,
// not in the brake reservoir.
func TestDebriefVesselPictures(t *testing.T) {
	for vessel, x := range map[string]struct {
		cause, place string
		level        [2]float64
	}{"oil": {"Engine oil low", "engine", [2]float64{1, -0.2}}, "washer": {"Washer bottle empty", "washer bottle", [2]float64{1, 0.02}}} {
		a, s, g := shownDebrief(t, played, false)
		g.view.Debrief.Faults = []play.FaultView{{Kind: "fluid", Wheel: "front_left", Cause: x.cause, Place: x.place, Vessel: vessel, Level: x.level,
			Labels: []play.FaultLabel{{Part: "level", Text: words(t).Say("fault."+vessel, "now", s.num(100*x.level[1], 0), "sound", s.num(100*x.level[0], 0))}}}}
		s.job.refresh()
		img, _ := a.Draw()
		drawtest.Golden(t, "debrief-"+vessel, img)
	}
}

// TestDebriefOrganPictures: what is wrong between foot and pipes is headed by its
// name and drawn, not the brake reservoir.
func TestDebriefOrganPictures(t *testing.T) {
	for organ, x := range map[string][2]string{"booster": {"Booster without vacuum", "booster"}, "master_cylinder": {"Master cylinder cup passing", "primary circuit"}, "lamp": {"Brake lamp dead", "dashboard"}} {
		a, s, g := shownDebrief(t, played, false)
		g.view.Debrief.Faults = []play.FaultView{{Kind: "fluid", Wheel: "front_left", Cause: x[0], Place: x[1], Organ: organ, Level: [2]float64{0.8, 0.8}}}
		s.job.refresh()
		img, _ := a.Draw()
		drawtest.Golden(t, "debrief-"+organ, img)
	}
}

// TestDebriefOfADrawnCar: why a car was drawn stands above the keys; that the
// result could not be kept stands at the head.
func TestDebriefOfADrawnCar(t *testing.T) {
	a, s, g := shownDebrief(t, played, false)
	g.view.Debrief.Drawn = words(t).Say("drawn.pair", "cause", "one guide pin seized", "n", "37", "other", "the piston corroded in its bore")
	g.view.Nodes = append(g.view.Nodes, play.Node{ID: "unkept", Role: "caution", Name: words(t).Say("records.unkept", "why", "no space left on device")})
	s.job.refresh()
	img, _ := a.Draw()
	drawtest.Golden(t, "debrief-drawn", img)
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	widest, wide := "", 0.0
	for _, c := range lib.Causes {
		if w := a.still.Measure(draw.SmallText, c.Name); w > wide {
			widest, wide = c.Name, w
		}
	}
	for _, id := range []string{"gentle", "pair", "due", "new", "any"} {
		said := words(t).Say("drawn."+id, "cause", widest, "other", widest, "n", "100")
		if w := a.still.Measure(draw.SmallText, said); w > drawnRoom {
			t.Errorf("%q is %.0f wide, there is room for %.0f", said, w, drawnRoom)
		}
	}
}
