package scene

import (
	"sync"
	"testing"

	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
	"evenwear/scenarios"
)

// library is read and its jobs are verified once for all tests.
var library = sync.OnceValues(scenarios.Embedded)

// openJob shows a real session in an app.
func openJob(t testing.TB, a *App, id string, seed uint64) (*Job, *play.Session) {
	t.Helper()
	lib, err := library()
	if err != nil {
		t.Fatal(err)
	}
	s, err := play.Open(lib, a.words, id, seed)
	if err != nil {
		t.Fatal(err)
	}
	j := NewJob(a, s, nil)
	a.Show(j)
	a.Draw()
	return j, s
}

// wheelOffActs go from the parked car to a front left wheel that is off.
var wheelOffActs = []play.Act{
	{Do: play.Go, What: "ground"}, {Do: play.Prepare, What: "chock_rear"},
	{Do: play.Go, What: "front_left"}, {Do: play.Prepare, What: "slacken_nuts@front_left"},
	{Do: play.Go, What: "ground"}, {Do: play.Prepare, What: "lift_front"},
	{Do: play.Go, What: "front_left"}, {Do: play.Prepare, What: "stand@front_left"},
	{Do: play.Prepare, What: "wheel_off@front_left"}, {Do: play.Prepare, What: "wipe_dust@front_left"},
}

var lookedAtBonnetAndSeat = []play.Act{
	{Do: play.Go, What: "bonnet"}, {Do: play.Check, What: "reservoir_level"}, {Do: play.Write, Text: "65"},
	{Do: play.Go, What: "seat"}, {Do: play.Check, What: "pedal_feel"}, {Do: play.Write, Text: "firm"},
	{Do: play.Check, What: "hold_sink"}, {Do: play.Skip}, {Do: play.Strike, N: 2},
}

// TestStationsPictures draws the inspection of one job as it is played.
func TestStationsPictures(t *testing.T) {
	check := func(what string) play.Act { return play.Act{Do: play.Check, What: what} }
	at := func(place string) play.Act { return play.Act{Do: play.Go, What: place} }
	for _, p := range []struct {
		name         string
		slate, touch bool
		acts         []play.Act
		keys         []string
	}{
		{"stations-reservoir", false, false, []play.Act{at("bonnet"), check("reservoir_level")}, nil},
		{"stations-bonnet", false, false, []play.Act{at("bonnet")}, nil},
		{"stations-bonnet-touch", false, true, []play.Act{at("bonnet"), {Do: play.Prepare, What: "roll_level"}}, nil},
		{"stations-dipstick", false, false, []play.Act{at("bonnet"), check("oil_level")}, nil},
		{"stations-coolant-slate", true, false, []play.Act{at("bonnet"), check("coolant_level")}, nil},
		{"stations-wheel-on", false, false, append(lookedAtBonnetAndSeat, at("front_left")), nil},
		{"stations-feeler", false, false, append(append(lookedAtBonnetAndSeat, wheelOffActs...), check("lining_outer_upper@front_left")), nil},
		{"stations-feeler-slate", true, false, append(append(lookedAtBonnetAndSeat, wheelOffActs...), check("lining_outer_upper@front_left")), nil},
		{"stations-dial", false, false, append(wheelOffActs, check("runout@front_left")), nil},
		{"stations-thickness", false, false, append(wheelOffActs, check("disc_thickness@front_left")), nil},
		{"stations-blades", false, false, append(wheelOffActs, check("clearance@front_left")), nil},
		{"stations-pedal", false, false, []play.Act{at("seat"), check("pedal_travel")}, nil},
		{"stations-enlarged", false, false, append(wheelOffActs, check("lining_outer_upper@front_left")), []string{"+", "Down"}},
		{"stations-help", false, false, []play.Act{at("ground")}, []string{"F1"}},
		{"stations-ground", false, false, append(wheelOffActs, at("ground")), nil},
		{"stations-seen", false, false, []play.Act{at("seat"), check("pedal_feel")}, nil},
		{"stations-touch", false, true, append(wheelOffActs, at("front_left")), []string{"E"}},
	} {
		t.Run(p.name, func(t *testing.T) {
			a := testApp(t, p.slate)
			a.Resize(1280, 720, p.touch)
			j, _ := openJob(t, a, "warm_wheel", 3)
			for _, act := range p.acts {
				if !j.do(act) {
					t.Fatalf("%+v: %s", act, j.view.Notice)
				}
			}
			for _, k := range p.keys {
				a.Handle(key(k))
			}
			img, _ := a.Draw()
			drawtest.Golden(t, p.name, img)
		})
	}
}

// TestStationsOnPaper draws a car of which only notes are there.
func TestStationsOnPaper(t *testing.T) {
	a := testApp(t, false)
	openJob(t, a, scenarios.DrawnID(10001, scenarios.Noted), 3)
	pictured(t, a, "stations-on-paper")
}
