package program

import (
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"evenwear/assets"
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/scene"
	"evenwear/game/scene/scenetest"
	"evenwear/game/widget"
	"evenwear/game/window/windowtest"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// A mirror is an app beside the program's own window, which does what the window
// is to do: it says where things stand, and each picture of the screen must be
// its picture.
type mirror struct {
	t       *testing.T
	screen  windowtest.Screen
	dir     string // of the program's sessions
	app     *scene.App
	hand    scenetest.Hand
	pointer draw.Pt
	free    bool // the window shows what the mirror does not know
	shots   int
}

// still is a session whose debrief the mirror does not work out: the program does.
type still struct{ *play.Session }

func (still) Await() {}

func newMirror(t *testing.T, screen windowtest.Screen, dir string) *mirror {
	t.Helper()
	desk, words := playtest.Desk(t)
	fonts, err := assets.LoadFonts()
	if err != nil {
		t.Fatal(err)
	}
	m := &mirror{t: t, screen: screen, dir: dir}
	show := func(a *scene.App, s *play.Session, err error) (scene.Scene, error) {
		if err != nil {
			return nil, err
		}
		m.hand.Session = s
		return scene.NewJob(a, still{s}, nil), nil
	}
	cover := scene.Cover{Bench: func(*scene.App) (scene.Scene, error) { return nil, fmt.Errorf("the bench was pressed") }}
	elsewhere := func(*scene.App) (scene.Scene, error) { return nil, fmt.Errorf("a lesson or an unseen car was pressed") }
	cover.Practise, cover.SelfCheck = elsewhere, elsewhere
	for _, l := range desk.Library().Lessons {
		cover.Lessons = append(cover.Lessons, scene.Offer{Name: l.Title, Detail: words.Say("cover.lesson_steps", "steps", len(l.Steps)), Open: elsewhere})
	}
	for _, ease := range scenarios.Eases {
		cover.Jobs = append(cover.Jobs, scene.Offer{Name: words.Say("cover.unseen_" + string(ease)), Detail: words.Say("cover.unseen"), Open: elsewhere})
	}
	for _, j := range desk.Library().ByAim() {
		cover.Jobs = append(cover.Jobs, scene.Offer{Name: j.Title, Detail: words.Say("cover.job_minutes", "minutes", j.Minutes),
			Open: func(a *scene.App) (scene.Scene, error) {
				s, err := desk.Open(j.ID, m.begun().Seed)
				return show(a, s, err)
			}})
	}
	cover.Resume = func() *scene.Offer {
		_, acts := onDisk(t, dir)
		if len(acts) == 0 || acts[len(acts)-1].Do == play.HandOver {
			return nil // nothing to go on with; its debrief has been looked at
		}
		return &scene.Offer{Name: desk.Library().Job(m.begun().Header.Job).Title, Open: func(a *scene.App) (scene.Scene, error) {
			h := m.begun().Header
			s, err := desk.Replay(h.Job, h.Seed, acts)
			return show(a, s, err)
		}}
	}
	m.app = scene.NewApp(scene.Options{Words: words, Fonts: fonts, Calm: true, Cover: cover})
	m.hand = scenetest.Hand{App: m.app, Way: scenetest.Mouse, Send: m.send}
	return m
}

// begun is the session that the program has begun.
func (m *mirror) begun() record.Entry {
	for deadline := time.Now().Add(30 * time.Second); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		if list, err := record.List(m.dir); err == nil && len(list) == 1 && list[0].Err == nil {
			return list[0]
		}
	}
	m.t.Fatal("the window began no session in 30 s")
	return record.Entry{}
}

// send does an event with the screen's own keyboard or pointer, then in the
// mirror, and waits until the window shows what the mirror does.
func (m *mirror) send(e widget.Event) {
	m.t.Helper()
	switch at := fmt.Sprintf("%.0f %.0f", e.At.X, e.At.Y); e.Kind {
	case widget.KeyDown:
		m.screen.Hand(m.t, "key", keysym(e))
	case widget.PointerDown:
		m.pointer = e.At
		m.app.Handle(widget.Event{Kind: widget.PointerMove, At: e.At})
		m.screen.Hand(m.t, append([]string{"mousemove"}, append(strings.Fields(at), "mousedown", "1")...)...)
	case widget.PointerUp:
		m.screen.Hand(m.t, "mouseup", "1")
	case widget.Wheel:
		button := "5"
		if e.Turn < 0 {
			button = "4"
		}
		m.pointer = e.At
		m.screen.Hand(m.t, append([]string{"mousemove"}, append(strings.Fields(at), "click", button)...)...)
	}
	m.app.Handle(e)
	// A key that types is done when its character has come.
	if !m.free && (e.Kind != widget.KeyDown || len(e.Key) > 1 && e.Key != "Space") {
		m.same(fmt.Sprintf("after-%s%.0f-%.0f", e.Key, e.At.X, e.At.Y))
	}
}

