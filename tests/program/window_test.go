package program

import (
	"image"
	"testing"
	"time"

	"evenwear/game/play"
	"evenwear/game/scene"
	"evenwear/game/scene/scenetest"
	"evenwear/game/widget"
	"evenwear/game/window/windowtest"
)

// A part of a job is done in one way on one sheet.
type part struct {
	name string
	way  scenetest.Way
	acts []play.Act
}

// shortJob looks at little, calls, works and hands over: every sheet and every
// kind of thing that is pressed, by pointer and by key.
var shortJob = []part{
	{"stations", scenetest.Mouse, []play.Act{{Do: play.Go, What: "bonnet"}, {Do: play.Go, What: "front_left"}}},
	{"seen", scenetest.Letters, []play.Act{{Do: play.Check, What: "wetness@front_left"}, {Do: play.Write, Text: "dry"}}},
	{"to the seat", scenetest.Mouse, []play.Act{{Do: play.Go, What: "seat"}}},
	{"instrument", scenetest.Mouse, []play.Act{{Do: play.Check, What: "pedal_travel"}}},
	{"written", scenetest.Letters, []play.Act{{Do: play.Write, Text: "52"}}},
	{"call", scenetest.Letters, []play.Act{{Do: play.OpenCall}}},
	{"row", scenetest.Mouse, []play.Act{{Do: play.Row, What: "pins_dry@front_left"}}},
	{"counters", scenetest.Letters, threaded("pins_dry@front_left", 12)},
	{"second row", scenetest.Tabs, append([]play.Act{{Do: play.Row, What: "honestly_worn@car"}}, threaded("honestly_worn@car", 8)...)},
	{"sealed", scenetest.Tabs, []play.Act{{Do: play.Seal}}},
	{"remedy", scenetest.Mouse, []play.Act{{Do: play.Remedy, What: "clean_pins_silicone@front_left"}}},
	{"hand-over", scenetest.Letters, []play.Act{{Do: play.Work}, {Do: play.Check, What: "pump_running"}}},
	{"looked again", scenetest.Mouse, []play.Act{{Do: play.Write, Text: "52"}}},
	{"released", scenetest.Letters, []play.Act{{Do: play.Release, What: "release.use"}, {Do: play.Tell, Text: "Pins cleaned."}}},
}

func threaded(row string, n int) (acts []play.Act) {
	for i := range n {
		acts = append(acts, play.Act{Do: play.Counter, What: row, N: float64(i + 1)})
	}
	return acts
}

// TestJobInWindow plays a job in the program's own window on a virtual screen,
// with a real pointer and real keys. After every act the screen is, to the
// pixel, what the same events draw here.
func TestJobInWindow(t *testing.T) {
	if testing.Short() {
		t.Skip("opens a window")
	}
	screen, dir := windowtest.New(t), t.TempDir()
	cmd, m := opened(t, screen, dir)
	m.keep(screen.Shot(t), "cover")
	if err := m.hand.Open("A wheel that runs warm"); err != nil {
		t.Fatal(err)
	}
	for _, p := range shortJob {
		m.hand.Way = p.way
		for _, a := range p.acts {
			if v := m.hand.View().Instrument; a.Do == play.Write && v != nil {
				a.What = v.Check
			}
			if err := m.hand.Do(a); err != nil {
				t.Fatalf("%s: %v", p.name, err)
			}
		}
		m.same(p.name)
		m.keep(screen.Shot(t), p.name)
	}
	m.kept()
	m.hand.Way, m.free = scenetest.Mouse, true // how far the debrief is moves on
	if err := m.hand.Do(play.Act{Do: play.HandOver}); err != nil {
		t.Fatal(err)
	}
	waiting := screen.Until(t, "the sheet that waits for the debrief", func(img *image.RGBA) bool {
		want, _ := m.app.Draw()
		return windowtest.Changed(m.covered(img), m.covered(want)) < few
	})
	m.keep(waiting, "waiting")
	begin := time.Now()
	for windowtest.Changed(screen.Shot(t), waiting) < few {
		if time.Since(begin) > patience {
			t.Fatalf("no debrief after %v", patience)
		}
		time.Sleep(time.Second)
	}
	t.Logf("the debrief stands after %.0f s; pictures in %s", time.Since(begin).Seconds(), t.ArtifactDir())
	m.keep(screen.Shot(t), "debrief")
	m.free = false
	m.send(widget.Event{Kind: widget.KeyDown, Key: "Esc"}) // to the cover
	m.kept()
	screen.Hand(t, "key", "Escape")
	left(t, cmd)
}

const (
	// few are fewer pixels than a new sheet changes, and more than a figure that
	// counts up.
	few      = 20000
	patience = 5 * time.Minute
)

// TestWindowKilled: a window killed in the middle of a job goes on, when it is
// opened again, in front of the same instrument; one that is left shows the
// session on its cover at once.
func TestWindowKilled(t *testing.T) {
	if testing.Short() {
		t.Skip("opens a window")
	}
	screen, dir := windowtest.New(t), t.TempDir()
	cmd, m := opened(t, screen, dir)
	if err := m.hand.Open("A wheel that runs warm"); err != nil {
		t.Fatal(err)
	}
	do := func(acts ...play.Act) {
		t.Helper()
		for _, a := range acts {
			if err := m.hand.Do(a); err != nil {
				t.Fatal(err)
			}
		}
		m.kept()
	}
	do(play.Act{Do: play.Go, What: "bonnet"}, play.Act{Do: play.Check, What: "reservoir_level"})
	cmd.Process.Kill() // SIGKILL: nothing can be tidied up
	cmd.Wait()
	cmd, m = opened(t, screen, dir)
	goOn := func(p *scene.Pressable) bool { return p.Stop == "resume" }
	if err := m.hand.Press(goOn); err != nil {
		t.Fatal(err)
	}
	m.keep(screen.Shot(t), "resumed")
	if v := m.hand.View().Instrument; v == nil || v.Check != "reservoir_level" {
		t.Fatalf("gone on in front of %+v", v)
	}
	do(play.Act{Do: play.Write, What: "reservoir_level", Text: "30"}, play.Act{Do: play.Go, What: "seat"})
	m.send(widget.Event{Kind: widget.KeyDown, Key: "Esc"})
	if err := m.hand.Press(goOn); err != nil {
		t.Fatal(err)
	}
	do(play.Act{Do: play.Go, What: "road"})
	m.send(widget.Event{Kind: widget.KeyDown, Key: "Esc"})
	m.free = true // gone
	m.send(widget.Event{Kind: widget.KeyDown, Key: "Esc"})
	left(t, cmd)
}
