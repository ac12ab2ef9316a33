package scene

import (
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/widget"
	"evenwear/physics/inspect"
)

// acts does acts of which none may be refused.
func acts(t testing.TB, j *Job, list ...play.Act) {
	t.Helper()
	for _, a := range list {
		if !j.do(a) {
			t.Fatalf("%+v: %s", a, j.view.Notice)
		}
	}
}

// look makes a check and writes what its marks say.
func look(t testing.TB, j *Job, words *assets.Words, check string) {
	t.Helper()
	acts(t, j, play.Act{Do: play.Check, What: check})
	v := j.view.Instrument
	if v == nil {
		t.Fatalf("%s: %s", check, j.view.Notice)
	}
	text := readMarks(t, words, v)
	acts(t, j, play.Act{Do: play.Write, What: v.Check, Text: text})
}

// readMarks is what a faultless eye writes down before an instrument.
func readMarks(t testing.TB, words *assets.Words, v *play.InstrumentView) string {
	t.Helper()
	id := v.Check
	if inst, err := inspect.ParseInstance(id); err == nil {
		id = string(inst.Check)
	}
	text, err := playtest.Read(v, func(seen string) string {
		c, _ := inspect.Find(inspect.ID(id))
		for _, w := range c.Meter.Words {
			if words.Say("see."+id+"."+w) == seen {
				return words.Say("word." + w)
			}
		}
		t.Fatalf("%s: nothing is described by %q", id, seen)
		return ""
	})
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// demoCall brings a job to a call sheet with some readings, and with five rows or none.
func demoCall(t testing.TB, slate, touch, rows bool) (*App, *Job) {
	t.Helper()
	a := testApp(t, slate)
	a.Resize(1280, 720, touch)
	j, _ := openJob(t, a, "to_the_kerb", 7)
	for _, x := range []struct{ place, check string }{{"bonnet", "reservoir_level"}, {"seat", "pedal_travel"}, {"seat", "hold_sink"}, {"front_left", "opening_outer@front_left"}, {"front_right", "wetness@front_right"}} {
		acts(t, j, play.Act{Do: play.Go, What: x.place})
		look(t, j, a.words, x.check)
	}
	acts(t, j, play.Act{Do: play.Go, What: "ground"}, play.Act{Do: play.Prepare, What: "chock_rear"},
		play.Act{Do: play.Go, What: "road"}, play.Act{Do: play.Prepare, What: "clear_road"}, play.Act{Do: play.Prepare, What: "stop_50"})
	look(t, j, a.words, "pull")
	acts(t, j, play.Act{Do: play.OpenCall})
	if rows {
		for _, r := range []struct {
			id string
			n  float64
		}{{"pins_seized@front_right", 11}, {"pin_seized@front_right.upper_pin", 4}, {"pins_dry@front_right", 2}, {"piston_corroded@front_right", 2}, {"fluid_low_wear@car", 1}} {
			acts(t, j, play.Act{Do: play.Row, What: r.id}, play.Act{Do: play.Counter, What: r.id, N: r.n})
		}
	}
	return a, j
}

// keys are pressed one after the other.
func keys(a *App, names ...string) {
	for _, n := range names {
		a.Handle(widget.Event{Kind: widget.KeyDown, Key: n})
	}
}