// kept waits until the acts on disk are the mirror's.
func (m *mirror) kept() {
	m.t.Helper()
	var acts []play.Act
	for deadline := time.Now().Add(30 * time.Second); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		if _, acts = onDisk(m.t, m.dir); slices.Equal(acts, m.hand.Acts()) {
			return
		}
	}
	m.t.Fatalf("kept are\n%v, want\n%v", acts, m.hand.Acts())
}

// keysym is the name that X gives to a key.
func keysym(e widget.Event) string {
	switch e.Key {
	case "Enter":
		return "Return"
	case "Esc":
		return "Escape"
	case "Space":
		return "space"
	case "Backspace":
		return "BackSpace"
	case ".":
		return "period"
	case "-":
		return "minus"
	case "+":
		return "plus"
	}
	if len(e.Key) == 1 && !e.Shift {
		return strings.ToLower(e.Key)
	}
	return e.Key
}

// same waits until the screen shows the mirror's picture but for the pointer.
func (m *mirror) same(what string) {
	m.t.Helper()
	want, _ := m.app.Draw()
	var got *image.RGBA
	differ := 0
	for deadline := time.Now().Add(30 * time.Second); time.Now().Before(deadline); time.Sleep(10 * time.Millisecond) {
		got = m.screen.Shot(m.t)
		if differ = windowtest.Changed(m.covered(got), m.covered(want)); differ == 0 {
			return
		}
	}
	m.keep(got, what+"-window")
	m.keep(want, what+"-wanted")
	m.t.Fatalf("%s: %d pixels of the window are not as they are to be", what, differ)
}

// covered is a picture without what the pointer may hide.
func (m *mirror) covered(img *image.RGBA) *image.RGBA {
	c := &image.RGBA{Pix: append([]byte(nil), img.Pix...), Stride: img.Stride, Rect: img.Rect}
	at := image.Pt(int(m.pointer.X), int(m.pointer.Y))
	hidden := image.Rectangle{at.Sub(image.Pt(16, 16)), at.Add(image.Pt(24, 24))}.Intersect(c.Rect)
	for y := hidden.Min.Y; y < hidden.Max.Y; y++ {
		clear(c.Pix[c.PixOffset(hidden.Min.X, y):c.PixOffset(hidden.Max.X, y)])
	}
	return c
}

// keep writes a picture among the test's artifacts.
func (m *mirror) keep(img *image.RGBA, name string) {
	m.t.Helper()
	m.shots++
	f, err := os.Create(filepath.Join(m.t.ArtifactDir(), fmt.Sprintf("%02d-%s.png", m.shots, name)))
	if err != nil {
		m.t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		m.t.Fatal(err)
	}
}

// opened starts the program's window on a screen, and a mirror beside it, and
// waits for the cover.
func opened(t *testing.T, screen windowtest.Screen, dir string) (*exec.Cmd, *mirror) {
	t.Helper()
	cmd := command(t, "--sessions", dir, "window", "--calm")
	cmd.Env = append(cmd.Env, "DISPLAY="+screen.Display)
	cmd.Stderr = os.Stderr
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { cmd.Process.Kill() })
	screen.Hand(t, "search", "--sync", "--name", "Evenwear", "windowfocus")
	m := newMirror(t, screen, dir)
	m.same("cover")
	return cmd, m
}

// left waits for a program that was told to end.
func left(t *testing.T, cmd *exec.Cmd) {
	t.Helper()
	done := make(chan error, 1)
	go func() { done <- cmd.Wait() }()
	select {
	case err := <-done:
		if err != nil {
			t.Errorf("leaving ended with %v", err)
		}
	case <-time.After(30 * time.Second):
		t.Error("leaving did not end the program")
	}
}
